#pragma once

#include <optional>
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
  std::optional<double> z_m{};  // above the water; without it the weight's height is left out
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
  int crew_count = 0;             // aboard; 0 = not known
  int plate_persons_count = 0;    // on the capacity plate; 0 = not known
  double plate_mass_kg = 0.0;     // on it for persons, engine and gear; 0 = not known
  std::vector<TrimItem> items{};
};

// What one weight does by itself. Sinkages, trims and changes of GM add up to the whole; lists do
// as long as they are small.
struct TrimShare {
  std::string label{};
  double mass_kg = 0.0;
  double bow_sinkage_m = 0.0;    // + down
  double stern_sinkage_m = 0.0;  // + down
  double trim_change_m = 0.0;    // bow down +, over the waterline
  double heel_deg = 0.0;         // starboard down +
  double gm_change_m = 0.0;      // 0 where its height is not known
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
  double gm_after_m = 0.0;       // metacentric height with the weights aboard
  double heel_deg = 0.0;         // from the added weight, starboard down +
  double bow_freeboard_m = 0.0;  // after the work
  double freeboard_loss_frac = 0.0;
  double persons_taken_count = 0.0;  // of a capacity label; 0 for boats that carry none
  double persons_left_count = 0.0;   // of the plate's persons; 0 when they are not known
  double plate_left_kg = 0.0;        // of the plate's weight, for persons, engine and gear
  std::vector<TrimShare> shares{};   // one for each item, in their order
  Trace trace{};
};

// What the added weight does to the boat at rest.
//
// Source: hydrostatics.h; limits by custom of the trade (no standard sets them). GM changes with the
// heights that are known, exactly so for wall sides. Not for a boat on plane.
TrimResult trim(const TrimInput& in);

}  // namespace thole
