#include "calc/hold/loads.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

#include "base/units.h"

namespace thole {
namespace {

using std::numbers::pi;

// Off the bow to either side, 0 to pi: [2.8.2] uses it in levers and in h1 and h2 only.
double folded(double from_rad) {
  return std::abs(from_rad - 2.0 * pi * std::floor(from_rad / (2.0 * pi) + 0.5));
}

SideAreas side(double sway_m2, double lever_m) {
  return {.sway_m2 = sway_m2, .yaw_m3 = sway_m2 * lever_m};
}

DragAreas blendermann(const WindShape& shape, double from_rad) {
  const WindKind& kind = shape.kind;
  const double dir_rad = folded(from_rad);
  const double end_m2 =
      (dir_rad <= pi / 2.0 ? kind.bow_factor : kind.stern_factor) * shape.frontal_area_m2;
  const double side_m2 = kind.side_factor * shape.lateral_area_m2;
  const double twice_sin = std::sin(2.0 * from_rad);
  const double divisor = 1.0 - 0.5 * kind.quarter_factor *
                                   (1.0 - end_m2 / std::max(1e-9, side_m2)) * twice_sin * twice_sin;
  const double lever_m = shape.lateral_centroid_m - 0.18 * (dir_rad - pi / 2.0) * shape.length_m;
  return {.surge_m2 = -end_m2 * std::cos(from_rad) / divisor,
          .side = side(side_m2 * std::sin(from_rad) / divisor, lever_m)};
}

struct SectionDrag {
  double ratio = 0.0;
  double drag_factor = 0.0;
};
constexpr std::array kSectionDrag{
    SectionDrag{0.011, 1.966}, SectionDrag{0.177, 1.966}, SectionDrag{0.353, 1.898},
    SectionDrag{0.452, 1.787}, SectionDrag{0.473, 1.584}, SectionDrag{0.493, 1.279},
    SectionDrag{0.558, 1.084}, SectionDrag{0.646, 0.999}, SectionDrag{0.834, 0.880},
    SectionDrag{0.988, 0.828}, SectionDrag{1.308, 0.760}, SectionDrag{1.639, 0.691},
    SectionDrag{1.860, 0.657}, SectionDrag{2.313, 0.631}, SectionDrag{2.600, 0.596},
    SectionDrag{3.009, 0.587}, SectionDrag{3.451, 0.586}, SectionDrag{3.738, 0.560},
    SectionDrag{4.000, 0.559}};

}  // namespace

double air_density_kg_per_m3(double air_C) { return 101325.0 / (287.05 * (air_C + 273.15)); }

double water_density_kg_per_m3(bool salt) { return salt ? 1026.0 : 1000.0; }

double water_viscosity_m2_per_s(bool salt) { return salt ? 1.188e-6 : 1.139e-6; }

double dynamic_pressure_Pa(double density_kg_per_m3, double speed_mps) {
  return 0.5 * density_kg_per_m3 * speed_mps * speed_mps;
}

double wind_profile_ratio(double wind_mps, double height_m) {
  return 1.0 + 0.0573 * std::sqrt(1.0 + 0.15 * wind_mps) * std::log(height_m / 10.0);
}

double gust_ratio(double wind_mps, double height_m, double averaging_s) {
  const double intensity_frac = 0.06 * (1.0 + 0.043 * wind_mps) * std::pow(height_m / 10.0, -0.22);
  return 1.0 - 0.41 * intensity_frac * std::log(averaging_s / 3600.0);
}

double drift_frac(double drag_ratio) {
  const double odds = std::sqrt(drag_ratio);
  return odds / (1.0 + odds);
}

SideAreas wind_side(const WindShape& shape, double from_rad) {
  if (shape.law == WindLaw::blendermann) return blendermann(shape, from_rad).side;
  const double lever_m = shape.lateral_centroid_m +
                         0.3 * (1.0 - 2.0 * folded(from_rad) / pi) * shape.waterline_length_m;
  return side(kWindSway_factor * shape.lateral_area_m2 * std::sin(from_rad), lever_m);
}

DragAreas wind_areas(const WindShape& shape, double from_rad) {
  if (shape.law == WindLaw::blendermann) return blendermann(shape, from_rad);
  return {.surge_m2 = -kWindSurge_factor * shape.frontal_area_m2 * std::cos(from_rad),
          .side = wind_side(shape, from_rad)};
}

SideAreas current_side(const CurrentShape& shape, double from_rad) {
  const double lever_m =
      shape.underwater_centroid_m +
      std::clamp(0.4 * (1.0 - 2.0 * folded(from_rad) / pi), -0.2, 0.25) * shape.waterline_length_m;
  return side(shape.sway_factor * shape.underwater_area_m2 * std::sin(from_rad), lever_m);
}

DragAreas current_areas(const CurrentShape& shape, double from_rad) {
  return {.surge_m2 = -shape.surge_area_m2 * std::cos(from_rad),
          .side = current_side(shape, from_rad)};
}

double cross_flow_factor(double deep_water_factor, double draft_to_depth_ratio) {
  const double shallow_ratio = std::clamp(draft_to_depth_ratio, 0.0, 1.0);
  return deep_water_factor + (3.2 - deep_water_factor) * shallow_ratio * shallow_ratio;
}

double deep_cross_flow_factor(const DeepCrossFlowInput& in) {
  return 0.22 * std::sqrt(in.waterline_length_m * in.waterline_length_m * in.midship_area_m2 /
                          (in.waterline_beam_m * in.volume_m3));
}

double section_cross_flow_factor(double beam_to_twice_draft_ratio) {
  const double ratio = beam_to_twice_draft_ratio;
  if (!(ratio > kSectionDrag.front().ratio)) return kSectionDrag.front().drag_factor;
  for (std::size_t i = 1; i < kSectionDrag.size(); ++i) {
    const SectionDrag& a = kSectionDrag[i - 1];
    const SectionDrag& b = kSectionDrag[i];
    if (ratio > b.ratio) continue;
    return a.drag_factor +
           (b.drag_factor - a.drag_factor) * (ratio - a.ratio) / (b.ratio - a.ratio);
  }
  return kSectionDrag.back().drag_factor;
}

double friction_factor(double reynolds_count) {
  const double logarithm = std::log10(std::max(1e4, reynolds_count)) - 2.0;
  return 0.075 / (logarithm * logarithm);
}

Prism floating_prism(const PrismInput& in) {
  const double section_m2 = in.volume_m3 / in.length_m;
  const double chine_draft_m = 0.5 * in.beam_m * std::tan(in.deadrise_rad);
  const double chine_section_m2 = 0.5 * in.beam_m * chine_draft_m;
  if (section_m2 > chine_section_m2) {
    const double side_m = (section_m2 - chine_section_m2) / in.beam_m;
    return {.draft_m = chine_draft_m + side_m,
            .wetted_area_m2 = in.length_m * (in.beam_m / std::cos(in.deadrise_rad) + 2.0 * side_m),
            .chine_wet = true};
  }
  const double draft_m = std::sqrt(section_m2 * std::tan(in.deadrise_rad));
  return {.draft_m = draft_m,
          .wetted_area_m2 = 2.0 * in.length_m * draft_m / std::sin(in.deadrise_rad),
          .chine_wet = false};
}

double round_hull_wetted_area_m2(double waterline_length_m, double draft_m, double volume_m3) {
  return 1.7 * waterline_length_m * draft_m + volume_m3 / draft_m;
}

double taylor_wetted_area_m2(double waterline_length_m, double volume_m3) {
  return 2.6 * std::sqrt(volume_m3 * waterline_length_m);
}

CurrentParts current_parts(const CurrentPartsInput& in) {
  const double reynolds_count = in.current_mps * in.waterline_length_m / in.viscosity_m2_per_s;
  const double form_m2 = kForm_factor * in.waterline_beam_m * in.draft_m;
  const double friction_m2 =
      in.wetted_area_m2 * (friction_factor(reynolds_count) + kRoughness_factor);
  const double leg_m2 = in.leg_count * kLegDrag_factor * kLegThickness_m * kLegDepth_m;
  const double turning_factor = in.propellers_free ? kFreePropeller_factor : 1.0;
  const double propeller_m2 = turning_factor * in.leg_count * kBladeArea_ratio * pi / 4.0 *
                              in.leg_propeller_m * in.leg_propeller_m;
  const double pressure_Pa = dynamic_pressure_Pa(in.density_kg_per_m3, in.current_mps);
  const double area_m2 = form_m2 + friction_m2 + leg_m2 + propeller_m2;
  return {.reynolds_count = reynolds_count,
          .form_N = pressure_Pa * form_m2,
          .friction_N = pressure_Pa * friction_m2,
          .leg_N = pressure_Pa * leg_m2,
          .propeller_N = pressure_Pa * propeller_m2,
          .total_N = pressure_Pa * area_m2,
          .area_m2 = area_m2};
}

SideAreas wave_side(const WaveShape& shape, double from_rad) {
  const double lever_m =
      shape.underwater_middle_m + (0.05 - 0.14 * folded(from_rad) / pi) * shape.underwater_length_m;
  return side(shape.underwater_length_m * kWaveDrift_factor * std::sin(from_rad), lever_m);
}

DragAreas wave_areas(const WaveShape& shape, double from_rad) {
  const double dir_rad = folded(from_rad);
  const double fullness_ratio = std::clamp(shape.aft_waterplane_ratio, 0.85, 1.15);
  const double bow_factor = wave_bow_factor(shape.bow_angle_rad);
  const double stern_factor = 0.7 * fullness_ratio * fullness_ratio;
  const double end_factor = bow_factor + dir_rad / pi * (stern_factor - bow_factor);
  return {.surge_m2 = shape.waterline_beam_m * kWaveDrift_factor * end_factor *
                      wave_heading_factor(dir_rad),
          .side = wave_side(shape, from_rad)};
}

double wave_pressure_Pa(double density_kg_per_m3, double height_m) {
  return 0.5 * density_kg_per_m3 * kGravity_mps2 * height_m * height_m;
}

double full_reflection_N_per_m(double density_kg_per_m3, double height_m) {
  return density_kg_per_m3 * kGravity_mps2 * height_m * height_m / 16.0;
}

double wave_bow_factor(double bow_angle_rad) { return 0.8 * std::pow(bow_angle_rad, 0.45); }

double wave_heading_factor(double from_rad) {
  return 0.05 + 0.95 * std::atan(1.45 * (folded(from_rad) - 1.75));
}

double wave_period_factor(double period_ratio) {
  if (period_ratio < 1.0) return 1.0;
  const double cube = 1.0 / (period_ratio * period_ratio * period_ratio);
  return cube * std::exp(1.0 - cube);
}

double surge_period_ratio(double peak_period_s, double waterline_length_m) {
  return peak_period_s / kPeakToZeroCrossing_ratio / (0.9 * std::pow(waterline_length_m, 0.33));
}

double sway_period_ratio(double peak_period_s, double waterline_beam_m) {
  return peak_period_s / kPeakToZeroCrossing_ratio / (0.75 * std::sqrt(waterline_beam_m));
}

}  // namespace thole
