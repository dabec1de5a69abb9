#pragma once

// Sources of the mount: accelerations, plate, bolts, deck. One entry for each place that is cited.

#include "base/trace.h"

namespace thole {

// --- accelerations
// --------------------------------------------------------------------------------
inline constexpr Source kIso12215Acceleration{
    .id = "iso-12215-5-2008-acceleration",
    .title = "ISO 12215-5:2008, small craft, design pressures and scantlings",
    .locator = "7.3, equations (1) and (2): dynamic load factor"};
inline constexpr Source kSavitskyBrown1976{
    .id = "savitsky-brown-1976",
    .title =
        "Savitsky and Brown, hydrodynamic evaluation of planing hulls in smooth and rough water",
    .locator = "Marine Technology 13(4), 1976, pp. 381-400"};
inline constexpr Source kDnvHslcMinimum{
    .id = "dnv-hslc-2011-201",
    .title = "DNV rules for high speed, light craft, January 2011, Pt.3 Ch.1 Sec.2",
    .locator = "B201-202: design vertical acceleration, not less than 1 g"};
inline constexpr Source kDnvHslcSpeed{
    .id = "dnv-hslc-2011-204",
    .title = "DNV rules for high speed, light craft, January 2011, Pt.3 Ch.1 Sec.2",
    .locator =
        "B204: speed and wave height; constant 1650 recalled, agrees with Savitsky and Brown",
    .confirmed = false};
inline constexpr Source kHalfSineShock{
    .id = "half-sine-shock-spectrum",
    .title = "Response of an oscillator with 5 % damping to a half-sine pulse",
    .locator = "table computed by numerical integration"};
inline constexpr Source kPulseLength{.id = "slam-pulse-length",
                                     .title = "Length of a slam pulse on a small planing boat",
                                     .locator = "0.1 to 0.25 s, recalled",
                                     .confirmed = false};

inline constexpr Source kRigidBody{.id = "rigid-body-line",
                                   .title = "Heave and pitch of a rigid boat",
                                   .locator = "acceleration changes along a straight line, bow and beyond"};
inline constexpr Source kMountDrag{
    .id = "morison-drag",
    .title = "Morison drag of an upright tube and a pod",
    .locator = "Journee and Massie, Offshore Hydromechanics ch. 12; factor 1.5 our own judgement"};
inline constexpr Source kSnag{
    .id = "snag-shaft-as-fuse",
    .title = "Energy of the boat against the shaft's spring, capped by its folding",
    .locator = "F = v sqrt(M k), M_p = Z_p times yield; half a metre a second and 1.2 our own judgement",
    .confirmed = false};
inline constexpr Source kPersonPulls{.id = "iso-15085-handhold",
                                     .title = "ISO 15085, handholds of small craft",
                                     .locator = "1000 to 1500 N in any direction, recalled",
                                     .confirmed = false};
inline constexpr Source kRoadLoads{
    .id = "road-loads",
    .title = "Loads of road transport on what is bolted to a boat",
    .locator = "2 g down, 1 g along, 0.5 g across on top of its weight: our own judgement; EN 12195-1 has 0.8 along and "
               "0.5 across for securing loads (recalled)",
    .confirmed = false};

// --- plate
// ----------------------------------------------------------------------------------------
inline constexpr Source kBeamTheory{.id = "beam-theory",
                                    .title = "Elementary beam and plate theory",
                                    .locator = "cantilever; fixed and propped beam; oscillator"};
inline constexpr Source kDiscreteKirchhoff{
    .id = "batoz-bathe-ho-1980",
    .title = "Batoz, Bathe and Ho, a study of three-node triangular plate bending elements",
    .locator = "Int. J. Num. Meth. Eng. 15 (1980) 1771-1812: discrete Kirchhoff triangle"};
inline constexpr Source kKirchhoffMindlin{
    .id = "katili-1993",
    .title = "Katili, a discrete Kirchhoff-Mindlin element with assumed shear strain fields",
    .locator = "Int. J. Num. Meth. Eng. 36 (1993) 1859-1883, recalled; agrees with beams and solids",
    .confirmed = false};
inline constexpr Source kWinklerDeck{
    .id = "winkler-deck",
    .title = "Deck as springs that push only, bolts as springs that pull only",
    .locator = "Timoshenko and Woinowsky-Krieger, plates on elastic foundation; stiffness our own judgement",
    .confirmed = false};
inline constexpr Source kPersonOnPlate{.id = "person-on-plate",
                                       .title = "A person stepping on the plate",
                                       .locator = "1500 N on 100 x 100 mm, our own judgement",
                                       .confirmed = false};
inline constexpr Source kAluminumDesignManual{.id = "aluminum-design-manual-3-3-1m",
                                              .title = "Aluminum Design Manual, minimum properties",
                                              .locator = "Table 3.3-1M, sheet and plate"};
inline constexpr Source kLloydsAluminium{
    .id = "lr-ssc-table-2-1-2",
    .title = "Lloyd's Register, rules for special service craft, aluminium alloys",
    .locator = "Table 2.1.2, rolled products and their welded strength"};
inline constexpr Source kIso12215Alloys{
    .id = "iso-12215-5-2008-annex-f", .title = "ISO 12215-5:2008, metals", .locator = "Annex F"};
inline constexpr Source kStainlessPlate{.id = "astm-a240-en-10088-2",
                                        .title = "ASTM A240 and EN 10088-2, stainless plate",
                                        .locator = "annealed minimum values, recalled",
                                        .confirmed = false};

// --- laminate and core
// ----------------------------------------------------------------------------
inline constexpr Source kIso12215Laminate{.id = "iso-12215-5-2008-annex-c",
                                          .title = "ISO 12215-5:2008, glass laminates",
                                          .locator = "Annex C, E-glass in polyester"};
inline constexpr Source kIso12215Core{.id = "iso-12215-5-2008-annex-d",
                                      .title = "ISO 12215-5:2008, sandwich cores",
                                      .locator = "Annex D"};
inline constexpr Source kIso12215DeckMinimum{.id = "iso-12215-5-2008-table-15",
                                             .title = "ISO 12215-5:2008, minimum deck thickness",
                                             .locator = "Table 15"};

// --- bolts
// ----------------------------------------------------------------------------------------
inline constexpr Source kIso898StressArea{.id = "iso-898-1",
                                          .title = "ISO 898-1, stress area of metric threads",
                                          .locator = "A_s = pi/4 (d - 0.9382 P)^2"};
inline constexpr Source kAsmeB11StressArea{.id = "asme-b1-1",
                                           .title = "ASME B1.1, stress area of inch threads",
                                           .locator = "A_s = pi/4 (d - 0.9743/n)^2"};
inline constexpr Source kIso3506{.id = "iso-3506-1",
                                 .title = "ISO 3506-1, stainless bolts",
                                 .locator = "property classes; proof strengths recalled",
                                 .confirmed = false};
inline constexpr Source kAstmF593{.id = "astm-f593",
                                  .title = "ASTM F593, stainless bolts",
                                  .locator = "groups 1 and 2, conditions CW1 and A"};
inline constexpr Source kHeadSizes{.id = "iso-10642-asme-b18-3",
                                   .title = "ISO 10642 and ASME B18.3, countersunk heads",
                                   .locator = "theoretical height, recalled",
                                   .confirmed = false};
inline constexpr Source kHoleSizes{.id = "iso-273-asme-b18-2-8",
                                   .title = "ISO 273 medium and ASME B18.2.8 normal holes",
                                   .locator = "clearance holes, recalled",
                                   .confirmed = false};
inline constexpr Source kWasherSizes{.id = "iso-7093-1",
                                     .title = "ISO 7093-1, large plain washers",
                                     .locator = "outside diameter three bolt diameters, recalled",
                                     .confirmed = false};
inline constexpr Source kBoltGroup{.id = "aisc-manual-part-7",
                                   .title = "Bolt group by the elastic method",
                                   .locator = "AISC Manual, Part 7; Shigley, ch. 8"};
inline constexpr Source kEn1993Bolts{
    .id = "en-1993-1-8-table-3-4",
    .title = "EN 1993-1-8 and EN 1993-1-4, bolts in shear and tension",
    .locator = "Table 3.4, factors 0.5, 0.9, 0.63, 1.25 and load factor 1.5 recalled",
    .confirmed = false};
inline constexpr Source kEn1993Edges{.id = "en-1993-1-8-table-3-3",
                                     .title = "EN 1993-1-8, edge distances of bolts",
                                     .locator = "Table 3.3: 2.0 holes for full bearing"};
inline constexpr Source kEn1993FarEdge{.id = "en-1993-1-8-far-edge",
                                       .title = "EN 1993-1-8:2005, Eurocode 3, design of joints",
                                       .locator = "Table 3.3: at most 4 t + 40 mm to an edge in the weather"};
inline constexpr Source kEn1993Bearing{
    .id = "en-1993-1-8-bearing",
    .title = "EN 1993-1-8 and EN 1999-1-1, bolts bearing on a plate",
    .locator = "2.5 a_b f_u d t / 1.25, a_b = e / (3 d_0), half of a countersink counted; recalled",
    .confirmed = false};
inline constexpr Source kSaeJ429{.id = "sae-j429",
                                 .title = "SAE J429, steel bolts in inches",
                                 .locator = "grades 2, 5 and 8; recalled",
                                 .confirmed = false};
inline constexpr Source kFatiguePlate{
    .id = "aluminum-design-manual-fatigue",
    .title = "Aluminum Design Manual, fatigue categories A to E",
    .locator = "C_f N^(-1/m), recalled; category B at bolt holes not confirmed, A for plain metal; EN 1993-1-9 90 and 160 for stainless",
    .confirmed = false};
inline constexpr Source kHoleInBending{
    .id = "roark-table-17-1-hole-in-bending",
    .title = "Roark's Formulas for Stress and Strain, 7th ed.",
    .locator = "Table 17.1, circular hole in a wide plate, out-of-plane bending"};
inline constexpr Source kFatigueBolt{
    .id = "en-1993-1-9-category-50",
    .title = "EN 1993-1-9, rolled threads in tension",
    .locator = "category 50, slope 3, factor 1.15; recalled",
    .confirmed = false};
inline constexpr Source kBoltSpacing{.id = "aisc-360-j3",
                                     .title = "AISC 360, spacing of bolts",
                                     .locator = "J3.3: three diameters preferred, recalled",
                                     .confirmed = false};
inline constexpr Source kCountersinkDepth{
    .id = "mil-hdbk-5-countersink",
    .title = "MIL-HDBK-5, countersunk joints",
    .locator = "head not deeper than two thirds of the sheet, recalled",
    .confirmed = false};
inline constexpr Source kNutFactor{.id = "nut-factor",
                                   .title = "Torque from preload, T = K d F",
                                   .locator = "K 0.15 with wet bedding compound, recalled",
                                   .confirmed = false};

// --- deck
// -----------------------------------------------------------------------------------------
inline constexpr Source kBackingTests{
    .id = "backing-plate-tests-2016",
    .title = "Published pull tests of backing plates (Practical Sailor, 2016)",
    .locator = "five bolt diameters across"};
inline constexpr Source kLaminateBearing{
    .id = "laminate-bearing",
    .title = "Bolts bearing on glass laminate",
    .locator = "EUROCOMP and tests: 150 to 250 MPa for mat and roving, a quarter of the least used; recalled",
    .confirmed = false};
inline constexpr Source kPluggedCore{.id = "plugged-core",
                                     .title = "Core cleared round a bolt and filled with thickened epoxy",
                                     .locator = "60 MPa and 3 GPa, the least of what is recalled",
                                     .confirmed = false};
inline constexpr Source kLaminateEdges{.id = "laminate-edges",
                                       .title = "Bolts in laminate: three diameters to an edge, four to the next bolt",
                                       .locator = "test reviews by Turvey and by Mottram; numbers recalled",
                                       .confirmed = false};
inline constexpr Source kSealedPitch{.id = "sealed-pitch",
                                     .title = "EN 1993-1-8:2005, Eurocode 3, design of joints; and bedded deck joints",
                                     .locator = "Table 3.3, 14 t and 200 mm; 100 to 150 mm common practice"};
inline constexpr Source kDeckPanel{.id = "deck-panel",
                                   .title = "Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed.",
                                   .locator = "art. 33, simply supported, Navier's series; the core's shear added"};
inline constexpr Source kFlatPlateSlam{.id = "flat-plate-slam",
                                       .title = "DNV-RP-C205, horizontal slamming; ISO 12215-5:2008 equation 16",
                                       .locator = "C_p = 2 pi for a flat plate, recalled; 5 kN/m2 at least",
                                       .confirmed = false};
inline constexpr Source kFinishes{.id = "finishes",
                                  .title = "ISO 7599 for anodising; practice of coaters and painters",
                                  .locator = "AA20 to AA25; film thicknesses recalled",
                                  .confirmed = false};
inline constexpr Source kDunkerley{.id = "dunkerley",
                                   .title = "Dunkerley's rule for springs one behind the other",
                                   .locator = "the sum is a little low"};
inline constexpr Source kFinishCreep{
    .id = "finish-creep",
    .title = "Paint or film under a bolt gives, and clamp goes with it",
    .locator = "15 % of its thickness, our own judgement",
    .confirmed = false};
inline constexpr Source kGalvanicTable{
    .id = "aca-galvanic-sea-water",
    .title = "Australasian Corrosion Association, metals in flowing sea water",
    .locator = "volts against saturated calomel; lists differ for active stainless"};
inline constexpr Source kGalvanicLimit{
    .id = "mil-std-889-gap",
    .title = "MIL-STD-889 and older practice, metals in contact",
    .locator = "0.15 V in salt spray, 0.25 V in the open, 0.50 V indoors; recalled",
    .confirmed = false};
inline constexpr Source kIso15084{.id = "iso-15084-2003",
                                  .title = "ISO 15084:2003, strong points for anchoring and towing",
                                  .locator = "coefficients recalled, agree with one published boat",
                                  .confirmed = false};

}  // namespace thole
