// What must hold for every fuse, breaker and feeder.

#include "calc/protection/protection.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "calc/fault.h"
#include "data/conductors.h"
#include "draw/apart.h"
#include "draw/trip_curves.h"
#include "support.h"

using namespace thole;

namespace {

std::vector<double> steps(double from, double to, double factor) {
  std::vector<double> values;
  for (double value = from; value < to; value *= factor) values.push_back(value);
  return values;
}

ProtectedLead lead_of(const Conductor& conductor, double length_m) {
  return {.label = "run",
          .area_mm2 = conductor.area_mm2,
          .ohm_per_m = conductor.tinned_ohm_per_m,
          .length_m = length_m,
          .ampacity_A = ampacity_A(conductor.label, 105.0),
          .start_C = 70.0};
}

ProtectionDevice device_of(DeviceClass device_class, double rating_A) {
  return {.label = std::string(curve_of(device_class).label),
          .device_class = device_class,
          .rating_A = rating_A,
          .voltage_V = 80.0,
          .interrupt_A = 20e3,
          .resistance_ohm = 0.05 / rating_A,
          .pole_count = 2};
}

ProtectionInput usual(Chemistry chemistry = Chemistry::agm) {
  return {.bank = {.block = {.chemistry = chemistry,
                             .nominal_V = is_lead(chemistry) ? 12.0 : 12.8,
                             .capacity_Ah = 100.0,
                             .continuous_A = is_lead(chemistry) ? 0.0 : 100.0},
                   .series_count = 3},
          .jumpers_ohm = 1e-3,
          .charge_V = 44.1,
          .devices = {device_of(DeviceClass::bolt_fuse, 150.0),
                      device_of(DeviceClass::magnetic_medium, 60.0)},
          .run = lead_of(*find_conductor("4 AWG"), 5.5),
          .tail = lead_of(*find_conductor("8 AWG"), 0.6),
          .motor = {.continuous_A = 45.0,
                    .start_A = 90.0,
                    .start_s = 0.5,
                    .stall_A = 100.0,
                    .stall_s = 2.0,
                    .stops_itself = false}};
}

std::vector<ProtectionInput> spread() {
  std::vector<ProtectionInput> inputs;
  for (const Chemistry chemistry :
       {Chemistry::flooded, Chemistry::agm, Chemistry::gel, Chemistry::lifepo4}) {
    for (const char* size : {"8 AWG", "4 AWG", "1/0 AWG"}) {
      for (const double length_m : {0.5, 6.0, 25.0}) {
        for (const DeviceCurve& curve : device_curves()) {
          ProtectionInput in = usual(chemistry);
          in.run = lead_of(*find_conductor(size), length_m);
          in.devices.back() = device_of(curve.device_class, 60.0);
          in.air = {.cold_C = -10.0, .hot_C = 50.0};
          inputs.push_back(in);
        }
      }
    }
  }
  return inputs;
}

const Check& check_of(const ProtectionResult& result, FindingKind kind) {
  const Finding* finding = find(result, kind);
  REQUIRE(finding != nullptr);
  return finding->check;
}

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("more current never opens a device later, and soonest is never after latest") {
    for (const DeviceCurve& curve : device_curves()) {
      for (const DeviceAir air : {DeviceAir{}, DeviceAir{-20.0, 60.0}}) {
        CAPTURE(curve.label);
        OpeningBand before;
        for (const double ratio : steps(0.1, 200.0, 1.003)) {
          CAPTURE(ratio);
          const OpeningBand band = opening_band(curve, ratio, air);
          CHECK(band.shortest_s <= band.longest_s);
          CHECK(band.shortest_s <= before.shortest_s);
          CHECK(band.longest_s <= before.longest_s);
          CHECK(band.shortest_s > 0.0);
          before = band;
        }
        CHECK(opening_band(curve, holds_ratio(curve, air), air).shortest_s == kMayNeverOpen_s);
        CHECK(opening_band(curve, opens_ratio(curve, air), air).longest_s <= 7200.0);
        CHECK(opening_band(curve, 0.999 * opens_ratio(curve, air), air).longest_s ==
              kMayNeverOpen_s);
      }
    }
  }

  TEST_CASE("heat and cold widen the band of a thermal breaker and of no other") {
    for (const DeviceCurve& curve : device_curves()) {
      CAPTURE(curve.label);
      const bool thermal = curve.device_class == DeviceClass::thermal_breaker;
      const DeviceAir rough{-10.0, 60.0};
      const OpeningBand mild = opening_band(curve, 1.7);
      const OpeningBand wide = opening_band(curve, 1.7, rough);
      CHECK((wide.shortest_s < mild.shortest_s) == thermal);
      CHECK((wide.longest_s > mild.longest_s) == thermal);
      CHECK((holds_ratio(curve, rough) < holds_ratio(curve)) == thermal);
    }
  }

  TEST_CASE("a lead stands at least the adiabatic time, and nearly no longer in a hard short") {
    for (const char* size : {"10 AWG", "6 AWG", "2 AWG", "2/0 AWG"}) {
      const ProtectedLead lead = lead_of(*find_conductor(size), 5.0);
      const double k = adiabatic_factor(lead.start_C, lead.end_C);
      double before_s = kMayNeverOpen_s;
      for (const double current_A : steps(0.5 * lead.ampacity_A, 20e3, 1.05)) {
        CAPTURE(size);
        CAPTURE(current_A);
        const double stands_s = lead_withstand_s(lead, current_A);
        const double adiabatic_s = withstand_s(k, lead.area_mm2, current_A);
        CHECK(stands_s >= std::min(adiabatic_s, kMayNeverOpen_s) * (1.0 - 1e-12));
        if (current_A > 20.0 * lead.ampacity_A) CHECK(stands_s == rel(adiabatic_s, 0.01));
        CHECK(stands_s <= before_s);
        before_s = stands_s;
      }
    }
  }

  TEST_CASE("a short circuit farther away draws less, and the weakest less than the strongest") {
    for (const ProtectionInput& in : spread()) {
      const FaultRanges faults = fault_ranges(in);
      CHECK(faults.posts.least_A > faults.stud.least_A);
      CHECK(faults.stud.least_A > faults.plug.least_A);
      CHECK(faults.posts.most_A > faults.stud.most_A);
      CHECK(faults.stud.most_A > faults.plug.most_A);
      CHECK(faults.posts.least_A < faults.posts.most_A);
      CHECK(faults.plug.least_A < faults.plug.most_A);
      CHECK(faults.plug.least_A > 0.0);
    }
  }

  TEST_CASE("an older, colder or flatter bank gives less, a larger or a parallel one more") {
    const FaultRange plain = fault_ranges(usual()).plug;
    ProtectionInput in = usual();
    in.bank.age_factor = 1.5;
    CHECK(fault_ranges(in).plug.least_A < plain.least_A);
    CHECK(fault_ranges(in).plug.most_A == plain.most_A);  // once it was new
    in = usual();
    in.bank.cold_C = -15.0;
    CHECK(fault_ranges(in).plug.least_A < plain.least_A);
    in = usual();
    in.bank.flat_charge_frac = 0.5;
    CHECK(fault_ranges(in).plug.least_A > plain.least_A);
    in = usual();
    in.bank.parallel_count = 2;
    CHECK(fault_ranges(in).plug.least_A > plain.least_A);
    CHECK(fault_ranges(in).plug.most_A > plain.most_A);
    in = usual();
    in.bank.block.capacity_Ah = 200.0;
    CHECK(fault_ranges(in).plug.most_A > plain.most_A);
  }

  TEST_CASE("no current of the whole range is worse than the one that is named") {
    for (const ProtectionInput& in : spread()) {
      const ProtectionResult result = protection(in);
      const Finding& run = *find(result, FindingKind::run_stands);
      CAPTURE(run.at_A);
      CAPTURE(in.devices.back().label);
      CHECK(run.at_A >= result.faults.plug.least_A);
      CHECK(run.at_A <= result.faults.posts.most_A);
      for (const double current_A :
           steps(result.faults.plug.least_A, result.faults.posts.most_A, 1.01)) {
        CAPTURE(current_A);
        const double use =
            opening_in_series(in.devices, in.devices.size(), current_A, in.air).longest_s /
            lead_withstand_s(in.run, current_A);
        // Between two steps the withstand bends a little.
        CHECK(use <= run.check.utilisation() * 1.03);
      }
    }
  }

  TEST_CASE("every finding is finite, has an id of its own, a source and a remedy") {
    for (const ProtectionInput& in : spread()) {
      const ProtectionResult result = protection(in);
      CHECK(result.verdict != Verdict::not_evaluated);
      for (const Finding& finding : result.findings) {
        CAPTURE(finding.check.id);
        CHECK(std::isfinite(finding.check.actual));
        CHECK(std::isfinite(finding.check.limit));
        CHECK(finding.check.verdict() != Verdict::not_evaluated);
        CHECK_FALSE(finding.check.remedy.empty());
        CHECK_FALSE(finding.check.source->id.empty());
        CHECK(std::count_if(result.findings.begin(), result.findings.end(),
                            [&](const Finding& other) { return other.kind == finding.kind; }) == 1);
        // A danger that fails fails the whole; a nuisance does not.
        if (!finding.check.annoys && finding.check.verdict() == Verdict::fail) {
          CHECK(result.verdict == Verdict::fail);
        }
      }
    }
  }

  TEST_CASE("short circuits by hand: block, copper warm or at 20 C, joints half or double") {
    // 100 Ah AGM, 12.99 V and 4 milliohm: a quarter less when strong, a quarter more when weak.
    FaultBank bank{.block = {.chemistry = Chemistry::agm, .nominal_V = 12.0, .capacity_Ah = 100.0},
                   .age_factor = 1.0,
                   .cold_C = 25.0,
                   .flat_charge_frac = 1.0};
    const FaultPath path{.copper_ohm = 0.010, .joints_ohm = 0.002, .hot_C = 70.0};
    CHECK(fault_range(bank, path).most_A == rel(12.99 / 0.014, 1e-9));
    CHECK(fault_range(bank, path).least_A == rel(12.99 / (0.005 + 0.011965 + 0.004), 1e-9));
    bank.cold_C = -18.0;  // twice the resistance
    CHECK(fault_range(bank, path).least_A == rel(12.99 / (0.010 + 0.011965 + 0.004), 1e-9));
    bank.age_factor = 1.25;  // half as much again
    CHECK(fault_range(bank, path).least_A == rel(12.99 / (0.015 + 0.011965 + 0.004), 1e-9));
    bank.block.chemistry = Chemistry::lifepo4;
    bank.block.continuous_A = 100.0;
    CHECK(electronics_A(bank) == 200.0);
    bank.parallel_count = 2;  // 80 % of twice 200 A
    CHECK(electronics_A(bank) == rel(320.0, 1e-12));
  }

  TEST_CASE("what lies between posts, stud and plug, counted by hand") {
    ProtectionInput in = usual();
    in.tail.start_C = 90.0;
    for (ProtectionDevice& device : in.devices) device.resistance_ohm = 1e-3;
    const FaultRanges faults = fault_ranges(in);
    // Run of 11 m, two devices in both poles with two lugs each, a lug at each post and stud.
    const double run_ohm = 1e-3 + 11.0 * 0.8660e-3;
    const double joints_ohm = 4.0 * 1e-3 + 8.0 * 1e-4 + 4.0 * 1e-4;
    const FaultRange stud =
        fault_range(in.bank, {.copper_ohm = run_ohm, .joints_ohm = joints_ohm, .hot_C = 70.0});
    CHECK(faults.stud.least_A == rel(stud.least_A, 1e-9));
    CHECK(faults.stud.most_A == rel(stud.most_A, 1e-9));
    // The tail's two lugs at the stud, two poles of the plug; the warmer of the two cables counts.
    const FaultRange plug = fault_range(in.bank, {.copper_ohm = run_ohm + 1.2 * 2.183e-3,
                                                  .joints_ohm = joints_ohm + 2e-4 + 2.0 * 5e-4,
                                                  .hot_C = 90.0});
    CHECK(faults.plug.least_A == rel(plug.least_A, 1e-9));
    CHECK(faults.plug.most_A == rel(plug.most_A, 1e-9));
  }

  TEST_CASE("the tail is held against everything between plug and stud, the run up to the posts") {
    for (const ProtectionInput& in : spread()) {
      const ProtectionResult result = protection(in);
      const Finding& tail = *find(result, FindingKind::tail_stands);
      CHECK(tail.at_A >= result.faults.plug.least_A);
      CHECK(tail.at_A <= result.faults.stud.most_A);
      for (const double current_A :
           steps(result.faults.plug.least_A, result.faults.stud.most_A, 1.02)) {
        CAPTURE(current_A);
        const double use =
            opening_in_series(in.devices, in.devices.size(), current_A, in.air).longest_s /
            lead_withstand_s(in.tail, current_A);
        CHECK(use <= tail.check.utilisation() * 1.03);
      }
    }
  }

  TEST_CASE("without a device nothing protects the feeder") {
    ProtectionInput in = usual();
    in.devices.clear();
    const ProtectionResult result = protection(in);
    CHECK(result.verdict == Verdict::fail);
    CHECK(check_of(result, FindingKind::device).verdict() == Verdict::fail);
  }

  TEST_CASE("thicker cable never stands less, one device more never clears later") {
    double before_s = 0.0;
    for (const char* size : {"10 AWG", "8 AWG", "6 AWG", "4 AWG", "2 AWG", "1/0 AWG"}) {
      const double stands_s = lead_withstand_s(lead_of(*find_conductor(size), 5.0), 1000.0);
      CHECK(stands_s > before_s);
      before_s = stands_s;
    }
    const ProtectionInput in = usual();
    for (const double current_A : steps(10.0, 20e3, 1.02)) {
      CAPTURE(current_A);
      const OpeningBand one = opening_in_series(in.devices, 1, current_A, in.air);
      const OpeningBand two = opening_in_series(in.devices, 2, current_A, in.air);
      CHECK(two.longest_s <= one.longest_s);
      CHECK(two.shortest_s <= one.shortest_s);
    }
  }

  TEST_CASE("selective up to the current that is named, and no farther") {
    for (const double fuse_A : {80.0, 100.0, 150.0, 200.0, 300.0, 500.0}) {
      for (const DeviceClass downstream :
           {DeviceClass::magnetic_short, DeviceClass::magnetic_medium, DeviceClass::bolt_fuse}) {
        ProtectionInput in = usual();
        in.devices = {device_of(DeviceClass::bolt_fuse, fuse_A), device_of(downstream, 50.0)};
        const ProtectionResult result = protection(in);
        CAPTURE(fuse_A);
        CAPTURE(result.selective_to_A);
        const auto clear = [&](double current_A) {
          return opening_in_series({in.devices[0]}, 1, current_A, in.air).shortest_s >
                 opening_in_series({in.devices[1]}, 1, current_A, in.air).longest_s;
        };
        const double from_A = 1.35 * 50.0 * 1.0001;
        for (const double current_A : steps(from_A, 0.999 * result.selective_to_A, 1.01)) {
          CAPTURE(current_A);
          CHECK(clear(current_A));
        }
        if (result.selective_to_A > from_A && result.selective_to_A < result.faults.stud.most_A) {
          CHECK_FALSE(clear(1.001 * result.selective_to_A));
        }
      }
    }
  }

  TEST_CASE("a larger fuse at the bank is selective farther") {
    double before_A = 0.0;
    for (const double fuse_A : {80.0, 150.0, 300.0, 500.0}) {
      ProtectionInput in = usual();
      in.devices.front().rating_A = fuse_A;
      const double to_A = protection(in).selective_to_A;
      CHECK(to_A >= before_A);
      before_A = to_A;
    }
    CHECK(before_A > 0.0);
  }

  TEST_CASE("a longer stall, or more current, never rides through better") {
    ProtectionInput in = usual();
    double before = 0.0;
    for (const double stall_A : steps(40.0, 600.0, 1.1)) {
      in.motor.stall_A = stall_A;
      const double use = check_of(protection(in), FindingKind::stall).utilisation();
      CHECK(use >= before);
      before = use;
    }
    CHECK(before > 1.0);
    in.motor.stall_A = 150.0;
    in.motor.stall_s = 0.1;
    CHECK(check_of(protection(in), FindingKind::stall).verdict() == Verdict::pass);
    in.motor.stall_s = 60.0;
    CHECK(check_of(protection(in), FindingKind::stall).utilisation() > 1.0);
    CHECK(check_of(protection(in), FindingKind::stall).verdict() == Verdict::marginal);  // it annoys
  }

  TEST_CASE("a device that opens on the start fails the feeder, what only annoys is close at worst") {
    ProtectionInput in = usual(Chemistry::lifepo4);
    in.motor.start_A = 600.0;
    in.motor.start_s = 30.0;
    CHECK(check_of(protection(in), FindingKind::start).verdict() == Verdict::fail);
    CHECK(protection(in).verdict == Verdict::fail);

    in = usual(Chemistry::lifepo4);
    in.motor.stall_A = 900.0;
    in.motor.stall_s = 20.0;
    const ProtectionResult result = protection(in);
    for (const FindingKind kind : {FindingKind::stall, FindingKind::electronics}) {
      const Check& check = check_of(result, kind);
      CHECK(check.utilisation() > 1.0);
      CHECK(check.verdict() == Verdict::marginal);
      CHECK_FALSE(check.changes.empty());
    }
    CHECK(result.verdict == Verdict::marginal);
    // All but the device itself, which the feeder's stage asks for, are checks of the design.
    CHECK(result.trace.checks.size() + 1 == result.findings.size());
  }

  TEST_CASE("limits: reach, poles, overload and a locked motor, just on either side") {
    ProtectionInput in = usual();
    const double least_A = fault_ranges(in).plug.least_A;
    // Fuse and breaker alone, so that no other device opens it; its own resistance follows the
    // rating.
    in.devices = {device_of(DeviceClass::magnetic_medium, 60.0)};
    in.devices.front().resistance_ohm = 0.0;
    const double alone_A = fault_ranges(in).plug.least_A;
    CHECK(alone_A > least_A);
    in.devices.front().rating_A = alone_A / 1.35 * 0.999;
    CHECK(check_of(protection(in), FindingKind::reach).utilisation() < 1.0);
    in.devices.front().rating_A = alone_A / 1.35 * 1.001;
    CHECK(check_of(protection(in), FindingKind::reach).utilisation() > 1.0);

    in = usual();
    in.motor.stall_A = 1.35 * 60.0 * 0.999;
    CHECK(check_of(protection(in), FindingKind::locked_rotor).verdict() == Verdict::fail);
    in.motor.stall_A = 1.35 * 60.0 * 1.001;
    CHECK(check_of(protection(in), FindingKind::locked_rotor).verdict() != Verdict::fail);
    in.motor.stops_itself = true;
    CHECK(find(protection(in), FindingKind::locked_rotor) == nullptr);

    in = usual();
    in.devices = {device_of(DeviceClass::magnetic_medium, 60.0)};
    in.run.ampacity_A = 1.35 * 60.0 / 1.45 * 1.001;
    in.tail.ampacity_A = in.run.ampacity_A;
    CHECK(check_of(protection(in), FindingKind::overload).utilisation() <= 1.0);
    in.run.ampacity_A *= 0.998;
    CHECK(check_of(protection(in), FindingKind::overload).utilisation() > 1.0);
  }

  TEST_CASE("a lithium bank's own cut-off is held against a stall, and gets no credit") {
    ProtectionInput in = usual(Chemistry::lifepo4);
    in.motor.stall_A = 199.0;
    CHECK(check_of(protection(in), FindingKind::electronics).utilisation() < 1.0);
    in.motor.stall_A = 201.0;
    CHECK(check_of(protection(in), FindingKind::electronics).utilisation() > 1.0);
    const FaultRanges with = fault_ranges(in);
    in.bank.block.continuous_A = 0.0;
    CHECK(fault_ranges(in).posts.most_A == with.posts.most_A);
    CHECK(find(protection(in), FindingKind::electronics) == nullptr);
  }

  TEST_CASE("the picture of the curves: inside its sheet, named, and texts apart at any width") {
    for (const ProtectionInput& in : spread()) {
      const Drawing drawing = trip_curves_picture(in, protection(in), System::metric);
      CAPTURE(drawing.description);
      for (const Shape& shape : drawing.shapes) {
        CHECK(shape.points.size() >= 2);
        for (const Point& point : shape.points) {
          CHECK(point.x >= drawing.low.x);
          CHECK(point.x <= drawing.high.x);
          CHECK(point.y >= drawing.low.y);
          CHECK(point.y <= drawing.high.y);
        }
      }
      for (const ProtectionDevice& device : in.devices) {
        CHECK(std::any_of(drawing.labels.begin(), drawing.labels.end(),
                          [&](const Label& label) { return label.text == device.label; }));
        CHECK(drawing.description.find(device.label) != std::string::npos);
      }
      for (const double width : {288.0, 380.0, 568.0, 900.0}) {
        const Size sheet{width, height_for(drawing, width)};
        const Frame frame(drawing, sheet);
        std::vector<TextBox> boxes;
        for (const Label& label : drawing.labels) {
          const Size size{8.0 * static_cast<double>(label.text.size()), 20.0};
          Point centre = frame.at(label.at);
          centre.x += (label.align == Align::left    ? 0.5
                       : label.align == Align::right ? -0.5
                                                     : 0.0) *
                      size.width;
          boxes.push_back({centre, size});
        }
        keep_apart(boxes, sheet);
        for (std::size_t i = 0; i < boxes.size(); ++i) {
          CAPTURE(width);
          CAPTURE(drawing.labels[i].text);
          CHECK(boxes[i].centre.x - 0.5 * boxes[i].size.width >= 0.0);
          CHECK(boxes[i].centre.x + 0.5 * boxes[i].size.width <= width);
          for (std::size_t k = 0; k < i; ++k) {
            CAPTURE(drawing.labels[k].text);
            const bool apart = std::abs(boxes[i].centre.x - boxes[k].centre.x) >=
                                   0.5 * (boxes[i].size.width + boxes[k].size.width) ||
                               std::abs(boxes[i].centre.y - boxes[k].centre.y) >= 0.79 * 20.0;
            CHECK(apart);
          }
        }
      }
    }
  }

  TEST_CASE("the picture's edges are the device's band") {
    ProtectionInput in = usual();
    in.devices.resize(1);
    const Drawing drawing = trip_curves_picture(in, protection(in), System::metric);
    int found = 0;
    for (const Shape& shape : drawing.shapes) {
      if (shape.line != Line::outline || shape.closed) continue;
      ++found;
      for (std::size_t i = 1; i + 1 < shape.points.size(); ++i) {
        const Point point = shape.points[i];
        const OpeningBand band = opening_in_series(in.devices, 1, std::pow(10.0, point.x), in.air);
        CHECK(std::pow(10.0, point.y) == rel(band.longest_s, 1e-6));
      }
    }
    CHECK(found == 1);
  }
}
