#include "calc/feeder/joint.h"

#include <cmath>

namespace thole {
namespace {

constexpr double kSuspect_factor = 2.0;  // kCommonPractice
constexpr double kSuspect_ohm = 0.2e-3;  // kCommonPractice
constexpr double kSuspectHeat_W = 5.0;   // kCommonPractice

}  // namespace

JointVerdict judge_joint(const JointReading& reading) {
  JointVerdict verdict{.resistance_ohm = reading.drop_V / reading.current_A};
  verdict.excess_ohm = verdict.resistance_ohm - reading.model_ohm;
  verdict.heat_W = reading.current_A * reading.current_A * verdict.excess_ohm;
  verdict.heat_rated_W = reading.rated_A * reading.rated_A * verdict.excess_ohm;
  verdict.suspect = verdict.resistance_ohm > kSuspect_factor * reading.model_ohm + kSuspect_ohm ||
                    verdict.heat_rated_W > kSuspectHeat_W;
  return verdict;
}

WholeExcess whole_excess(const WholeReading& reading) {
  const double drop_V = reading.bank_V - reading.motor_V;
  const double by_meter_ohm = std::sqrt(2.0) * reading.meter_V / reading.current_A;
  const double by_clamp_ohm = drop_V * reading.clamp_frac / reading.current_A;
  return {.excess_ohm = drop_V / reading.current_A - reading.model_ohm,
          .uncertainty_ohm = std::hypot(by_meter_ohm, by_clamp_ohm)};
}

}  // namespace thole
