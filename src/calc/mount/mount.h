#pragma once

// The mount: plate, bolts and deck under full thrust, and under slams with the motor stowed.

#include <vector>

#include "base/trace.h"
#include "calc/mount/bolt_group.h"
#include "data/finishes.h"
#include "data/laminates.h"
#include "data/parts.h"

namespace thole {

struct MountInput {
  double thrust_N = 0.0;        // static, full
  double thrust_lever_m = 0.0;  // propeller axis below the plate
  double fold_moment_Nm = 0.0;  // at which the shaft's tube is lost; 0: not known
  double motor_mass_kg = 0.0;
  double overhang_mm = 0.0;      // front bolt row to the stowed motor's centre of mass
  bool chocked = false;          // outer end of the stowed motor rests on a chock
  double plate_length_mm = 0.0;  // fore and aft
  double plate_width_mm = 0.0;
  std::vector<PlateStock> plates{};  // to choose from; one when it was named
  int bolt_rows = 0;                 // of two bolts each; >= 2
  double bolt_pitch_mm = 0.0;        // fore and aft, row to row
  double bolt_gauge_mm = 0.0;        // athwart, across a row
  // Where they stand when not in rows: forward of the plate's aft edge, to port of its middle line.
  std::vector<BoltPoint> bolt_places{};
  bool outlined = false;      // length and width are those of a measured outline
  double bolt_edge_mm = 0.0;  // the nearest edge of a plate that is no rectangle, to any bolt; 0: it is one
  std::vector<BoltOffer> bolts{};    // to choose from; one when it was named
  bool countersunk = false;
  DeckKind deck = DeckKind::single_skin;
  double deck_thickness_mm = 0.0;  // outer skin, or the whole of a single skin
  double core_thickness_mm = 0.0;
  double backing_side_mm = 0.0;  // square, one under each bolt
  double backing_thickness_mm = 0.0;
  bool trailered = false;   // by road with the motor on
  bool isolated = true;     // stainless kept off aluminium
  Finish finish = Finish::bare;
  double finish_mm = 0.0;   // paint or film, each face of the plate
  bool core_plugged = false;  // cleared and filled round each bolt
  double run_speed_mps = 0.0;  // fastest, motor stowed
  double run_wave_m = 0.0;     // significant height of the sea it is run in
  double displacement_kg = 0.0;
  double waterline_length_m = 0.0;
  double chine_beam_m = 0.0;
  double deadrise_deg = 0.0;
  double motor_x_m = 0.0;   // stowed, forward of the transom
  double centre_x_m = 0.0;  // the boat's centre of gravity, likewise
};

struct MountResult {
  // One of the plates (bolts) passes every check of its own. When none does, the figures below are
  // for the one that comes closest; when none of a known alloy (size and grade) was offered, they
  // are 0 and `plate` (`bolt`) is empty.
  bool plate_found = false;
  bool bolt_found = false;
  PlateStock plate{};
  double plate_thickness_mm = 0.0;
  double plate_mass_kg = 0.0;
  BoltOffer bolt{};
  int bolt_count = 0;
  double cg_acceleration_factor = 0.0;   // in g, at the centre of gravity, 1/100 highest
  double bow_acceleration_factor = 0.0;  // in g, at the bow, 1/100 highest
  double motor_acceleration_factor = 0.0;  // in g, where the stowed motor lies
  double amplification_factor = 0.0;     // of a slam, by the plate's spring
  double slam_N = 0.0;                   // of the stowed motor on the plate, with amplification
  double slam_moment_Nm = 0.0;           // where the plate leaves the deck
  double thrust_moment_Nm = 0.0;         // at the plate
  double deck_ahead_mm = 0.0;            // front row to where the plate leaves the deck
  double plate_stress_MPa = 0.0;         // in a slam
  double working_stress_MPa = 0.0;       // of the plate at full thrust
  double sag_mm = 0.0;                   // at rest, at the motor's centre of mass
  double frequency_Hz = 0.0;             // of the stowed motor on the plate
  double bolt_tension_N = 0.0;           // worst bolt, thrust or slam
  double slam_tension_N = 0.0;           // front bolts
  double thrust_tension_N = 0.0;         // by the elastic group, which knows no prying
  double bolt_breaking_N = 0.0;          // with its head
  double bolt_shear_N = 0.0;             // worst bolt, thrust
  double bolt_torque_Nm = 0.0;           // what bolt and deck both take
  double preload_N = 0.0;                // that this torque gives
  double clamp_left_N = 0.0;             // of it, when the finish under the heads has crept
  double bolt_length_mm = 0.0;           // least, under the head; take the next one stocked
  double backing_area_mm2 = 0.0;         // required under each bolt
  double backing_side_mm = 0.0;          // of each backing, as far as it carries
  double plug_area_mm2 = 0.0;            // plug and core under one backing, as if all were plug; 0: no plug
  double pull_limit_N = 0.0;             // of one bolt, that the deck lets pass: crushing and pulling through
  double speed_limit_mps = 0.0;          // stowed, in run_wave: where slams reach the design value
  Trace trace{};
};

// Bolts in their rows, the aft one so far from the plate's aft edge as plate_rules.h has it; or where they
// were told to stand.
BoltPattern pattern_of(const MountInput& in);
// Whether there is a core, and whether it is cleared and filled round the bolts.
bool has_core(const MountInput& in);
bool has_plugs(const MountInput& in);
// What a bolt holds together: plate, skins and core, backing, nut and bedding.
double bolt_grip_mm(const MountInput& in, double plate_mm);

// What the mount must carry, the thinnest plate and the smallest bolt that carry it, and what the
// deck allows.
//
// Slam: acceleration at the centre of gravity by ISO 12215-5:2008 7.3, at the bow by the ratio of
// Savitsky and Brown (1976) within 1.5 .. 2.0, at the stowed motor on the straight line through both, on the plate by the shock spectrum of its own
// frequency on the plate. Plate: a strip of beam held at the front bolt row for sag and frequency
// (propped at twice the overhang when chocked), bent over the edge of the deck for strength. Bolts:
// elastic group in thrust from every side; in a slam the front row alone holds the plate down,
// because thin plates pry (a finite-element plate with one-sided contact comes to within an eighth
// of that for 6 mm, and to less for thicker). Deck: crushing, pull-through and clamp under the
// backing.
// Fatigue is screened for slams and for the swings of the thrust. Left out: stress raisers at holes beside
// what the category of the detail holds, welds; snags, rebound and a motor left down are among load_cases.h.
// Caller must ensure: all inputs within the ranges of job/fields.cpp. Empty `plates` and `bolts`
// are legal.
MountResult mount(const MountInput& in);

}  // namespace thole
