#pragma once

// Sources of sensors, data links and switches.

#include "base/trace.h"

namespace thole {

inline constexpr Source kNetworkLimits{
    .id = "marine-network-limits",
    .title = "NMEA 2000 (IEC 61162-3), as its makers' installation guides print it",
    .locator = "drop 6 m, all drops 78 m, 50 devices, two terminators, 50 mA to a load number"};
inline constexpr Source kNetworkDrop{
    .id = "marine-network-drop",
    .title = "NMEA 2000, voltage drop, as its makers' installation guides print it",
    .locator = "0.1 x load numbers x metres x ohm per metre, at most 1.5 V; one guide prints 1.67 V"};
inline constexpr Source kLightBackbone{
    .id = "marine-network-light-cable",
    .title = "NMEA 2000, light cable, as its makers' installation guides print it",
    .locator = "100 m; 0.053 and 0.057 ohm per metre printed, the greater taken"};
inline constexpr Source kNetworkCable{
    .id = "marine-network-cables",
    .title = "NMEA 2000, cables and their currents",
    .locator = "light 3 A (one guide: 4), mid 4 A, heavy 8 A; 200 m (others: 250); recalled and disputed",
    .confirmed = false};
inline constexpr Source kNetworkConductor{
    .id = "marine-network-16-awg",
    .title = "Stranded 16 AWG copper at 20 C, for the power pair of mid and heavy network cable",
    .locator = "0.0134 ohm per metre from ASTM B258 and IEC 60028; that it is 16 AWG is recalled",
    .confirmed = false};
inline constexpr Source kEthernetLength{.id = "ieee-802-3-channel",
                                        .title = "IEEE 802.3 over twisted pairs (ISO/IEC 11801)",
                                        .locator = "100 m from plug to plug; recalled",
                                        .confirmed = false};
inline constexpr Source kWeakField{
    .id = "world-magnetic-model-zones",
    .title = "World Magnetic Model: zones near the magnetic poles",
    .locator = "level field below 6 uT: caution, below 2 uT: no compass; recalled",
    .confirmed = false};
inline constexpr Source kE11Switch{
    .id = "abyc-e-11-battery-switch",
    .title = "ABYC E-11, battery switch, as published in part",
    .locator = "banks over 100 Ah or 800 CCA; not for bilge pumps, memories, protected chargers",
    .confirmed = false};
inline constexpr Source kCharterSwitch{
    .id = "46-cfr-120-380-i",
    .title = "46 CFR 120.380, small passenger vessels, overcurrent protection",
    .locator = "(i) an accessible emergency switch in the main supply from a battery"};
inline constexpr Source kCharterCompass{
    .id = "46-cfr-183-340",
    .title = "46 CFR 183.340, small passenger vessels, cable",
    .locator = "installed so that it avoids or reduces interference with radio and compass"};
inline constexpr Source kIsolatedNegative{
    .id = "iso-10133-2012-4-1",
    .title = "ISO 10133:2012, direct current systems, as published",
    .locator = "4.1: either fully insulated, or negative earthed; never through another cable"};

}  // namespace thole
