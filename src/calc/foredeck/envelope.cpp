#include "calc/foredeck/envelope.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/units.h"

namespace thole {
namespace {

constexpr double kUnderBlade_m = 0.02;
constexpr int kSpokes = 8;  // diameters of the propeller: 2 % of its radius is left out between them

Place3 operator+(const Place3& p, const Place3& q) {
  return {p.aft_m + q.aft_m, p.starboard_m + q.starboard_m, p.up_m + q.up_m};
}
Place3 operator*(double factor, const Place3& p) {
  return {factor * p.aft_m, factor * p.starboard_m, factor * p.up_m};
}

void add_blades(std::vector<Bar>& bars, const Place3& hub, const Place3& u, const Place3& v, double radius_m) {
  for (int i = 0; i < kSpokes; ++i) {
    const double turn = std::numbers::pi * i / kSpokes;
    const Place3 tip = radius_m * (std::cos(turn) * u + std::sin(turn) * v);
    bars.push_back({"propeller", hub + -1.0 * tip, hub + tip, kBladeRadius_m});
  }
}

}  // namespace

double lying_height_m(const MotorSizes& motor) {
  return std::max(motor.collar_m, 0.5 * motor.propeller_diameter_m + kUnderBlade_m);
}

double stowed_length_m(const MotorSizes& motor) {
  return motor.length_m + kHeadLength_m + std::max(kPodRadius_m, 0.5 * motor.propeller_diameter_m);
}

std::vector<Bar> tilted_motor(const MotorSizes& motor, const Stance& stance, double raised_deg) {
  const double stow = rad_from_deg(stance.stow_angle_deg);
  const double raised = rad_from_deg(raised_deg);
  const Place3 level{std::cos(stow), std::sin(stow), 0.0};          // along the stowed shaft, to its head
  const Place3 across{-std::sin(stow), std::cos(stow), 0.0};        // to starboard of it
  const Place3 along = std::cos(raised) * level + Place3{0.0, 0.0, std::sin(raised)};
  const Place3 over = -std::sin(raised) * level + Place3{0.0, 0.0, std::cos(raised)};
  const Place3 pivot{stance.pivot_aft_m, stance.pivot_starboard_m, lying_height_m(motor)};
  const Place3 axis = pivot + -kPodAhead_m * along;
  const Place3 top = axis + motor.length_m * along;
  std::vector<Bar> bars{{"shaft", axis, top, 0.5 * motor.tube_m},
                        {"head", top + kHeadRadius_m * along, top + (kHeadLength_m - kHeadRadius_m) * along, kHeadRadius_m},
                        {"pod", axis + -0.5 * kPodLength_m * across, axis + 0.5 * kPodLength_m * across, kPodRadius_m}};
  for (const double side : {-1.0, 1.0}) {
    add_blades(bars, axis + side * kPropellerOff_m * across, along, over, 0.5 * motor.propeller_diameter_m);
  }
  return bars;
}

std::vector<Bar> deployed_motor(const MotorSizes& motor, const Stance& stance, double axis_below_m) {
  const Place3 axis{stance.pivot_aft_m, stance.pivot_starboard_m, -axis_below_m};
  const Place3 top = axis + Place3{0.0, 0.0, motor.length_m};
  std::vector<Bar> bars{{"shaft", axis, top, 0.5 * motor.tube_m},
                        {"head", top + Place3{0.0, 0.0, kHeadRadius_m}, top + Place3{0.0, 0.0, kHeadLength_m - kHeadRadius_m},
                         kHeadRadius_m},
                        {"pod", axis + Place3{-0.5 * kPodLength_m, 0.0, 0.0}, axis + Place3{0.5 * kPodLength_m, 0.0, 0.0},
                         kPodRadius_m}};
  add_blades(bars, axis + Place3{kPropellerOff_m, 0.0, 0.0}, {0.0, 1.0, 0.0}, {0.0, 0.0, 1.0}, 0.5 * motor.propeller_diameter_m);
  return bars;
}

}  // namespace thole
