// What must hold for every feeder.

#include "calc/feeder/feeder.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>

#include "data/conductors.h"
#include "job/estimate.h"
#include "job/fields.h"
#include "support.h"
#include "trace_support.h"

using namespace thole;

namespace {

std::vector<CableOffer> shelf_of_cables() {
  std::vector<CableOffer> offers;
  for (const Conductor& conductor : conductors()) {
    offers.push_back({.id = std::string(conductor.label),
                      .conductor = std::string(conductor.label),
                      .mass_kg_per_m = 0.011 * conductor.area_mm2,
                      .price_per_m = 0.3 * conductor.area_mm2});
  }
  return offers;
}

std::vector<ProtectiveDevice> shelf_of_devices() {
  std::vector<ProtectiveDevice> devices;
  for (const double rating_A : {20.0, 30.0, 40.0, 50.0, 60.0, 80.0, 100.0, 125.0, 150.0, 200.0}) {
    const std::string size = std::to_string(static_cast<int>(rating_A));
    devices.push_back({.id = "breaker-" + size,
                       .rating_A = rating_A,
                       .voltage_V = 80.0,
                       .interrupt_A = 10000.0,
                       .resistance_ohm = 0.05 / rating_A,
                       .ignition_protected = true,
                       .poles = 2,
                       .price = 100.0});
    devices.push_back({.id = "strip-" + size,
                       .kind = DeviceKind::fuse,
                       .rating_A = rating_A,
                       .voltage_V = 32.0,
                       .interrupt_A = 2000.0,
                       .resistance_ohm = 0.04 / rating_A,
                       .price = 20.0});
  }
  return devices;
}

FeederInput usual() {
  return {.nominal_V = 36.0,
          .open_circuit_full_V = 38.4,
          .open_circuit_end_V = 36.6,
          .resistance_full_ohm = 0.012,
          .resistance_end_ohm = 0.024,
          .charge_V = 44.1,
          .strongest = {.open_circuit_V = 38.4, .resistance_ohm = 0.009},
          .weakest = {.open_circuit_V = 36.6, .resistance_ohm = 0.036},
          .series_count = 3,
          .power_full_W = 1400.0,
          .motor_minimum_V = 30.0,
          .run_m = 5.5,
          .tail_m = 1.0,
          .jumper_m = 0.3,
          .device_distance_m = 0.15,
          .cables = shelf_of_cables(),
          .tail_cables = shelf_of_cables(),
          .devices = shelf_of_devices()};
}

FeederInput with_cables(std::string_view run, std::string_view tail) {
  FeederInput in = usual();
  std::erase_if(in.cables, [&](const CableOffer& offer) { return offer.conductor != run; });
  std::erase_if(in.tail_cables, [&](const CableOffer& offer) { return offer.conductor != tail; });
  return in;
}

const Check* find_check(const FeederResult& result, std::string_view id) {
  for (const Check& check : result.trace.checks) {
    if (check.id == id) return &check;
  }
  return nullptr;
}

Verdict verdict(const FeederResult& result, std::string_view id) {
  const Check* check = find_check(result, id);
  return check == nullptr ? Verdict::not_evaluated : check->verdict();
}

void check_finite(const FeederResult& r) {
  for (const double value : {r.current_A, r.current_nominal_A, r.drop_V, r.drop_frac, r.motor_V,
                             r.motor_full_V, r.loss_W, r.conductor_C, r.run_ampacity_A, r.jumpers_ohm,
                             r.device_min_A, r.device_max_A, r.cable_m}) {
    CHECK(std::isfinite(value));
  }
  for (const FeederNode& node : r.nodes) CHECK(std::isfinite(node.voltage_V));
  for (const Step& step : r.trace.steps) {
    CAPTURE(step.id);
    CHECK(std::isfinite(step.value));
  }
  for (const Check& check : r.trace.checks) {
    CAPTURE(check.id);
    CHECK(std::isfinite(check.actual));
    CHECK(std::isfinite(check.limit));
    CHECK_FALSE(check.remedy.empty());
  }
}

// A spread over voltage, power, length, surroundings, earthing and tail.
std::vector<FeederInput> spread() {
  std::vector<FeederInput> inputs;
  for (const double blocks : {1.0, 2.0, 3.0, 4.0}) {
    for (const double share : {0.1, 1.0, 4.0}) {
      for (const double run_m : {0.2, 6.0, 30.0}) {
        FeederInput in = usual();
        in.nominal_V = 12.8 * blocks;
        in.open_circuit_full_V = 13.4 * blocks;
        in.open_circuit_end_V = 12.6 * blocks;
        in.resistance_full_ohm = 0.004 * blocks;
        in.resistance_end_ohm = 0.008 * blocks;
        in.charge_V = 14.6 * blocks;
        in.strongest = {.open_circuit_V = 13.4 * blocks, .resistance_ohm = 0.003 * blocks};
        in.weakest = {.open_circuit_V = 12.6 * blocks, .resistance_ohm = 0.012 * blocks};
        in.motor_minimum_V = 10.0 * blocks;
        in.series_count = static_cast<int>(blocks);
        in.parallel_count = run_m > 10.0 ? 3 : 1;
        in.power_full_W = 600.0 * blocks * share;
        in.run_m = run_m;
        in.tail_m = share > 1.0 ? 0.0 : 1.0;
        in.engine_space = run_m > 10.0;
        in.ambient_C = blocks > 2.0 ? 45.0 : 30.0;
        in.bundled_count = blocks > 3.0 ? 4 : 2;
        in.floating = blocks > 1.0;
        in.device_distance_m = 0.5;
        inputs.push_back(in);
      }
    }
  }
  return inputs;
}

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("Feeder: every displayed formula gives the displayed value") {
    for (const FeederInput& in : spread()) {
      CAPTURE(in.nominal_V);
      CAPTURE(in.power_full_W);
      CAPTURE(in.run_m);
      const FeederResult result = feeder(in);
      test::check_formulas(result.trace);
      check_finite(result);
    }
  }

  TEST_CASE("Feeder: ids are unique, six words at most in a label, sources are named") {
    const FeederResult result = feeder(usual());
    for (std::size_t i = 0; i < result.trace.checks.size(); ++i) {
      const Check& check = result.trace.checks[i];
      CAPTURE(check.id);
      CHECK(std::count(check.label.begin(), check.label.end(), ' ') <= 5);
      CHECK_FALSE(check.source->id.empty());
      for (std::size_t j = 0; j < i; ++j) CHECK(check.id != result.trace.checks[j].id);
      for (const Change& change : check.changes) CHECK(find_field(change.field) != nullptr);
    }
    for (std::size_t i = 0; i < result.trace.steps.size(); ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        CHECK(result.trace.steps[i].id != result.trace.steps[j].id);
      }
    }
  }

  TEST_CASE("Feeder: what it chooses passes when something on the shelf does") {
    const FeederResult result = feeder(usual());
    REQUIRE(result.found);
    for (const Check& check : result.trace.checks) {
      CAPTURE(check.id);
      CHECK(check.utilisation() <= 1.0);
    }
    CHECK(result.device.id == "breaker-60");
    CHECK(result.device_count == 1);
  }

  TEST_CASE("Feeder: no pair of less copper serves") {
    // A bank whose short circuits every pair outlives: that is a check of calc/protection.
    const auto soft = [](FeederInput in) {
      in.strongest = in.weakest = {.open_circuit_V = 37.0, .resistance_ohm = 0.05};
      return in;
    };
    const FeederInput in = soft(usual());
    const FeederResult chosen = feeder(in);
    const auto copper = [&](const FeederResult& r) {
      return in.run_m * find_conductor(r.conductor)->area_mm2 +
             in.tail_m * find_conductor(r.tail_conductor)->area_mm2;
    };
    for (const Conductor& run : conductors()) {
      for (const Conductor& tail : conductors()) {
        if (run.metric != tail.metric || tail.area_mm2 > run.area_mm2) continue;
        const FeederResult other = feeder(soft(with_cables(run.label, tail.label)));
        if (copper(other) >= copper(chosen)) continue;
        bool passes = true;
        for (const Check& check : other.trace.checks) passes &= check.utilisation() <= 1.0;
        CAPTURE(run.label);
        CAPTURE(tail.label);
        CHECK_FALSE(passes);
      }
    }
  }

  TEST_CASE("Feeder: the volts round the loop add up") {
    for (const FeederInput& in : spread()) {
      const FeederResult r = feeder(in);
      double ohm = 0.0;
      double drop_V = 0.0;
      double loss_W = 0.0;
      for (const FeederSegment& segment : r.segments) {
        ohm += segment.resistance_ohm;
        drop_V += segment.drop_V;
        loss_W += segment.loss_W;
      }
      CHECK(drop_V == rel(r.drop_V, 1e-9));
      CHECK(loss_W == rel(r.loss_W, 1e-9));
      CHECK(ohm * r.current_A == rel(r.drop_V, 1e-9));
      REQUIRE(r.nodes.size() == r.segments.size() + 2);
      CHECK(r.nodes.front().voltage_V == rel(r.motor_V + r.drop_V, 1e-9));
      CHECK(r.nodes.back().voltage_V == 0.0);
      for (std::size_t i = 1; i < r.nodes.size(); ++i) {
        CHECK(r.nodes[i].voltage_V <= r.nodes[i - 1].voltage_V);
      }
      // Energy: what the bank gives is what motor, feeder and bank take.
      CHECK(in.open_circuit_end_V * r.current_A >= r.motor_V * r.current_A + r.loss_W);
    }
  }

  TEST_CASE("Feeder: a longer or thinner cable never drops less") {
    double last_V = 0.0;
    for (double run_m = 0.5; run_m < 20.0; run_m += 0.5) {
      FeederInput in = with_cables("4 AWG", "8 AWG");
      in.run_m = run_m;
      const double drop_V = feeder(in).drop_V;
      CHECK(drop_V > last_V);
      last_V = drop_V;
    }
    last_V = 1e9;
    for (const std::string_view run : {"8 AWG", "6 AWG", "4 AWG", "2 AWG", "1/0 AWG"}) {
      const double drop_V = feeder(with_cables(run, "8 AWG")).drop_V;
      CHECK(drop_V < last_V);
      last_V = drop_V;
    }
  }

  TEST_CASE("Feeder: more power, warmer air or a worse joint never raise the motor's volts") {
    const FeederInput base = with_cables("4 AWG", "8 AWG");
    const double base_V = feeder(base).motor_V;
    FeederInput stronger = base;
    stronger.power_full_W *= 1.2;
    FeederInput warmer = base;
    warmer.ambient_C = 50.0;
    FeederInput rougher = base;
    rougher.plug_ohm *= 5.0;
    CHECK(feeder(stronger).motor_V < base_V);
    CHECK(feeder(warmer).motor_V < base_V);
    CHECK(feeder(rougher).motor_V < base_V);
  }

  TEST_CASE("Feeder: a stricter drop never takes less copper") {
    double last_mm2 = 0.0;
    for (const double allowed_frac : {0.1, 0.06, 0.04, 0.03, 0.02, 0.015}) {
      FeederInput in = usual();
      in.allowed_drop_frac = allowed_frac;
      std::erase_if(in.cables, [](const CableOffer& o) { return o.conductor.ends_with("mm2"); });
      const FeederResult r = feeder(in);
      CAPTURE(allowed_frac);
      const double mm2 =
          5.5 * find_conductor(r.conductor)->area_mm2 + find_conductor(r.tail_conductor)->area_mm2;
      CHECK(mm2 >= last_mm2);
      last_mm2 = mm2;
    }
  }

  TEST_CASE("Feeder: placement on and over each limit") {
    struct Row {
      double distance_in = 0.0;
      bool sheathed = false;
      bool passes = false;
    };
    for (const Row& row : {Row{7.0, false, true}, Row{7.1, false, false}, Row{60.0, true, true},
                           Row{72.0, true, true}, Row{80.0, true, false}}) {
      CAPTURE(row.distance_in);
      FeederInput in = usual();
      in.device_distance_m = row.distance_in * 0.0254;
      in.sheathed = row.sheathed;
      const FeederResult r = feeder(in);
      CHECK((verdict(r, "feeder.placement") != Verdict::fail) == row.passes);
    }
    FeederInput bare = usual();
    bare.device_distance_m = 1.0;
    bare.sheathed = false;
    CHECK(find_check(feeder(bare), "feeder.placement")->changes.front().field == "feeder.sheathed");
  }

  TEST_CASE("Feeder: a floating bank has devices in both poles, a grounded one in one") {
    FeederInput in = with_cables("4 AWG", "8 AWG");
    for (ProtectiveDevice& device : in.devices) device.poles = 1;
    const FeederResult floating = feeder(in);
    in.floating = false;
    const FeederResult grounded = feeder(in);
    CHECK(floating.device_count == 2);
    CHECK(grounded.device_count == 1);
    CHECK(floating.nodes.size() == grounded.nodes.size() + 1);
    CHECK(floating.drop_V > grounded.drop_V);
  }

  TEST_CASE("Feeder: with petrol aboard the device is ignition-protected, or the check fails") {
    FeederInput in = usual();
    CHECK(feeder(in).device.ignition_protected);
    for (ProtectiveDevice& device : in.devices) device.ignition_protected = false;
    CHECK(verdict(feeder(in), "feeder.ignition") == Verdict::fail);
    in.petrol = false;
    CHECK(find_check(feeder(in), "feeder.ignition") == nullptr);
  }

  TEST_CASE("Feeder: a thin cable fails and asks to be chosen again") {
    const FeederResult r = feeder(with_cables("14 AWG", "14 AWG"));
    for (const std::string_view id : {"feeder.ampacity", "feeder.tail_ampacity", "feeder.drop"}) {
      CAPTURE(id);
      CHECK(verdict(r, id) == Verdict::fail);
      CHECK(find_check(r, id)->changes.front().clear);
    }
  }

  TEST_CASE("Feeder: a device above the cable's ampacity fails, on and over the next size") {
    FeederInput in = with_cables("6 AWG", "6 AWG");
    for (const double rating_A : {125.0, 150.0}) {
      in.devices = {shelf_of_devices().front()};
      in.devices.front().rating_A = rating_A;
      CHECK((verdict(feeder(in), "feeder.device_rating") == Verdict::fail) == (rating_A > 125.0));
    }
  }

  TEST_CASE("Feeder: a motor beyond what the loop delivers fails and stays finite") {
    FeederInput in = with_cables("14 AWG", "14 AWG");
    in.run_m = 30.0;
    in.power_full_W = 12000.0;
    const FeederResult r = feeder(in);
    CHECK(verdict(r, "feeder.power_limit") == Verdict::fail);
    check_finite(r);
    test::check_formulas(r.trace);
  }

  TEST_CASE("Feeder: nothing on offer is an answer") {
    FeederInput in = usual();
    in.cables.clear();
    CHECK_FALSE(feeder(in).found);
    CHECK(verdict(feeder(in), "feeder.cable") == Verdict::fail);

    in = usual();
    in.tail_cables = {{.id = "unknown", .conductor = "7 AWG"}};
    CHECK_FALSE(feeder(in).found);
    in.tail_m = 0.0;  // then none is needed
    CHECK(feeder(in).found);
    CHECK(feeder(in).tail_cable.id.empty());

    in = usual();
    in.devices.clear();
    CHECK_FALSE(feeder(in).found);
    CHECK(verdict(feeder(in), "feeder.device") == Verdict::fail);
    check_finite(feeder(in));

    const FeederResult no_bank = feeder({.cables = shelf_of_cables()});
    CHECK_FALSE(no_bank.found);
    CHECK(verdict(no_bank, "feeder.bank") == Verdict::fail);
    check_finite(no_bank);
  }

  TEST_CASE("Feeder: finite at the corners of its fields") {
    for (const double run_m : {0.2, 30.0}) {
      for (const double ambient_C : {0.0, 70.0}) {
        for (const double insulation_C : {20.0, 60.0, 105.0, 200.0}) {
          for (const int bundled_count : {2, 30}) {
            FeederInput in = usual();
            in.run_m = run_m;
            in.tail_m = 5.0;
            in.jumper_m = 5.0;
            in.ambient_C = ambient_C;
            in.bundled_count = bundled_count;
            in.lug_ohm = 0.01;
            in.plug_ohm = 0.05;
            in.device_distance_m = 5.0;
            in.engine_space = ambient_C > 0.0;
            for (CableOffer& offer : in.cables) offer.insulation_C = insulation_C;
            for (CableOffer& offer : in.tail_cables) offer.insulation_C = insulation_C;
            const FeederResult r = feeder(in);
            check_finite(r);
            test::check_formulas(r.trace);
          }
        }
      }
    }
  }

  TEST_CASE("Feeder: estimates fill every number and leave the choices open") {
    Job job;
    job.boat.length_m = {7.0, Origin::given};
    Trace trace;
    estimate_feeder(job, trace);
    CHECK(job.feeder.run_m.value == rel(4.85, 1e-9));
    for (const Field& field : all_fields()) {
      if (field.section != "feeder") continue;
      CAPTURE(field.key);
      const bool choice = field.access.is_text();  // ids, and the circuit as text
      CHECK((field.access.origin(job) == Origin::estimated) == !choice);
      if (choice) continue;
      const double value = field.access.get(job);
      CHECK(value >= field.min);
      CHECK(value <= field.max);
    }
    test::check_formulas(trace);

    job.feeder.run_m = {9.0, Origin::given};
    Trace again;
    estimate_feeder(job, again);
    CHECK(job.feeder.run_m.value == 9.0);
  }
}
