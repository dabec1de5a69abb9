#include "calc/feeder/ampacity_practices.h"

#include <array>

#include "calc/feeder/cable.h"
#include "data/sources_power.h"

namespace thole {
namespace {

constexpr double kBundleRule_V = 50.0;  // kBundling: the regulation counts bundles from there on

struct IsoRow {
  double insulation_C = 0.0;
  double factor = 1.0;
};
constexpr std::array kIsoEngineSpaceRows{IsoRow{70.0, 0.75}, IsoRow{85.0, 0.82}, IsoRow{105.0, 0.86},
                                         IsoRow{125.0, 0.89}, IsoRow{200.0, 1.00}};  // kIsoEngineSpace

double iso_engine_space_factor(double insulation_C) {
  double factor = ambient_factor(insulation_C, kEngineSpace_C);
  for (const IsoRow& row : kIsoEngineSpaceRows) {
    if (row.insulation_C <= insulation_C) factor = row.factor;
  }
  return factor;
}

// Of that family, the conductor itself or the thickest that resists no less.
const Conductor* in_family(const Conductor& conductor, bool metric) {
  if (conductor.metric == metric) return &conductor;
  const Conductor* found = nullptr;
  for (const Conductor& each : conductors()) {
    if (each.metric == metric && each.tinned_ohm_per_m >= conductor.tinned_ohm_per_m) found = &each;
  }
  return found;
}

void read_table(const Conductor& conductor, bool metric, double insulation_C, AmpacityPractice& practice) {
  const Conductor* row = in_family(conductor, metric);
  practice.own_size = row == &conductor;
  if (row == nullptr) return;
  practice.conductor = std::string(row->label);
  practice.table_A = ampacity_A(row->label, insulation_C);
}

void multiply(AmpacityPractice& practice) {
  practice.ampacity_A = practice.table_A;
  for (const AmpacityFactor& factor : practice.factors) practice.ampacity_A *= factor.factor;
}

AmpacityPractice cfr(const Conductor& conductor, const CablePlace& place) {
  AmpacityPractice practice{.id = "cfr",
                            .label = "33 CFR 183.425",
                            .table = "Table 5, AWG sizes",
                            .source = kCfrTable5};
  read_table(conductor, false, place.insulation_C, practice);
  practice.factors.push_back(
      {"Engine space", place.engine_space ? engine_space_factor(place.insulation_C) : 1.0,
       place.engine_space ? "note 1" : "not in one", engine_space_source(place.insulation_C)});
  practice.factors.push_back({"Other warm air", 1.0, "the rule has no factor for it", kCfrTable5});
  const bool counts = place.nominal_V >= kBundleRule_V;
  practice.factors.push_back({"Bundle", counts ? bundling_factor(place.bundled_count) : 1.0,
                              counts ? "note 2" : "counts from 50 V", kBundling});
  multiply(practice);
  return practice;
}

AmpacityPractice e11(const Conductor& conductor, const CablePlace& place) {
  AmpacityPractice practice{.id = "e11",
                            .label = "American small-craft practice (ABYC E-11 as published)",
                            .table = "AWG sizes and SAE gauges alike",
                            .source = kCfrTable5};
  read_table(conductor, false, place.insulation_C, practice);
  practice.factors.push_back(
      {"Engine space", place.engine_space ? engine_space_factor(place.insulation_C) : 1.0,
       place.engine_space ? "as the regulation" : "not in one", engine_space_source(place.insulation_C)});
  practice.factors.push_back({"Other warm air",
                              place.engine_space ? 1.0 : ambient_factor(place.insulation_C, place.ambient_C),
                              place.engine_space ? "in the factor above" : "by the law of heat", kAmbientLaw});
  practice.factors.push_back({"Bundle", bundling_factor(place.bundled_count), "at any voltage", kBundling});
  multiply(practice);
  return practice;
}

AmpacityPractice iso(const Conductor& conductor, const CablePlace& place) {
  AmpacityPractice practice{.id = "iso",
                            .label = "International (ISO 10133 as published)",
                            .table = "Table A.1, metric sizes",
                            .source = kIsoAmpacity};
  read_table(conductor, true, place.insulation_C, practice);
  practice.factors.push_back(
      {"Engine space", place.engine_space ? iso_engine_space_factor(place.insulation_C) : 1.0,
       place.engine_space ? "its own table" : "not in one", kIsoEngineSpace});
  practice.factors.push_back({"Other warm air",
                              place.engine_space ? 1.0 : ambient_factor(place.insulation_C, place.ambient_C),
                              place.engine_space ? "in the factor above" : "by the law of heat", kAmbientLaw});
  practice.factors.push_back({"Bundle", 1.0, "none known to us", kIsoAmpacity});
  multiply(practice);
  return practice;
}

}  // namespace

std::vector<AmpacityPractice> ampacity_practices(const Conductor& conductor, const CablePlace& place) {
  return {cfr(conductor, place), e11(conductor, place), iso(conductor, place)};
}

}  // namespace thole
