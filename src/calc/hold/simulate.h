#pragma once

// Will it stay there, how still, and at what cost: an hour of holding, moment by moment.

#include <cstdint>
#include <memory>
#include <utility>
#include <vector>

#include "base/issue.h"
#include "base/trace.h"
#include "calc/hold/controller.h"
#include "calc/hold/gust.h"
#include "calc/hold/hold.h"
#include "calc/hold/manoeuvre.h"
#include "calc/hold/record.h"
#include "data/sea.h"

namespace thole {

struct HoldRunInput {
  // The boat and its motor.
  HeldHull hull{};
  double displacement_kg = 0.0;  // > 0
  double length_m = 0.0;         // > 0
  MotorModel motor{};
  MotorPower power{};  // its thrust is that of `motor`

  // The weather. The gusts' mean acts for as long as the record lasts.
  double wind_mps = 0.0;  // mean, as it acts on the boat
  GustShape gust{};
  Sea sea{};
  double current_mps = 0.0;
  double current_from_rad = 0.0;  // clockwise, off where the wind comes from

  SensorModel sensors{};
  HoldLaw law{};

  // Where the bow is at first, from the spot, and how the boat lies.
  double start_upwind_m = 0.0;
  double start_right_m = 0.0;
  double start_heading_rad = 0.0;  // clockwise, off the wind
  bool adrift = false;             // the motor is not used at all

  double record_h = 1.0;    // 0.01 to 24, after the time to settle
  double settle_s = 300.0;  // 0 to 3600; not recorded
  double step_s = 0.05;     // 0.01 to 0.1
  double track_s = 1.0;     // between points of the track; 0: none is kept
  double tolerance_m = 5.0;
  double tolerance_frac = 0.95;  // share of the time that the bow is to be within the tolerance
  std::uint64_t seed = 1;
};

struct HoldRun {
  HoldStatistics statistics{};
  std::vector<TrackPoint> track{};
  Inertia mass{};
  HoldGains gains{};
  double lost_m = 0.0;  // further off than this counts as lost: three boat lengths
  // Work of the loads in the record, and what became of it; J of motion through the water.
  Manoeuvre::Work work{};
  double energy_gain_J = 0.0;
  Issues issues{};  // errors: the input was refused, and nothing was run
  Trace trace{};
};

// Holds the bow over the spot by the law of controller.h, in gusts made from a published spectrum,
// a sea in groups (Newman 1974), and one current, on the equations of manoeuvre.h. The same input
// and seed give the same bits on one platform, and statistics alike to 1e-6 on all.
//
// Steps are fixed at a twentieth of a second: the law and the motor change their minds at sampled
// moments, at which an adaptive solver would have to stop anyway, and between them nothing in the
// boat is faster than half a second, which a fourth-order step resolves to 1e-7. Where drag is
// stiffer than that the step is divided, by a number fixed before the run. tests/reference holds it
// against an adaptive solver.
//
// Range: watch circles within 30 % of other honest programs. Left out: loss of thrust near the
// surface and in yaw beyond what the effective thrust has, breaking seas, swell from elsewhere.
// A boat without weight or size is refused in `issues`; weather stronger than the motor is not, and
// the record says when the spot was lost.
HoldRun simulate_hold(const HoldRunInput& in);

// simulate_hold() in slices, for a page that shows how far it is.
class HoldSimulation {
 public:
  explicit HoldSimulation(const HoldRunInput& in);
  ~HoldSimulation();
  HoldSimulation(HoldSimulation&&) noexcept;
  HoldSimulation& operator=(HoldSimulation&&) noexcept;

  // So many steps further; false when it is over, and take() what simulate_hold() gives.
  bool advance(long step_count);
  double done_frac() const;
  HoldRun take() { return std::move(result_); }

 private:
  struct Engine;
  HoldRun result_{};
  std::unique_ptr<Engine> engine_{};
};

// The run that the hold stage's own question amounts to, in the motor and on the heading that it
// answered with. `gusty`: land close to windward, where gusts are twice as strong.
HoldRunInput run_input(const HoldInput& in, const HoldResult& held, bool gusty);

// Least thrust with which the bow stays within the tolerance for its share of the time, over the
// mean load; by halving, over the records of three seeds.
struct RequiredMargin {
  bool found = false;  // false: receiver and gusts spoil it at four times the mean load
  double thrust_N = 0.0;
  double margin_factor = 0.0;
  double within_frac = 0.0;  // share of the time within the tolerance at that thrust
};
RequiredMargin required_margin(const HoldRunInput& in, double mean_load_N);

// required_margin() in slices.
class MarginSearch {
 public:
  MarginSearch(const HoldRunInput& in, double mean_load_N);
  // So many steps further; false when it is over, and result() what required_margin() gives.
  bool advance(long step_count);
  double done_frac() const;
  const RequiredMargin& result() const { return result_; }

 private:
  void begin_run();
  bool conclude_trial();

  HoldRunInput in_{};
  double load_N_ = 1.0;
  double low_factor_ = 0.0;
  double high_factor_ = 0.0;
  double tried_factor_ = 0.0;
  int run_count_ = 0;     // with the thrust that is tried
  int runs_done_ = 0;     // in all
  double within_frac_ = 0.0;  // of them, added up
  HoldSimulation run_;
  RequiredMargin result_{};
};

}  // namespace thole
