#pragma once

// The chosen plate by finite elements: every load case of the mount on the real plate, bolts and deck.

#include <string>
#include <vector>

#include "calc/chosen_plate.h"
#include "calc/mount/deck_panel.h"
#include "calc/mount/load_cases.h"

namespace thole {

// One load case, the worst of what it does.
struct PlateFinding {
  std::string id{};             // "slam", "thrust", as in load_cases.h
  std::string label{};
  SourceRef source{};
  LoadGrade grade = LoadGrade::extreme;
  std::size_t load_case = 0;    // of the solution
  double load_factor = 1.0;     // times that case
  double stress_MPa = 0.0;      // von Mises at the surface, a bolt's washer away from bolts
  double limit_MPa = 0.0;
  PlatePoint stress_at{};
  double bolt_side_MPa = 0.0;   // of it, the highest beside a bolt's washer
  double bolt_N = 0.0;          // tension of the most loaded bolt
  int bolt = -1;                // which, in the shape's order
  double bolts_N = 0.0;         // of all
  std::vector<double> shears_N{};  // of each bolt; none: nothing pushes level
  double shear_N = 0.0;         // with the tension that it makes most of, in one bolt
  double pull_N = 0.0;          // that tension
  double together_factor = 0.0; // use of that bolt in shear and tension
  double deck_MPa = 0.0;        // pressure on the deck at its highest
  double bar_MPa = 0.0;         // at a stiffener's free edge
  double sag_mm = 0.0;          // of the motor's centre of mass; of the foot where no motor lies there
  double panel_mm = 0.0;        // of it, by the deck's panel sinking and tilting
};

// The deck's panel under a plate: stiff in itself, it moves with plate and bolts as one piece.
struct PlatePanel {
  PanelStiffness stiffness{};
  double middle_m = 0.0;  // of the bolts, forward of the plate's aft edge

  // At x, up is positive, under loads of one case.
  double rise_m(const std::vector<PlateLoad>& loads, double x_m) const;
};

struct PlateStudy {
  PlateModel model{};
  PlateSolution solution{};  // of the cases as listed, before a slam is scaled
  std::vector<PlateFinding> findings{};
  PlatePanel panel{};
  double panel_Hz = 0.0;          // of plate and motor on the panel alone
  double frequency_Hz = 0.0;      // the lowest, motor stowed, the deck's panel counted, no clamp in the joint
  double tight_Hz = 0.0;          // the same while the bolts clamp; worked out where that could bring it into the idle's band
  double amplification_factor = 0.0;  // of a slam, at that frequency
  double strip_stress_MPa = 0.0;  // in a slam, by the strip of beam that chose the plate
  double strip_bolt_N = 0.0;
  double group_bolt_N = 0.0;  // at full thrust, by the elastic bolt group, which knows no prying
  double strip_frequency_Hz = 0.0;
  Trace trace{};  // the steps before and after the elements
  std::vector<std::string> assumptions{};
  Issues issues{};           // of the shape, each on its field of the job
  std::vector<Check> checks{};  // of the elements; proof.h brings them into the verdict
  double bolt_breaking_N = 0.0;
  double thrust_N = 0.0;     // full
  double foot_lead_m = 0.0;  // motor's centre ahead of its rest on the plate
  std::vector<Caution> cautions{};

  double bolt_limit_N(LoadGrade grade) const;  // on the tension of one bolt
};

// Bolts and deck, stowed motor: what every question about the chosen plate starts from; no cases.
struct PlateBasis {
  PlateModel model{};
  PlateFoot stowed_foot{};
  double lead_m = 0.0;  // the motor's centre ahead of it
  double carried_frac = 1.0;
  double front_row_m = 0.0;
  PlatePanel panel{};
};
PlateBasis plate_basis(const ChosenPlate& chosen, const Design& design, Trace& trace);

// A sentence in solution.problem where it cannot be worked out. Precondition: plate and bolts were found.
PlateStudy plate_study(const Design& design);

}  // namespace thole
