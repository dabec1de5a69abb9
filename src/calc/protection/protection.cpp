#include "calc/protection/protection.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <utility>

#include "base/number.h"
#include "base/order.h"
#include "calc/fault.h"
#include "data/conductors.h"
#include "data/sources.h"
#include "data/sources_power.h"

namespace thole {
namespace {

constexpr double kBeside = 1e-9;          // share by which an edge's two sides are told apart
constexpr int kSteps = 16;                // between two bends
constexpr double kOverload_ratio = 1.45;  // kOverload: of the ampacity

bool has_tail(const ProtectionInput& in) { return in.tail.length_m > 0.0; }

double copper_ohm(const ProtectedLead& lead) { return 2.0 * lead.length_m * lead.ohm_per_m; }

// What a short circuit flows through, by its place.
struct Paths {
  FaultPath posts{};
  FaultPath stud{};
  FaultPath plug{};
};

Paths paths_of(const ProtectionInput& in) {
  FaultPath path{.copper_ohm = in.jumpers_ohm, .hot_C = in.run.start_C};
  Paths paths{.posts = path};
  // A lug on each post and at the run's far end, two at each device; without a tail the run ends in
  // the plug.
  path.copper_ohm += copper_ohm(in.run);
  path.joints_ohm += (has_tail(in) ? 4.0 : 2.0) * in.lug_ohm;
  for (const ProtectionDevice& device : in.devices) {
    const int poles = std::clamp(device.pole_count, 1, 2);
    path.joints_ohm += poles * (device.resistance_ohm + 2.0 * in.lug_ohm);
  }
  paths.stud = path;
  if (has_tail(in)) {
    path.copper_ohm += copper_ohm(in.tail);
    path.joints_ohm += 2.0 * in.lug_ohm;
    path.hot_C = std::max(path.hot_C, in.tail.start_C);
  }
  path.joints_ohm += 2.0 * in.plug_ohm;
  paths.plug = path;
  return paths;
}

// Bends of these curves inside the range, its ends, and both sides of each bend: a curve may step.
std::vector<double> corners(const std::vector<ProtectionDevice>& devices, FaultRange range,
                            DeviceAir air) {
  std::vector<double> bends_A;
  for (const ProtectionDevice& device : devices) {
    for (const double ratio : bends(curve_of(device.device_class), air)) {
      bends_A.push_back(ratio * device.rating_A);
    }
  }
  std::vector<double> currents_A{range.least_A, range.most_A};
  for (const double bend_A : bends_A) {
    for (const double side_A : {bend_A * (1.0 - kBeside), bend_A, bend_A * (1.0 + kBeside)}) {
      if (side_A > range.least_A && side_A < range.most_A) currents_A.push_back(side_A);
    }
  }
  currents_A = sorted(std::move(currents_A), std::less<>());
  return currents_A;
}

// Where the lines of two functions cross between neighbouring currents, both lines straight on
// logarithmic scales; NaN when they do not.
template <class F, class G>
double crossing_A(const F& f, const G& g, double from_A, double to_A) {
  const double before = std::log(f(from_A) / g(from_A));
  const double after = std::log(f(to_A) / g(to_A));
  if (!(before * after < 0.0)) return std::numeric_limits<double>::quiet_NaN();
  return from_A * std::pow(to_A / from_A, before / (before - after));
}

double longest_s(const ProtectionDevice& device, double current_A, DeviceAir air) {
  return opening_band(curve_of(device.device_class), current_A / device.rating_A, air).longest_s;
}
double shortest_s(const ProtectionDevice& device, double current_A, DeviceAir air) {
  return opening_band(curve_of(device.device_class), current_A / device.rating_A, air).shortest_s;
}

// A lead's terms that no current changes: lead_withstand_s() in two steps.
class Heating {
 public:
  explicit Heating(const ProtectedLead& lead)
      : ampacity_A_(lead.ampacity_A),
        before_K_(lead.air_C - lead.start_C),
        room_K_(lead.end_C - lead.start_C) {
    if (room_K_ <= 0.0) return;
    const double growth =
        resistance_at(1.0, lead.end_C) / resistance_at(1.0, lead.insulation_C);
    full_K_ = growth * (lead.insulation_C - lead.air_C);  // at the ampacity
    const double k = adiabatic_factor(lead.start_C, lead.end_C);
    tau_s_ = thole::withstand_s(k, lead.area_mm2, lead.ampacity_A) * full_K_ / room_K_;
  }

  double withstand_s(double current_A) const {
    if (room_K_ <= 0.0) return 0.0;
    const double use = current_A / ampacity_A_;
    const double rise_K = before_K_ + full_K_ * use * use;
    if (rise_K <= room_K_) return kMayNeverOpen_s;
    return std::min(kMayNeverOpen_s, -tau_s_ * std::log1p(-room_K_ / rise_K));
  }

 private:
  double ampacity_A_ = 0.0;
  double before_K_ = 0.0;
  double room_K_ = 0.0;
  double full_K_ = 0.0;
  double tau_s_ = 0.0;
};

struct Worst {
  double current_A = 0.0;
  double opening_s = 0.0;
  double withstand_s = 0.0;
  double use = -1.0;
};

// The current of the range that leaves the lead the least time over the devices.
Worst worst_for(const ProtectionInput& in, const ProtectedLead& lead, FaultRange range) {
  std::vector<double> currents_A = corners(in.devices, range, in.air);
  const std::size_t corner_count = currents_A.size();
  for (std::size_t i = 1; i < corner_count; ++i) {
    const double step_ratio = std::pow(currents_A[i] / currents_A[i - 1], 1.0 / kSteps);
    if (step_ratio < 1.0 + kBeside) continue;  // the two sides of a bend
    double between_A = currents_A[i - 1];
    for (int step = 1; step < kSteps; ++step) {
      between_A *= step_ratio;
      currents_A.push_back(between_A);
    }
    for (std::size_t a = 0; a < in.devices.size(); ++a) {
      for (std::size_t b = 0; b < a; ++b) {
        const double cross_A = crossing_A(
            [&](double current_A) { return longest_s(in.devices[a], current_A, in.air); },
            [&](double current_A) { return longest_s(in.devices[b], current_A, in.air); },
            currents_A[i - 1], currents_A[i]);
        if (std::isfinite(cross_A)) currents_A.push_back(cross_A);
      }
    }
  }
  const Heating heating(lead);
  Worst worst;
  for (const double current_A : currents_A) {
    double opening_s = kMayNeverOpen_s;
    for (const ProtectionDevice& device : in.devices) {
      opening_s = std::min(opening_s, longest_s(device, current_A, in.air));
    }
    const double stands_s = heating.withstand_s(current_A);
    const double use = opening_s / stands_s;
    if (use <= worst.use) continue;
    worst = {.current_A = current_A, .opening_s = opening_s, .withstand_s = stands_s, .use = use};
  }
  return worst;
}

// Greatest current up to which the device nearer to the bank surely stays closed until the farther
// one has opened; from where the farther one opens for sure.
double selective_to_A(const ProtectionDevice& upstream, const ProtectionDevice& downstream,
                      double most_A, DeviceAir air) {
  const double from_A = opens_ratio(curve_of(downstream.device_class), air) * downstream.rating_A;
  if (most_A <= from_A) return most_A;
  const std::vector<ProtectionDevice> both{upstream, downstream};
  const std::vector<double> currents_A =
      corners(both, {.least_A = from_A * (1.0 + kBeside), .most_A = most_A}, air);
  const auto stays_s = [&](double current_A) { return shortest_s(upstream, current_A, air); };
  const auto opens_s = [&](double current_A) { return longest_s(downstream, current_A, air); };
  double good_A = 0.0;
  for (std::size_t i = 0; i < currents_A.size(); ++i) {
    if (stays_s(currents_A[i]) > opens_s(currents_A[i])) {
      good_A = currents_A[i];
      continue;
    }
    if (i > 0) {
      const double cross_A = crossing_A(stays_s, opens_s, currents_A[i - 1], currents_A[i]);
      if (std::isfinite(cross_A)) good_A = cross_A;
    }
    break;
  }
  return good_A;
}

// --- findings ------------------------------------------------------------------------------------

Change choose_again(std::string field, std::string label) {
  return {.field = std::move(field), .clear = true, .label = std::move(label)};
}
Change other_device() { return choose_again("feeder.device", "Let Thole choose the device"); }
Change other_run() { return choose_again("feeder.conductor", "Let Thole choose the cable"); }
Change other_tail() { return choose_again("feeder.tail_conductor", "Let Thole choose the tail"); }

struct Findings {
  std::vector<Finding> list{};

  // What may mend the one that was added last.
  void mend(std::vector<Change> changes) { list.back().check.changes = std::move(changes); }
  // It is a nuisance.
  void annoys() { list.back().check.annoys = true; }

  Finding& add(FindingKind kind, Check check, double at_A = 0.0) {
    check.id = "protection." + std::string(word(kind));
    list.push_back({.kind = kind, .check = std::move(check), .at_A = at_A});
    return list.back();
  }
};

void find_device(const ProtectionInput& in, Findings& findings) {
  findings.add(FindingKind::device, {.label = "Feeder without an overcurrent device",
                                     .actual = in.devices.empty() ? 1.0 : 0.0,
                                     .limit = 0.0,
                                     .unit = "count",
                                     .source = kCfrPoles,
                                     .remedy = "Put a fuse or breaker at the bank."});
}

void find_poles(const ProtectionInput& in, Findings& findings) {
  int protected_count = 0;
  for (const ProtectionDevice& device : in.devices) {
    protected_count = std::max(protected_count, device.pole_count);
  }
  const int pole_count = in.floating ? 2 : 1;
  findings.add(FindingKind::poles,
               {.label = "Poles without an overcurrent device",
                .actual = static_cast<double>(std::max(pole_count - protected_count, 0)),
                .limit = 0.0,
                .unit = "count",
                .source = kCfrPoles,
                .remedy = in.floating ? "Neither pole of this bank is tied to the boat: take a "
                                        "two-pole breaker, or a fuse in each pole."
                                      : "Put a fuse or breaker in the positive pole."});
  findings.mend({other_device()});
}

// The device with the least of `margin`.
template <class Margin>
const ProtectionDevice& weakest_device(const ProtectionInput& in, const Margin& margin) {
  return *std::min_element(
      in.devices.begin(), in.devices.end(),
      [&](const ProtectionDevice& a, const ProtectionDevice& b) { return margin(a) < margin(b); });
}

void find_ratings(const ProtectionInput& in, const FaultRanges& faults, Findings& findings) {
  const ProtectionDevice& low =
      weakest_device(in, [](const ProtectionDevice& device) { return device.voltage_V; });
  findings.add(FindingKind::voltage,
               {.label = "Voltage of the " + low.label,
                .actual = low.voltage_V,
                .limit = in.charge_V,
                .unit = "V",
                .comparison = Comparison::at_least,
                .source = kCfrDeviceVoltage,
                .remedy = "Take a " + low.label +
                          " rated for the bank's charge voltage in direct current."});
  findings.mend({other_device()});
  // A fuse that stands first spares what is behind it: it opens before a breaker's contacts part.
  const ProtectionDevice& first =
      curve_of(in.devices.front().device_class).kind == DeviceKind::fuse
          ? in.devices.front()
          : weakest_device(in, [](const ProtectionDevice& device) { return device.interrupt_A; });
  findings.add(FindingKind::interrupt,
               {.label = "Interrupt rating of the " + first.label,
                .actual = first.interrupt_A,
                .limit = interrupt_needed_A(faults.posts.most_A),
                .unit = "A",
                .comparison = Comparison::at_least,
                .source = kE11Interrupt,
                .remedy = "Where it falls short, put a fuse at the bank's post that breaks more than "
                          "that at the charge voltage; Class T fuses break most."},
               faults.posts.most_A);
  findings.mend({other_device()});
}

void find_reach(const ProtectionInput& in, const FaultRanges& faults, Findings& findings) {
  double opens_A = std::numeric_limits<double>::infinity();
  const ProtectionDevice* soonest = nullptr;
  for (const ProtectionDevice& device : in.devices) {
    const double device_A = opens_ratio(curve_of(device.device_class), in.air) * device.rating_A;
    if (device_A >= opens_A) continue;
    opens_A = device_A;
    soonest = &device;
  }
  findings.add(FindingKind::reach,
               {.label = "Weakest short circuit at the plug opens the " + soonest->label,
                .actual = faults.plug.least_A,
                .limit = opens_A,
                .unit = "A",
                .comparison = Comparison::at_least,
                .source = curve_of(soonest->device_class).source,
                .remedy = "Take a device of a lower rating, thicker cable, or a bank of lower "
                          "resistance: an old, cold and flat bank gives too little to open it."},
               faults.plug.least_A);
  findings.mend({other_device(), other_tail(), other_run()});
  double ampacity_A = has_tail(in) ? std::min(in.run.ampacity_A, in.tail.ampacity_A) : in.run.ampacity_A;
  for (const ProtectedLead& lead : in.typed.leads) ampacity_A = std::min(ampacity_A, lead.ampacity_A);
  findings.add(FindingKind::overload,
               {.label = "An overload opens the " + soonest->label,
                .actual = opens_A,
                .limit = kOverload_ratio * ampacity_A,
                .unit = "A",
                .source = kOverload,
                .remedy = "Take a device of a lower rating, or thicker cable and tail."},
               opens_A);
  // E-11 allows a rating one size above the ampacity; this says what such a one no longer does.
  findings.annoys();
  findings.mend({other_device(), other_run(), other_tail()});
  if (!in.motor.stops_itself) {
    findings.add(FindingKind::locked_rotor,
                 {.label = "A motor that stays locked opens the " + soonest->label,
                  .actual = in.motor.stall_A,
                  .limit = opens_A,
                  .unit = "A",
                  .comparison = Comparison::at_least,
                  .source = kLockedRotor,
                  .remedy = "Take a device of a lower rating, or a motor that stops itself when it "
                            "is locked."},
                 in.motor.stall_A);
    findings.mend({other_device()});
  }
}

void add_lead(FindingKind kind, const ProtectedLead& lead, const Worst& worst, Findings& findings) {
  findings.add(kind,
               {.label = "Short circuits clear before the " + lead.label + " overheats",
                .actual = worst.opening_s,
                .limit = worst.withstand_s,
                .unit = "s",
                .source = kAdiabatic,
                .remedy = "Take a device of a lower rating or a faster class, or a thicker " +
                          lead.label + "."},
               worst.current_A);
  findings.mend({other_device(), kind == FindingKind::tail_stands ? other_tail() : other_run()});
}

// A fault anywhere along a lead lies between the weakest at the plug and the strongest where the lead begins.
void find_leads(const ProtectionInput& in, const FaultRanges& faults, Findings& findings) {
  const double least_A = faults.plug.least_A;
  if (in.typed.leads.empty()) {
    add_lead(FindingKind::run_stands, in.run, worst_for(in, in.run, {least_A, faults.posts.most_A}), findings);
    if (!has_tail(in)) return;
    add_lead(FindingKind::tail_stands, in.tail, worst_for(in, in.tail, {least_A, faults.stud.most_A}), findings);
    return;
  }
  Worst worst;
  const ProtectedLead* at = &in.typed.leads.front();
  for (const ProtectedLead& lead : in.typed.leads) {
    const Worst one = worst_for(in, lead, {least_A, lead.most_A});
    if (one.use <= worst.use) continue;
    worst = one;
    at = &lead;
  }
  add_lead(FindingKind::run_stands, *at, worst, findings);
}

void find_ride(const ProtectionInput& in, FindingKind kind, std::string label, double current_A,
               double time_s, std::string remedy, Findings& findings) {
  const ProtectionDevice& first = weakest_device(
      in, [&](const ProtectionDevice& device) { return shortest_s(device, current_A, in.air); });
  findings.add(kind,
               {.label = std::move(label) + " passes the " + first.label,
                .actual = time_s,
                .limit = shortest_s(first, current_A, in.air),
                .unit = "s",
                .source = curve_of(first.device_class).source,
                .remedy = std::move(remedy)},
               current_A);
  findings.mend({other_device()});
}

void find_motor(const ProtectionInput& in, Findings& findings) {
  const auto holds_A = [&](const ProtectionDevice& device) {
    return holds_ratio(curve_of(device.device_class), in.air) * device.rating_A;
  };
  const ProtectionDevice& first = weakest_device(in, holds_A);
  findings.add(FindingKind::continuous,
               {.label = "Full thrust passes the " + first.label,
                .actual = in.motor.continuous_A,
                .limit = holds_A(first),
                .unit = "A",
                .source = curve_of(first.device_class).source,
                .remedy = "Take a higher rating if the cable allows it, or a device that heat does "
                          "not weaken."},
               in.motor.continuous_A);
  findings.mend({other_device(), other_run(), other_tail()});
  if (in.motor.start_s > 0.0) {
    find_ride(in, FindingKind::start, "A start", in.motor.start_A, in.motor.start_s,
              "Take a device of a longer delay, or of a higher rating if the cable allows it.", findings);
  }
  if (in.motor.stall_s > 0.0) {
    find_ride(in, FindingKind::stall, "A stall", in.motor.stall_A, in.motor.stall_s,
              "Carry a spare fuse, or take a device of a longer delay: weed or a line in the propeller may open "
              "this one.",
              findings);
    findings.annoys();
  }
}

void find_selective(const ProtectionInput& in, ProtectionResult& result, Findings& findings) {
  if (in.devices.size() < 2) return;
  result.selective_to_A = std::numeric_limits<double>::infinity();
  const double most_A = result.faults.stud.most_A;
  for (std::size_t i = 1; i < in.devices.size(); ++i) {
    result.selective_to_A = std::min(
        result.selective_to_A, selective_to_A(in.devices[i - 1], in.devices[i], most_A, in.air));
  }
  findings.add(FindingKind::selective,
               {.label = "Of two devices the farther from the bank opens alone",
                .actual = result.selective_to_A,
                .limit = most_A,
                .unit = "A",
                .comparison = Comparison::at_least,
                .source = kCommonPractice,
                .remedy = "Take a fuse at the bank of a higher rating, 1.5 to 2 times the "
                          "breaker's or more, if the cable allows it, or a breaker of a shorter "
                          "delay."},
               result.selective_to_A);
  findings.annoys();
}

void find_electronics(const ProtectionInput& in, const ProtectionResult& result,
                      Findings& findings) {
  if (result.electronics_A <= 0.0 || in.motor.stall_A <= 0.0) return;
  findings.add(FindingKind::electronics,
               {.label = "A stall stays below the bank's own cut-off",
                .actual = in.motor.stall_A,
                .limit = result.electronics_A,
                .unit = "A",
                .source = kCommonPractice,
                .remedy = "Take blocks of a higher continuous current, or more in parallel: with weed or a line "
                          "in the propeller their electronics may open, and all thrust is gone at once."},
               in.motor.stall_A);
  findings.annoys();
  findings.mend({{.field = "bank.parallel_count",
                  .value = in.bank.parallel_count + 1.0,
                  .label = "Take one string more"}});
}

// --- for the verdict of a design ----------------------------------------------------------------

void write_steps(const ProtectionInput& in, const ProtectionResult& result, Trace& trace) {
  const bool lead = is_lead(in.bank.block.chemistry);
  tell([&] {
    if (!in.typed.leads.empty()) {
      const auto show = [&](const char* id, const char* label, const BankEnd& seen, double value_A) {
        trace.steps.push_back({.id = id,
                               .label = label,
                               .symbol = "I_f",
                               .formula = "E / R",
                               .terms = {{"E", seen.open_circuit_V, "V", "of the circuit at rest, seen from there"},
                                         {"R", seen.resistance_ohm, "ohm", "of bank and circuit, seen from there"}},
                               .value = value_A,
                               .unit = "A",
                               .source = kCommonPractice,
                               .assumptions = {"The circuit as it was typed, solved node by node."}});
      };
      show("protection.fault_near", "Short circuit at the bank's posts, at most", in.typed.posts,
           result.faults.posts.most_A);
      show("protection.fault_far", "Short circuit at the motor, at least", in.typed.plug, result.faults.plug.least_A);
      return;
    }
    const Paths paths = paths_of(in);
    const BankEnd strong = strongest(in.bank);
    const BankEnd weak = weakest(in.bank);
    trace.steps.push_back(
        {.id = "protection.fault_near",
         .label = "Short circuit at the bank's posts, at most",
         .symbol = "I_f",
         .formula = "E / (R_b + R_j)",
         .terms = {{"E", strong.open_circuit_V, "V", "bank at rest, charged"},
                   {"R_b", strong.resistance_ohm, "ohm", "bank: new, warm, charged, low of its kind"},
                   {"R_j", paths.posts.copper_ohm, "ohm", "jumpers, 20 C"}},
         .value = result.faults.posts.most_A,
         .unit = "A",
         .source = lead ? kCommonPractice : kLithiumCell,
         .assumptions = {lead ? "The low end of what its kind is known for."
                              : "Bare cells: they feed the first milliseconds, and the block's own "
                                "electronics fail closed."}});
    trace.steps.push_back(
        {.id = "protection.fault_far",
         .label = "Short circuit at the plug, at least",
         .symbol = "I_p",
         .formula = "E / (R_b + R_c * (1 + a * (T - 20)) + 2 * R_k)",
         .terms = {{"E", weak.open_circuit_V, "V", "bank at rest, end of discharge"},
                   {"R_b", weak.resistance_ohm, "ohm", "bank: old, cold, flat, high of its kind"},
                   {"R_c", paths.plug.copper_ohm, "ohm", "copper, 20 C"},
                   {"a", kCopperSlope_frac_per_K, "frac_per_K", "copper's rise of resistance"},
                   {"T", paths.plug.hot_C, "C", "of the copper, under load"},
                   {"R_k", paths.plug.joints_ohm, "ohm", "joints, new and clean"}},
         .value = result.faults.plug.least_A,
         .unit = "A",
         .source = kCommonPractice,
         .assumptions = {"Joints of twice their resistance."}});
  });
}

void write_cautions(const ProtectionInput& in, const ProtectionResult& result, Trace& trace) {
  const auto warn = [&](std::string id, std::string text, const Source& source) {
    trace.cautions.push_back({std::move(id), std::move(text), source});
  };
  const auto kiloamperes = [](double current_A) {
    return significant(current_A / 1000.0, 2) + " kA";
  };
  const double near_A = result.faults.posts.most_A;
  if (!is_lead(in.bank.block.chemistry)) {
    warn("protection.bare_cells",
         "Count on no electronics to break a short circuit: they normally open in a moment, but they "
         "fail closed, and the bare cells give " +
             kiloamperes(near_A) + ".",
         kLithiumCell);
  }
  if (near_A > interrupt_needed_A(near_A)) {
    warn("protection.strings",
         "Fuse each string at its own post as well, with 20 kA or more: all strings together may "
         "feed " +
             kiloamperes(near_A) + ", more than one fuse is made to break.",
         kE11Interrupt);
  }
}

Trace verdict_trace(const ProtectionInput& in, const ProtectionResult& result) {
  Trace trace;
  write_steps(in, result, trace);
  for (const Finding& finding : result.findings) {
    if (finding.kind != FindingKind::device) trace.checks.push_back(finding.check);
  }
  write_cautions(in, result, trace);
  return trace;
}

// From best to worst.
int rank(Verdict verdict) {
  switch (verdict) {
    case Verdict::pass:
      return 0;
    case Verdict::marginal:
      return 1;
    case Verdict::not_evaluated:
      return 2;
    case Verdict::fail:
      return 3;
  }
  return 2;
}

Verdict overall(const std::vector<Finding>& findings) {
  Verdict worst = Verdict::pass;
  for (const Finding& finding : findings) {
    const Verdict one = finding.check.verdict();
    if (rank(one) > rank(worst)) worst = one;
  }
  return worst;
}

}  // namespace

std::string_view word(FindingKind kind) {
  switch (kind) {
    case FindingKind::device:
      return "device";
    case FindingKind::poles:
      return "poles";
    case FindingKind::voltage:
      return "voltage";
    case FindingKind::interrupt:
      return "interrupt";
    case FindingKind::reach:
      return "reach";
    case FindingKind::overload:
      return "overload";
    case FindingKind::run_stands:
      return "run_stands";
    case FindingKind::tail_stands:
      return "tail_stands";
    case FindingKind::continuous:
      return "continuous";
    case FindingKind::start:
      return "start";
    case FindingKind::stall:
      return "stall";
    case FindingKind::locked_rotor:
      return "locked_rotor";
    case FindingKind::selective:
      return "selective";
    case FindingKind::electronics:
      return "electronics";
  }
  return "device";
}

const Finding* find(const ProtectionResult& result, FindingKind kind) {
  for (const Finding& finding : result.findings) {
    if (finding.kind == kind) return &finding;
  }
  return nullptr;
}

FaultRanges fault_ranges(const ProtectionInput& in) {
  if (!in.typed.leads.empty()) return in.typed.faults;
  const Paths paths = paths_of(in);
  return {.posts = fault_range(in.bank, paths.posts),
          .stud = fault_range(in.bank, paths.stud),
          .plug = fault_range(in.bank, paths.plug)};
}

OpeningBand opening_in_series(const std::vector<ProtectionDevice>& devices, std::size_t count,
                              double current_A, DeviceAir air) {
  OpeningBand band;
  for (std::size_t i = 0; i < std::min(count, devices.size()); ++i) {
    band.shortest_s = std::min(band.shortest_s, shortest_s(devices[i], current_A, air));
    band.longest_s = std::min(band.longest_s, longest_s(devices[i], current_A, air));
  }
  return band;
}

double lead_withstand_s(const ProtectedLead& lead, double current_A) {
  return Heating(lead).withstand_s(current_A);
}

ProtectionResult protection(const ProtectionInput& in) {
  ProtectionResult result{.faults = fault_ranges(in), .electronics_A = electronics_A(in.bank)};
  Findings findings;
  find_device(in, findings);
  if (!in.devices.empty()) {
    find_poles(in, findings);
    find_ratings(in, result.faults, findings);
    find_reach(in, result.faults, findings);
    find_leads(in, result.faults, findings);
    find_motor(in, findings);
    find_selective(in, result, findings);
    find_electronics(in, result, findings);
  }
  result.findings = std::move(findings.list);
  result.verdict = overall(result.findings);
  result.trace = verdict_trace(in, result);
  return result;
}

}  // namespace thole
