#pragma once

// What a deck bears under the backing plate of a bolt. The factor of 4 on laminate, and on the
// core's punching, stands for creep, moisture and unknown lay-up.

#include "base/trace.h"
#include "data/laminates.h"

namespace thole {

struct DeckStrength {
  double crushing_MPa = 0.0;     // ultimate, through the thickness
  double crushing_factor = 1.0;  // share that may be used
  double punching_MPa = 0.0;     // ultimate shear of the skin
  double punching_factor = 1.0;  // share that may be used
  SourceRef crushing_source{};
  SourceRef punching_source{};
};

// Laminate of 35 % glass; balsa of 150 and foam of 80 kg/m3, which crush before their skins do;
// aluminium as 5083-O. Shares: laminate 0.8/4, core 0.5, aluminium 0.4 of yield; punching 1/4.
DeckStrength deck_strength(DeckKind kind);

struct BackingInput {
  double side_mm = 0.0;  // square
  double thickness_mm = 0.0;
  double washer_mm = 0.0;  // outside diameter
  double room_mm = 0.0;    // distance to the next bolt's backing, centre to centre
};

// Side of the square that carries: two thicknesses beyond the washer all round, as common practice
// has it for stiff plates, never more than there is plate or room.
double effective_backing_side_mm(const BackingInput& in);

// Core cleared round a bolt and filled with thickened epoxy: across, and what the filling is (recalled: 60 to
// 100 MPa, 3 to 5 GPa; a quarter of its strength may be used, as of laminate).
double plug_diameter_mm(double bolt_mm);
inline constexpr double kPlugCrushing_MPa = 60.0;
inline constexpr double kPlugCrushing_factor = 0.25;
inline constexpr double kPlugModulus_MPa = 3000.0;

// Thickness at which a square of this side carries to its edge.
double backing_thickness_mm(double side_mm, double washer_mm);

// Area of that square less the hole, >= 0.
double backing_area_mm2(double effective_side_mm, double hole_mm);

// Force that punches a piece of this perimeter out of the skin: perimeter t tau. Ultimate.
double punching_N(double perimeter_mm, double thickness_mm, double shear_MPa);

// Horizontal load that a strong point for anchoring must take: f (4.3 L_C - 5.4) kN, L_C the mean
// of hull and waterline length. For mooring at the bow 3.5 and 4.3, aft 3.0 and 3.8. Source: ISO
// 15084:2003, coefficients recalled. Never below 0.
enum class StrongPoint { anchoring, bow_mooring, aft };
double strong_point_N(StrongPoint use, double mean_length_m, double category_factor);

}  // namespace thole
