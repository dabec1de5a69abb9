#include "calc/protection_study.h"

#include <algorithm>

#include "calc/fault.h"
#include "calc/feeder_circuit.h"
#include "data/conductors.h"

namespace thole {
namespace {

// Brushed motors draw two to four times their current for less than a second (common practice); one
// with electronics less.
constexpr double kStart_ratio = 3.0;
constexpr double kStart_s = 0.5;
constexpr double kStall_s = 1.0;

ProtectedLead lead(const Design& design, std::string label, std::string_view conductor, const CableOffer& cable,
                   double length_m, const char* check_id) {
  const Conductor* row = find_conductor(conductor);
  const Check* check = design.find_check(check_id);
  if (row == nullptr || check == nullptr) return {};
  const double air_C = design.job.feeder.ambient_C.value;
  return {.label = std::move(label),
          .area_mm2 = row->area_mm2,
          .ohm_per_m = row->tinned_ohm_per_m,
          .length_m = length_m,
          .ampacity_A = check->limit,
          .insulation_C = cable.insulation_C,
          .air_C = std::min(air_C, cable.insulation_C - 1.0),
          .start_C = std::max(design.feeder.conductor_C, air_C),
          .end_C = kPvcFault_C};
}

}  // namespace

ProtectionStudy protection_study(const Design& design) {
  const FeederResult& feeder = design.feeder;
  const Job& job = design.job;
  ProtectionInput in;
  in.bank = {.block = design.bank.block,
             .series_count = design.bank.series_count,
             .parallel_count = design.bank.parallel_count,
             .age_factor = job.bank.age_factor.value,
             .cold_C = job.bank.temperature_C.value,
             .flat_charge_frac = std::clamp(1.0 - job.bank.depth_of_discharge_frac.value, 0.0, 1.0)};
  in.jumpers_ohm = jumpers_ohm(design);
  in.charge_V = design.bank.charge_V;
  if (!feeder.device.id.empty()) {
    in.devices = {{.label = feeder.device.label,
                   .device_class = usual_class(feeder.device.kind),
                   .rating_A = feeder.device.rating_A,
                   .voltage_V = feeder.device.voltage_V,
                   .interrupt_A = feeder.device.interrupt_A,
                   .resistance_ohm = feeder.device.resistance_ohm,
                   .pole_count = std::max(feeder.device.poles, feeder.device_count)}};
  }
  in.run = lead(design, "run", feeder.conductor, feeder.cable, job.feeder.run_m.value, "feeder.ampacity");
  if (job.feeder.tail_m.value > 0.0 && !feeder.tail_conductor.empty()) {
    in.tail = lead(design, "tail", feeder.tail_conductor, feeder.tail_cable, job.feeder.tail_m.value, "feeder.tail_ampacity");
  }
  in.motor = {.continuous_A = feeder.current_A,
              .start_A = kStart_ratio * feeder.current_nominal_A,
              .start_s = kStart_s,
              .stall_A = kStart_ratio * feeder.current_nominal_A,
              .stall_s = kStall_s};
  in.floating = job.feeder.floating.value;
  in.lug_ohm = job.feeder.lug_ohm.value;
  in.plug_ohm = job.feeder.plug_ohm.value;
  in.air = {.cold_C = std::min(job.bank.temperature_C.value, 25.0), .hot_C = std::max(job.feeder.ambient_C.value, 25.0)};
  return {in, protection(in)};
}

}  // namespace thole
