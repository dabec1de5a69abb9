#pragma once

// Sources of the bank and the charge stage. Paid standards were read through published reprints and
// summaries.

#include "base/trace.h"

namespace thole {

inline constexpr Source kPeukert{
    .id = "peukert-1897-rated-hours",
    .title = "Peukert's law in its rated-hour form, general references",
    .locator = "steady current, about C/50 to 1 C"};
inline constexpr Source kPeukertRanges{
    .id = "peukert-exponent-ranges",
    .title = "Published ranges of the Peukert exponent by kind of battery",
    .locator = "flooded 1.2-1.6, gel 1.10-1.25, AGM 1.05-1.15, lithium about 1.05"};
inline constexpr Source kReserveCapacity{
    .id = "sae-j537-reserve-capacity",
    .title = "SAE J537, storage batteries",
    .locator = "reserve capacity: minutes at 25 A to 1.75 V a cell"};
inline constexpr Source kIeee485Temperature{.id = "ieee-485-table-1",
                                            .title = "IEEE 485, sizing lead-acid batteries",
                                            .locator = "Table 1, temperature, 4.4 to 48.9 C"};
inline constexpr Source kIeee485TemperatureEnds{
    .id = "ieee-485-table-1-ends",
    .title = "IEEE 485, sizing lead-acid batteries",
    .locator = "Table 1, temperature, its coldest and hottest rows and beyond",
    .confirmed = false};
inline constexpr Source kIeee485Sizing{.id = "ieee-485-allowances",
                                       .title = "IEEE 485, sizing lead-acid batteries",
                                       .locator = "ageing factor 1.25, design margin 1.10 to 1.15",
                                       .confirmed = false};
inline constexpr Source kTemperatureFit{
    .id = "ieee-485-published-fit",
    .title = "Published cubic fit to the IEEE 485 temperature table",
    .locator = "-3.9 to 51.7 C"};
inline constexpr Source kLithiumCold{.id = "nrel-sam-lithium-temperature",
                                     .title = "NREL SAM, open battery model data",
                                     .locator = "lithium test set, capacity against temperature"};
inline constexpr Source kLeadCycles{
    .id = "nrel-sam-agm-cycles",
    .title = "NREL SAM, open battery model data",
    .locator = "AGM lead-acid, cycles against depth; power law through it"};
inline constexpr Source kLithiumCycles{
    .id = "nrel-sam-lithium-cycles",
    .title = "NREL SAM, open battery model data",
    .locator = "generic lithium-ion, 5000 cycles at 20 %, 1000 at 80 %; power law through it"};
inline constexpr Source kCalendarYears{
    .id = "battery-calendar-years",
    .title = "Years that batteries last by the calendar, common practice of the trade",
    .locator = "to 80 % of capacity: flooded 6, sealed 8, lithium 12",
    .confirmed = false};
inline constexpr Source kElectronicsBurst{
    .id = "lithium-electronics-burst",
    .title = "Electronics of lithium blocks, bursts over the continuous limit, common practice",
    .locator = "twice for 10 s, ten times as long to recover; labels differ",
    .confirmed = false};
inline constexpr Source kKinetic{.id = "manwell-mcgowan-1993",
                                 .title = "Manwell and McGowan, lead acid battery storage model",
                                 .locator = "Solar Energy 50 (5), 1993, pp. 399-405"};
inline constexpr Source kKineticData{
    .id = "nrel-sam-agm-capacity",
    .title = "NREL SAM, open battery model data",
    .locator = "AGM lead-acid, 100 / 93.2 / 58.12 Ah over 20, 10, 1 h"};
inline constexpr Source kRestAgm{.id = "nrel-advisor-12v-91ah",
                                 .title = "NREL ADVISOR, sealed lead-acid module of 12 V, 91 Ah",
                                 .locator = "volts at rest and discharge resistance"};
inline constexpr Source kRestFlooded{
    .id = "specific-gravity-1265",
    .title = "Published specific gravity against charge, cells of 1.265 when full",
    .locator = "with volts = gravity + 0.84"};
inline constexpr Source kRestLithium{
    .id = "lfp-rest-volts-composite",
    .title = "Lithium iron phosphate, volts at rest, composite curve",
    .locator = "within 0.03 V a cell of two open tables",
    .confirmed = false};
inline constexpr Source kFreezing{
    .id = "us-army-electrolyte-freezing",
    .title = "US Army training texts, electrolyte of lead-acid batteries",
    .locator = "freezing point against specific gravity"};
inline constexpr Source kRestraintUs{.id = "33-cfr-183-420-a",
                                     .title = "33 CFR 183.420, batteries",
                                     .locator = "(a), the lesser of 90 lbf and twice the weight"};
inline constexpr Source kRestraintIso{
    .id = "iso-10133-2012-5-battery",
    .title = "ISO 10133:2012, small craft, direct current systems",
    .locator = "clause 5, twice the weight"};
inline constexpr Source kHydrogenOut{.id = "33-cfr-183-420-e",
                                     .title = "33 CFR 183.420, batteries",
                                     .locator = "(e), hydrogen must leave the boat"};
inline constexpr Source kPostsUs{.id = "33-cfr-183-420-b",
                                 .title = "33 CFR 183.420, batteries",
                                 .locator = "(b), no metal touches an ungrounded terminal"};
inline constexpr Source kFuelPartUs{
    .id = "33-cfr-183-420-c",
    .title = "33 CFR 183.420, batteries",
    .locator = "(c), metal fuel parts within 12 in above; ISO 10133 says 300 mm"};
inline constexpr Source kTankUs{.id = "33-cfr-183-420-d",
                                .title = "33 CFR 183.420, batteries",
                                .locator = "(d), not straight above or below fuel parts"};
inline constexpr Source kOpenAirUs{
    .id = "33-cfr-183-410-open-air",
    .title = "33 CFR 183.410, ignition protection",
    .locator = "isolated by a bulkhead or by 2 ft of space open to the air"};
inline constexpr Source kTrayUs{
    .id = "46-cfr-183-350",
    .title = "46 CFR 183.350, batteries: general requirements",
    .locator = "tray that electrolyte does not eat; above the bilge; charging circuit"};
inline constexpr Source kVentSpacing{
    .id = "iec-62485-2-spacing",
    .title = "IEC/EN 62485-2, secondary batteries, stationary",
    .locator = "openings on opposite walls, or 2 m apart on one",
    .confirmed = false};
inline constexpr Source kBatteryFan{
    .id = "uk-bss-part-4-fan",
    .title = "UK Boat Safety Scheme, part 4, electrically propelled craft",
    .locator = "exhaust fan on a switch with the charger"};
inline constexpr Source kLowVoltageScope{
    .id = "iso-10133-2012-scope",
    .title = "ISO 10133:2012, small craft, direct current systems",
    .locator = "scope, nominal 50 V or less; content now in ISO 13297"};
inline constexpr Source kAbycLithium{.id = "abyc-e-13-2022",
                                     .title = "ABYC E-13 (2022), lithium-ion batteries",
                                     .locator = "scope 600 Wh and above"};
inline constexpr Source kIsoLithium{.id = "iso-23625-2025",
                                    .title = "ISO 23625:2025, small craft, lithium-ion batteries",
                                    .locator = "scope over 500 Wh"};
inline constexpr Source kVenting{.id = "iec-62485-2-ventilation",
                                 .title = "IEC/EN 62485-2, secondary batteries, stationary",
                                 .locator = "ventilation; gassing current at boost; opening 28 Q"};
inline constexpr Source kVentingTraction{.id = "iec-62485-3-ventilation",
                                         .title = "IEC/EN 62485-3, secondary batteries, traction",
                                         .locator = "ventilation, charger limited to 2.4 V a cell"};
inline constexpr Source kMonoblocVent{
    .id = "iec-62485-2-common-outlet",
    .title = "IEC/EN 62485-2, secondary batteries, stationary",
    .locator = "clearance to sparks, cube root of the cells on one outlet",
    .confirmed = false};
inline constexpr Source kFaraday{.id = "faraday-hydrogen",
                                 .title = "Faraday's law: hydrogen set free by an amp-hour",
                                 .locator = "0.418 L a cell at 0 C"};
inline constexpr Source kChargerClass{.id = "46-cfr-111-15-3",
                                      .title = "46 CFR 111.15-3, battery categories",
                                      .locator = "small to 0.2 kW, moderate to 2 kW, large above"};
inline constexpr Source kChargerIgnition{.id = "33-cfr-183-410-charger",
                                         .title = "33 CFR 183.410, ignition protection",
                                         .locator = "components near petrol"};
inline constexpr Source kShoreResidual{
    .id = "abyc-e-11-elci",
    .title = "ABYC E-11, residual-current device at the shore inlet, as published",
    .locator = "trips at 30 mA at most, within 100 ms"};
inline constexpr Source kShoreLoad{.id = "continuous-load-80",
                                   .title = "A continuous load uses 80 % of its outlet",
                                   .locator = "12 A of 15 A",
                                   .confirmed = false};
inline constexpr Source kCompensation{
    .id = "absorption-compensation",
    .title = "Temperature compensation of lead-acid charging",
    .locator = "-3 to -5 mV/C a cell, two sources disagree; -4 taken",
    .confirmed = false};

}  // namespace thole
