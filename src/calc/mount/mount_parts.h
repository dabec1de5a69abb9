#pragma once

// The parts of the mount stage, split by question. Only mount*.cpp, bolts.cpp, deck_steps.cpp,
// plate_strip.cpp and slam_steps.cpp include this.

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/trace.h"
#include "calc/mount/mount.h"
#include "calc/mount/plate_rules.h"
#include "calc/mount/slam.h"
#include "data/alloys.h"
#include "data/bolts.h"

namespace thole::mounting {

inline constexpr double kLengthLimit_mm = 1200.0;  // of the fields, as the next
inline constexpr double kWidthLimit_mm = 600.0;

inline double round_up(double value, double step) { return std::ceil(value / step) * step; }

Change clear_field(std::string field, std::string label);
Change set_field(std::string field, double value, std::string label);

// Where bolts stand on the plate, and how far the deck carries it ahead of them.
struct Layout {
  BoltPattern pattern{};
  double edge_mm = 0.0;          // the plate's nearest edge to any bolt
  double aft_margin_mm = 0.0;    // plate behind the aft row
  double front_margin_mm = 0.0;  // plate ahead of the front row; negative: the pattern is too long
  double side_margin_mm = 0.0;
  double deck_ahead_mm = 0.0;  // front row to where the plate leaves the deck
  double reach_mm = 0.0;       // front row to the motor's centre of mass, as it counts
};
Layout layout_of(const MountInput& in, Trace& trace);

// --- slams (slam_steps.cpp)
PlaningHull hull_of(const MountInput& in);
// 1/100 highest acceleration at the centre of gravity, with its steps.
double cg_acceleration_g(const PlaningHull& hull, Trace& trace);
double bow_acceleration_g(const PlaningHull& hull, double cg_g, Trace& trace);
double motor_acceleration_g(const MountInput& in, double cg_g, double bow_g, Trace& trace);
// Speed in the sea that the boat is run in at which slams reach the design value.
double speed_limit_mps(const MountInput& in, double cg_g, Trace& trace);

struct Slam {
  double force_N = 0.0;
  double moment_Nm = 0.0;  // at the deck's edge
};

// The stowed motor's push on the plate, amplified by `factor`, and its moment over the deck's edge.
Slam slam_on_plate(const MountInput& in, const Layout& layout, double motor_g, double factor,
                   Trace& trace);
inline constexpr double kWorstAmplification_factor = 1.65;  // when no plate tells the frequency

// --- the plate (plate_strip.cpp)
// One plate of the candidates, worked through.
struct PlateCase {
  PlateStock stock{};
  double mass_kg = 0.0;
  double stress_MPa = 0.0;
  double sag_mm = 0.0;
  double frequency_Hz = 0.0;
  double amplification_factor = 0.0;
  double working_stress_MPa = 0.0;
  Slam slam{};
  Trace trace{};
};

// Thinnest first, the cheapest of equals.
std::optional<PlateCase> choose_plate(const MountInput& in, const Layout& layout, double motor_g,
                                      double thrust_moment_Nm);

// --- the bolts (bolts.cpp)
struct BoltLoads {
  double slam_tension_N = 0.0;
  double thrust_tension_N = 0.0;
  double shear_N = 0.0;

  double tension_N() const { return std::max(slam_tension_N, thrust_tension_N); }
  double pried_N() const { return kPrying_factor * thrust_tension_N; }
};

BoltLoads bolt_loads(const MountInput& in, const Layout& layout, const Slam& slam, Trace& trace);

struct BoltCase {
  BoltOffer offer{};
  const BoltSize* size = nullptr;
  const BoltGrade* grade = nullptr;
  double breaking_N = 0.0;
  Trace trace{};
};

// Smallest first, the cheapest of equals. `thickness_mm` of the plate, 0 when there is none.
std::optional<BoltCase> choose_bolt(const MountInput& in, const Layout& layout,
                                    const BoltLoads& loads, const Alloy* alloy,
                                    double thickness_mm);
std::vector<Change> bolt_changes(const MountInput& in);
// `thickness_mm` of the plate.
void add_bolt_reach(const MountInput& in, const Layout& layout, double thickness_mm, Trace& trace);

// --- the deck (deck_steps.cpp)
bool is_cored(DeckKind kind);
// Fills the part of `out` that bolts and deck decide.
void take_bolts(const MountInput& in, const Layout& layout, const BoltLoads& loads,
                MountResult& out);

// --- the joint of plate and deck (joint_steps.cpp). `alloy` of the plate; null when there is none.
void add_bearing(const MountInput& in, const Layout& layout, const BoltLoads& loads,
                 const Alloy* alloy, double plate_mm, BoltCase& bolt);
void add_backing_thickness(const MountInput& in, const BoltSize& size, Trace& trace);
void add_overdrill(const MountInput& in, const BoltSize& size, Trace& trace);
// Returns the clamp that is left.
double add_finish(const MountInput& in, const BoltSize& size, double plate_mm, double preload_N,
                  double thrust_tension_N, Trace& trace);
void add_galvanic(const MountInput& in, const Alloy* alloy, const BoltGrade& grade, Trace& trace);
// `dynamic_frac`: share of a slam that comes and goes, the rest is the motor's weight.
void add_bolt_fatigue(const BoltCase& bolt, double slam_tension_N, double preload_N,
                      double dynamic_frac, Trace& trace);
void add_bolt_swings(const BoltCase& bolt, double thrust_tension_N, double preload_N, Trace& trace);

// --- what is said besides (mount_cautions.cpp)
void add_cautions(const MountInput& in, double speed_limit_mps, Trace& trace);
void add_assumptions(const MountInput& in, Trace& trace);
void add_none_check(std::string id, std::string label, std::string remedy,
                    std::vector<Change> changes, Trace& trace);
void append(const Trace& part, Trace& trace);

// --- choosing
// Whether all checks pass, and the use of the worst of them.
inline bool serves(const Trace& trace) {
  return std::none_of(trace.checks.begin(), trace.checks.end(), [](const Check& check) {
    return check.verdict() == Verdict::fail || check.verdict() == Verdict::not_evaluated;
  });
}

inline double worst_use(const Trace& trace) {
  const Check* governing = trace.governing();
  return governing != nullptr ? governing->utilisation() : 0.0;
}

// The first case that serves, else the one that comes closest; empty when there is none.
// `make(candidate)` gives an optional case: nothing when the candidate is unknown here.
template <class Case, class Candidate, class Make>
std::optional<Case> first_that_serves(const std::vector<Candidate>& candidates, Make make) {
  std::optional<Case> closest;
  for (const Candidate& candidate : candidates) {
    std::optional<Case> now = make(candidate);
    if (!now) continue;
    if (serves(now->trace)) return now;
    if (!closest || worst_use(now->trace) < worst_use(closest->trace)) closest = std::move(now);
  }
  return closest;
}

}  // namespace thole::mounting
