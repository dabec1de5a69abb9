#pragma once

// A refill by the customs of the chemistry, and how far it has come at any hour.

#include "calc/charge/taper.h"
#include "data/parts.h"

namespace thole {

// What taper() needs when only the battery and the current into it are known. Currents and
// efficiencies: common practice, data/batteries.h. The tail is at most half of the current, so that
// a small charger's absorption ends.
TaperInput refill_course(Chemistry chemistry, double capacity_Ah, double depth_frac, double bulk_A);

// Amp-hours stored after so many hours of it, never more than were missing.
//
//   bulk: e_b I_b t;   then  Q_b + e_a T I_b (1 - exp(-(t - t_b) / T)),  T = Q_a / (I_b - I_t)
//
// The exponential taper of taper(), part of the way. Source: derived.
double stored_Ah(const TaperInput& course, double time_h);

// Current into the battery at that hour: bulk, then I_b exp(-(t - t_b) / T); 0 once it is full.
double refill_current_A(const TaperInput& course, double time_h);

// Volts of a cell on float, 25 C, on which the gas figures rest; 0: it rests uncharged once full.
// Source: kVenting.
double float_cell_V(Chemistry chemistry);

// Every field is a positive number and the depth a share: what the functions above ask for.
bool sound_refill(double capacity_Ah, double depth_frac, double bulk_A);

}  // namespace thole
