#pragma once

// Sources of the shaft and of the boat afloat: motion, immersion, tube, trim.

#include "base/trace.h"

namespace thole {

inline constexpr Source kJensen2004{
    .id = "jensen-mansour-olsen-2004",
    .title = "Jensen, Mansour and Olsen, Estimation of ship motions using closed-form expressions",
    .locator = "Ocean Engineering 31 (2004) 61-85, heave and pitch, here at zero speed"};
inline constexpr Source kAiryWave{.id = "airy-wave",
                                  .title = "Linear (Airy) theory of waves in deep water",
                                  .locator = "dispersion: w^2 = g k"};
inline constexpr Source kMinsaas1983{
    .id = "minsaas-1983",
    .title = "Minsaas, Faltinsen and Persson, loss of thrust of a propeller near the surface",
    .locator = "1983 curve, also in Minsaas, Thon and Kauczynski 1987; recalled",
    .confirmed = false};
inline constexpr Source kStemDrag{
    .id = "journee-massie-2001",
    .title = "Journee and Massie, Offshore Hydromechanics",
    .locator = "chapter 12, drag and inertia of slender cylinders; Cd 1.2 below Reynolds 2e5, Cm 2"};
inline constexpr Source kVortexShedding{
    .id = "vortex-shedding",
    .title = "Vortex shedding of a circular cylinder: Strouhal number 0.2",
    .locator = "lock-in near U = 5 f d; recalled",
    .confirmed = false};
inline constexpr Source kTubeBending{
    .id = "tube-bending",
    .title = "Elementary theory of beams: cantilever of round tube",
    .locator = "any strength-of-materials text"};
inline constexpr Source kDerrett{.id = "derrett-ship-stability",
                                 .title = "Derrett, Ship Stability for Masters and Mates",
                                 .locator = "form coefficients (ch. 9), trim"};
inline constexpr Source kRollTest{.id = "imo-a749-annex-3",
                                  .title = "IMO Resolution A.749(18), Code on Intact Stability",
                                  .locator = "Annex 3, rolling period test"};
inline constexpr Source kWeightsAndGm{
    .id = "weights-and-gm",
    .title = "Moments of buoyancy and weight about the keel, wall sides",
    .locator = "GM (D + w) = GM D - w (z - s/2), derived; same as dGM = w/(W+w) (T + t/2 - h - GM)"};
inline constexpr Source kLeastGm{
    .id = "uk-small-commercial-gm",
    .title = "UK code for small commercial vessels, intact stability",
    .locator = "metacentric height at least 0.35 m, recalled",
    .confirmed = false};
inline constexpr Source kInclining{
    .id = "inclining-experiment",
    .title = "Inclining experiment, GM = w d / (D tan phi)",
    .locator = "Derrett, Ship Stability for Masters and Mates; small angles, wall sides"};
inline constexpr Source kInclineAngles{
    .id = "iso-12217-practice-incline",
    .title = "Practice of inclining small craft after ISO 12217",
    .locator = "three degrees or more to each side, weights already aboard"};
inline constexpr Source kDockReadings{.id = "dock-readings",
                                      .title = "How well a tape, a watch and a plumb line are read at a dock",
                                      .locator = "our own judgement",
                                      .confirmed = false};
inline constexpr Source kCfrWeight{
    .id = "33-cfr-183-35",
    .title = "33 CFR 183.35, maximum weight capacity of outboard boats",
    .locator = "persons, engine and gear together: a fifth of what the hull displaces beyond its weight"};
inline constexpr Source kCfrPersons{.id = "33-cfr-183-41",
                                    .title = "33 CFR 183.41, persons capacity of outboard boats",
                                    .locator = "number of persons: (lb + 32) / 141"};
inline constexpr Source kCfrBatteryAllowance{
    .id = "33-cfr-183-75-2018",
    .title = "33 CFR 183.75, weights of motor, controls and battery",
    .locator = "as amended 2018 (82 FR 16512): one battery, 45 lb dry above 10.9 hp"};

}  // namespace thole
