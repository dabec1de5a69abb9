#include "calc/hold/site.h"

#include <algorithm>
#include <cmath>

#include "base/units.h"
#include "data/windage.h"

namespace thole {
namespace {

constexpr double kMidship_ratio = 0.7;    // project decision: midship section over B T of a V-hull
constexpr double kLowestProfile_m = 1.0;  // the profile of [ISO 19901-1] goes no lower here

}  // namespace

double hull_volume_m3(const HoldInput& in) {
  return in.displacement_kg / water_density_kg_per_m3(in.salt);
}

Prism prism_of(const HoldInput& in) {
  return floating_prism({.volume_m3 = hull_volume_m3(in),
                         .beam_m = in.waterline_beam_m,
                         .length_m = in.waterline_length_m,
                         .deadrise_rad = rad_from_deg(in.deadrise_deg)});
}

double wetted_area_m2(const HoldInput& in) {
  return std::max(prism_of(in).wetted_area_m2,
                  round_hull_wetted_area_m2(in.waterline_length_m, in.draft_m, hull_volume_m3(in)));
}

CurrentParts current_parts_of(const HoldInput& in) {
  return current_parts({.density_kg_per_m3 = water_density_kg_per_m3(in.salt),
                        .viscosity_m2_per_s = water_viscosity_m2_per_s(in.salt),
                        .current_mps = in.current_mps,
                        .waterline_length_m = in.waterline_length_m,
                        .waterline_beam_m = in.waterline_beam_m,
                        .draft_m = in.draft_m,
                        .wetted_area_m2 = wetted_area_m2(in),
                        .leg_count = in.legs_down ? in.leg_count : 0,
                        .leg_propeller_m = in.leg_propeller_m,
                        .propellers_free = in.propellers_free});
}

double deep_cross_flow_of(const HoldInput& in) {
  return deep_cross_flow_factor(
      {.waterline_length_m = in.waterline_length_m,
       .waterline_beam_m = in.waterline_beam_m,
       .midship_area_m2 = kMidship_ratio * in.waterline_beam_m * in.draft_m,
       .volume_m3 = hull_volume_m3(in)});
}

double cross_flow_of(const HoldInput& in) {
  return std::max(kCurrentSway_factor,
                  cross_flow_factor(deep_cross_flow_of(in), in.draft_m / in.depth_m));
}

double frontal_area_m2(const HoldInput& in) {
  return in.frontal_area_m2 + in.standing_forward_count * kPersonFront_m2;
}

double lateral_area_m2(const HoldInput& in) {
  return in.lateral_area_m2 + in.standing_forward_count * kPersonSide_m2;
}

double lateral_centroid_m(const HoldInput& in) {
  if (in.standing_forward_count <= 0) return in.lateral_centroid_m;
  const double people_m2 = in.standing_forward_count * kPersonSide_m2;
  return (in.lateral_area_m2 * in.lateral_centroid_m +
          people_m2 * kForwardPlace_ratio * in.waterline_length_m) /
         lateral_area_m2(in);
}

double current_surge_area_m2(const HoldInput& in) {
  const double ship_m2 = kCurrentSurge_factor * in.waterline_beam_m * in.draft_m;
  return in.drag_factor * std::max(ship_m2, current_parts_of(in).area_m2);
}

HeldHull held_hull(const HoldInput& in) {
  return {.wind = {.frontal_area_m2 = in.windage_factor * frontal_area_m2(in),
                   .lateral_area_m2 = in.windage_factor * lateral_area_m2(in),
                   .lateral_centroid_m = lateral_centroid_m(in),
                   .waterline_length_m = in.waterline_length_m},
          .current = {.surge_area_m2 = current_surge_area_m2(in),
                      .underwater_area_m2 = in.underwater_area_m2,
                      .underwater_centroid_m = in.underwater_centroid_m,
                      .waterline_length_m = in.waterline_length_m,
                      .sway_factor = in.drag_factor * cross_flow_of(in)},
          .wave = {.waterline_beam_m = in.waterline_beam_m,
                   .waterline_length_m = in.waterline_length_m,
                   .underwater_length_m = in.waterline_length_m,
                   .bow_angle_rad = in.bow_angle_rad},
          .thruster_forward_m = in.thruster_forward_m,
          .air_density_kg_per_m3 = air_density_kg_per_m3(in.air_C),
          .water_density_kg_per_m3 = water_density_kg_per_m3(in.salt)};
}

HeldHull likely_hull(const HoldInput& in) {
  HeldHull hull = held_hull(in);
  hull.wind.law = WindLaw::blendermann;
  hull.wind.length_m = in.length_m;
  hull.wind.kind = in.flat_front ? kFishingVesselWind : kSpeedBoatWind;
  return hull;
}

Sea given_sea(const HoldInput& in) {
  const Sea raised = spm_sea(in.wind_mps, in.fetch_m, in.depth_m);
  const double period_s = in.wave_period_s.value_or(0.0);
  if (!in.wave_height_m) {
    return {.height_m = raised.height_m, .period_s = period_s > 0.0 ? period_s : raised.period_s};
  }
  return {.height_m = *in.wave_height_m,
          .period_s = period_s > 0.0 ? period_s : steep_period_s(*in.wave_height_m)};
}

SeaByWind::SeaByWind(const HoldInput& in)
    : fetch_m_(in.fetch_m), depth_m_(in.depth_m), given_(given_sea(in)) {
  const Sea raised = spm_sea(in.wind_mps, fetch_m_, depth_m_);
  height_ratio_ = std::min(1.0, given_.height_m / raised.height_m);
  period_ratio_ = std::clamp(given_.period_s / raised.period_s, 0.5, 2.0);
  swell_m2_ = std::max(0.0, given_.height_m * given_.height_m - raised.height_m * raised.height_m);
}

Sea SeaByWind::at(double wind_mps) const {
  const Sea raised = spm_sea(wind_mps, fetch_m_, depth_m_);
  const double height_m = height_ratio_ * raised.height_m;
  const double period_s = period_ratio_ * raised.period_s;
  const double square_m2 = height_m * height_m + swell_m2_;
  if (!(square_m2 > 0.0)) return {.height_m = 0.0, .period_s = period_s};
  return {.height_m = std::sqrt(square_m2),
          .period_s = (height_m * height_m * period_s + swell_m2_ * given_.period_s) / square_m2};
}

double profile_height_m(const HoldInput& in) {
  return std::max(kLowestProfile_m, lateral_area_m2(in) / in.length_m);
}

double wind_on_boat_mps(const HoldInput& in, double wind_mps) {
  if (!in.wind_at_boat_height) return wind_mps;
  return wind_mps * wind_profile_ratio(wind_mps, profile_height_m(in));
}

Weather Site::weather(double wind_mps, const Sea& waves, double current_from_rad) const {
  return {.wind_mps = wind_on_boat_mps(in, wind_mps),
          .sea = waves,
          .current_mps = in.current_mps,
          .current_from_rad = current_from_rad};
}

Weather Site::given_weather(double current_from_rad) const {
  return weather(in.wind_mps, sea.given(), current_from_rad);
}

Weather Site::weather_in(double wind_mps, double current_from_rad) const {
  return weather(wind_mps, sea.at(wind_mps), current_from_rad);
}

double head_on_N(const Site& site, const Weather& weather) {
  Weather aligned = weather;
  aligned.current_from_rad = 0.0;
  return std::abs(loads_at(site.hull, aligned, 0.0).total.surge_N);
}

Disc disc_of(const HoldInput& in, const MotorClass& motor) {
  return {.diameter_m = motor.propeller_diameter_m,
          .density_kg_per_m3 = water_density_kg_per_m3(in.salt)};
}

double thrust_in_current_of(const HoldInput& in, const MotorClass& motor) {
  if (!(motor.propeller_diameter_m > 0.0)) return motor.thrust_N;
  return thrust_in_current_N(disc_of(in, motor), motor.thrust_N, in.current_mps);
}

double effective_thrust_N(const HoldInput& in, const MotorClass& motor) {
  return thrust_in_current_of(in, motor) * kMisc_factor * kRace_factor * in.immersion_factor *
         in.sag_factor;
}

}  // namespace thole
