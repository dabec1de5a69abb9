#pragma once

#include <string>
#include <vector>

#include "base/trace.h"

namespace thole {

// A weight that comes aboard.
struct TrimItem {
  std::string label{};
  double mass_kg = 0.0;
  double x_m = 0.0;  // forward of the transom
  double y_m = 0.0;  // to starboard
  // The job's fields that place it, when it could stand elsewhere: "trim.bank_x_m". A failed check
  // then proposes where.
  std::string x_field{};
  std::string y_field{};
  bool lead_bank = false;  // lead-acid blocks, which lithium would lighten
  double holding_h = 0.0;  // hours of holding that a bank is for; 0: not a bank
};

struct TrimInput {
  double length_m = 0.0;            // overall; 0 = not known (capacity label)
  double waterline_length_m = 0.0;  // > 0
  double waterline_beam_m = 0.0;    // > 0
  double displacement_kg = 0.0;     // before the work, > 0
  double waterplane_ratio = 0.75;
  bool salt = true;
  double gm_m = 0.0;              // > 0
  double initial_trim_deg = 0.0;  // bow down +
  double bow_height_m = 0.0;
  std::vector<TrimItem> items{};
};

struct TrimResult {
  double added_kg = 0.0;
  double immersion_kg_per_cm = 0.0;
  double moment_kgm_per_cm = 0.0;
  double flotation_x_m = 0.0;    // centre of flotation, forward of the transom
  double bow_sinkage_m = 0.0;    // + down, at the stem's end of the waterline
  double stern_sinkage_m = 0.0;  // + down, at the transom
  double trim_change_m = 0.0;    // bow down +, over the waterline
  double trim_change_deg = 0.0;
  double trim_deg = 0.0;         // after the work, bow down +
  double heel_deg = 0.0;         // from the added weight, starboard down +
  double bow_freeboard_m = 0.0;  // after the work
  double freeboard_loss_frac = 0.0;
  double persons_taken_count = 0.0;  // of a capacity label; 0 for boats that carry none
  Trace trace{};
};

// What the added weight does to the boat at rest.
//
// Source: hydrostatics.h; limits by custom of the trade (no standard sets them). Heights of the
// weights are left out: GM is taken as it was. Not for a boat on plane.
TrimResult trim(const TrimInput& in);

}  // namespace thole
