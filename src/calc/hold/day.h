#pragma once

// What a day takes from the bank: how long at which thrust, at which power and current. The mean is
// for endurance, the peak for sag and trips, the root mean square of the current for heat.

#include <span>
#include <string>
#include <vector>

#include "base/trace.h"
#include "calc/hold/hold.h"
#include "data/day_plan.h"
#include "data/parts.h"

namespace thole {

// A share of the time at a share of full thrust.
struct Duty {
  double thrust_frac = 0.0;
  double time_frac = 0.0;
};

// How the thrust is spread over the time while a boat is held whose mean load is `load_frac` of the
// full effective thrust: a normal distribution about 1.125 of the load, 0.365 of that wide, cut at
// no thrust and at full thrust. Source: the simulated hours of holding in the project's handbook
// (mean thrust 12 to 14 % above the static load, power 1.25 times that of the static load).
// In order of the thrust; the times add up to 1; the last is the time at full thrust.
// Left out: a boat that loses its spot in earnest stays at full thrust longer than this says.
std::vector<Duty> holding_duty(double load_frac);

// The same of a record: shares of the time in bins of equal width from no thrust to full thrust,
// and the share of the time at full thrust, which is counted in the last bin.
std::vector<Duty> recorded_duty(std::span<const double> shares, double full_frac);

// A stretch of the day.
struct DaySegment {
  std::string label{};
  double duration_h = 0.0;
  std::vector<Duty> duty{};       // times add up to 1
  double peak_thrust_frac = 0.0;  // most that may be asked for at any moment
};

// Holding this boat by this motor in another wind than the one asked for; the sea goes with the
// wind, the current stays.
DaySegment holding_segment(const HoldInput& in, const MotorClass& motor, double wind_mps,
                           double duration_h);

// Creeping from spot to spot.
DaySegment creeping_segment(double thrust_frac, double duration_h);

// The day as it was planned, stretch by stretch. Precondition: it was understood.
std::vector<DaySegment> segments_of(const DayPlanRead& plan, const HoldInput& in,
                                    const MotorClass& motor);

// The day that the input asks for: its hours of holding and of creeping.
std::vector<DaySegment> planned_day(const HoldInput& in, const MotorClass& motor);

struct DayInput {
  double power_full_W = 0.0;  // electrical, at full thrust
  double power_idle_W = 0.0;  // at none
  double supply_V = 0.0;      // of the bank, nominal; > 0
  std::vector<DaySegment> segments{};
};

// So long at this draw, in order of the draw.
struct DrawLevel {
  double thrust_frac = 0.0;
  double power_W = 0.0;
  double current_A = 0.0;
  double duration_h = 0.0;
};

struct Draw {
  double duration_h = 0.0;
  double energy_Wh = 0.0;
  double charge_Ah = 0.0;
  double mean_W = 0.0;
  double peak_W = 0.0;
  double mean_A = 0.0;
  double peak_A = 0.0;
  double rms_A = 0.0;
  double full_thrust_frac = 0.0;  // share of the time at full thrust
};

struct SegmentDraw {
  std::string label{};
  Draw draw{};
  std::vector<DrawLevel> levels{};
};

struct DayResult {
  std::vector<SegmentDraw> segments{};
  Draw day{};
  std::vector<DrawLevel> levels{};  // of the whole day
  Trace trace{};
};

// Power at a share r of full thrust: P = P_idle + (P_full - P_idle) r^1.5, between what the motor's
// papers say of rest and of full thrust. Source: momentum theory. Current at the nominal voltage:
// the bank's sag is left to the bank. A day without segments, or of no length, draws nothing.
DayResult day_draw(const DayInput& in);

}  // namespace thole
