#include "calc/feeder/drop_methods.h"

#include "base/units.h"
#include "data/sources_power.h"

namespace thole {
namespace {

constexpr double kNecColumn_C = 75.0;  // kNecTable8

// At which pure copper has a rule's constant, by its drop over the conductor of 1 mm2.
double constant_C(double rule_ohm_mm2_per_m) {
  return temperature_from_resistance_C(rule_ohm_mm2_per_m / kPureCopper_ohm_mm2_per_m);
}

}  // namespace

std::vector<DropMethod> drop_methods(const Conductor& conductor, const CableLoad& load,
                                     double loop_m) {
  std::vector<DropMethod> methods;
  const auto add = [&](std::string_view id, std::string_view label, std::string_view table,
                       double temperature_C, double drop_V, const Source& source) {
    methods.push_back({.id = id,
                       .label = label,
                       .table = table,
                       .temperature_C = temperature_C,
                       .ohm_per_m = drop_V / (load.current_A * loop_m),
                       .drop_V = drop_V,
                       .source = source});
  };
  const auto by_table = [&](double at_20_ohm_per_m, double temperature_C) {
    return load.current_A * loop_m * resistance_at(at_20_ohm_per_m, temperature_C);
  };
  const auto by_e11 = [&](double mils) { return e11_drop_V(load.current_A, loop_m, mils); };
  const double e11_C = constant_C(e11_drop_V(1.0, 1.0, circular_mils(1.0)));
  const double warm_C = conductor_temperature_C(load);
  const std::string_view made =
      conductor.metric ? "IEC 60228 class 5" : "NEC Table 8, brought to 20 °C";

  add("iso", "ISO 10133", "0.0164 I L / S, nominal area", constant_C(kIsoDrop_factor),
      iso_drop_V(load.current_A, loop_m, conductor.area_mm2), kIsoDrop);
  add("bare_20", "Bare copper at 20 °C", made, 20.0, by_table(conductor.bare_ohm_per_m, 20.0),
      resistance_source(conductor));
  add("e11_awg", "E-11, the conductor's area", "10.75 I L / CM", e11_C,
      by_e11(circular_mils(conductor.area_mm2)), kE11Drop);
  if (conductor.sae_mils_count > 0.0) {
    add("e11_sae", "E-11, SAE area", "10.75 I L / CM, SAE J1127", e11_C,
        by_e11(conductor.sae_mils_count), kE11Drop);
  }
  add("tinned_warm", "Tinned copper as warm as its load", made, warm_C,
      by_table(conductor.tinned_ohm_per_m, warm_C), kCableHeating);
  add("tinned_75", "Tinned copper at 75 °C", made, kNecColumn_C,
      by_table(conductor.tinned_ohm_per_m, kNecColumn_C), resistance_source(conductor));
  return methods;
}

}  // namespace thole
