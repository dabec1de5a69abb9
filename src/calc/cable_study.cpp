#include "calc/cable_study.h"

#include <algorithm>

namespace thole {

CableStudy cable_study(const Design& design) {
  const FeederResult& feeder = design.feeder;
  const Feeder& job = design.job.feeder;
  const Conductor* conductor = find_conductor(feeder.conductor);
  if (conductor == nullptr || !(feeder.current_A > 0.0) || !(job.run_m.value > 0.0)) return {};
  CableStudy study{.conductor = feeder.conductor,
                   .loop_m = 2.0 * job.run_m.value,
                   .current_A = feeder.current_A,
                   .allowed_V = job.allowed_drop_frac.value * design.bank.nominal_V,
                   .nominal_V = design.bank.nominal_V};
  const CablePlace place{.insulation_C = feeder.cable.insulation_C,
                         .ambient_C = job.ambient_C.value,
                         .engine_space = job.engine_space.value,
                         .bundled_count = job.bundled_count.value,
                         .nominal_V = design.bank.nominal_V};
  const CableLoad load{
      .current_A = feeder.current_A,
      .ampacity_A = ampacity_A(feeder.conductor, place.insulation_C) * bundling_factor(place.bundled_count),
      .insulation_C = place.insulation_C,
      .ambient_C = place.engine_space ? std::max(place.ambient_C, kEngineSpace_C) : place.ambient_C};
  study.methods = drop_methods(*conductor, load, study.loop_m);
  study.practices = ampacity_practices(*conductor, place);
  return study;
}

}  // namespace thole
