#pragma once

// What steers the motor: a satellite receiver and a compass that err, and a law that pulls the bow
// back to the spot. On the water x is to where the wind comes from and y to the left of that.

#include "calc/hold/manoeuvre.h"
#include "calc/hold/random.h"

namespace thole {

// --- sensors
// ----------------------------------------------------------------------------------

// Errors of a common receiver and compass. Project decision, within the ranges of the handbook;
// satellite errors: SBAS 0.3 to 0.7 m, plain receivers 1.5 to 3.3 m on each axis.
struct SensorModel {
  double drift_m = 0.7;   // standard deviation on each axis of the part that wanders
  double drift_s = 90.0;  // in which it forgets
  double jitter_m = 0.1;  // standard deviation of the part that is new with each fix
  double fix_Hz = 10.0;
  double position_lag_s = 1.0;  // of the filter on positions
  double speed_lag_s = 1.5;     // of the filter on speeds made from them
  double wave_ratio = 0.6;      // to and fro of the bow over the height of the surface
  double heading_bias_deg = 2.0;
  double heading_jitter_deg = 1.0;
  double heading_lag_s = 0.3;
};

// What the law is told of the bow.
struct Sensed {
  double x_m = 0.0;
  double y_m = 0.0;
  double x_mps = 0.0;
  double y_mps = 0.0;
  double heading_rad = 0.0;
};

struct BowTruth {
  double x_m = 0.0;
  double y_m = 0.0;
  double heading_rad = 0.0;
};

class Sensors {
 public:
  Sensors(const SensorModel& model, double step_s, std::uint64_t seed, const BowTruth& start);

  // One step further. `surface_m`: the waves at the boat, of which the receiver takes part.
  const Sensed& sense(const BowTruth& truth, double surface_m);

  // True when the next sense() takes a fix, and so asks for the surface.
  bool fix_due() const { return steps_to_fix_ == 0; }

 private:
  void take_fix(const BowTruth& truth, double surface_m);

  SensorModel model_{};
  Normal chance_;
  int steps_per_fix_ = 1;
  int steps_to_fix_ = 0;
  double keep_ratio_ = 0.0;            // of the wandering error from fix to fix
  double stray_m_ = 0.0;               // what it gains in between
  double position_share_ratio_ = 1.0;  // of the way to a new value that a filter goes in a step
  double speed_share_ratio_ = 1.0;
  double heading_share_ratio_ = 1.0;
  double wander_x_m_ = 0.0;
  double wander_y_m_ = 0.0;
  double fix_x_m_ = 0.0;
  double fix_y_m_ = 0.0;
  double fix_heading_rad_ = 0.0;
  Sensed sensed_{};
};

// --- the law
// ----------------------------------------------------------------------------------

// How briskly it pulls back. Bandwidths of 0.1 to 0.2 rad/s suit boats of 5 to 13 m: above, the
// motor chases the receiver's errors; below, gusts carry the bow off.
struct HoldLaw {
  double bandwidth_rad_per_s = 0.15;
  double damping_ratio = 0.8;
  double dead_zone_m = 0.0;  // nearer than this is near enough
};

// Gains made from the boat: masses at the bow times bandwidth squared, and so on. Ahead the bow
// weighs what the boat does, sideways a third of that; one gain for both would be three times too
// stiff sideways. Source: pole placement, Fossen 2021, Algorithm 15.2.
struct HoldGains {
  double ahead_N_per_m = 0.0;  // m11 w^2
  double across_N_per_m = 0.0;
  double ahead_N_per_mps = 0.0;  // 2 z w m11
  double across_N_per_mps = 0.0;
  double patience_N_per_m_per_s = 0.0;  // m11 w^3/10, alike in all directions so that turning the
                                        // boat leaves what was learned of wind and current right
};
HoldGains hold_gains(const Inertia& mass, double thruster_forward_m, const HoldLaw& law);

struct Command {
  double thrust_N = 0.0;     // no more than there is
  double azimuth_rad = 0.0;  // in the boat, as the compass has it
  bool full = false;         // more was wanted than there is
};

// F = -K_P e - K_D v - R^T S with e and v in the boat and S the sum of K_I e over time on the
// water; the sum rests while more is wanted than there is.
class PositionHold {
 public:
  PositionHold(const HoldGains& gains, double dead_zone_m, double thrust_N)
      : gains_(gains), dead_zone_m_(dead_zone_m), thrust_N_(thrust_N) {}

  Command command(const Sensed& sensed, double step_s);

 private:
  HoldGains gains_{};
  double dead_zone_m_ = 0.0;
  double thrust_N_ = 0.0;
  double learned_x_N_ = 0.0;
  double learned_y_N_ = 0.0;
};

// --- the motor
// --------------------------------------------------------------------------------

struct MotorModel {
  double thrust_N = 0.0;             // that reaches the boat, at most
  double lag_s = 0.4;                // to 63 % of a new thrust
  double steering_deg_per_s = 60.0;  // fastest
};

// Where the thrust stands at the start, middle and end of a step.
struct Push {
  double thrust_N = 0.0;
  double azimuth_rad = 0.0;
};
struct PushStep {
  Push start{};
  Push middle{};
  Push end{};
};

// Turns no faster than it can, and pushes only as far as it points the right way: by the cosine of
// what is missing, nothing beyond a right angle. Thrust follows with a lag of first order.
class Thruster {
 public:
  Thruster(const MotorModel& motor, double step_s);
  PushStep step(const Command& command);
  double turned_rad() const { return turned_rad_; }  // since the start, both ways added

 private:
  double most_rad_ = 0.0;  // in a step
  double half_keep_ratio_ = 0.0;
  Push now_{};
  double turned_rad_ = 0.0;
};

}  // namespace thole
