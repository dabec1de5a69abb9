#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <span>

#include "base/units.h"
#include "data/sources.h"
#include "data/windage.h"
#include "job/estimate.h"

namespace thole {
namespace {

// Proportions of three invented boats of 5.5, 7.6 and 11 m that stand for many (docs/decisions.md).
constexpr double kMassPerLength_kg_per_m3 = 5.3;
constexpr double kWaterlineLength_ratio = 0.87;
constexpr double kWaterlineBeam_ratio = 0.88;
constexpr double kBeamPerLength_factor = 0.70;  // beam over length^(2/3)
constexpr double kBowHeight_ratio = 0.155;
constexpr double kBlock_ratio = 0.32;                 // displaced water over L B T
constexpr double kUnderwater_ratio = 0.92;            // side area over L T
constexpr double kUnderwaterCentroid_ratio = -0.045;  // over waterline length
constexpr double kBowTaper_ratio = 0.18;              // stem to a quarter of the beam, over length
constexpr double kLegSide_m2 = 0.15;                  // side area of one leg
constexpr double kLegBehind_m = 0.3;                  // behind the end of the waterline
constexpr double kSeaWater_kg_per_m3 = 1025.0;
constexpr double kPersonFront_m2 = 0.7;  // one who stands
constexpr double kPersonSide_m2 = 0.6;

// Windage of a deck layout: middle of the range in the project's handbook.
struct Windage {
  Layout layout{};
  double lateral_ratio = 0.0;   // side area over length times beam
  double frontal_ratio = 0.0;   // front area over beam squared
  double centroid_ratio = 0.0;  // forward of midships, over length
};
// As usually out, and, for layouts that have canvas, the ends of the range.
constexpr std::array kWindage{
    Windage{Layout::open_skiff, 0.35, 0.45, 0.025},
    Windage{Layout::bay_console, 0.36, 0.475, 0.04},
    Windage{Layout::centre_console, 0.43, 0.56, 0.02},
    Windage{Layout::t_top, 0.54, 0.70, 0.015},
    Windage{Layout::enclosed_t_top, 0.675, 0.975, 0.0},
    Windage{Layout::dual_console, 0.575, 0.775, -0.025},
    Windage{Layout::walkaround, 0.56, 0.775, 0.03},
    Windage{Layout::pilothouse, 0.75, 1.0, 0.04},
    Windage{Layout::express, 0.75, 0.975, 0.0},
    Windage{Layout::flybridge, 1.025, 1.325, 0.0},
    Windage{Layout::pontoon, 0.675, 0.875, 0.0},
};

constexpr std::array kFolded{
    Windage{Layout::enclosed_t_top, 0.54, 0.70, 0.015},
    Windage{Layout::dual_console, 0.50, 0.65, 0.0},
    Windage{Layout::walkaround, 0.50, 0.70, 0.03},
    Windage{Layout::express, 0.65, 0.85, 0.0},
    Windage{Layout::flybridge, 0.90, 1.15, 0.0},
    Windage{Layout::pontoon, 0.55, 0.75, 0.0},
};
constexpr std::array kUp{
    Windage{Layout::t_top, 0.675, 0.975, 0.0},     Windage{Layout::dual_console, 0.65, 0.90, -0.05},
    Windage{Layout::walkaround, 0.62, 0.85, 0.03}, Windage{Layout::express, 0.85, 1.10, 0.0},
    Windage{Layout::flybridge, 1.15, 1.50, 0.0},   Windage{Layout::pontoon, 0.80, 1.00, 0.0},
};

const Windage* find_row(std::span<const Windage> rows, Layout layout) {
  for (const Windage& row : rows) {
    if (row.layout == layout) return &row;
  }
  return nullptr;
}

const Windage& windage(Layout layout, Canvas canvas) {
  const std::span<const Windage> rows = canvas == Canvas::folded ? std::span<const Windage>(kFolded)
                                        : canvas == Canvas::up   ? std::span<const Windage>(kUp)
                                                                 : std::span<const Windage>{};
  if (const Windage* row = find_row(rows, layout)) return *row;
  const Windage* usual = find_row(kWindage, layout);
  return usual != nullptr ? *usual : kWindage.front();
}

// Those who stand and show above a low deck; behind a console or a house they show no more than it.
double standing_count(const Boat& boat) {
  return boat.layout.value == Layout::open_skiff ? 0.5 * boat.crew_count.value : 0.0;
}

double legs_down_count(const Boat& boat) {
  return boat.leg.value == Leg::tilted ? 0.0 : boat.outboard_count.value;
}

Term length_term(const Boat& boat) { return {"LOA", boat.length_m.value, "m", "length overall"}; }
Term beam_term(const Boat& boat) { return {"B_H", boat.beam_m.value, "m", "beam overall"}; }
Term waterline_term(const Boat& boat) {
  return {"L", boat.waterline_length_m.value, "m", "waterline length"};
}
Term waterline_beam_term(const Boat& boat) {
  return {"B", boat.waterline_beam_m.value, "m", "waterline beam"};
}
Term draft_term(const Boat& boat) { return {"T", boat.draft_m.value, "m", "hull draft"}; }

void estimate_size(Boat& boat, Trace& trace) {
  if (boat.waterline_length_m.known()) {
    estimate(trace, boat.length_m, "boat.length_m", [&] {
      return Step{
          .label = "Length overall from waterline length",
          .symbol = "LOA",
          .formula = "min(15, max(4, L / r))",
          .terms = {waterline_term(boat),
                    {"r", kWaterlineLength_ratio, "", "usual waterline over overall length"}},
          .value = std::clamp(boat.waterline_length_m.value / kWaterlineLength_ratio, 4.0, 15.0),
          .unit = "m",
          .source = kProjectDecision};
    });
  }
  if (boat.displacement_kg.known()) {
    estimate(trace, boat.length_m, "boat.length_m", [&] {
      return Step{
          .label = "Length overall from loaded weight",
          .symbol = "LOA",
          .formula = "min(15, max(4, (m / k)^(1 / 3)))",
          .terms = {{"m", boat.displacement_kg.value, "kg", "loaded weight"},
                    {"k", kMassPerLength_kg_per_m3, "kg/m3", "usual weight over length cubed"}},
          .value = std::clamp(std::cbrt(boat.displacement_kg.value / kMassPerLength_kg_per_m3), 4.0,
                              15.0),
          .unit = "m",
          .source = kProjectDecision};
    });
  }
  assume(trace, boat.length_m, 7.0, "boat.length_m", "A boat of 7 m, until you say how long it is.",
         kProjectDecision);
  estimate(trace, boat.displacement_kg, "boat.displacement_kg", [&] {
    return Step{
        .label = "Loaded weight from length",
        .symbol = "m",
        .formula = "min(15000, k * LOA^3)",
        .terms = {{"k", kMassPerLength_kg_per_m3, "kg/m3", "usual weight over length cubed"},
                  length_term(boat)},
        .value = std::min(15000.0, kMassPerLength_kg_per_m3 * boat.length_m.value *
                                       boat.length_m.value * boat.length_m.value),
        .unit = "kg",
        .source = kProjectDecision};
  });
  estimate(trace, boat.bow_height_m, "boat.bow_height_m", [&] {
    return Step{
        .label = "Bow height from length",
        .symbol = "h_bow",
        .formula = "r * LOA",
        .terms = {{"r", kBowHeight_ratio, "", "usual bow height over length"}, length_term(boat)},
        .value = kBowHeight_ratio * boat.length_m.value,
        .unit = "m",
        .source = kProjectDecision};
  });
}

Layout usual_layout(double length_m) {
  if (length_m < 6.0) return Layout::open_skiff;
  if (length_m < 8.0) return Layout::centre_console;
  if (length_m < 10.0) return Layout::walkaround;
  return Layout::pilothouse;
}

double usual_deadrise_deg(Layout layout) {
  switch (layout) {
    case Layout::pontoon:
      return 0.0;
    case Layout::open_skiff:
      return 10.0;
    case Layout::bay_console:
      return 14.0;
    default:
      return 18.0;
  }
}

void assume_make_up(Boat& boat, Trace& trace) {
  const double length_m = boat.length_m.value;
  assume(
      trace, boat.layout, usual_layout(length_m), "boat.layout",
      "The usual layout for the length: open under 6 m, centre console under 8 m, walkaround under "
      "10 m, pilothouse above.",
      kProjectDecision);
  assume(trace, boat.deadrise_deg, usual_deadrise_deg(boat.layout.value), "boat.deadrise_deg",
         "Deadrise usual for the layout.", kCommonPractice);
  assume(trace, boat.cruise_speed_mps,
         mps_from_kn(boat.layout.value == Layout::pontoon ? 18.0 : 25.0), "boat.cruise_speed_mps",
         "Run with the motor stowed: 25 kn, a pontoon boat 18 kn.", kProjectDecision);
  assume(trace, boat.crew_count,
         length_m < 6.0   ? 2
         : length_m < 9.0 ? 3
                          : 4,
         "boat.crew_count", "Two people aboard under 6 m, three under 9 m, four above.",
         kProjectDecision);
  assume(trace, boat.outboard_count, length_m < 9.0 ? 1 : 2, "boat.outboard_count",
         "One leg at the stern under 9 m, two above.", kCommonPractice);
  assume(trace, boat.leg, Leg::down, "boat.leg",
         "Legs left down, which is on the safe side: they drag. They also steady the heading.",
         kProjectDecision);
  assume(trace, boat.canvas, Canvas::usual, "boat.canvas",
         "Canvas as usual for the layout: the middle of its range.", kProjectDecision);
  assume(trace, boat.standing_forward_count, 0, "boat.standing_forward_count",
         "Nobody stands at the bow while it holds.", kProjectDecision);
  assume(trace, boat.leg_propeller_m, length_m < 6.0 ? 0.30 : 0.36, "boat.leg_propeller_m",
         "Main propeller of 0.30 m under 6 m of length, 0.36 m above.", kCommonPractice);
  assume(trace, boat.petrol, true, "boat.petrol",
         "Petrol may be below deck, which is on the safe side.", kProjectDecision);
  assume(trace, boat.deck, length_m < 6.0 ? DeckKind::single_skin : DeckKind::cored_foam,
         "boat.deck", "Solid laminate under 6 m, foam core above; the weaker of the usual cores.",
         kProjectDecision);
}

void estimate_waterline(Boat& boat, Trace& trace) {
  if (boat.waterline_beam_m.known()) {
    estimate(trace, boat.beam_m, "boat.beam_m", [&] {
      return Step{.label = "Beam from waterline beam",
                  .symbol = "B_H",
                  .formula = "min(5, max(1.2, B / r))",
                  .terms = {waterline_beam_term(boat),
                            {"r", kWaterlineBeam_ratio, "", "usual waterline over overall beam"}},
                  .value = std::clamp(boat.waterline_beam_m.value / kWaterlineBeam_ratio, 1.2, 5.0),
                  .unit = "m",
                  .source = kProjectDecision};
    });
  }
  estimate(trace, boat.beam_m, "boat.beam_m", [&] {
    return Step{.label = "Beam from length",
                .symbol = "B_H",
                .formula = "k * LOA^(2 / 3)",
                .terms = {{"k", kBeamPerLength_factor, "", "usual beam over length to the 2/3"},
                          length_term(boat)},
                .value = kBeamPerLength_factor * std::pow(boat.length_m.value, 2.0 / 3.0),
                .unit = "m",
                .source = kProjectDecision};
  });
  estimate(trace, boat.waterline_length_m, "boat.waterline_length_m", [&] {
    return Step{.label = "Waterline length from length overall",
                .symbol = "L",
                .formula = "r * LOA",
                .terms = {{"r", kWaterlineLength_ratio, "", "usual waterline over overall length"},
                          length_term(boat)},
                .value = kWaterlineLength_ratio * boat.length_m.value,
                .unit = "m",
                .source = kProjectDecision};
  });
  estimate(trace, boat.waterline_beam_m, "boat.waterline_beam_m", [&] {
    return Step{.label = "Waterline beam from beam",
                .symbol = "B",
                .formula = "r * B_H",
                .terms = {{"r", kWaterlineBeam_ratio, "", "usual waterline over overall beam"},
                          beam_term(boat)},
                .value = kWaterlineBeam_ratio * boat.beam_m.value,
                .unit = "m",
                .source = kProjectDecision};
  });
  estimate(trace, boat.draft_m, "boat.draft_m", [&] {
    const double box_kg_per_m = kSeaWater_kg_per_m3 * kBlock_ratio * boat.waterline_length_m.value *
                                boat.waterline_beam_m.value;
    return Step{.label = "Hull draft from loaded weight",
                .symbol = "T",
                .formula = "min(1.5, max(0.1, m / (rho_w * c * L * B)))",
                .terms = {{"m", boat.displacement_kg.value, "kg", "loaded weight"},
                          {"rho_w", kSeaWater_kg_per_m3, "kg/m3", "density of sea water"},
                          {"c", kBlock_ratio, "", "share of the box L B T that the hull fills"},
                          waterline_term(boat),
                          waterline_beam_term(boat)},
                .value = std::clamp(boat.displacement_kg.value / box_kg_per_m, 0.1, 1.5),
                .unit = "m",
                .source = kProjectDecision};
  });
}

// From the drawings, where there are any.
void measure_windage(Boat& boat, Trace& trace) {
  const auto area_step = [](std::string_view label, std::string_view symbol, const Silhouette& view,
                            double least_m2, double most_m2) {
    return Step{
        .label = std::string(label),
        .symbol = symbol,
        .formula = "l * h",
        .terms = {{"l", view.extent_m, "m", "length of what was drawn"},
                  {"h", std::clamp(view.area_m2, least_m2, most_m2) / view.extent_m, "m",
                   "its mean height, holes left out"}},
        .value = std::clamp(view.area_m2, least_m2, most_m2),
        .unit = "m2",
        .source = kDefinition,
        .assumptions = {"Area inside the outline, or the sum of the parts times their fill."}};
  };
  if (boat.front_view.known()) {
    const Silhouette view = read_view(boat.front_view.value).silhouette;
    estimate(trace, boat.frontal_area_m2, "boat.frontal_area_m2",
             [&] { return area_step("Windage from ahead, as drawn", "A_F", view, 0.5, 30.0); });
  }
  if (!boat.side_view.known()) return;
  const Silhouette view = read_view(boat.side_view.value).silhouette;
  estimate(trace, boat.lateral_area_m2, "boat.lateral_area_m2",
           [&] { return area_step("Windage from the side, as drawn", "A_L", view, 1.0, 60.0); });
  estimate(trace, boat.lateral_centroid_m, "boat.lateral_centroid_m", [&] {
    return Step{.label = "Centre of the side windage, as drawn",
                .symbol = "x_a",
                .formula = "min(4, max(-4, x - L / 2))",
                .terms = {{"x", view.centre_m, "m", "centre, forward of the transom"},
                          waterline_term(boat)},
                .value = std::clamp(view.centre_m - 0.5 * boat.waterline_length_m.value, -4.0, 4.0),
                .unit = "m",
                .source = kDefinition,
                .assumptions = {"The waterline begins at the transom."}};
  });
}

void estimate_windage(Boat& boat, Trace& trace) {
  measure_windage(boat, trace);
  const Windage& row = windage(boat.layout.value, boat.canvas.value);
  const Term standing{"n", standing_count(boat), "", "people standing in an open boat"};
  estimate(trace, boat.frontal_area_m2, "boat.frontal_area_m2", [&] {
    return Step{.label = "Windage from ahead, by deck layout",
                .symbol = "A_F",
                .formula = "min(30, r * B_H^2 + n * a)",
                .terms = {{"r", row.frontal_ratio, "", "usual for the layout"},
                          beam_term(boat),
                          standing,
                          {"a", kPersonFront_m2, "m2", "one person from ahead"}},
                .value = std::min(30.0, row.frontal_ratio * boat.beam_m.value * boat.beam_m.value +
                                            standing.value * kPersonFront_m2),
                .unit = "m2",
                .source = kProjectDecision};
  });
  estimate(trace, boat.lateral_area_m2, "boat.lateral_area_m2", [&] {
    return Step{
        .label = "Windage from the side, by deck layout",
        .symbol = "A_L",
        .formula = "min(60, r * LOA * B_H + n * a)",
        .terms = {{"r", row.lateral_ratio, "", "usual for the layout"},
                  length_term(boat),
                  beam_term(boat),
                  standing,
                  {"a", kPersonSide_m2, "m2", "one person from the side"}},
        .value = std::min(60.0, row.lateral_ratio * boat.length_m.value * boat.beam_m.value +
                                    standing.value * kPersonSide_m2),
        .unit = "m2",
        .source = kProjectDecision};
  });
  estimate(trace, boat.lateral_centroid_m, "boat.lateral_centroid_m", [&] {
    return Step{.label = "Centre of the side windage, by deck layout",
                .symbol = "x_a",
                .formula = "r * LOA",
                .terms = {{"r", row.centroid_ratio, "", "usual for the layout"}, length_term(boat)},
                .value = row.centroid_ratio * boat.length_m.value,
                .unit = "m",
                .source = kProjectDecision};
  });
}

void estimate_underwater(Boat& boat, Trace& trace) {
  const double length_m = boat.waterline_length_m.value;
  const double hull_m2 = kUnderwater_ratio * length_m * boat.draft_m.value;
  const double legs_m2 = legs_down_count(boat) * kLegSide_m2;
  const Term legs{"n", legs_down_count(boat), "", "legs that are down"};
  const Term leg_side{"a", kLegSide_m2, "m2", "side area of a leg"};
  const Term fullness{"r", kUnderwater_ratio, "", "usual side area over L T"};
  estimate(trace, boat.underwater_area_m2, "boat.underwater_area_m2", [&] {
    return Step{.label = "Side area under water",
                .symbol = "A_w",
                .formula = "min(20, max(0.4, r * L * T + n * a))",
                .terms = {fullness, waterline_term(boat), draft_term(boat), legs, leg_side},
                .value = std::clamp(hull_m2 + legs_m2, 0.4, 20.0),
                .unit = "m2",
                .source = kProjectDecision};
  });
  estimate(trace, boat.underwater_centroid_m, "boat.underwater_centroid_m", [&] {
    const double hull_m = kUnderwaterCentroid_ratio * length_m;
    const double leg_m = -0.5 * length_m - kLegBehind_m;
    return Step{
        .label = "Centre of the side area under water",
        .symbol = "x_w",
        .formula = "(r * L * T * q * L - n * a * (L / 2 + s)) / (r * L * T + n * a)",
        .terms = {fullness,
                  waterline_term(boat),
                  draft_term(boat),
                  {"q", kUnderwaterCentroid_ratio, "", "centre of the hull's side area over L"},
                  legs,
                  leg_side,
                  {"s", kLegBehind_m, "m", "legs behind the waterline's end"}},
        .value = (hull_m2 * hull_m + legs_m2 * leg_m) / (hull_m2 + legs_m2),
        .unit = "m",
        .source = kProjectDecision};
  });
  estimate(trace, boat.bow_angle_deg, "boat.bow_angle_deg", [&] {
    const double angle_rad =
        std::atan(boat.waterline_beam_m.value / 4.0 / (kBowTaper_ratio * length_m));
    return Step{.label = "Half angle of the waterline at the bow",
                .symbol = "alpha",
                .formula = "min(60, max(8, atan(B / 4 / (r * L)) * 180 / 3.141592653589793))",
                .terms = {waterline_beam_term(boat),
                          {"r", kBowTaper_ratio, "", "stem to a quarter of the beam, over L"},
                          waterline_term(boat)},
                .value = std::clamp(angle_rad * 180.0 / std::numbers::pi, 8.0, 60.0),
                .unit = "deg",
                .source = kProjectDecision};
  });
}

}  // namespace

void estimate_boat(Job& job, Trace& trace) {
  Boat& boat = job.boat;
  estimate_size(boat, trace);
  assume_make_up(boat, trace);
  estimate_waterline(boat, trace);
  estimate_windage(boat, trace);
  estimate_underwater(boat, trace);
}

}  // namespace thole
