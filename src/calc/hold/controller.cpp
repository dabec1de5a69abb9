#include "calc/hold/controller.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/units.h"

namespace thole {
namespace {

constexpr double kTurn_rad = 2.0 * std::numbers::pi;
constexpr double kLeast_N = 0.5;  // below this the motor keeps pointing where it does

double within_half_turn(double angle_rad) {
  return angle_rad - kTurn_rad * std::floor(angle_rad / kTurn_rad + 0.5);
}

// Share of the way to a new value that a first-order lag goes in a step.
double share_of_way(double step_s, double lag_s) {
  return lag_s > 0.0 ? 1.0 - std::exp(-step_s / lag_s) : 1.0;
}

}  // namespace

Sensors::Sensors(const SensorModel& model, double step_s, std::uint64_t seed, const BowTruth& start)
    : model_(model),
      chance_(Pcg32(seed, 11)),
      steps_per_fix_(std::max(1, static_cast<int>(std::lround(1.0 / (model.fix_Hz * step_s))))),
      keep_ratio_(model.drift_s > 0.0 ? std::exp(-steps_per_fix_ * step_s / model.drift_s) : 0.0),
      stray_m_(model.drift_m * std::sqrt(1.0 - keep_ratio_ * keep_ratio_)),
      position_share_ratio_(share_of_way(step_s, model.position_lag_s)),
      speed_share_ratio_(share_of_way(step_s, model.speed_lag_s)),
      heading_share_ratio_(share_of_way(step_s, model.heading_lag_s)) {
  wander_x_m_ = model.drift_m * chance_.next();
  wander_y_m_ = model.drift_m * chance_.next();
  sensed_ = {.x_m = start.x_m + wander_x_m_,
             .y_m = start.y_m + wander_y_m_,
             .heading_rad = start.heading_rad + rad_from_deg(model.heading_bias_deg)};
}

void Sensors::take_fix(const BowTruth& truth, double surface_m) {
  wander_x_m_ = keep_ratio_ * wander_x_m_ + stray_m_ * chance_.next();
  wander_y_m_ = keep_ratio_ * wander_y_m_ + stray_m_ * chance_.next();
  fix_x_m_ =
      truth.x_m + wander_x_m_ + model_.jitter_m * chance_.next() + model_.wave_ratio * surface_m;
  fix_y_m_ = truth.y_m + wander_y_m_ + model_.jitter_m * chance_.next();
  fix_heading_rad_ = truth.heading_rad + rad_from_deg(model_.heading_bias_deg +
                                                      model_.heading_jitter_deg * chance_.next());
}

const Sensed& Sensors::sense(const BowTruth& truth, double surface_m) {
  if (steps_to_fix_ == 0) {
    take_fix(truth, surface_m);
    steps_to_fix_ = steps_per_fix_;
  }
  --steps_to_fix_;
  const double off_x_m = fix_x_m_ - sensed_.x_m;
  const double off_y_m = fix_y_m_ - sensed_.y_m;
  sensed_.x_m += position_share_ratio_ * off_x_m;
  sensed_.y_m += position_share_ratio_ * off_y_m;
  // A filter of first order moves at its distance from the new value over its lag.
  const double lag_s = std::max(0.05, model_.position_lag_s);
  sensed_.x_mps += speed_share_ratio_ * (off_x_m / lag_s - sensed_.x_mps);
  sensed_.y_mps += speed_share_ratio_ * (off_y_m / lag_s - sensed_.y_mps);
  sensed_.heading_rad += heading_share_ratio_ * (fix_heading_rad_ - sensed_.heading_rad);
  return sensed_;
}

HoldGains hold_gains(const Inertia& mass, double thruster_forward_m, const HoldLaw& law) {
  const double w = law.bandwidth_rad_per_s;
  const double across_kg = bow_mass_kg(mass, thruster_forward_m);
  return {.ahead_N_per_m = mass.surge_kg * w * w,
          .across_N_per_m = across_kg * w * w,
          .ahead_N_per_mps = 2.0 * law.damping_ratio * w * mass.surge_kg,
          .across_N_per_mps = 2.0 * law.damping_ratio * w * across_kg,
          .patience_N_per_m_per_s = mass.surge_kg * w * w * w / 10.0};
}

Command PositionHold::command(const Sensed& sensed, double step_s) {
  const double off_m = std::sqrt(sensed.x_m * sensed.x_m + sensed.y_m * sensed.y_m);
  const double counts = off_m > dead_zone_m_ ? (off_m - dead_zone_m_) / off_m : 0.0;
  const double x_m = counts * sensed.x_m;
  const double y_m = counts * sensed.y_m;
  const double cosine = std::cos(sensed.heading_rad);
  const double sine = std::sin(sensed.heading_rad);
  const auto ahead = [&](double x, double y) { return cosine * x + sine * y; };
  const auto across = [&](double x, double y) { return cosine * y - sine * x; };
  const double ahead_N = -gains_.ahead_N_per_m * ahead(x_m, y_m) -
                         gains_.ahead_N_per_mps * ahead(sensed.x_mps, sensed.y_mps) -
                         ahead(learned_x_N_, learned_y_N_);
  const double across_N = -gains_.across_N_per_m * across(x_m, y_m) -
                          gains_.across_N_per_mps * across(sensed.x_mps, sensed.y_mps) -
                          across(learned_x_N_, learned_y_N_);
  const double wanted_N = std::sqrt(ahead_N * ahead_N + across_N * across_N);
  const bool full = wanted_N >= thrust_N_;
  if (!full) {
    learned_x_N_ += gains_.patience_N_per_m_per_s * x_m * step_s;
    learned_y_N_ += gains_.patience_N_per_m_per_s * y_m * step_s;
  }
  return {.thrust_N = std::min(wanted_N, thrust_N_),
          .azimuth_rad = std::atan2(across_N, ahead_N),
          .full = full};
}

Thruster::Thruster(const MotorModel& motor, double step_s)
    : most_rad_(rad_from_deg(motor.steering_deg_per_s) * step_s),
      half_keep_ratio_(1.0 - share_of_way(0.5 * step_s, motor.lag_s)) {}

PushStep Thruster::step(const Command& command) {
  const double missing_rad =
      command.thrust_N < kLeast_N ? 0.0 : within_half_turn(command.azimuth_rad - now_.azimuth_rad);
  const double turn_rad = std::clamp(missing_rad, -most_rad_, most_rad_);
  const double target_N = command.thrust_N * std::max(0.0, std::cos(missing_rad));
  const auto nearer = [&](double thrust_N) {
    return target_N + half_keep_ratio_ * (thrust_N - target_N);
  };
  PushStep push{.start = now_};
  push.middle = {.thrust_N = nearer(now_.thrust_N),
                 .azimuth_rad = now_.azimuth_rad + 0.5 * turn_rad};
  push.end = {.thrust_N = nearer(push.middle.thrust_N),
              .azimuth_rad = within_half_turn(now_.azimuth_rad + turn_rad)};
  now_ = push.end;
  turned_rad_ += std::abs(turn_rad);
  return push;
}

}  // namespace thole
