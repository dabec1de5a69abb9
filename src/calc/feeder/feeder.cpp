#include "calc/feeder/feeder.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string_view>
#include <tuple>
#include <utility>

#include "base/number.h"
#include "calc/circuit.h"
#include "calc/fault.h"
#include "calc/feeder/cable.h"
#include "calc/feeder/protection.h"
#include "calc/trip.h"
#include "calc/heading.h"
#include "data/conductors.h"
#include "data/sources.h"
#include "data/sources_power.h"

namespace thole {
namespace {

constexpr double kPlugEntry_mm2 = 16.0;  // kCommonPractice: plugs of 50-70 A take 6 AWG or 16 mm2
constexpr double kJointHeat_W = 5.0;     // kCommonPractice
constexpr double kHighCircuit_V = 50.0;       // kCfrHighVoltageCable
constexpr double kSag_exponent = 2.0 / 3.0;   // kProjectDecision: a controller that limits current
constexpr double kSagSquare_exponent = 2.0;   // kProjectDecision: a motor straight on the bank
constexpr double kCompass_deg_uT = 18.0;      // kCompassDistance
constexpr double kNecColumn_C = 75.0;         // kNecTable8
constexpr double kLeastDrop_frac = 0.005;     // as in job/fields.cpp
constexpr double kEasierDrop_frac = 0.05;     // kProjectDecision: while the motor has its volts
constexpr double kEasiestDrop_frac = 0.10;    // kE11Drop: circuits that are not critical
constexpr double kBesideBank_m = 0.15;        // within 7 in, with a hand's room
constexpr int kMostPasses = 100;

// One of the two conductors that make a run or a tail.
struct Lead {
  const CableOffer* offer = nullptr;
  const Conductor* conductor = nullptr;
  double length_m = 0.0;
  double ambient_C = 0.0;  // as asked for; an engine space has its own factor
  double air_C = 0.0;      // what it heats up from
  double table_A = 0.0;
  double engine_factor = 1.0;
  double air_factor = 1.0;
  double bundle_factor = 1.0;
  double bundled_A = 0.0;   // at 30 C
  double ampacity_A = 0.0;  // with all factors
};

struct Wiring {
  Lead run{};
  Lead tail{};  // no conductor: the run ends in the plug
  const ProtectiveDevice* device = nullptr;

  bool has_tail() const { return tail.conductor != nullptr; }
  double ampacity_A() const {
    return has_tail() ? std::min(run.ampacity_A, tail.ampacity_A) : run.ampacity_A;
  }
};

// What a lead is at its working temperature.
struct WarmLead {
  double heating_K = 0.0;
  double temperature_C = 0.0;
  double resistance_ohm = 0.0;  // one conductor
};

// One wiring at full thrust.
struct Figures {
  Wiring wiring{};
  int lug_count = 0;   // of the feeder itself
  int pole_count = 1;  // poles with a device
  WarmLead run{};
  WarmLead tail{};
  double heating_A = 0.0;  // the current that the temperatures belong to
  double jumpers_ohm = 0.0;
  double jumpers_cold_ohm = 0.0;
  double external_ohm = 0.0;
  double loop_ohm = 0.0;  // with the bank at the end of discharge
  OperatingPoint end{};
  OperatingPoint full{};
  double drop_V = 0.0;
  double drop_frac = 0.0;
  double weakest_A = 0.0;  // ampacity of the weakest conductor, as the motor's current shares out
  double device_A = 0.0;   // through the device
  double device_min_A = 0.0;
  double device_max_A = 0.0;
  FaultRange faults{};   // the weakest at the plug, the strongest at the posts
  double stud_A = 0.0;  // the strongest at the bow, where the tail begins
};

// --- what the conductors carry -------------------------------------------------------------------

// The offers that name a conductor and an insulation in the tables, thin to thick.
std::vector<const CableOffer*> usable(const std::vector<CableOffer>& offers) {
  std::vector<const CableOffer*> found;
  for (const CableOffer& offer : offers) {
    if (find_conductor(offer.conductor) == nullptr) continue;
    if (ampacity_A(offer.conductor, offer.insulation_C) > 0.0) found.push_back(&offer);
  }
  return found;
}

std::vector<const CableOffer*> usable_tails(const std::vector<CableOffer>& offers) {
  std::vector<const CableOffer*> found = usable(offers);
  std::vector<const CableOffer*> entering;
  for (const CableOffer* offer : found) {
    if (find_conductor(offer->conductor)->area_mm2 <= kPlugEntry_mm2) entering.push_back(offer);
  }
  return entering.empty() ? found : entering;
}

Lead make_lead(const CableOffer& offer, double length_m, double ambient_C, bool engine_space,
               int bundled_count) {
  Lead lead{.offer = &offer,
            .conductor = find_conductor(offer.conductor),
            .length_m = length_m,
            .ambient_C = ambient_C,
            .air_C = engine_space ? std::max(ambient_C, kEngineSpace_C) : ambient_C,
            .table_A = ampacity_A(offer.conductor, offer.insulation_C),
            .bundle_factor = bundling_factor(bundled_count)};
  if (engine_space) lead.engine_factor = engine_space_factor(offer.insulation_C);
  lead.air_factor = std::min(lead.engine_factor, ambient_factor(offer.insulation_C, ambient_C));
  lead.bundled_A = lead.table_A * lead.bundle_factor;
  lead.ampacity_A = lead.table_A * lead.air_factor * lead.bundle_factor;
  return lead;
}

WarmLead warm(const Lead& lead, double current_A) {
  const CableLoad load{.current_A = current_A,
                       .ampacity_A = lead.bundled_A,
                       .insulation_C = lead.offer->insulation_C,
                       .ambient_C = lead.air_C};
  WarmLead result{.heating_K = heating_K(load), .temperature_C = conductor_temperature_C(load)};
  result.resistance_ohm =
      resistance_at(lead.length_m * lead.conductor->tinned_ohm_per_m, result.temperature_C);
  return result;
}

// --- the circuit ---------------------------------------------------------------------------------

// Blocks in series are joined by jumpers of the run's cable, each string by its own.
double jumpers_ohm(const FeederInput& in, double cable_ohm_per_m) {
  const double joints = std::max(in.series_count, 1) - 1;
  return joints * (in.jumper_m * cable_ohm_per_m + 2.0 * in.lug_ohm) /
         std::max(in.parallel_count, 1);
}

int device_count(const FeederInput& in, const ProtectiveDevice& device) {
  const int poles = in.floating ? 2 : 1;
  const int each = std::clamp(device.poles, 1, poles);
  return (poles + each - 1) / each;
}

// A lug at each end of a cable, at each side of a device and at the bank's post; the stud at the
// bow holds one of the run and one of the tail.
int count_lugs(const Wiring& wiring, int pole_count) {
  const int stud = wiring.has_tail() ? 2 : 0;
  return 2 * (1 + stud) + 2 * pole_count;
}

void warm_up(const FeederInput& in, double current_A, Figures& f) {
  const Wiring& wiring = f.wiring;
  f.heating_A = current_A;
  f.run = warm(wiring.run, current_A);
  if (wiring.has_tail()) f.tail = warm(wiring.tail, current_A);
  f.jumpers_ohm = jumpers_ohm(in, f.run.resistance_ohm / wiring.run.length_m);
  const double device_ohm = wiring.device != nullptr ? wiring.device->resistance_ohm : 0.0;
  f.external_ohm = 2.0 * f.run.resistance_ohm + 2.0 * f.tail.resistance_ohm +
                   f.lug_count * in.lug_ohm + f.pole_count * device_ohm + 2.0 * in.plug_ohm;
  f.loop_ohm = in.resistance_end_ohm + f.jumpers_ohm + f.external_ohm;
  f.end = constant_power(in.open_circuit_end_V, f.loop_ohm, in.power_full_W);
}

// More current warms the copper, and warmer copper draws more current: from cold, both only rise,
// so that the passes close in on the first balance.
void settle(const FeederInput& in, Figures& f) {
  warm_up(in, in.power_full_W / in.open_circuit_end_V, f);
  for (int pass = 0; pass < kMostPasses && f.end.solvable; ++pass) {
    if (std::abs(f.end.current_A - f.heating_A) <= 1e-13 * f.heating_A) break;
    warm_up(in, f.end.current_A, f);
  }
}

// As calc/protection has them: joints of twice their resistance at the worst.
FaultRange short_circuits(const FeederInput& in, const Figures& f) {
  const double device_ohm = f.wiring.device != nullptr ? f.wiring.device->resistance_ohm : 0.0;
  const double joints_ohm = f.lug_count * in.lug_ohm + f.pole_count * device_ohm + 2.0 * in.plug_ohm;
  return {.least_A = fault_A(in.weakest.open_circuit_V, in.weakest.resistance_ohm + f.jumpers_ohm +
                                                            f.external_ohm + joints_ohm),
          .most_A = fault_A(in.strongest.open_circuit_V,
                            in.strongest.resistance_ohm + f.jumpers_cold_ohm)};
}

double strongest_at_stud_A(const FeederInput& in, const Figures& f) {
  const Wiring& w = f.wiring;
  const double device_ohm = w.device != nullptr ? w.device->resistance_ohm : 0.0;
  const double joints_ohm = (f.lug_count - 2) * in.lug_ohm + f.pole_count * device_ohm;
  return fault_A(in.strongest.open_circuit_V,
                 in.strongest.resistance_ohm + f.jumpers_cold_ohm +
                     2.0 * w.run.length_m * w.run.conductor->tinned_ohm_per_m + 0.5 * joints_ohm);
}

Figures work_out(const FeederInput& in, const Wiring& wiring) {
  Figures f{.wiring = wiring};
  f.pole_count = in.floating ? 2 : 1;
  f.lug_count = count_lugs(wiring, f.pole_count);
  settle(in, f);
  f.full = constant_power(in.open_circuit_full_V,
                          in.resistance_full_ohm + f.jumpers_ohm + f.external_ohm, in.power_full_W);
  f.drop_V = f.end.current_A * f.external_ohm;
  f.drop_frac = f.drop_V / in.nominal_V;
  f.jumpers_cold_ohm = jumpers_ohm(in, wiring.run.conductor->tinned_ohm_per_m);
  f.faults = short_circuits(in, f);
  f.stud_A = strongest_at_stud_A(in, f);
  f.device_A = f.end.current_A;
  f.device_min_A = device_min_A(f.device_A);
  f.weakest_A = wiring.ampacity_A();
  f.device_max_A = device_max_A(f.weakest_A);
  return f;
}

// --- the choice ----------------------------------------------------------------------------------

// The longest that the device may take, as a share of what the lead stands, at the ends of the
// short circuits' range and where the device's curve bends: nearly the worst, and cheap.
double clearing_ratio(const FeederInput& in, const Figures& f, const ProtectiveDevice& device,
                      const Lead& lead, const WarmLead& warm_lead, double most_A) {
  const DeviceCurve& curve = curve_of(class_of(device));
  const DeviceAir air = device_air(in.coldest_C, in.ambient_C);
  const double k = adiabatic_factor(warm_lead.temperature_C, kPvcFault_C);
  std::vector<double> currents_A{f.faults.least_A, most_A};
  for (const double ratio : bends(curve, air)) {
    const double before_A = ratio * device.rating_A * (1.0 - 1e-9);  // a curve may step
    if (before_A > f.faults.least_A && before_A < most_A) currents_A.push_back(before_A);
  }
  double worst = 0.0;
  for (const double current_A : currents_A) {
    const double stands_s = withstand_s(k, lead.conductor->area_mm2, current_A);
    worst = std::max(
        worst, opening_band(curve, current_A / device.rating_A, air).longest_s / stands_s);
  }
  return worst;
}

bool clears(const FeederInput& in, const Figures& f, const ProtectiveDevice& device) {
  const Wiring& w = f.wiring;
  return clearing_ratio(in, f, device, w.run, f.run, f.faults.most_A) <= 1.0 &&
         (!w.has_tail() || clearing_ratio(in, f, device, w.tail, f.tail, f.stud_A) <= 1.0);
}

int device_shortfalls(const FeederInput& in, const Figures& f, const ProtectiveDevice& device) {
  const DeviceAir air = device_air(in.coldest_C, in.ambient_C);
  const double holds_A = holds_ratio(curve_of(class_of(device)), air) * device.rating_A;
  const int shortfalls = (device.rating_A < f.device_min_A || holds_A < f.end.current_A) +
                         (device.rating_A > f.device_max_A) + (device.voltage_V < in.charge_V) +
                         (device.interrupt_A < interrupt_needed_A(f.faults.most_A)) +
                         (in.petrol && !device.ignition_protected);
  return shortfalls > 0 ? shortfalls + 1 : static_cast<int>(!clears(in, f, device));
}

// The smallest rating that serves; of equal ones a breaker, which also switches, then the cheaper.
const ProtectiveDevice* choose_device(const FeederInput& in, const Figures& f) {
  const auto worse = [&](const ProtectiveDevice& a, const ProtectiveDevice& b) {
    const auto key = [&](const ProtectiveDevice& device) {
      return std::tuple(device_shortfalls(in, f, device),
                        std::abs(device.rating_A - f.device_min_A), device.kind == DeviceKind::fuse,
                        device.price * device_count(in, device));
    };
    return key(a) < key(b);
  };
  const auto best = std::min_element(in.devices.begin(), in.devices.end(), worse);
  return best == in.devices.end() ? nullptr : &*best;
}

// The device depends on the current, and the current a little on the device.
Figures with_device(const FeederInput& in, Wiring wiring) {
  Figures figures = work_out(in, wiring);
  for (int pass = 0; pass < 4; ++pass) {
    const ProtectiveDevice* device = choose_device(in, figures);
    if (device == wiring.device) break;
    wiring.device = device;
    figures = work_out(in, wiring);
  }
  return figures;
}

// How far past its capacity; bounded, so that one hopeless demand does not hide the others.
double excess(double demand, double capacity) {
  if (demand <= capacity) return 0.0;
  return capacity > 0.0 ? std::min(demand / capacity - 1.0, 1.0) : 1.0;
}

struct Score {
  double overload = 0.0;
  int device_shortfalls = 0;
  int oddities = 0;
  double copper_mm2m = 0.0;
  double price = 0.0;
};

// A shop keeps to one family of sizes, and a tail is the lighter cable of the two.
int oddities(const Wiring& w) {
  if (!w.has_tail()) return 0;
  return (w.tail.conductor->metric != w.run.conductor->metric) +
         (w.tail.conductor->area_mm2 > w.run.conductor->area_mm2);
}

// Of one conductor; the other doubles it.
double copper_mm2m(const Wiring& w) {
  const double run_mm2m = w.run.conductor->area_mm2 * w.run.length_m;
  return w.has_tail() ? run_mm2m + w.tail.conductor->area_mm2 * w.tail.length_m : run_mm2m;
}

Score score(const FeederInput& in, const Figures& f) {
  const Wiring& w = f.wiring;
  Score s;
  s.overload = excess(f.end.current_A, w.run.ampacity_A) +
               excess(f.drop_frac, in.allowed_drop_frac) + excess(f.device_min_A, f.device_max_A) +
               excess(in.power_full_W, f.end.limit_W);
  if (w.device != nullptr) {
    s.device_shortfalls = device_shortfalls(in, f, *w.device);
  }
  s.oddities = oddities(w);
  s.copper_mm2m = copper_mm2m(w);
  s.price = w.run.offer->price_per_m * w.run.length_m;
  if (w.has_tail()) {
    s.overload += excess(f.end.current_A, w.tail.ampacity_A);
    s.price += w.tail.offer->price_per_m * w.tail.length_m;
  }
  return s;
}

bool better(const Score& a, const Score& b) {
  const auto key = [](const Score& s) {
    return std::tuple(s.overload, s.device_shortfalls, s.oddities, s.copper_mm2m, s.price);
  };
  return key(a) < key(b);
}

// Nothing can be better than this but the same with less copper or a lower price.
bool faultless(const Score& s) {
  return s.overload == 0.0 && s.device_shortfalls == 0 && s.oddities == 0;
}

// Empty wiring when there is no cable to choose from.
Figures choose_wiring(const FeederInput& in) {
  std::vector<const CableOffer*> tails{nullptr};
  if (in.tail_m > 0.0) tails = usable_tails(in.tail_cables);
  Figures best;
  Score best_score;
  for (const CableOffer* run : usable(in.cables)) {
    for (const CableOffer* tail : tails) {
      Wiring wiring{.run =
                        make_lead(*run, in.run_m, in.ambient_C, in.engine_space, in.bundled_count)};
      // The tail is out on deck, a pair by itself.
      if (tail != nullptr) wiring.tail = make_lead(*tail, in.tail_m, in.ambient_C, false, 2);
      const bool first = best.wiring.run.conductor == nullptr;
      if (!first && faultless(best_score) && copper_mm2m(wiring) > best_score.copper_mm2m) continue;
      const Figures figures = with_device(in, wiring);
      const Score figures_score = score(in, figures);
      if (!first && !better(figures_score, best_score)) continue;
      best = figures;
      best_score = figures_score;
    }
  }
  return best;
}

// --- nodes and segments --------------------------------------------------------------------------

struct Place {
  std::string_view id{};  // the pole is added
  std::string_view label{};
  double distance_m = 0.0;
};

// Walks from the bank's positive post to the motor and back, laying a segment and a node at a time.
class Walk {
 public:
  Walk(double start_V, double current_A, FeederResult& result)
      : volts_V_(start_V), current_A_(current_A), result_(result) {}

  void node(const Place& place, bool positive) {
    result_.nodes.push_back({.id = std::string(place.id) + (positive ? "_positive" : "_negative"),
                             .label = std::string(place.label) + (positive ? " +" : " \u2212"),
                             .voltage_V = volts_V_,
                             .distance_m = place.distance_m,
                             .positive = positive});
  }
  void segment(FeederSegment segment, bool positive) {
    segment.id += positive ? "_positive" : "_negative";
    segment.label += positive ? " +" : " \u2212";
    segment.drop_V = current_A_ * segment.resistance_ohm;
    segment.loss_W = current_A_ * segment.drop_V;
    volts_V_ -= segment.drop_V;
    result_.segments.push_back(std::move(segment));
  }
  void load(double load_V) { volts_V_ -= load_V; }

 private:
  double volts_V_ = 0.0;
  double current_A_ = 0.0;
  FeederResult& result_;
};

void lay_nodes(const FeederInput& in, const Figures& f, FeederResult& r) {
  const Wiring& w = f.wiring;
  const double device_m = std::min(in.device_distance_m, in.run_m);
  const double run_ohm_per_m = f.run.resistance_ohm / in.run_m;
  const double device_ohm = w.device != nullptr ? w.device->resistance_ohm : 0.0;
  const std::string run_label(w.run.conductor->label);

  const Place bank{"bank", "Bank", 0.0};
  const Place device{"device", "After the device", device_m};
  const Place bow{"bow", "Stud at the bow", in.run_m};
  const Place motor{"motor", "Motor", in.run_m + (w.has_tail() ? in.tail_m : 0.0)};

  const FeederSegment protection{
      .id = "protection",
      .label = "Bank to device, device included",
      .conductor = run_label,
      .length_m = device_m,
      .resistance_ohm = device_m * run_ohm_per_m + 2.0 * in.lug_ohm + device_ohm,
      .temperature_C = f.run.temperature_C};
  const auto run = [&](bool protected_pole) {
    const double length_m = protected_pole ? in.run_m - device_m : in.run_m;
    const double end_ohm = w.has_tail() ? in.lug_ohm : in.plug_ohm;
    return FeederSegment{.id = "run",
                         .label = w.has_tail() ? "Run" : "Run, plug included",
                         .conductor = run_label,
                         .length_m = length_m,
                         .resistance_ohm = length_m * run_ohm_per_m + in.lug_ohm + end_ohm,
                         .temperature_C = f.run.temperature_C};
  };
  const bool negative_protected = f.pole_count == 2;

  Walk walk(in.open_circuit_end_V - f.end.current_A * (in.resistance_end_ohm + f.jumpers_ohm),
            f.end.current_A, r);
  const auto tail = [&](bool positive) {
    walk.segment({.id = "tail",
                  .label = "Tail, plug included",
                  .conductor = std::string(w.tail.conductor->label),
                  .length_m = in.tail_m,
                  .resistance_ohm = f.tail.resistance_ohm + in.lug_ohm + in.plug_ohm,
                  .temperature_C = f.tail.temperature_C},
                 positive);
  };
  walk.node(bank, true);
  walk.segment(protection, true);
  walk.node(device, true);
  walk.segment(run(true), true);
  if (w.has_tail()) {
    walk.node(bow, true);
    tail(true);
  }
  walk.node(motor, true);
  walk.load(f.end.load_V);
  walk.node(motor, false);
  if (w.has_tail()) {
    tail(false);
    walk.node(bow, false);
  }
  walk.segment(run(negative_protected), false);
  if (negative_protected) {
    walk.node(device, false);
    walk.segment(protection, false);
  }
  walk.node(bank, false);
  r.nodes.back().voltage_V = 0.0;  // the reference; what is left is rounding
}

// --- the steps -----------------------------------------------------------------------------------

// The texts that differ between run and tail.
struct LeadTexts {
  std::string id{};     // "feeder.run"
  std::string thing{};  // "the run"
};

const Term kSlopeTerm{"a", kCopperSlope_frac_per_K, "frac_per_K",
                      "copper's rise of resistance, at 20 C"};

void show_lead(const Lead& lead, const WarmLead& warm_lead, double heating_A,
               const LeadTexts& texts, Trace& trace) {
  const double insulation_C = lead.offer->insulation_C;
  const Term insulation{"T_i", insulation_C, "C", "temperature rating of the insulation"};
  const bool engine = lead.engine_factor < 1.0;
  trace.steps.push_back(
      {.id = texts.id + "_air_factor",
       .label = "Share of ampacity left in warm air, " + texts.thing,
       .symbol = "f_a",
       .formula = "min(f_e, 1, sqrt(max(T_i - T_a, 0) / (T_i - 30)))",
       .terms = {{"f_e", lead.engine_factor, "", "factor for an engine space; 1 elsewhere"},
                 insulation,
                 {"T_a", lead.ambient_C, "C", "air round the cable outside it"}},
       .value = lead.air_factor,
       .unit = "",
       .source = engine ? engine_space_source(insulation_C) : kAmbientLaw});
  trace.steps.push_back(
      {.id = texts.id + "_ampacity",
       .label = "What " + texts.thing + " may carry",
       .symbol = "I_z",
       .formula = "I_t * f_a * f_b",
       .terms = {{"I_t", lead.table_A, "A", "from the table, 30 C"},
                 {"f_a", lead.air_factor, "", "for the air"},
                 {"f_b", lead.bundle_factor, "", "for the bundle"}},
       .value = lead.ampacity_A,
       .unit = "A",
       .source = ampacity_source(*lead.conductor),
       .assumptions = {std::string(lead.conductor->label) + ", insulation rated " +
                       fixed(insulation_C, 0) + " C, read from the column at or below it."}});
  if (lead.bundle_factor < 1.0) {
    trace.steps.back().assumptions.push_back(
        "Bundled as ABYC E-11 has it at any voltage; 33 CFR 183.425 asks for it from 50 V.");
  }
  trace.steps.push_back(
      {.id = texts.id + "_heating",
       .label = "Heating of " + texts.thing + ", before copper's own rise",
       .symbol = "q",
       .formula = "(T_i - 30) * (I / I_b)^2 / (1 + a * (T_i - 20))",
       .terms = {insulation,
                 {"I", heating_A, "A", "full thrust, end of discharge"},
                 {"I_b", lead.bundled_A, "A", "ampacity in 30 C air, bundled"},
                 kSlopeTerm},
       .value = warm_lead.heating_K,
       .unit = "K",
       .source = kCableHeating,
       .assumptions = {
           "The current at which temperature and resistance agree, found by repetition."}});
  trace.steps.push_back(
      {.id = texts.id + "_temperature",
       .label = "Temperature of " + texts.thing + " at full thrust",
       .symbol = "T",
       .formula = "min(250, (T_a + q * (1 - 20 * a)) / max(1 - a * q, 0.01))",
       .terms = {{"T_a", lead.air_C, "C", "air round the cable"},
                 {"q", warm_lead.heating_K, "K", "heating"},
                 kSlopeTerm},
       .value = warm_lead.temperature_C,
       .unit = "C",
       .source = kCableHeating,
       .assumptions = {"Steady state; 250 C stands for a cable that is destroyed."}});
  trace.steps.push_back(
      {.id = texts.id + "_resistance",
       .label = "Resistance of " + texts.thing + ", one conductor, warm",
       .symbol = "R",
       .formula = "l * r * (1 + a * (T - 20))",
       .terms = {{"l", lead.length_m, "m", "one way"},
                 {"r", lead.conductor->tinned_ohm_per_m, "ohm_per_m", "tinned, 20 C"},
                 kSlopeTerm,
                 {"T", warm_lead.temperature_C, "C", "of the copper"}},
       .value = warm_lead.resistance_ohm,
       .unit = "ohm",
       .source = resistance_source(*lead.conductor)});
}

void show_circuit(const FeederInput& in, const Figures& f, FeederResult& r) {
  const Wiring& w = f.wiring;
  const Term power{"P", in.power_full_W, "W", "motor at full thrust"};
  const Term nominal{"V_n", in.nominal_V, "V", "nominal volts of the bank"};
  const Term current{"I", r.current_A, "A", "full thrust, end of discharge"};
  const Term motor{"V_m", r.motor_V, "V", "at the motor"};
  const Term external{"R_x", f.external_ohm, "ohm", "feeder, out and back"};
  const Term loop{"R", f.loop_ohm, "ohm", "whole loop"};
  const Term lug{"R_l", in.lug_ohm, "ohm", "lug and stud"};
  const Term plug{"R_p", in.plug_ohm, "ohm", "plug, each pole"};
  const Term open_end{"E", in.open_circuit_end_V, "V", "bank at rest, end of discharge"};
  const Term limit{"P_x", f.end.limit_W, "W", "most that the feeder can deliver"};
  auto& steps = r.trace.steps;

  steps.push_back(
      {.id = "feeder.jumpers",
       .label = "Resistance of the jumpers between blocks",
       .symbol = "R_j",
       .formula = "(n_s - 1) * (l_j * r + 2 * R_l) / n_p",
       .terms = {{"n_s", double(std::max(in.series_count, 1)), "", "blocks in series"},
                 {"l_j", in.jumper_m, "m", "each jumper"},
                 {"r", f.run.resistance_ohm / in.run_m, "ohm_per_m", "run's cable, warm"},
                 lug,
                 {"n_p", double(std::max(in.parallel_count, 1)), "", "strings"}},
       .value = f.jumpers_ohm,
       .unit = "ohm",
       .source = kCircuitLaws,
       .assumptions = {"Jumpers are of the run's cable."}});
  steps.push_back({.id = "feeder.resistance",
                   .label = "Resistance of the feeder, out and back, joints included",
                   .symbol = "R_x",
                   .formula = "2 * R_r + 2 * R_t + n_l * R_l + n_d * R_d + 2 * R_p",
                   .terms = {{"R_r", f.run.resistance_ohm, "ohm", "run, one conductor, warm"},
                             {"R_t", f.tail.resistance_ohm, "ohm", "tail, one conductor, warm"},
                             {"n_l", double(f.lug_count), "", "lugs"},
                             lug,
                             {"n_d", double(f.pole_count), "", "poles with a device"},
                             {"R_d", w.device != nullptr ? w.device->resistance_ohm : 0.0, "ohm",
                              "device, each pole"},
                             plug},
                   .value = f.external_ohm,
                   .unit = "ohm",
                   .source = kCircuitLaws,
                   .assumptions = {"Joints and device new and clean."}});
  steps.push_back(
      {.id = "feeder.loop",
       .label = "Resistance of the whole loop, bank included",
       .symbol = "R",
       .formula = "R_b + R_j + R_x",
       .terms = {{"R_b", in.resistance_end_ohm, "ohm", "bank: aged, cold, end of discharge"},
                 {"R_j", f.jumpers_ohm, "ohm", "jumpers"},
                 external},
       .value = f.loop_ohm,
       .unit = "ohm",
       .source = kCircuitLaws});
  steps.push_back({.id = "feeder.power_limit",
                   .label = "Most power that bank and feeder can deliver",
                   .symbol = "P_x",
                   .formula = "E^2 / (4 * R)",
                   .terms = {open_end, loop},
                   .value = f.end.limit_W,
                   .unit = "W",
                   .source = kCircuitLaws});
  steps.push_back({.id = "feeder.motor_V",
                   .label = "Volts at the motor, full thrust, end of discharge",
                   .symbol = "V_m",
                   .formula = "(E + sqrt(max(E^2 - 4 * P * R, 0))) / 2",
                   .terms = {open_end, power, loop},
                   .value = r.motor_V,
                   .unit = "V",
                   .source = kCircuitLaws,
                   .assumptions = {"A controller that draws constant power."}});
  steps.push_back({.id = "feeder.current_A",
                   .label = "Current at full thrust, end of discharge",
                   .symbol = "I",
                   .formula = "min(P, P_x) / V_m",
                   .terms = {power, limit, motor},
                   .value = r.current_A,
                   .unit = "A",
                   .source = kCircuitLaws});
  steps.push_back({.id = "feeder.current_nominal_A",
                   .label = "Current at full thrust and nominal volts",
                   .symbol = "I_n",
                   .formula = "P / V_n",
                   .terms = {power, nominal},
                   .value = r.current_nominal_A,
                   .unit = "A",
                   .source = kDefinition});
  steps.push_back({.id = "feeder.drop_V",
                   .label = "Volts lost in the feeder, out and back",
                   .symbol = "V_d",
                   .formula = "I * R_x",
                   .terms = {current, external},
                   .value = r.drop_V,
                   .unit = "V",
                   .source = kCircuitLaws,
                   .assumptions = {"The sag inside the bank is not part of it."}});
  steps.push_back({.id = "feeder.drop_frac",
                   .label = "Share of nominal volts lost in the feeder",
                   .symbol = "d",
                   .formula = "V_d / V_n",
                   .terms = {{"V_d", r.drop_V, "V", "lost in the feeder"}, nominal},
                   .value = r.drop_frac,
                   .unit = "frac",
                   .source = kE11Drop});
  steps.push_back({.id = "feeder.sag_frac",
                   .label = "Share of nominal volts lost in bank and feeder together",
                   .symbol = "s",
                   .formula = "1 - V_m / V_n",
                   .terms = {motor, nominal},
                   .value = 1.0 - r.motor_V / in.nominal_V,
                   .unit = "frac",
                   .source = kCircuitLaws});
  steps.push_back({.id = "feeder.motor_full_V",
                   .label = "Volts at the motor, full thrust, bank charged",
                   .symbol = "V_f",
                   .formula = "(E + sqrt(max(E^2 - 4 * P * (R_b + R_j + R_x), 0))) / 2",
                   .terms = {{"E", in.open_circuit_full_V, "V", "bank at rest, charged"},
                             power,
                             {"R_b", in.resistance_full_ohm, "ohm", "bank: new, warm, charged"},
                             {"R_j", f.jumpers_ohm, "ohm", "jumpers"},
                             external},
                   .value = r.motor_full_V,
                   .unit = "V",
                   .source = kCircuitLaws});
  steps.push_back({.id = "feeder.loss_W",
                   .label = "Heat lost in the feeder",
                   .symbol = "P_l",
                   .formula = "I^2 * R_x",
                   .terms = {current, external},
                   .value = r.loss_W,
                   .unit = "W",
                   .source = kCircuitLaws});
  steps.push_back({.id = "feeder.joint_heat",
                   .label = "Heat in the worst single joint",
                   .symbol = "P_j",
                   .formula = "I^2 * max(R_l, R_p)",
                   .terms = {current, lug, plug},
                   .value = r.current_A * r.current_A * std::max(in.lug_ohm, in.plug_ohm),
                   .unit = "W",
                   .source = kCircuitLaws});
}

// What the nodes of a typed circuit say.
void show_typed(const FeederInput& in, const FeederResult& r, Trace& trace) {
  const SolvedCircuit& circuit = *in.circuit;
  const auto show = [&](std::string id, std::string label, const char* symbol, const char* formula,
                        std::vector<Term> terms, double value, const char* unit) {
    trace.steps.push_back({.id = std::move(id),
                           .label = std::move(label),
                           .symbol = symbol,
                           .formula = formula,
                           .terms = std::move(terms),
                           .value = value,
                           .unit = unit,
                           .source = kCircuitLaws,
                           .assumptions = {"The circuit as it was typed, solved node by node."}});
  };
  const Term drop{"V_d", r.drop_V, "V", "lost in the feeder"};
  show("feeder.drop_V", "Volts lost in the feeder, out and back", "V_d", "V_p + V_n",
       {{"V_p", circuit.plus_V, "V", "from the bank's plus to the motor"},
        {"V_n", circuit.minus_V, "V", "from the motor to the bank's minus"}},
       r.drop_V, "V");
  show("feeder.drop_frac", "Share of nominal volts lost in the feeder", "d", "V_d / V_n",
       {drop, {"V_n", in.nominal_V, "V", "nominal volts of the bank"}}, r.drop_frac, "frac");
  show("feeder.motor_V", "Volts at the motor, full thrust, end of discharge", "V_m", "V_b - V_d",
       {{"V_b", circuit.bank_V, "V", "at the bank's posts"}, drop}, r.motor_V, "V");
  show("feeder.current_A", "Current at full thrust, end of discharge", "I", "min(P, P_x) / V_m",
       {{"P", in.power_full_W, "W", "motor at full thrust"},
        {"P_x", circuit.limit_W, "W", "most that the circuit can deliver"},
        {"V_m", r.motor_V, "V", "at the motor"}},
       r.current_A, "A");
}

double thrust_left(double motor_V, double nominal_V, double exponent) {
  return std::min(1.0, std::pow(motor_V / nominal_V, exponent));
}

void show_sag(const FeederInput& in, FeederResult& r) {
  const std::vector<Term> terms{{"V_m", r.motor_V, "V", "at the motor, end of discharge"},
                                {"V_n", in.nominal_V, "V", "nominal"}};
  r.trace.steps.push_back({.id = "feeder.sag",
                           .label = "Share of thrust left as the volts sag",
                           .symbol = "b",
                           .formula = "min(1, (V_m / V_n)^(2/3))",
                           .terms = terms,
                           .value = thrust_left(r.motor_V, in.nominal_V, kSag_exponent),
                           .unit = "frac",
                           .source = kProjectDecision,
                           .assumptions = {"A controller that limits current: power falls with the "
                                           "volts, thrust with power to two thirds."}});
  r.trace.steps.push_back({.id = "feeder.sag_square",
                           .label = "The same for a motor without such a controller",
                           .symbol = "b_2",
                           .formula = "min(1, (V_m / V_n)^2)",
                           .terms = terms,
                           .value = thrust_left(r.motor_V, in.nominal_V, kSagSquare_exponent),
                           .unit = "frac",
                           .source = kProjectDecision,
                           .assumptions = {"Turns in proportion to volts, thrust to turns squared; "
                                           "for comparison, not checked."}});
}

void show_protection(const FeederInput& in, const Figures& f, FeederResult& r) {
  const Wiring& w = f.wiring;
  auto& steps = r.trace.steps;
  const double ampacity_A = f.weakest_A;
  steps.push_back({.id = "feeder.device_min_A",
                   .label = "Least rating of the device",
                   .symbol = "I_lo",
                   .formula = "I / 0.8",
                   .terms = {{"I", f.device_A, "A", "full thrust, end of discharge"}},
                   .value = r.device_min_A,
                   .unit = "A",
                   .source = kContinuousLoad,
                   .assumptions = {"A thermal device; one that does not feel the air's heat may be "
                                   "rated at the current itself."}});
  steps.push_back(
      {.id = "feeder.device_max_A",
       .label = "Greatest rating of the device",
       .symbol = "I_hi",
       .formula = "min(max(I_s, I_z), 1.5 * I_z)",
       .terms = {{"I_s", standard_rating_up_A(ampacity_A), "A", "standard rating at or above I_z"},
                 {"I_z", ampacity_A, "A", "ampacity of the weakest conductor"}},
       .value = r.device_max_A,
       .unit = "A",
       .source = in.nominal_V >= kHighCircuit_V ? kCfrDeviceRating : kE11Rating,
       .assumptions = {"Standard ratings as in NEC 240.6(A), recalled."}});
  const double table_A = w.has_tail() ? std::min(w.run.table_A, w.tail.table_A) : w.run.table_A;
  if (in.nominal_V < kHighCircuit_V) {
    steps.push_back({.id = "feeder.device_ceiling",
                     .label = "Ceiling of the federal rule, for comparison",
                     .symbol = "I_c",
                     .formula = "1.5 * I_t",
                     .terms = {{"I_t", table_A, "A", "weakest conductor, from the table"}},
                     .value = device_ceiling_A(table_A),
                     .unit = "A",
                     .source = kCfrDeviceRating});
  }
}

void show_compass(const FeederInput& in, const FeederResult& r, Trace& trace) {
  const double earth_uT = 1e6 * in.horizontal_T;
  const Term current{"I", r.current_A, "A", "full thrust, end of discharge"};
  const Term spacing{"d", in.pair_spacing_m, "m", "between the two conductors' middles"};
  trace.steps.push_back(
      {.id = "feeder.heading_distance",
       .label = "Keep a heading sensor this far from the pair",
       .symbol = "r",
       .formula = "sqrt(0.2 * I * d / (B_h * sin(e)))",
       .terms = {current,
                 spacing,
                 {"B_h", earth_uT, "uT", "level part of the earth's field"},
                 {"e", rad_from_deg(in.heading_limit_deg), "rad", "heading error allowed"}},
       .value = clear_distance_m(r.current_A, in.pair_spacing_m, earth_uT, in.heading_limit_deg),
       .unit = "m",
       .source = kBiotSavart,
       .assumptions = {"A long straight pair, side by side or one above the other; the worst direction of its "
                       "field, the worst heading. The control page takes the way it really goes.",
                       "The level field is 27 uT in the tropics and 15 uT in the far north."}});
  trace.steps.push_back(
      {.id = "feeder.compass_distance",
       .label = "Keep a steering compass this far from the pair",
       .symbol = "r_c",
       .formula = "sqrt(0.2 * I * d / B_c)",
       .terms = {current,
                 spacing,
                 {"B_c", compass_limit_uT(kCompass_deg_uT), "uT", "18 degrees over H, as a field"}},
       .value = std::sqrt(kWireField_factor * r.current_A * in.pair_spacing_m /
                          compass_limit_uT(kCompass_deg_uT)),
       .unit = "m",
       .source = kCompassDistance});
}

// The same run by every method in use, so that a surveyor finds his own figure.
void show_methods(const FeederInput& in, const Figures& f, FeederResult& r) {
  const Conductor& conductor = *f.wiring.run.conductor;
  const double loop_m = 2.0 * in.run_m;
  const Term current{"I", r.current_A, "A", "full thrust, end of discharge"};
  const Term loop{"L", loop_m, "m", "run, out and back"};
  const std::string alone = "Cable of the run alone, without joints, device and tail.";
  auto& steps = r.trace.steps;

  const auto by_resistance = [&](std::string id, std::string label, double ohm_per_m,
                                 double temperature_C, const Source& source) {
    steps.push_back({.id = std::move(id),
                     .label = std::move(label),
                     .symbol = "V_d",
                     .formula = "I * L * r * (1 + a * (T - 20))",
                     .terms = {current,
                               loop,
                               {"r", ohm_per_m, "ohm_per_m", "one conductor, 20 C"},
                               kSlopeTerm,
                               {"T", temperature_C, "C", "of the copper"}},
                     .value = r.current_A * resistance_at(loop_m * ohm_per_m, temperature_C),
                     .unit = "V",
                     .source = source,
                     .assumptions = {alone}});
  };
  const auto by_mils = [&](std::string id, std::string label, double mils_count) {
    steps.push_back({.id = std::move(id),
                     .label = std::move(label),
                     .symbol = "V_d",
                     .formula = "10.75 * I * (L / 0.3048) / CM",
                     .terms = {current, loop, {"CM", mils_count, "", "area in circular mils"}},
                     .value = e11_drop_V(r.current_A, loop_m, mils_count),
                     .unit = "V",
                     .source = kE11Drop,
                     .assumptions = {alone}});
  };

  steps.push_back({.id = "feeder.drop_iso",
                   .label = "Drop in the run by ISO 10133",
                   .symbol = "V_d",
                   .formula = "0.0164 * I * L / S",
                   .terms = {current, loop, {"S", conductor.area_mm2, "mm2", "copper"}},
                   .value = iso_drop_V(r.current_A, loop_m, conductor.area_mm2),
                   .unit = "V",
                   .source = kIsoDrop,
                   .assumptions = {alone, "Optimistic: about a fifth below a warm tinned cable."}});
  by_resistance("feeder.drop_bare", "Drop in the run, bare copper at 20 C",
                conductor.bare_ohm_per_m, 20.0, resistance_source(conductor));
  by_mils("feeder.drop_e11_area", "Drop in the run by ABYC E-11, area as labelled",
          circular_mils(conductor.area_mm2));
  if (conductor.sae_mils_count > 0.0) {
    by_mils("feeder.drop_e11_sae", "Drop in the run by ABYC E-11, least SAE area",
            conductor.sae_mils_count);
    steps.back().assumptions.push_back(
        "Cable to SAE J1127 holds less copper for the same number (" +
        std::string(kSaeAreas.title) + ").");
  }
  by_resistance("feeder.drop_tinned", "Drop in the run, tinned, at its own temperature",
                conductor.tinned_ohm_per_m, f.run.temperature_C, kCopperTemperature);
  by_resistance("feeder.drop_nec", "Drop in the run, tinned copper at 75 C",
                conductor.tinned_ohm_per_m, kNecColumn_C, resistance_source(conductor));
}

// --- the checks ----------------------------------------------------------------------------------

Change choose_again(std::string field, std::string label) {
  return {.field = std::move(field), .clear = true, .label = std::move(label)};
}
Change free_cable() { return choose_again("feeder.conductor", "Let Thole choose the cable"); }
Change free_tail() { return choose_again("feeder.tail_conductor", "Let Thole choose the tail"); }
Change free_device() { return choose_again("feeder.device", "Let Thole choose the device"); }

// A smaller allowed drop that brings `missing_V` more to the motor; none when the feeder cannot.
std::vector<Change> heavier_cable(const FeederInput& in, const FeederResult& r, double missing_V) {
  std::vector<Change> changes{free_cable(), free_tail()};
  const double wanted_frac = r.drop_frac - 1.2 * missing_V / in.nominal_V;
  const double set_frac = std::floor(1000.0 * wanted_frac) / 1000.0;
  if (missing_V > 0.0 && set_frac >= kLeastDrop_frac && set_frac < in.allowed_drop_frac) {
    changes.push_back({.field = "feeder.allowed_drop_frac",
                       .value = set_frac,
                       .label = "Allow only " + fixed(100.0 * set_frac, 1) + " % of drop"});
  }
  return changes;
}

// Where no cable loses as little as asked: an easier limit, as long as the motor has its volts.
std::vector<Change> easier_drop(const FeederInput& in, const FeederResult& r) {
  std::vector<Change> changes{free_cable(), free_tail()};
  const double set_frac = r.drop_frac < kEasierDrop_frac ? kEasierDrop_frac : kEasiestDrop_frac;
  if (r.motor_V >= in.motor_minimum_V && r.drop_frac < set_frac &&
      set_frac > in.allowed_drop_frac) {
    changes.push_back({.field = "feeder.allowed_drop_frac",
                       .value = set_frac,
                       .label = "Allow " + fixed(100.0 * set_frac, 0) + " % of drop"});
  }
  return changes;
}

// The piece of a typed circuit that is worst goes with the label.
std::string named(std::string label, const std::string& piece) {
  return piece.empty() ? label : std::move(label) + ": " + piece;
}

void check_cables(const FeederInput& in, const Figures& f, FeederResult& r) {
  const Wiring& w = f.wiring;
  auto& checks = r.trace.checks;
  const SolvedCircuit circuit = in.circuit.value_or(SolvedCircuit{});
  checks.push_back({.id = "feeder.ampacity",
                    .label = named("Cable carries the current", in.circuit ? r.carried.front().cable.label : ""),
                    .actual = in.circuit ? f.heating_A : r.current_A,
                    .limit = w.run.ampacity_A,
                    .unit = "A",
                    .source = ampacity_source(*w.run.conductor),
                    .remedy = "Take thicker cable or insulation for a higher temperature, lead it "
                              "clear of the engine space, or unbundle it.",
                    .changes = {free_cable()}});
  if (w.has_tail()) {
    checks.push_back({.id = "feeder.tail_ampacity",
                      .label = "Tail carries the current",
                      .actual = r.current_A,
                      .limit = w.tail.ampacity_A,
                      .unit = "A",
                      .source = ampacity_source(*w.tail.conductor),
                      .remedy = "Take a thicker tail, up to what the plug takes in.",
                      .changes = {free_tail()}});
  }
  checks.push_back(
      {.id = "feeder.drop",
       .label = named("Volts lost in the feeder", circuit.most_lost),
       .actual = r.drop_frac,
       .limit = in.allowed_drop_frac,
       .unit = "frac",
       .source = kE11Drop,
       .remedy =
           "Take thicker cable, a shorter run or tail, or a motor of a higher voltage; or allow "
           "more drop, as long as the motor keeps its least volts.",
       .changes = easier_drop(in, r)});
  checks.push_back({.id = "feeder.power_limit",
                    .label = named("Power that reaches the motor", circuit.limiting),
                    .actual = in.power_full_W,
                    .limit = f.end.limit_W,
                    .unit = "W",
                    .source = kCircuitLaws,
                    .remedy = "Take a larger bank and thicker cable; as it stands the motor's "
                              "controller would drop out at full thrust.",
                    .changes = {free_cable(), free_tail()}});
  checks.push_back({.id = "feeder.motor_voltage",
                    .label = "Volts at the motor",
                    .actual = r.motor_V,
                    .limit = in.motor_minimum_V,
                    .unit = "V",
                    .comparison = Comparison::at_least,
                    .source = kProjectDecision,
                    .remedy = "Take thicker cable, or a bank that sags less at the end of the day: "
                              "more capacity or another chemistry.",
                    .changes = heavier_cable(in, r, in.motor_minimum_V - r.motor_V)});
  const double needed_V = in.nominal_V * std::pow(in.assumed_sag_factor, 1.0 / kSag_exponent);
  checks.push_back({.id = "feeder.sag",
                    .label = "Thrust left as volts sag",
                    .actual = thrust_left(r.motor_V, in.nominal_V, kSag_exponent),
                    .limit = in.assumed_sag_factor,
                    .unit = "frac",
                    .comparison = Comparison::at_least,
                    .source = kProjectDecision,
                    .remedy =
                        "Take thicker cable or a bank that sags less, or count on less wind at "
                        "the end of the day.",
                    .changes = heavier_cable(in, r, needed_V - r.motor_V)});
  checks.push_back({.id = "feeder.joint_heat",
                    .label = named("Heat in a single joint", circuit.worst_joint),
                    .actual = in.circuit ? circuit.joint_W
                                         : r.current_A * r.current_A * std::max(in.lug_ohm, in.plug_ohm),
                    .limit = kJointHeat_W,
                    .unit = "W",
                    .source = kCommonPractice,
                    .remedy = "Use a larger plug and crimp afresh; measure the joint's millivolts "
                              "under load."});
}

void check_device(const FeederInput& in, const Figures& f, FeederResult& r) {
  const ProtectiveDevice& device = *f.wiring.device;
  auto& checks = r.trace.checks;
  checks.push_back({.id = "feeder.device_load",
                    .label = "Device holds the current",
                    .actual = device.rating_A,
                    .limit = r.device_min_A,
                    .unit = "A",
                    .comparison = Comparison::at_least,
                    .source = kContinuousLoad,
                    .remedy = "Take a device of a higher rating, and cable to go with it.",
                    .changes = {free_device(), free_cable(), free_tail()}});
  checks.push_back({.id = "feeder.device_rating",
                    .label = "Device protects the cable",
                    .actual = device.rating_A,
                    .limit = r.device_max_A,
                    .unit = "A",
                    .source = in.nominal_V >= kHighCircuit_V ? kCfrDeviceRating : kE11Rating,
                    .remedy = "Take a device of a lower rating, or thicker cable and tail.",
                    .changes = {free_device(), free_cable(), free_tail()}});
  if (in.petrol) {
    checks.push_back({.id = "feeder.ignition",
                      .label = "Devices that may spark",
                      .actual = device.ignition_protected ? 0.0 : 1.0,
                      .limit = 0.0,
                      .unit = "count",
                      .source = kDeviceIgnition,
                      .remedy = "Take an ignition-protected device, or keep it out of every space "
                                "with a petrol engine, tank or fitting.",
                      .changes = {free_device()}});
  }
}

void check_place(const FeederInput& in, FeederResult& r) {
  const bool enough_when_sheathed = in.device_distance_m <= placement_limit_m(true, true);
  const Change sleeve{
      .field = "feeder.sheathed", .value = 1.0, .label = "Sheathe it up to the device"};
  const Change nearer{.field = "feeder.device_distance_m",
                      .value = kBesideBank_m,
                      .label = "Put the device beside the bank"};
  r.trace.checks.push_back(
      {.id = "feeder.placement",
       .label = "Battery post to device",
       .actual = in.device_distance_m,
       .limit = placement_limit_m(in.sheathed, true),
       .unit = "m",
       .source = kE11Placement,
       .remedy = "Move the device nearer to the bank, or sheathe the cable up to it.",
       .changes = !in.sheathed && enough_when_sheathed ? std::vector<Change>{sleeve, nearer}
                                                       : std::vector<Change>{nearer}});
}

void check_missing(std::string id, std::string label, std::string remedy,
                   std::vector<Change> changes, Trace& trace) {
  trace.checks.push_back({.id = std::move(id),
                          .label = std::move(label),
                          .actual = 1.0,
                          .limit = 0.0,
                          .unit = "count",
                          .source = kProjectDecision,
                          .remedy = std::move(remedy),
                          .changes = std::move(changes)});
}

// --- the cautions --------------------------------------------------------------------------------

void warn(const FeederInput& in, Trace& trace) {
  const auto say = [&](std::string id, std::string text, const Source& source) {
    trace.cautions.push_back({std::move(id), std::move(text), source});
  };
  say("feeder.competent",
      "Have the wiring done or checked by someone competent in boats' direct-current systems, to "
      "the "
      "code that holds where the boat is registered; this sheet does not replace it.",
      kCommonPractice);
  say("feeder.disconnect",
      "Open the device and take the cable off the bank's post before any work on the feeder: a "
      "bank "
      "has no off switch, and a slipped spanner carries the short-circuit current shown here.",
      kCommonPractice);
  say("feeder.mating",
      "Open the breaker before mating or parting the plug; sparks burn its contacts, and a burnt "
      "contact heats.",
      kCommonPractice);
  say("feeder.heading",
      "Keep plus and minus touching or twisted all the way, and the heading sensor away from them: "
      "a "
      "heading that moves with thrust makes the boat hunt.",
      kBiotSavart);
  say("feeder.propulsion_scope",
      "Ask the certifier whether this motor counts as propulsion: ISO 13297 leaves electric "
      "propulsion "
      "to another standard.",
      kPropulsionScope);
  if (in.floating) {
    say("feeder.floating",
        "Check every data cable and charger on the motor's bank for a tie to the boat's negative: "
        "a "
        "second tie is an unfused path through a thin wire.",
        kCommonPractice);
  }
  if (in.petrol || in.engine_space) {
    say("feeder.ignition",
        "Keep devices, plugs and switches out of spaces with a petrol engine, tank or fitting "
        "unless "
        "they are marked ignition-protected.",
        kDeviceIgnition);
  }
  if (in.engine_space) {
    say("feeder.engine_space",
        "Lead the cable clear of the engine, exhaust and belts; use oil-resistant insulation "
        "there.",
        kCommonPractice);
  }
  if (in.nominal_V >= kHighCircuit_V) {
    say("feeder.high_voltage",
        "Use cable of a type allowed at 50 V and more, and ask which rules for higher voltage "
        "hold: "
        "the bank's nominal voltage is past the small-craft limit of 50 V.",
        kCfrHighVoltageCable);
  }
}

void assume_usual(const FeederInput& in, const Figures& f, Trace& trace) {
  if (f.wiring.has_tail()) {
    trace.assumptions.push_back(
        {"feeder.tail_conductor", "The plug takes up to 6 AWG or 16 mm2.", kCommonPractice});
  }
  trace.assumptions.push_back(
      {"", "ABYC E-11 and the ISO standards as publicly quoted.", kE11Rating});
  trace.assumptions.push_back(
      {"", "Tinned strands at the tables' resistance; the finest may lie 3 % above it.", kAstmB33});
  if (in.bundled_count > 2) {
    trace.assumptions.push_back(
        {"feeder.bundled_count", "Only conductors that are loaded together count.", kBundling});
  }
}

// --- the result ----------------------------------------------------------------------------------

void record(const FeederInput& in, const Figures& f, FeederResult& r) {
  const Wiring& w = f.wiring;
  r.cable = *w.run.offer;
  r.conductor = std::string(w.run.conductor->label);
  if (w.has_tail()) {
    r.tail_cable = *w.tail.offer;
    r.tail_conductor = std::string(w.tail.conductor->label);
    r.tail_cable_m = 2.0 * in.tail_m;
  }
  if (w.device != nullptr) {
    r.device = *w.device;
    r.device_count = device_count(in, *w.device);
  }
  r.found = w.device != nullptr;
  r.current_A = f.end.current_A;
  r.current_nominal_A = in.power_full_W / in.nominal_V;
  r.drop_V = f.drop_V;
  r.drop_frac = f.drop_frac;
  r.motor_V = f.end.load_V;
  r.motor_full_V = f.full.load_V;
  r.loss_W = r.current_A * r.current_A * f.external_ohm;
  r.conductor_C = f.run.temperature_C;
  r.tail_conductor_C = f.tail.temperature_C;
  r.run_ampacity_A = w.run.ampacity_A;
  r.tail_ampacity_A = w.has_tail() ? w.tail.ampacity_A : 0.0;
  r.jumpers_ohm = f.jumpers_cold_ohm;
  r.device_min_A = f.device_min_A;
  r.device_max_A = f.device_max_A;
  const int jumpers = jumper_count(in.series_count, in.parallel_count);
  r.cable_m = 2.0 * in.run_m + jumpers * in.jumper_m;
  r.lug_count = f.lug_count + 2 * jumpers;
}

// Puts a typed circuit in place of run and tail. `worst` is then the cable that is nearest to its limit.
void carry(const FeederInput& in, CableOffer& worst, Figures& f, FeederResult& r) {
  const SolvedCircuit& circuit = *in.circuit;
  const CableOffer usual = *f.wiring.run.offer;
  f.wiring.tail = {};
  f.tail = {};
  f.weakest_A = std::numeric_limits<double>::infinity();
  double most_use = -1.0;
  for (const CircuitCable& cable : circuit.cables) {
    CableOffer offer = usual;
    offer.conductor = cable.conductor;
    Lead lead = make_lead(offer, cable.length_m, cable.ambient_C.value_or(in.ambient_C),
                          in.engine_space && !cable.ambient_C, cable.bundled_count.value_or(in.bundled_count));
    const WarmLead warm_lead = warm(lead, cable.current_A);
    r.carried.push_back({cable, lead.ampacity_A, warm_lead.temperature_C, lead.ambient_C});
    f.weakest_A = std::min(f.weakest_A, lead.ampacity_A * std::max(1.0, circuit.current_A / cable.current_A));
    const double use = cable.current_A / lead.ampacity_A;
    if (use <= most_use) continue;
    most_use = use;
    std::swap(r.carried.front(), r.carried.back());
    worst = offer;
    lead.offer = &worst;
    f.wiring.run = lead;
    f.run = warm_lead;
    f.heating_A = cable.current_A;
  }
  f.end = {.limit_W = circuit.limit_W};
  r.found = true;  // with or without a device
  r.current_A = circuit.current_A;
  r.drop_V = circuit.plus_V + circuit.minus_V;
  r.drop_frac = r.drop_V / in.nominal_V;
  r.motor_V = circuit.bank_V - r.drop_V;
  r.motor_full_V = circuit.motor_full_V;
  r.loss_W = circuit.loss_W;
  r.conductor_C = f.run.temperature_C;
  r.tail_conductor_C = 0.0;
  r.run_ampacity_A = f.wiring.run.ampacity_A;
  r.tail_ampacity_A = 0.0;
  f.device_A = std::max(circuit.device_A, circuit.current_A);
  r.device_min_A = device_min_A(f.device_A);
  r.device_max_A = device_max_A(f.weakest_A);
  r.device_count = circuit.device_count;
  r.nodes = circuit.nodes;
}

}  // namespace

FeederResult feeder(const FeederInput& in) {
  FeederResult r;
  warn(in, r.trace);
  if (!(in.nominal_V > 0.0 && in.open_circuit_end_V > 0.0 && in.open_circuit_full_V > 0.0)) {
    check_missing("feeder.bank", "Bank to draw from is missing",
                  "Choose a bank first; the feeder follows from it.", {}, r.trace);
    return r;
  }
  Figures f = choose_wiring(in);
  if (f.wiring.run.conductor == nullptr) {
    check_missing("feeder.cable", "Cable on offer is missing",
                  "Add cable of a size in the tables, for run and tail, to the catalogue.",
                  {free_cable(), free_tail()}, r.trace);
    return r;
  }
  record(in, f, r);
  CableOffer worst;
  if (in.circuit) {
    carry(in, worst, f, r);
  } else {
    lay_nodes(in, f, r);
  }

  tell([&] {
    show_lead(f.wiring.run, f.run, f.heating_A,
              {"feeder.run", in.circuit ? r.carried.front().cable.label : "the run"}, r.trace);
    if (f.wiring.has_tail()) {
      show_lead(f.wiring.tail, f.tail, f.heating_A, {"feeder.tail", "the tail"}, r.trace);
    }
    in.circuit ? show_typed(in, r, r.trace) : show_circuit(in, f, r);
    show_sag(in, r);
    show_protection(in, f, r);
    show_compass(in, r, r.trace);
    if (!in.circuit) show_methods(in, f, r);
  });

  check_cables(in, f, r);
  if (f.wiring.device != nullptr) {
    check_device(in, f, r);
  } else {
    check_missing("feeder.device", "Protective device is missing",
                  in.circuit ? "Put a device between the bank and the rest of the circuit."
                             : "Add a breaker or fuse for this current and voltage to the catalogue.",
                  {free_device()}, r.trace);
  }
  check_place(in, r);
  assume_usual(in, f, r.trace);
  return r;
}

}  // namespace thole
