#pragma once

// Sources of the hold stage and of the estimates of boat and water.

#include "base/trace.h"

namespace thole {

inline constexpr Source kDnvWind{.id = "dnv-st-0111-2021-wind",
                                 .title = "DNV-ST-0111 (December 2021), station keeping capability",
                                 .locator = "[3.5], wind, level 1"};
inline constexpr Source kDnvCurrent{
    .id = "dnv-st-0111-2021-current",
    .title = "DNV-ST-0111 (December 2021), station keeping capability",
    .locator = "[3.6], current, level 1"};
inline constexpr Source kDnvWaves{
    .id = "dnv-st-0111-2021-waves",
    .title = "DNV-ST-0111 (December 2021), station keeping capability",
    .locator = "[3.7] and [3.3.3], wave drift, level 1"};
inline constexpr Source kDnvDynamic{
    .id = "dnv-st-0111-2021-dynamic",
    .title = "DNV-ST-0111 (December 2021), station keeping capability",
    .locator = "[3.2.2], dynamic factor, level 1"};
inline constexpr Source kDnvThrust{
    .id = "dnv-st-0111-2021-thrust",
    .title = "DNV-ST-0111 (December 2021), station keeping capability",
    .locator = "[3.9.2], nominal thrust, Tables 3-1 to 3-4"};
inline constexpr Source kDnvThrustLoss{
    .id = "dnv-st-0111-2021-thrust-loss",
    .title = "DNV-ST-0111 (December 2021), station keeping capability",
    .locator = "[3.9.3], general loss factor"};
inline constexpr Source kUfcCurrent{.id = "ufc-4-159-03-2005-current",
                                    .title = "UFC 4-159-03 (3 October 2005), Design: Moorings",
                                    .locator = "Eqs 15-23, longitudinal current force"};
inline constexpr Source kUfcCrossFlow{
    .id = "ufc-4-159-03-2005-cross-flow",
    .title = "UFC 4-159-03 (3 October 2005), Design: Moorings",
    .locator = "Eqs 11-13, lateral current force in shallow water"};
inline constexpr Source kIttc57{.id = "ittc-1957",
                                .title = "ITTC 1957 model-ship correlation line",
                                .locator = "C_F = 0.075/(log10 Re - 2)^2"};
inline constexpr Source kIttcWater{.id = "ittc-7-5-02-01-03",
                                   .title = "ITTC 7.5-02-01-03, density and viscosity of water",
                                   .locator = "at 15 C",
                                   .confirmed = false};
inline constexpr Source kHoernerDrag{.id = "hoerner-1965",
                                     .title = "Hoerner, Fluid-Dynamic Drag (1965)",
                                     .locator = "surface-piercing struts",
                                     .confirmed = false};
inline constexpr Source kIdealGas{.id = "ideal-gas-dry-air",
                                  .title = "Ideal gas law for dry air",
                                  .locator = "R = 287.05 J/(kg K), 101 325 Pa"};
inline constexpr Source kNpdWind{.id = "iso-19901-1-npd-wind",
                                 .title = "ISO 19901-1, wind profile and gusts over open sea (NPD)",
                                 .locator = "profile and gust equations"};
inline constexpr Source kSpmSea{.id = "spm-1984-shallow",
                                .title = "Shore Protection Manual (1984)",
                                .locator = "shallow-water wave forecasting equations"};
inline constexpr Source kJonswapSea{.id = "jonswap-1973",
                                    .title = "Hasselmann et al. (1973), JONSWAP",
                                    .locator = "fetch laws for height and period"};
inline constexpr Source kWilsonSea{
    .id = "wilson-1965", .title = "Wilson (1965), wave forecasting", .locator = "fetch laws"};
inline constexpr Source kLeewayDrift{.id = "leeway-allen-2005",
                                     .title = "Allen (2005), leeway divergence",
                                     .locator = "balance of wind and water drag, beam on"};
inline constexpr Source kLeewayTable{
    .id = "uscg-leeway-2010",
    .title = "US Coast Guard leeway table for drifting objects (list of 15 November 2010)",
    .locator = "sport boats and skiffs: downwind and crosswind slopes"};
inline constexpr Source kDnvCapability{
    .id = "dnv-st-0111-2021-capability",
    .title = "DNV-ST-0111 (December 2021), station keeping capability",
    .locator = "[2.4], [2.5] and Table 2-1, capability numbers, level 1"};
inline constexpr Source kBlendermannWind{
    .id = "blendermann-1994",
    .title = "Blendermann, J. Wind Eng. Ind. Aerodyn. 51 (1994) 339-351",
    .locator = "Table 1 and Eqs 13-16"};
inline constexpr Source kSectionDragCurve{
    .id = "leite-1998-cross-flow",
    .title = "Hoerner's curve of cross-flow drag as read by Leite et al. (1998)",
    .locator = "drag of a section over beam by twice the draft"};
inline constexpr Source kMaruoReflection{.id = "maruo-1960",
                                         .title = "Maruo (1960), drift of a body in waves",
                                         .locator = "full reflection of short waves"};
inline constexpr Source kSpmDeepSea{.id = "spm-1984-deep",
                                    .title = "Shore Protection Manual (1984)",
                                    .locator = "deep-water wave forecasting equations"};
inline constexpr Source kSpmGrowth{.id = "spm-1984-duration",
                                   .title = "Shore Protection Manual (1984)",
                                   .locator = "duration until fetch limits the sea",
                                   .confirmed = false};
inline constexpr Source kCemSea{.id = "cem-2-2-36",
                                .title = "Coastal Engineering Manual, part II chapter 2",
                                .locator = "Eq II-2-36, growth with fetch"};
inline constexpr Source kCemGust{.id = "cem-2-2-gust",
                                 .title = "Coastal Engineering Manual, part II chapter 2",
                                 .locator = "wind speed by averaging time"};
inline constexpr Source kKahmaCalkoenSea{.id = "kahma-calkoen-1992",
                                         .title = "Kahma & Calkoen (1992), growth of wind waves",
                                         .locator = "fetch laws"};
inline constexpr Source kAbycAnchor{
    .id = "abyc-h-40-2003",
    .title = "ABYC H-40 (7/03), anchoring, mooring and strong points",
    .locator = "Table 1, lunch hook, 15 kn; as reproduced",
    .confirmed = false};
inline constexpr Source kFreePropeller{
    .id = "mackenzie-forrester-2008",
    .title = "MacKenzie & Forrester (2008), drag of sailboat propellers",
    .locator = "locked against freewheeling",
    .confirmed = false};
inline constexpr Source kMomentumTheory{.id = "momentum-theory",
                                        .title = "Momentum theory of the actuator disc",
                                        .locator = "any text on ship propellers"};
inline constexpr Source kUsc4312{.id = "46-usc-4312",
                                 .title = "46 U.S.C. 4312, engine cut-off switches",
                                 .locator = "115 lbf of static thrust, under 26 ft"};

}  // namespace thole
