#pragma once

// Sources of holding in time: gusts, motion, control.

#include "base/trace.h"

namespace thole {

inline constexpr Source kNpdGusts{
    .id = "iso-19901-1-npd-spectrum",
    .title = "ISO 19901-1, spectrum of wind speed over open sea (NPD)",
    .locator = "spectral density of the longitudinal speed"};
inline constexpr Source kDavenportGusts{.id = "davenport-1961",
                                        .title = "Davenport (1961), spectrum of gustiness",
                                        .locator = "form with a length of 1200 m"};
inline constexpr Source kHarrisGusts{.id = "harris-1971",
                                     .title = "Harris (1971), the nature of wind",
                                     .locator = "form with a length of 1800 m"};
inline constexpr Source kOchiShinGusts{
    .id = "ochi-shin-1988",
    .title = "Ochi & Shin (1988), wind turbulent spectra for design consideration",
    .locator = "three branches; drag of the surface recalled",
    .confirmed = false};
inline constexpr Source kAcrossGusts{.id = "iec-61400-1-turbulence",
                                     .title = "IEC 61400-1, wind turbines, design requirements",
                                     .locator = "standard deviation across over along"};
inline constexpr Source kSlowDrift{.id = "newman-1974",
                                   .title = "Newman (1974), slowly varying forces in waves",
                                   .locator = "force in step with the envelope squared"};
inline constexpr Source kMotionEquations{
    .id = "fossen-2021-motion",
    .title = "Fossen (2021), Handbook of Marine Craft Hydrodynamics and Motion Control",
    .locator = "manoeuvring in a steady current, cross-flow drag by strips"};
inline constexpr Source kPolePlacement{
    .id = "fossen-2021-pole-placement",
    .title = "Fossen (2021), Handbook of Marine Craft Hydrodynamics and Motion Control",
    .locator = "Algorithm 15.2"};
inline constexpr Source kSurgeMass{.id = "soeding-1982",
                                   .title = "Soeding (1982), added mass ahead",
                                   .locator = "2.7 rho vol^(5/3)/L^2"};

}  // namespace thole
