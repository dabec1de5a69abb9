#pragma once

// How a small transom-sterned hull answers to weight: from the waterplane alone.
//
// The waterplane is one of a family: full beam from the transom to p L, then closing as 1 - s^2 to
// a point at the stem, p = 3 C - 2. Its areas and moments are exact; that a hull is like it is our
// own judgement, +/- 15 % on trim. kg per cm and moment to trim 1 cm are the standard forms
// (Derrett, Ship Stability for Masters and Mates). Small angles and small additions, afloat at
// rest. x in m forward of the transom.

namespace thole {

struct WaterplaneShape {
  double flotation_ratio = 0.0;             // centre of flotation from the transom, over L
  double longitudinal_inertia_ratio = 0.0;  // about the centre of flotation, over B L^3
  double transverse_inertia_ratio = 0.0;    // over L B^3
};

// waterplane_ratio outside 2/3 .. 1 is taken as the nearer bound.
WaterplaneShape transom_waterplane(double waterplane_ratio);

struct Hydrostatics {
  double area_m2 = 0.0;
  double flotation_x_m = 0.0;
  double immersion_kg_per_cm = 0.0;  // rho A / 100
  double moment_kgm_per_cm = 0.0;    // rho I_L / (100 L)
};

// Precondition: length and beam > 0.
Hydrostatics hydrostatics(double length_m, double beam_m, double waterplane_ratio,
                          double density_kg_per_m3);

struct Settling {
  double sinkage_m = 0.0;      // parallel, + down
  double trim_m = 0.0;         // bow down +, over the length
  double bow_sinkage_m = 0.0;  // + down
  double stern_sinkage_m = 0.0;
};

// What `mass_kg` with `moment_kgm` about the centre of flotation (bow down +) does. A mass that is
// taken off is negative.
Settling settle(double length_m, double flotation_x_m, double immersion_kg_per_cm,
                double moment_kgm_per_cm, double mass_kg, double moment_kgm);

// Heel under an off-centre moment: atan(moment / (displacement GM)).
double heel_deg(double moment_kgm, double displacement_kg, double gm_m);

// GM after weight comes aboard: (D GM - sum of w z + W s / 2) / (D + W), heights z above the water
// before, s the sinkage. Exact for wall sides; the centre of gravity itself need not be known.
// Source: moments of buoyancy and weight about the keel; Derrett has them one by one.
double gm_with_weights_m(double gm_m, double displacement_kg, double mass_kg, double height_kgm,
                         double sinkage_m);

// GM from weight moved across the boat and the heel it gives: w d / (D tan phi).
double inclining_gm_m(double mass_kg, double shift_m, double displacement_kg, double angle_deg);

// GM from the full roll period: (f B / T)^2. f: IMO A.749(18) Annex 3.
double roll_test_gm_m(double roll_factor, double beam_m, double period_s);

}  // namespace thole
