#pragma once

// The plate as an elastic plate by finite elements: on bolts that pull, on a deck that only pushes,
// with what stands on it. Sag, stress, what each bolt and the deck carry, natural frequencies.
//
// Sources: kDiscreteKirchhoff and kKirchhoffMindlin (element), kWinklerDeck (deck as springs). Left out: the plate's own plane, large deflection (good to a slope of 0.2).

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "calc/plate/mesh.h"
#include "calc/plate/shape.h"

namespace thole {

struct PlateMaterial {
  double modulus_Pa = 0.0;
  double poisson_ratio = 0.0;
  double density_kg_per_m3 = 0.0;
};

// A chock or pad under the plate; pushes up only.
struct PlateProp {
  PlatePoint at{};
  double stiffness_N_per_m = 0.0;
};

struct PlateSupport {
  double bolt_N_per_m = 0.0;     // each, with backing and deck
  bool bolts_both_ways = false;  // else they pull only
  double deck_N_per_m3 = 0.0;    // pressure for a sink of one metre; 0: no deck
  double deck_edge_m = 0.0;      // the deck lies under x <= this
  bool deck_both_ways = false;   // else it pushes only; with bolts_both_ways: a joint whose clamp nothing overcomes
  std::vector<PlateProp> props{};
};

// Spread evenly over a rectangle (of no size: at a point). Up is positive. A moment is a pressure that
// grows across the rectangle: pitch is the sum of force times x, roll of force times y.
struct PlateFoot {
  PlatePoint middle{};
  double length_m = 0.0;  // fore and aft
  double width_m = 0.0;
};
struct PlateLoad {
  PlateFoot foot{};
  double force_N = 0.0;
  double pitch_Nm = 0.0;
  double roll_Nm = 0.0;
};
struct PlateLoadCase {
  std::string label{};
  std::vector<PlateLoad> loads{};
};

// Something heavy that moves with the plate.
struct PlateMass {
  PlateFoot foot{};
  double mass_kg = 0.0;
  double lead_m = 0.0;    // its centre ahead of the foot's middle
  double height_m = 0.0;  // and above the plate
};

// A part bolted flat on the plate, or a doubler: the plate bends so much less under it. No stress is read
// there, nor within a thickness of its edge.
struct PlatePatch {
  PlateFoot foot{};
  double rigidity_ratio = 1.0;  // >= 1, of plate with part to plate alone
};

// A flat bar on edge, fore and aft, welded or bolted down all along, as a beam on a line of nodes: bending
// of bar and plate's effective width together about their common axis, less what the plate has by itself,
// E (I_s + e^2 A_s A_p / (A_s + A_p)), e from mid-plane to the bar's middle; and the bar's twist, G b^3 h / 3.
// Sources: kBeamTheory (parallel axes); effective width is the caller's.
struct PlateBar {
  double y_m = 0.0;
  double from_x_m = 0.0;
  double to_x_m = 0.0;
  double height_m = 0.0;
  double thickness_m = 0.0;
  double effective_width_m = 0.0;  // of the plate that goes with it
};

struct PlateModel {
  PlateShape shape{};
  MeshWish wish{};
  PlateMaterial material{};
  PlateSupport support{};
  std::vector<PlatePatch> patches{};
  std::vector<PlateBar> bars{};
  std::vector<PlateLoadCase> cases{};
  std::vector<PlateMass> masses{};
  int rest_case = -1;               // whose contact the small vibrations start from; -1: bolts alone
  bool thin = false;                // leave shear out, as thin-plate theory does
  double stress_clear_m = 0.0;      // no stress is read nearer to a bolt, a prop or a point load
};

struct PlateCaseSolution {
  std::vector<double> sag_m{};       // by node, up is positive
  std::vector<double> slope_x{};     // dw/dx
  std::vector<double> slope_y{};     // dw/dy
  std::vector<double> stress_Pa{};   // von Mises at the surface, by node
  std::vector<double> bolt_N{};      // by bolt, tension
  std::vector<double> prop_N{};      // push
  std::vector<double> deck_Pa{};     // by node, pressure
  double deck_N = 0.0;               // push of the whole deck, less what it pulls
  double deck_pull_N = 0.0;          // both ways alone
  double foot_sag_m = 0.0;           // mean under the first load, up is positive
  double foot_pitch_rad = 0.0;       // its turn, ahead end up
  int worst_node = -1;               // of the stress, clear of points
  double worst_stress_Pa = 0.0;
  double bolt_side_stress_Pa = 0.0;  // the highest from `stress_clear_m` to twice that from a bolt
  double bar_stress_Pa = 0.0;        // at the free edge of a bar, the highest
  int rounds = 0;                    // until bolts and deck agreed
};

struct PlateSolution {
  bool solved = false;
  std::string problem{};  // a sentence that names the part, and what would be right
  PlateMesh mesh{};
  double area_m2 = 0.0;
  double mass_kg = 0.0;
  std::vector<PlateCaseSolution> cases{};
  std::vector<double> frequencies_Hz{};  // the lowest three
};

// Errors, each a sentence in `problem`: those of mesh_plate; fewer than two bolts, all on one line, more
// than kMostPlateBolts; stiffness, modulus or Poisson's ratio out of range; a load off the plate; contact
// that does not settle.
inline constexpr int kMostPlateBolts = 60;
PlateSolution solve_plate(const PlateModel& model);

}  // namespace thole
