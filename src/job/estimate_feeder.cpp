#include <string_view>

#include "data/sources.h"
#include "job/estimate.h"

namespace thole {
namespace {

// A bank under the console or the helm seat, the usual place on boats of this size.
constexpr double kBankToBow_ratio = 0.55;  // kProjectDecision
constexpr double kRouting_m = 1.0;         // kProjectDecision: up, down and round

}  // namespace

void estimate_feeder(Job& job, Trace& trace) {
  Feeder& feeder = job.feeder;
  estimate(trace, feeder.run_m, "feeder.run_m", [&] {
    return Step{.label = "Cable run from the bank to the bow",
                .symbol = "l",
                .formula = "f * LOA + l_r",
                .terms = {{"f", kBankToBow_ratio, "", "share of the length, bank amidships"},
                          {"LOA", job.boat.length_m.value, "m", "length overall"},
                          {"l_r", kRouting_m, "m", "routing up, down and round"}},
                .value = kBankToBow_ratio * job.boat.length_m.value + kRouting_m,
                .unit = "m",
                .source = kProjectDecision,
                .assumptions = {"The bank lies amidships, under the console or the helm seat."}};
  });
  const auto usual = [&](auto& target, auto value, std::string_view path, std::string_view why) {
    assume(trace, target, value, path, why, kCommonPractice);
  };
  usual(feeder.tail_m, 1.0, "feeder.tail_m", "A metre of lighter cable from the stud to the plug.");
  usual(feeder.jumper_m, 0.3, "feeder.jumper_m", "Blocks stand side by side.");
  usual(feeder.allowed_drop_frac, 0.03, "feeder.allowed_drop_frac",
        "3 %, as for circuits that must be kept up.");
  usual(feeder.ambient_C, 30.0, "feeder.ambient_C", "Shaded runs; 30 C is the tables' own air.");
  usual(feeder.engine_space, false, "feeder.engine_space", "The bow is away from the engine.");
  usual(feeder.bundled_count, 2, "feeder.bundled_count", "The motor's own pair, by itself.");
  usual(feeder.device_distance_m, 0.15, "feeder.device_distance_m", "The device beside the bank.");
  usual(feeder.sheathed, true, "feeder.sheathed", "The stretch up to the device is sleeved.");
  usual(feeder.floating, true, "feeder.floating",
        "A separate series bank with no tie to the boat's negative.");
  usual(feeder.lug_ohm, 0.0001, "feeder.lug_ohm", "A good crimped lug on a clean stud.");
  usual(feeder.motor_law, MotorLaw::power, "feeder.motor_law",
        "A controller keeps the motor's power; it draws more as volts fall.");
  usual(feeder.plug_ohm, 0.0005, "feeder.plug_ohm", "A clean plug of 50 to 70 A.");
}

}  // namespace thole
