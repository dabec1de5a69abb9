#pragma once

// Kinetic battery model: charge stands in two wells, one that the load draws from and one that
// refills it through a narrow valve. It follows bursts and recovery, which amp-hours over amps
// cannot. Manwell and McGowan, Solar Energy 50 (5), 1993.
//
// Range: constant temperature; voltage and ageing are outside it. The caller scales the capacity.

#include "calc/bank/capacity.h"

namespace thole {

struct KineticModel {
  double capacity_Ah = 0.0;      // both wells, full: what an endlessly slow discharge gives
  double available_frac = 1.0;   // the first well's share, 0 .. 1
  double rate_frac_per_h = 1.0;  // how fast the wells level out, > 0
};

struct KineticState {
  double available_Ah = 0.0;
  double bound_Ah = 0.0;
};

KineticState full_state(const KineticModel& model);

// The state after `time_h` of a steady current (discharge positive). A negative well means that the
// current could not be held so long.
KineticState after(const KineticModel& model, const KineticState& state, double current_A,
                   double time_h);

// The largest steady current that the state can hold for `time_h` (> 0).
double held_current_A(const KineticModel& model, const KineticState& state, double time_h);

// Amp-hours that a steady current takes out of a full bank when it lasts `time_h` (> 0).
double capacity_over_Ah(const KineticModel& model, double time_h);

// Hours of a steady current from full until the first well is empty; at most `longest_h`.
double kinetic_hours_h(const KineticModel& model, double current_A, double longest_h);

// The first well's share at which the model gives both capacities, each within its own time.
double available_share(const Rating& a, const Rating& b, double rate_frac_per_h);

// The model that gives three ratings of one battery (scan and bisection over the rate, 0.001 .. 5).
KineticModel fit(const Rating& slow, const Rating& middle, const Rating& fast);

// The model of a label: the rate of an open data set for lead-acid, the share from the reserve
// capacity when the label gives one; lithium gives nearly all at once.
KineticModel kinetic_model(Chemistry chemistry, const Rating& rating, double reserve_capacity_min);

}  // namespace thole
