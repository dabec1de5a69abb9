#include "calc/plate_made.h"

#include <algorithm>
#include <cmath>

#include "calc/plate/outline.h"

namespace thole {
namespace {

double bar_mass_kg(const PlateBar& bar, double density_kg_per_m3) {
  return (bar.to_x_m - bar.from_x_m) * bar.height_m * bar.thickness_m * density_kg_per_m3;
}

// By points no farther apart than a quarter of a centimetre.
bool all_on_plate(const PlateCut& cut, const PlateBar& bar) {
  constexpr double kStep_m = 0.0025;
  const int count = static_cast<int>(std::ceil((bar.to_x_m - bar.from_x_m) / kStep_m));
  for (int i = 0; i <= count; ++i) {
    const double x_m = bar.from_x_m + (bar.to_x_m - bar.from_x_m) * i / std::max(count, 1);
    for (const double side : {-0.5, 0.0, 0.5}) {
      if (!on_plate(cut, {x_m, bar.y_m + side * bar.thickness_m})) return false;
    }
  }
  return true;
}

bool covers(const PlateBar& bar, const PlateHole& hole) {
  const double ahead_m = std::max({bar.from_x_m - hole.at.x_m, hole.at.x_m - bar.to_x_m, 0.0});
  const double beside_m = std::max(std::abs(hole.at.y_m - bar.y_m) - 0.5 * bar.thickness_m, 0.0);
  return std::hypot(ahead_m, beside_m) < 0.5 * std::max(hole.diameter_m, hole.countersink_m);
}

Step mass_step(const ChosenPlate& plate, const PlateMade& made) {
  Step step{.id = "mount.plate_mass",
            .label = "Plate as it is made, less corners, cut-outs and holes",
            .symbol = "m_p",
            .formula = "A * t * rho",
            .terms = {{"A", made.net_m2, "m2", "area of the finished plate"},
                      {"t", plate.shape.thickness_m, "m", "plate thickness"},
                      {"rho", plate.alloy->density_kg_per_m3, "kg_per_m3", "density of the alloy"}},
            .value = made.mass_kg(),
            .unit = "kg",
            .source = plate.alloy->source};
  if (made.bar_count > 0) {
    step.formula = "A * t * rho + n * m_b";
    step.terms.push_back({"n", double(made.bar_count), "", "stiffeners"});
    step.terms.push_back({"m_b", made.bar_kg, "kg", "each stiffener"});
  }
  return step;
}

}  // namespace

double bars_mass_kg(const std::vector<PlateBar>& bars, double density_kg_per_m3) {
  double sum_kg = 0.0;
  for (const PlateBar& bar : bars) sum_kg += bar_mass_kg(bar, density_kg_per_m3);
  return sum_kg;
}

std::vector<std::string> bars_amiss(const PlateShape& shape, const std::vector<PlateBar>& bars) {
  std::vector<std::string> says;
  const PlateCut cut = cut_of(shape);
  for (std::size_t i = 0; i < bars.size(); ++i) {
    const std::string name = "Stiffener " + std::to_string(i + 1);
    if (!all_on_plate(cut, bars[i])) {
      says.push_back(name + " is not wholly on the plate.");
    }
    for (std::size_t k = 0; k < shape.bolts.size(); ++k) {
      if (!covers(bars[i], shape.bolts[k])) continue;
      says.push_back(name + " covers hole " + std::to_string(k + 1) + ".");
    }
  }
  return says;
}

PlateMade plate_made(const ChosenPlate& plate) {
  PlateMade made{.net_m2 = net_area_m2(plate.shape),
                 .plate_kg = mass_kg(plate.shape, plate.alloy->density_kg_per_m3),
                 .bolt_count = static_cast<int>(plate.shape.bolts.size()),
                 .bar_count = static_cast<int>(plate.bars.size())};
  if (const PlateContour outer = rounded(plate.shape.outline); !outer.empty()) {
    const PlateBox box = bounds(outer);
    made.blank_m2 = (box.high.x_m - box.low.x_m) * (box.high.y_m - box.low.y_m);
  }
  if (plate.bars.empty()) return made;
  const PlateBar& bar = plate.bars.front();
  made.bar_length_m = bar.to_x_m - bar.from_x_m;
  made.bar_height_mm = 1000.0 * bar.height_m;
  made.bar_thickness_mm = 1000.0 * bar.thickness_m;
  made.bar_kg = bar_mass_kg(bar, plate.alloy->density_kg_per_m3);
  return made;
}

PlateMade take_made_plate(Design& design) {
  const std::optional<ChosenPlate> plate = chosen_plate(design);
  const PlateMade made = plate ? plate_made(*plate) : PlateMade{};
  if (!(made.net_m2 > 0.0)) return rectangular_plate(design);
  design.mount.plate_mass_kg = made.mass_kg();
  for (Step& step : design.mount.trace.steps)
    if (step.id == "mount.plate_mass") step = mass_step(*plate, made);
  return made;
}

}  // namespace thole
