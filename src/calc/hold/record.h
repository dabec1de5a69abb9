#pragma once

// What is remembered of a stretch of holding, and what it amounts to.

#include <array>
#include <cstddef>
#include <vector>

namespace thole {

// A moment of it, for drawing. Places are from the spot; `right_m` is to the right of one who faces
// the wind.
struct TrackPoint {
  double time_s = 0.0;  // since the record began
  double upwind_m = 0.0;
  double right_m = 0.0;
  double heading_deg = 0.0;  // of the bow off the wind, clockwise, -180 to 180
  double thrust_N = 0.0;
  double thrust_from_wind_deg = 0.0;  // where it points, as the heading
  double power_W = 0.0;
  double wind_mps = 0.0;
};

// Share of the time that each twentieth of full thrust, or full power, was in use.
inline constexpr std::size_t kHistogramBins = 20;
using Histogram = std::array<double, kHistogramBins>;

struct HoldStatistics {
  // Radii about the spot that the bow stays within for half of the time, for 95 % and for all of
  // it.
  double radius_half_m = 0.0;
  double radius_95_m = 0.0;
  double radius_max_m = 0.0;
  double within_frac = 0.0;  // share of the time within the tolerance

  double thrust_mean_N = 0.0;
  double pull_N =
      0.0;  // length of the mean of thrust as an arrow on the water: what the weather took
  double hunting_ratio = 1.0;       // mean thrust over that pull; 1 is a steady pull
  double steering_deg_per_s = 0.0;  // mean, both ways
  double full_frac = 0.0;           // share of the time that all there is was wanted
  double power_mean_W = 0.0;
  double power_rms_W = 0.0;
  double power_peak_W = 0.0;
  double duty_ratio = 0.0;  // mean of (thrust/full)^1.5
  double current_mean_A = 0.0;
  double energy_per_hour_Wh = 0.0;
  double heading_mean_deg = 0.0;
  double heading_deviation_deg = 0.0;
  double wind_mean_mps = 0.0;
  double wind_deviation_mps = 0.0;

  bool lost = false;
  double lost_at_s = 0.0;  // when it was first further off than counts as lost

  Histogram thrust_share{};
  Histogram power_share{};
};

struct MotorPower {
  double thrust_N = 0.0;  // full
  double power_full_W = 0.0;
  double power_idle_W = 0.0;
  double nominal_V = 0.0;
};

// P_idle + (P_full - P_idle) (T/T_full)^1.5. Source: momentum theory.
double power_at_thrust_W(const MotorPower& motor, double thrust_N);

struct RecordInput {
  MotorPower motor{};
  double tolerance_m = 5.0;
  double lost_m = 20.0;
  double step_s = 0.05;
  std::size_t step_count = 0;
  double track_s = 1.0;  // between points of the track; 0: none is kept
};

struct Moment {
  double x_m = 0.0;  // of the bow, on the water
  double y_m = 0.0;
  double heading_rad = 0.0;  // counter-clockwise
  double thrust_N = 0.0;
  double azimuth_rad = 0.0;  // in the boat
  double wind_mps = 0.0;
  double wind_across_mps = 0.0;
  bool full = false;
};

class Record {
 public:
  explicit Record(const RecordInput& in);
  void add(const Moment& moment);
  // `turned_rad`: what the motor turned in all this time.
  HoldStatistics statistics(double turned_rad) const;
  std::vector<TrackPoint> take_track();

 private:
  // Over all steps, added up.
  struct Sums {
    double thrust_N = 0.0;
    double pull_x_N = 0.0;
    double pull_y_N = 0.0;
    double duty_ratio = 0.0;
    double power_W = 0.0;
    double power_W2 = 0.0;
    double heading_rad = 0.0;  // off the first one
    double heading_rad2 = 0.0;
    double wind_mps = 0.0;  // off the first one
    double wind_m2_per_s2 = 0.0;
  };

  RecordInput in_{};
  std::size_t steps_per_point_ = 0;
  double first_heading_rad_ = 0.0;
  double first_wind_mps_ = 0.0;
  Sums sums_{};
  std::vector<double> squares_m2_{};  // of the distance from the spot, step by step
  std::vector<TrackPoint> track_{};
  std::array<std::size_t, kHistogramBins> thrust_counts_{};
  std::array<std::size_t, kHistogramBins> power_counts_{};
  double power_peak_W_ = 0.0;
  std::size_t full_count_ = 0;
  std::size_t held_count_ = 0;  // steps before it was lost
  bool lost_ = false;
};

}  // namespace thole
