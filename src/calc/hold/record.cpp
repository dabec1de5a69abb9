#include "calc/hold/record.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "base/units.h"

namespace thole {
namespace {

// -180 to 180, and clockwise.
double clockwise_deg(double counter_clockwise_rad) {
  const double angle_deg = -deg_from_rad(counter_clockwise_rad);
  return angle_deg - 360.0 * std::floor(angle_deg / 360.0 + 0.5);
}

double share_frac(double part, double whole) {
  return whole > 0.0 ? std::clamp(part / whole, 0.0, 1.0) : 0.0;
}

std::size_t bin_of(double share) {
  return std::min(kHistogramBins - 1, static_cast<std::size_t>(share * kHistogramBins));
}

Histogram shares(const std::array<std::size_t, kHistogramBins>& counts, std::size_t total) {
  Histogram histogram{};
  for (std::size_t i = 0; i < kHistogramBins; ++i) {
    histogram[i] = static_cast<double>(counts[i]) / static_cast<double>(total);
  }
  return histogram;
}

double deviation(double sum, double sum_of_squares, double count) {
  const double mean = sum / count;
  return std::sqrt(std::max(0.0, sum_of_squares / count - mean * mean));
}

// The value that `share` of the others do not exceed.
double quantile(std::vector<double>& values, double share) {
  const auto last = static_cast<double>(values.size() - 1);
  const auto place = static_cast<std::ptrdiff_t>(std::ceil(share * last));
  std::nth_element(values.begin(), values.begin() + place, values.end());
  return values[static_cast<std::size_t>(place)];
}

double duty_ratio(const MotorPower& motor, double thrust_N) {
  const double share = share_frac(thrust_N, motor.thrust_N);
  return share * std::sqrt(share);
}

}  // namespace

double power_at_thrust_W(const MotorPower& motor, double thrust_N) {
  return motor.power_idle_W +
         (motor.power_full_W - motor.power_idle_W) * duty_ratio(motor, thrust_N);
}

Record::Record(const RecordInput& in) : in_(in) {
  squares_m2_.reserve(in.step_count);
  if (in.track_s > 0.0) {
    steps_per_point_ =
        std::max<std::size_t>(1, static_cast<std::size_t>(std::lround(in.track_s / in.step_s)));
    track_.reserve(in.step_count / steps_per_point_ + 1);
  }
}

void Record::add(const Moment& moment) {
  if (squares_m2_.empty()) {
    first_heading_rad_ = moment.heading_rad;
    first_wind_mps_ = moment.wind_mps;
  }
  const double square_m2 = moment.x_m * moment.x_m + moment.y_m * moment.y_m;
  const double duty = duty_ratio(in_.motor, moment.thrust_N);
  const double power_W =
      in_.motor.power_idle_W + (in_.motor.power_full_W - in_.motor.power_idle_W) * duty;
  const double points_rad = moment.heading_rad + moment.azimuth_rad;
  const double heading_rad = moment.heading_rad - first_heading_rad_;
  const double wind_mps = moment.wind_mps - first_wind_mps_;

  sums_.thrust_N += moment.thrust_N;
  sums_.pull_x_N += moment.thrust_N * std::cos(points_rad);
  sums_.pull_y_N += moment.thrust_N * std::sin(points_rad);
  sums_.duty_ratio += duty;
  sums_.power_W += power_W;
  sums_.power_W2 += power_W * power_W;
  sums_.heading_rad += heading_rad;
  sums_.heading_rad2 += heading_rad * heading_rad;
  sums_.wind_mps += wind_mps;
  sums_.wind_m2_per_s2 += wind_mps * wind_mps;
  power_peak_W_ = std::max(power_peak_W_, power_W);
  ++thrust_counts_[bin_of(share_frac(moment.thrust_N, in_.motor.thrust_N))];
  ++power_counts_[bin_of(share_frac(power_W, in_.motor.power_full_W))];
  if (moment.full) ++full_count_;
  if (square_m2 > in_.lost_m * in_.lost_m) lost_ = true;
  if (!lost_) ++held_count_;
  if (steps_per_point_ > 0 && squares_m2_.size() % steps_per_point_ == 0) {
    track_.push_back({.time_s = static_cast<double>(squares_m2_.size()) * in_.step_s,
                      .upwind_m = moment.x_m,
                      .right_m = -moment.y_m,
                      .heading_deg = clockwise_deg(moment.heading_rad),
                      .thrust_N = moment.thrust_N,
                      .thrust_from_wind_deg = clockwise_deg(points_rad),
                      .power_W = power_W,
                      .wind_mps = std::hypot(moment.wind_mps, moment.wind_across_mps)});
  }
  squares_m2_.push_back(square_m2);
}

HoldStatistics Record::statistics(double turned_rad) const {
  if (squares_m2_.empty()) return {};
  const std::size_t total = squares_m2_.size();
  const auto count = static_cast<double>(total);
  const double tolerance_m2 = in_.tolerance_m * in_.tolerance_m;
  const auto within = std::count_if(squares_m2_.begin(), squares_m2_.end(),
                                    [&](double square_m2) { return square_m2 <= tolerance_m2; });
  std::vector<double> squares_m2 = squares_m2_;
  const double thrust_N = sums_.thrust_N / count;
  const double pull_N = std::hypot(sums_.pull_x_N, sums_.pull_y_N) / count;
  const double power_W = sums_.power_W / count;
  return {.radius_half_m = std::sqrt(quantile(squares_m2, 0.5)),
          .radius_95_m = std::sqrt(quantile(squares_m2, 0.95)),
          .radius_max_m = std::sqrt(*std::max_element(squares_m2.begin(), squares_m2.end())),
          .within_frac = static_cast<double>(within) / count,
          .thrust_mean_N = thrust_N,
          .pull_N = pull_N,
          .hunting_ratio = thrust_N / std::max(pull_N, 1e-3 * in_.motor.thrust_N + 1e-9),
          .steering_deg_per_s = deg_from_rad(turned_rad) / (count * in_.step_s),
          .full_frac = static_cast<double>(full_count_) / count,
          .power_mean_W = power_W,
          .power_rms_W = std::sqrt(sums_.power_W2 / count),
          .power_peak_W = power_peak_W_,
          .duty_ratio = sums_.duty_ratio / count,
          .current_mean_A = in_.motor.nominal_V > 0.0 ? power_W / in_.motor.nominal_V : 0.0,
          .energy_per_hour_Wh = power_W,
          .heading_mean_deg = clockwise_deg(first_heading_rad_ + sums_.heading_rad / count),
          .heading_deviation_deg =
              deg_from_rad(deviation(sums_.heading_rad, sums_.heading_rad2, count)),
          .wind_mean_mps = first_wind_mps_ + sums_.wind_mps / count,
          .wind_deviation_mps = deviation(sums_.wind_mps, sums_.wind_m2_per_s2, count),
          .lost = lost_,
          .lost_at_s = lost_ ? static_cast<double>(held_count_) * in_.step_s : 0.0,
          .thrust_share = shares(thrust_counts_, total),
          .power_share = shares(power_counts_, total)};
}

std::vector<TrackPoint> Record::take_track() { return std::exchange(track_, {}); }

}  // namespace thole
