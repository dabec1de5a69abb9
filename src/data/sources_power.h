#pragma once

// Sources of the feeder: conductors, drop, protection, faults, the field of a pair of wires. ABYC
// E-11 and the ISO standards were read through published quotations and reprints, not in the
// original.

#include "base/trace.h"

namespace thole {

// --- conductors
// -----------------------------------------------------------------------------------
inline constexpr Source kAstmB258{.id = "astm-b258-awg",
                                  .title = "ASTM B258, diameters of AWG conductors",
                                  .locator = "d = 0.005 in * 92^((36 - n)/39)"};
inline constexpr Source kSaeAreas{
    .id = "sae-j1127-areas",
    .title = "SAE J1127 and J1128, battery and primary cable",
    .locator = "least conductor areas, from boat-cable tables that print both areas"};
inline constexpr Source kNecTable8{
    .id = "nec-chapter-9-table-8",
    .title = "NFPA 70 (NEC), chapter 9, Table 8, conductor properties",
    .locator = "stranded copper, bare and coated, stated at 75 C, brought to 20 C"};
inline constexpr Source kCopperLay{
    .id = "copper-stranded-by-area",
    .title = "IEC 60028 copper, 2 % longer by its lay",
    .locator = "0.017241 ohm mm2/m at 20 C; meets NEC chapter 9 Table 8 within 1 %"};
inline constexpr Source kIec60228{.id = "iec-60228-class-5",
                                  .title = "IEC 60228, conductors of insulated cables",
                                  .locator = "class 5 (flexible), greatest resistance at 20 C"};
inline constexpr Source kCopperTemperature{
    .id = "iec-60028-1925-temperature",
    .title = "IEC 60028:1925, resistance of copper",
    .locator = "0.00393 per K at 20 C; NEC 0.00323 at 75 C agrees"};
inline constexpr Source kAstmB33{.id = "astm-b33-2004-table-2",
                                 .title = "ASTM B33 (2004), tinned soft copper wire",
                                 .locator = "Table 2, greatest resistivity by strand diameter"};

// --- ampacity
// -------------------------------------------------------------------------------------
inline constexpr Source kCfrTable5{
    .id = "33-cfr-183-425-table-5",
    .title = "33 CFR 183.425, conductors: general",
    .locator = "Table 5, allowable amperage, 30 C; ABYC E-11 equals its 105 C column"};
inline constexpr Source kCfrEngineSpace{.id = "33-cfr-183-425-note-1",
                                        .title = "33 CFR 183.425, conductors: general",
                                        .locator = "Table 5 note 1, engine space, 105 C: 0.85"};
inline constexpr Source kCfrEngineSpaceOther{
    .id = "33-cfr-183-425-note-1-others",
    .title = "33 CFR 183.425, conductors: general",
    .locator = "Table 5 note 1, engine space, insulation other than 105 C",
    .confirmed = false};
inline constexpr Source kAmbientLaw{
    .id = "ampacity-ambient-law",
    .title = "Ampacity against the air's temperature: heat lost is in proportion to the rise",
    .locator = "sqrt((T_ins - T_air)/(T_ins - 30)); meets 33 CFR 183.425 note 1 within 0.006"};
inline constexpr Source kBundling{
    .id = "33-cfr-183-425-note-2",
    .title = "33 CFR 183.425, Table 5 note 2, and ABYC E-11",
    .locator = "bundled conductors; below 50 V by E-11 alone, published for bundles of three"};
inline constexpr Source kIsoAmpacity{.id = "iso-10133-2012-table-a-1",
                                     .title = "ISO 10133:2012, direct current systems",
                                     .locator = "Table A.1, 30 C; a published abstract disagrees",
                                     .confirmed = false};
inline constexpr Source kIsoEngineSpace{
    .id = "iso-10133-2012-engine-space",
    .title = "ISO 10133:2012, direct current systems",
    .locator = "factors in engine spaces: 70 C 0.75, 85 C 0.82, 105 C 0.86, 125 C 0.89; recalled",
    .confirmed = false};
inline constexpr Source kCableHeating{
    .id = "cable-heating-anchored",
    .title = "Rise of a cable in proportion to its heat, anchored on its ampacity",
    .locator = "insulation temperature is reached at the ampacity in 30 C air"};

// --- volts
// ----------------------------------------------------------------------------------------
inline constexpr Source kCircuitLaws{.id = "circuit-laws",
                                     .title = "Ohm's and Kirchhoff's laws",
                                     .locator = "series chain with a load of constant power"};
inline constexpr Source kE11Drop{
    .id = "abyc-e-11-drop",
    .title = "ABYC E-11, voltage drop, as published",
    .locator = "CM = K I L / E, K = 10.75, L out and back; 3 % or 10 %"};
inline constexpr Source kIsoDrop{.id = "iso-10133-2012-drop",
                                 .title = "ISO 10133:2012, direct current systems",
                                 .locator = "annex: E = 0.0164 I L / S, L out and back"};

// --- protection
// -----------------------------------------------------------------------------------
inline constexpr Source kCfrPoles{.id = "33-cfr-183-455-a",
                                  .title = "33 CFR 183.455, overcurrent protection",
                                  .locator = "(a) each ungrounded current-carrying conductor"};
inline constexpr Source kCfrDeviceRating{
    .id = "33-cfr-183-455-c",
    .title = "33 CFR 183.455, overcurrent protection",
    .locator = "(c) 150 % of Table 5 below 50 V; from 50 V Table 5, next size up to 150 %"};
inline constexpr Source kCfrDeviceVoltage{
    .id = "33-cfr-183-455-d",
    .title = "33 CFR 183.455, overcurrent protection",
    .locator = "(d) voltage rating; here held against the charge voltage"};
inline constexpr Source kCfrHighVoltageCable{
    .id = "33-cfr-183-435",
    .title = "33 CFR 183.435, conductors in circuits of 50 V or more",
    .locator = "(a) cable types; (b) bundles"};
inline constexpr Source kE11Rating{
    .id = "abyc-e-11-device-rating",
    .title = "ABYC E-11, overcurrent protection, as published",
    .locator = "rating at most the ampacity; next standard size allowed up to 150 %"};
inline constexpr Source kE11Placement{
    .id = "abyc-e-11-placement",
    .title = "ABYC E-11 and 33 CFR 183.455(b), place of the overcurrent device",
    .locator = "7 in; 40 in sheathed; 72 in sheathed from a battery terminal (E-11)"};
inline constexpr Source kE11Interrupt{
    .id = "abyc-e-11-interrupt",
    .title = "ABYC E-11, interrupting capacity, as published",
    .locator = "by cold-cranking amperes; larger banks by their short-circuit current"};
inline constexpr Source kDeviceIgnition{
    .id = "33-cfr-183-410-device",
    .title = "33 CFR 183.410, ignition protection",
    .locator = "(a) components, unless isolated from gasoline sources by (b)"};
inline constexpr Source kStandardRatings{.id = "nec-240-6-ratings",
                                         .title = "NFPA 70 (NEC) 240.6(A), standard ampere ratings",
                                         .locator = "15 to 600 A; recalled",
                                         .confirmed = false};
inline constexpr Source kContinuousLoad{
    .id = "nec-210-20-continuous",
    .title = "NFPA 70 (NEC) 210.20(A), device at 125 % of a continuous load",
    .locator = "custom for thermal devices on boats; recalled",
    .confirmed = false};
inline constexpr Source kDeviceCurves{
    .id = "device-time-current-classes",
    .title = "Time-current classes of bolt-down fuses (ISO 8820-5 style) and medium-delay breakers",
    .locator = "longest opening time at a multiple of the rating; recalled",
    .confirmed = false};
inline constexpr Source kBladeCurve{.id = "iso-8820-3-2015-curve",
                                    .title = "ISO 8820-3:2015, fuses with tabs (blade type)",
                                    .locator = "operating times at multiples of the rating; recalled",
                                    .confirmed = false};
inline constexpr Source kFastFuseCurve{
    .id = "ul-248-15-class-t-curve",
    .title = "UL 248-1 and UL 248-15, low-voltage fuses, Class T",
    .locator = "1.10 carried, 1.35 and 2.0 opened in time; above twice the rating recalled",
    .confirmed = false};
inline constexpr Source kThermalBreakerCurve{
    .id = "thermal-breaker-published-curve",
    .title = "Curve of one thermal breaker for small boats, as published",
    .locator = "carries 70 %; 100 s at 100 %, 5 s at 200 %; the spread about it is assumed",
    .confirmed = false};
inline constexpr Source kMagneticDelays{
    .id = "hydraulic-magnetic-delay-classes",
    .title = "Delay classes of hydraulic-magnetic breakers",
    .locator = "holds 100 %, trips from 125 to 135 %; times at 200 % and 600 %; recalled",
    .confirmed = false};
inline constexpr Source kLithiumCell{
    .id = "prismatic-cell-105-ah-resistance",
    .title = "Published data of a prismatic lithium iron phosphate cell of 105 Ah",
    .locator = "0.20 +/- 0.05 milliohm, alternating current"};
inline constexpr Source kOverload{
    .id = "iec-60364-4-43-433-1",
    .title = "IEC 60364-4-43, protection against overload",
    .locator = "433.1: surely opens at 1.45 times the ampacity; recalled",
    .confirmed = false};
inline constexpr Source kE11Pull{.id = "abyc-e-11-pull",
                                 .title = "ABYC E-11, tensile test of terminals, as published",
                                 .locator = "16 and 10 AWG, one minute"};
inline constexpr Source kE11PullRecalled{
    .id = "abyc-e-11-pull-others",
    .title = "ABYC E-11, tensile test of terminals",
    .locator = "other sizes, one minute; recalled, half of UL 486A where both are known",
    .confirmed = false};
inline constexpr Source kIsoPull{.id = "iso-10133-2012-pull",
                                 .title = "ISO 10133:2012, tensile test of terminals",
                                 .locator = "one minute; recalled",
                                 .confirmed = false};
inline constexpr Source kLockedRotor{
    .id = "abyc-e-11-locked-rotor",
    .title = "ABYC E-11, motor circuits, as published",
    .locator = "locked for 7 h without a fire hazard, by overcurrent device or thermal cut-out"};
inline constexpr Source kCrankingFault{
    .id = "sae-j537-cranking",
    .title = "SAE J537, cold-cranking amperes",
    .locator = "7.2 V at -18 C: R = 5.4 V / CCA, short circuit 2.33 CCA"};
inline constexpr Source kAdiabatic{
    .id = "iec-60949-adiabatic",
    .title = "IEC 60949 and IEC 60364-5-54, adiabatic heating of a conductor in a fault",
    .locator = "copper, k = 226 sqrt(ln((T_end + 234.5)/(T_start + 234.5)))"};
inline constexpr Source kPropulsionScope{
    .id = "iso-13297-2020-scope",
    .title = "ISO 13297:2020, electrical systems of small craft",
    .locator = "scope: to 50 V DC; electric propulsion is left to ISO 16315"};

// --- compass
// --------------------------------------------------------------------------------------
inline constexpr Source kBiotSavart{.id = "biot-savart-pair",
                                    .title = "Biot-Savart law: field of long parallel wires",
                                    .locator = "far from a pair B = 0.2 I d / r^2 (uT, A, m)"};
inline constexpr Source kCompassDistance{
    .id = "iso-25862-annex-f",
    .title = "ISO 25862, magnetic compasses: compass safe distance",
    .locator = "Annex F, steering compass 18 deg/H (uT); the number is recalled",
    .confirmed = false};
inline constexpr Source kIgrf14{
    .id = "igrf-14-2025",
    .title = "International Geomagnetic Reference Field, 14th generation (IAGA), main field 2025.0",
    .locator = "degree 13, from two reprints of its coefficients that agree"};
inline constexpr Source kIgrf14Forecast{
    .id = "igrf-14-2025-2030",
    .title = "International Geomagnetic Reference Field, 14th generation (IAGA), change 2025 to 2030",
    .locator = "degree 8; a forecast of the field, not its measurement",
    .confirmed = false};
inline constexpr Source kWgs84{.id = "wgs-84-ellipsoid",
                               .title = "World Geodetic System 1984",
                               .locator = "a = 6378137 m, 1/f = 298.257223563"};
inline constexpr Source kBiotSavartSegment{
    .id = "biot-savart-segment",
    .title = "Biot-Savart law: field of straight pieces of wire",
    .locator = "mu0 I / (4 pi) times the law integrated over each piece"};
inline constexpr Source kHeadingTriangle{
    .id = "heading-triangle",
    .title = "Heading shown by the level field: earth's and disturbing field added",
    .locator = "tan e = B sin b / (B_h + B cos b); at the worst heading sin e = B / B_h"};

}  // namespace thole
