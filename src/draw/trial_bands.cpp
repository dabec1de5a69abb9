#include "draw/trial_bands.h"

#include <algorithm>
#include <cmath>

#include "base/number.h"
#include "draw/sketch.h"

namespace thole {
namespace {

struct Row {
  const char* name = "";
  Band band{};
};

}  // namespace

Drawing trial_picture(const CalibrateResult& trial) {
  const Row rows[] = {{"Wind load", trial.windage},
                      {"Current load", trial.drag},
                      {"Ratio of the two", trial.windage_over_drag}};
  Drawing drawing{.title = "Loads from the trial, times what is computed", .to_scale = false};
  double low = 0.5;
  double high = 2.0;
  for (const Row& row : rows) {
    low = std::min(low, row.band.low_factor);
    high = std::max(high, row.band.high_factor);
  }
  // Factors: twice is as far from once as half is.
  const auto at = [&](double factor) { return std::log(factor / low) / std::log(high / low); };
  drawing.low = {-0.06, -0.55};
  drawing.high = {1.06, 3.1};
  double y = 2.0;
  for (const Row& row : rows) {
    add_box(drawing, {at(row.band.low_factor), y}, {at(row.band.high_factor), y + 0.28}, Line::outline,
            Fill::water);
    const double best = at(row.band.value_factor);
    add_box(drawing, {best - 0.006, y - 0.06}, {best + 0.006, y + 0.34}, Line::none, Fill::accent);
    const std::string figures = fixed(row.band.value_factor, 2) + " (" + fixed(row.band.low_factor, 2) +
                                " to " + fixed(row.band.high_factor, 2) + ")";
    add_label(drawing, {0.0, y + 0.6}, row.name, Align::left);
    add_label(drawing, {1.0, y + 0.6}, figures, Align::right, TextRole::strong);
    drawing.description += std::string(row.name) + " " + figures + ". ";
    y -= 1.0;
  }
  for (const double factor : {0.5, 1.0, 2.0}) {
    add_polyline(drawing, {{at(factor), -0.1}, {at(factor), factor == 1.0 ? 2.4 : 0.0}},
                 factor == 1.0 ? Line::hidden : Line::thin);
    add_label(drawing, {at(factor), -0.32}, fixed(factor, 1));
  }
  return drawing;
}

}  // namespace thole
