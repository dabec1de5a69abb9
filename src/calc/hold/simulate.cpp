#include "calc/hold/simulate.h"

#include <algorithm>
#include <cmath>
#include <memory>
#include <numbers>
#include <string>
#include <utility>

#include "base/units.h"
#include "calc/hold/site.h"
#include "calc/hold/wave_train.h"
#include "data/sources.h"
#include "data/sources_hold.h"
#include "data/sources_motion.h"

namespace thole {
namespace {

constexpr int kGustTones = 240;  // 200 to 400 are enough
constexpr int kWaveTones = 100;
constexpr int kGustSteps = 5;        // between samples of the gusts: four a second
constexpr double kLost_ratio = 3.0;  // boat lengths; project decision
constexpr double kMostStiff = 0.5;   // of a step's part times the fastest rate
constexpr int kMostParts = 64;
constexpr double kShelteredGust_factor = 2.0;  // project decision: wind off the land, 1.5 to 2

// Streams of the generator; controller.cpp takes 11 for the sensors.
constexpr std::uint64_t kAlongStream = 1;
constexpr std::uint64_t kAcrossStream = 2;
constexpr std::uint64_t kWaveStream = 3;

// --- what surrounds the boat
// --------------------------------------------------------------------

// Wind and waves as time goes on, step by step.
class Weathering {
 public:
  explicit Weathering(const HoldRunInput& in)
      : wind_mps_(in.wind_mps),
        sea_(in.sea),
        step_s_(in.step_s),
        wave_steps_(in.sea.period_s > 0.0
                        ? std::clamp(static_cast<int>(in.sea.period_s / 8.0 / in.step_s), 1, 20)
                        : 1),
        along_(gust_tones(in.gust, kGustTones, in.seed, kAlongStream), kGustSteps * in.step_s),
        across_(gust_tones(in.gust, kGustTones, in.seed, kAcrossStream), kGustSteps * in.step_s),
        waves_(wave_tones(in.sea, kWaveTones, in.seed, kWaveStream), wave_steps_ * in.step_s) {
    calm_.current_x_mps = -in.current_mps * std::cos(in.current_from_rad);
    calm_.current_y_mps = in.current_mps * std::sin(in.current_from_rad);
  }

  // `part_frac` of this step, without the thrust.
  Surroundings at(double part_frac) const {
    const double gust_part = (gust_step_ + part_frac) / kGustSteps;
    Surroundings now = calm_;
    now.wind_mps = wind_mps_ + along_.cosine_at(gust_part);
    now.wind_across_mps = kAcrossGust_ratio * across_.cosine_at(gust_part);
    now.wave_push_ratio = push_ratio(sea_, waves_.at((wave_step_ + part_frac) / wave_steps_));
    return now;
  }

  // Height of the surface at the start of this step.
  double surface_m() const {
    if (!(sea_.height_m > 0.0) || !(sea_.period_s > 0.0)) return 0.0;
    const Quadrature envelope = waves_.at(static_cast<double>(wave_step_) / wave_steps_);
    const double turned_rad =
        2.0 * std::numbers::pi * static_cast<double>(steps_) * step_s_ / sea_.period_s;
    return envelope.cosine_factor * std::cos(turned_rad) -
           envelope.sine_factor * std::sin(turned_rad);
  }

  void advance() {
    ++steps_;
    if (++gust_step_ == kGustSteps) {
      gust_step_ = 0;
      along_.advance();
      across_.advance();
    }
    if (++wave_step_ == wave_steps_) {
      wave_step_ = 0;
      waves_.advance();
    }
  }

 private:
  double wind_mps_ = 0.0;
  Sea sea_{};
  double step_s_ = 0.0;
  int wave_steps_ = 1;
  ToneSeries along_;
  ToneSeries across_;
  ToneSeries waves_;
  Surroundings calm_{};
  long steps_ = 0;
  int gust_step_ = 0;
  int wave_step_ = 0;
};

void set_push(Surroundings& now, const Push& push) {
  now.thrust_ahead_N = push.thrust_N * std::cos(push.azimuth_rad);
  now.thrust_port_N = push.thrust_N * std::sin(push.azimuth_rad);
}

// --- what is refused
// -----------------------------------------------------------------------------

// Bounds within which every sum stays finite; those of the fields are narrower.
struct Bound {
  const char* field = "";
  const char* message = "";
  double value = 0.0;
  double low = 0.0;
  double high = 0.0;
};

Issues faults(const HoldRunInput& in) {
  const HeldHull& hull = in.hull;
  const Bound bounds[] = {
      {"boat.displacement_kg", "A boat that is to be moved about weighs 1 to 1,000,000 kg.",
       in.displacement_kg, 1.0, 1e6},
      {"boat.length_m", "A boat is 0.5 to 100 m long.", in.length_m, 0.5, 100.0},
      {"boat.waterline_length_m", "A waterline is 0.5 to 100 m long.",
       hull.current.waterline_length_m, 0.5, 100.0},
      {"boat.waterline_beam_m", "A waterline is 0.1 to 50 m wide.", hull.wave.waterline_beam_m, 0.1,
       50.0},
      {"boat.frontal_area_m2", "Windage from ahead is 0 to 2,000 m².", hull.wind.frontal_area_m2,
       0.0, 2000.0},
      {"boat.lateral_area_m2", "Windage from the side is 0 to 5,000 m².", hull.wind.lateral_area_m2,
       0.0, 5000.0},
      {"boat.underwater_area_m2", "The side under water is 0.01 to 2,000 m².",
       hull.current.underwater_area_m2, 0.01, 2000.0},
      {"boat.underwater_area_m2", "The drag area of the current from ahead is 0 to 200 m².",
       hull.current.surge_area_m2, 0.0, 200.0},
      {"boat.bow_angle_deg", "Half the angle of the bow is up to a right angle, and not 0.",
       hull.wave.bow_angle_rad, 1e-3, 1.6},
      {"shaft.thruster_forward_m", "The motor is within 100 m of midships.",
       hull.thruster_forward_m, -100.0, 100.0},
      {"water.salinity", "Water has 900 to 1,100 kg/m³.", hull.water_density_kg_per_m3, 900.0,
       1100.0},
      {"water.air_C", "Air has 0.5 to 2 kg/m³.", hull.air_density_kg_per_m3, 0.5, 2.0},
      {"water.wind_mps", "Wind is 0 to 100 m/s.", in.wind_mps, 0.0, 100.0},
      {"water.wave_height_m", "Waves are 0 to 20 m high.", in.sea.height_m, 0.0, 20.0},
      {"water.wave_period_s", "Waves pass in 0 to 30 s.", in.sea.period_s, 0.0, 30.0},
      {"water.current_mps", "Current is 0 to 10 m/s.", in.current_mps, 0.0, 10.0},
      {"water.current_angle_deg", "An angle is within ten turns.", in.current_from_rad, -63.0,
       63.0},
      {"hold.thrust_N", "Thrust is 0 to 1,000,000 N.", in.motor.thrust_N, 0.0, 1e6},
      {"", "The lag of thrust is 0 to 60 s.", in.motor.lag_s, 0.0, 60.0},
      {"", "The motor turns at 1 to 1,000 degrees a second.", in.motor.steering_deg_per_s, 1.0,
       1000.0},
      {"", "The receiver takes 0.1 to 100 fixes a second.", in.sensors.fix_Hz, 0.1, 100.0},
      {"", "The law's bandwidth is 0.01 to 2 rad/s.", in.law.bandwidth_rad_per_s, 0.01, 2.0},
      {"", "Gusts are 0 to 5 times those of the open sea.", in.gust.strength_factor, 0.0, 5.0},
      {"", "The start is within 1,000 m of the spot.",
       std::hypot(in.start_upwind_m, in.start_right_m), 0.0, 1000.0},
      {"", "The time to record is 0.01 to 24 hours.", in.record_h, 0.01, 24.0},
      {"", "The time to settle is 0 to 3,600 s.", in.settle_s, 0.0, 3600.0},
      {"", "A step is 0.01 to 0.1 s.", in.step_s, 0.01, 0.1},
  };
  Issues issues;
  for (const Bound& bound : bounds) {
    if (bound.value >= bound.low && bound.value <= bound.high) continue;
    issues.push_back({Severity::error, bound.field, bound.message});
  }
  return issues;
}

// --- the run
// ------------------------------------------------------------------------------------

// Into how many parts a step is divided, so that drag cannot outrun it.
int parts_of_step(const Manoeuvre& boat, const HoldRunInput& in) {
  const double speed_mps = in.current_mps + 0.15 * in.wind_mps + 1.0;
  constexpr double kSpin_rad_per_s = 1.0;
  const double stiff = in.step_s * boat.stiffness_Hz(speed_mps, kSpin_rad_per_s);
  return std::clamp(static_cast<int>(std::ceil(stiff / kMostStiff)), 1, kMostParts);
}

Motion start_of(const HoldRunInput& in, const Surroundings& calm) {
  const double heading_rad = -in.start_heading_rad;
  const double cosine = std::cos(heading_rad);
  const double sine = std::sin(heading_rad);
  const double forward_m = in.hull.thruster_forward_m;
  // At rest over the ground, and so moving through the water as the current goes by.
  return {.x_m = in.start_upwind_m - forward_m * cosine,
          .y_m = -in.start_right_m - forward_m * sine,
          .heading_rad = heading_rad,
          .surge_mps = -(cosine * calm.current_x_mps + sine * calm.current_y_mps),
          .sway_mps = -(cosine * calm.current_y_mps - sine * calm.current_x_mps)};
}

BowTruth bow_of(const Motion& motion, double forward_m) {
  return {.x_m = motion.x_m + forward_m * std::cos(motion.heading_rad),
          .y_m = motion.y_m + forward_m * std::sin(motion.heading_rad),
          .heading_rad = motion.heading_rad};
}

bool sound(const Motion& motion) {
  return std::isfinite(motion.x_m) && std::isfinite(motion.y_m) &&
         std::isfinite(motion.heading_rad) && std::isfinite(motion.surge_mps) &&
         std::isfinite(motion.sway_mps) && std::isfinite(motion.yaw_rad_per_s);
}

// A step in equal parts, between which what acts changes in a straight line from start to middle
// and from there to the end.
Motion step_in_parts(const Manoeuvre& boat, Motion motion, const Surroundings& start,
                     const Surroundings& middle, const Surroundings& end, double step_s, int parts,
                     Manoeuvre::Work& work) {
  if (parts == 1) return boat.step(motion, start, middle, end, step_s, work);
  const auto at = [&](double part) {
    const Surroundings& a = part < 0.5 ? start : middle;
    const Surroundings& b = part < 0.5 ? middle : end;
    const double t = part < 0.5 ? 2.0 * part : 2.0 * part - 1.0;
    const auto mix = [t](double from, double to) { return from + t * (to - from); };
    Surroundings now = a;
    now.wind_mps = mix(a.wind_mps, b.wind_mps);
    now.wind_across_mps = mix(a.wind_across_mps, b.wind_across_mps);
    now.wave_push_ratio = mix(a.wave_push_ratio, b.wave_push_ratio);
    now.thrust_ahead_N = mix(a.thrust_ahead_N, b.thrust_ahead_N);
    now.thrust_port_N = mix(a.thrust_port_N, b.thrust_port_N);
    return now;
  };
  for (int i = 0; i < parts; ++i) {
    const double from = static_cast<double>(i) / parts;
    motion = boat.step(motion, at(from), at(from + 0.5 / parts), at(from + 1.0 / parts),
                       step_s / parts, work);
  }
  return motion;
}

// All that changes while it runs, and what it runs on.
class Hour {
 public:
  Hour(const HoldRunInput& in, HoldRun& result)
      : in_(in),
        boat_({.hull = in.hull, .mass = result.mass}, in.sea),
        parts_(parts_of_step(boat_, in)),
        settle_count_(std::lround(in.settle_s / in.step_s)),
        count_(settle_count_ + std::lround(in.record_h * 3600.0 / in.step_s)),
        weather_(in_),
        start_(weather_.at(0.0)),
        motion_(start_of(in, start_)),
        bow_(bow_of(motion_, in.hull.thruster_forward_m)),
        sensors_(in.sensors, in.step_s, in.seed, bow_),
        law_(result.gains, in.law.dead_zone_m, in.motor.thrust_N),
        thruster_(in.motor, in.step_s),
        record_({.motor = in.power,
                 .tolerance_m = in.tolerance_m,
                 .lost_m = result.lost_m,
                 .step_s = in.step_s,
                 .step_count = static_cast<std::size_t>(count_ - settle_count_),
                 .track_s = in.track_s}) {}

  bool done() const { return at_ >= count_; }
  double done_frac() const { return static_cast<double>(at_) / static_cast<double>(count_); }

  // One step; false when the boat moves beyond all reckoning.
  bool step() {
    if (at_ == settle_count_) {
      turned_before_rad_ = thruster_.turned_rad();
      energy_before_J_ = boat_.energy_J(motion_);
      work_ = {};
    }
    PushStep push{};
    Command command{};
    if (!in_.adrift) {
      command = law_.command(sensors_.sense(bow_, sensors_.fix_due() ? weather_.surface_m() : 0.0),
                             in_.step_s);
      push = thruster_.step(command);
    }
    if (at_ >= settle_count_) {
      record_.add({.x_m = bow_.x_m,
                   .y_m = bow_.y_m,
                   .heading_rad = motion_.heading_rad,
                   .thrust_N = push.start.thrust_N,
                   .azimuth_rad = push.start.azimuth_rad,
                   .wind_mps = start_.wind_mps,
                   .wind_across_mps = start_.wind_across_mps,
                   .full = command.full});
    }
    Surroundings middle = weather_.at(0.5);
    Surroundings end = weather_.at(1.0);
    set_push(middle, push.middle);
    set_push(end, push.end);
    motion_ = step_in_parts(boat_, motion_, start_, middle, end, in_.step_s, parts_, work_);
    bow_ = bow_of(motion_, in_.hull.thruster_forward_m);
    weather_.advance();
    start_ = end;
    ++at_;
    return sound(motion_);
  }

  void conclude(HoldRun& result) {
    result.work = work_;
    result.energy_gain_J = boat_.energy_J(motion_) - energy_before_J_;
    result.statistics = record_.statistics(thruster_.turned_rad() - turned_before_rad_);
    result.track = record_.take_track();
  }

  const HoldRunInput& input() const { return in_; }

 private:
  HoldRunInput in_;
  Manoeuvre boat_;
  int parts_ = 1;
  long settle_count_ = 0;
  long count_ = 0;
  Weathering weather_;
  Surroundings start_{};
  Motion motion_{};
  BowTruth bow_{};
  Sensors sensors_;
  PositionHold law_;
  Thruster thruster_;
  Record record_;
  long at_ = 0;
  double turned_before_rad_ = 0.0;
  double energy_before_J_ = 0.0;
  Manoeuvre::Work work_{};
};

// --- the trace
// ----------------------------------------------------------------------------------

double show(Trace& trace, Step step) {
  trace.steps.push_back(std::move(step));
  return trace.steps.back().value;
}

void show_mass(const HoldRunInput& in, const HoldRun& r, Trace& trace) {
  const Term boat{"m", in.displacement_kg, "kg", "loaded weight"};
  const double ahead_kg = show(
      trace, {.id = "holding.mass_ahead",
              .label = "Boat and water that move together ahead",
              .symbol = "m_11",
              .formula = "m + 2.7 * rho_w * (m / rho_w)^(5 / 3) / L^2",
              .terms = {boat,
                        {"rho_w", in.hull.water_density_kg_per_m3, "kg/m3", "density of the water"},
                        {"L", in.hull.current.waterline_length_m, "m", "waterline length"}},
              .value = r.mass.surge_kg,
              .unit = "kg",
              .source = kSurgeMass});
  const double across_kg =
      show(trace,
           {.id = "holding.mass_across",
            .label = "Boat and water that move together sideways",
            .symbol = "m_22",
            .formula = "k * m",
            .terms = {{"k", kSwayMass_ratio, "", "with the water alongside"}, boat},
            .value = r.mass.sway_kg,
            .unit = "kg",
            .source = kProjectDecision,
            .assumptions = {"Between a flat plate and the regression of ships, which was made for "
                            "longer hulls."}});
  const double turning_kg_m2 =
      show(trace, {.id = "holding.mass_turning",
                   .label = "What resists turning",
                   .symbol = "I_66",
                   .formula = "k * m * (0.25 * L)^2",
                   .terms = {{"k", kYawMass_ratio, "", "with the water alongside"},
                             boat,
                             {"L", in.length_m, "m", "length"}},
                   .value = r.mass.yaw_kg_m2,
                   .unit = "kg m2",
                   .source = kProjectDecision});
  const double bow_kg =
      show(trace, {.id = "holding.mass_bow",
                   .label = "Mass that a sideways push at the bow finds",
                   .symbol = "m_bow",
                   .formula = "1 / (1 / m_22 + x^2 / I_66)",
                   .terms = {{"m_22", across_kg, "kg", "sideways"},
                             {"x", in.hull.thruster_forward_m, "m", "motor forward of midships"},
                             {"I_66", turning_kg_m2, "kg m2", "what resists turning"}},
                   .value = bow_mass_kg(r.mass, in.hull.thruster_forward_m),
                   .unit = "kg",
                   .source = kMotionEquations});
  const Term briskness{"w", in.law.bandwidth_rad_per_s, "rad/s", "how briskly it pulls back"};
  show(trace, {.id = "holding.gain_ahead",
               .label = "Pull for each metre off, ahead",
               .symbol = "K_ahead",
               .formula = "m_11 * w^2",
               .terms = {{"m_11", ahead_kg, "kg", "mass ahead"}, briskness},
               .value = r.gains.ahead_N_per_m,
               .unit = "N/m",
               .source = kPolePlacement});
  show(trace, {.id = "holding.gain_across",
               .label = "Pull for each metre off, sideways",
               .symbol = "K_across",
               .formula = "m_bow * w^2",
               .terms = {{"m_bow", bow_kg, "kg", "mass at the bow, sideways"}, briskness},
               .value = r.gains.across_N_per_m,
               .unit = "N/m",
               .source = kPolePlacement});
}

const Source& source_of(GustLaw law) {
  switch (law) {
    case GustLaw::npd:
      return kNpdGusts;
    case GustLaw::davenport:
      return kDavenportGusts;
    case GustLaw::harris:
      return kHarrisGusts;
    case GustLaw::ochi_shin:
      return kOchiShinGusts;
  }
  return kNpdGusts;
}

void show_record(const HoldRunInput& in, const HoldRun& r, Trace& trace) {
  const HoldStatistics& s = r.statistics;
  show(trace, {.id = "holding.gusts",
               .label = "Gusts over the mean wind, standard deviation",
               .symbol = "I",
               .formula = "s / max(0.1, V)",
               .terms = {{"s", s.wind_deviation_mps, "m/s", "standard deviation along the wind"},
                         {"V", in.wind_mps, "m/s", "mean wind on the boat"}},
               .value = s.wind_deviation_mps / std::max(0.1, in.wind_mps),
               .unit = "",
               .source = source_of(in.gust.law),
               .assumptions = {"As made from the published spectrum, from twenty minutes to two "
                               "seconds."}});
  show(trace, {.id = "holding.hunting",
               .label = "Thrust spent over thrust that the weather took",
               .symbol = "h",
               .formula = "T / max(0.000000001 + 0.001 * T_full, T_pull)",
               .terms = {{"T", s.thrust_mean_N, "N", "mean thrust"},
                         {"T_pull", s.pull_N, "N", "mean of it as an arrow on the water"},
                         {"T_full", in.motor.thrust_N, "N", "full thrust"}},
               .value = s.hunting_ratio,
               .unit = "",
               .source = kDefinition,
               .assumptions = {"1 is a steady pull; above 1.3 the motor hunts about the spot."}});
  const double mean_W =
      show(trace, {.id = "holding.power",
                   .label = "Mean power while holding, as simulated",
                   .symbol = "P",
                   .formula = "P_idle + (P_full - P_idle) * d",
                   .terms = {{"P_idle", in.power.power_idle_W, "W", "electrical, at rest"},
                             {"P_full", in.power.power_full_W, "W", "electrical, at full thrust"},
                             {"d", s.duty_ratio, "", "mean of (thrust over full thrust)^1.5"}},
                   .value = s.power_mean_W,
                   .unit = "W",
                   .source = kMomentumTheory});
  if (in.power.nominal_V > 0.0) {
    show(trace, {.id = "holding.current",
                 .label = "Mean current while holding",
                 .symbol = "I_mean",
                 .formula = "P / U",
                 .terms = {{"P", mean_W, "W", "mean power"},
                           {"U", in.power.nominal_V, "V", "nominal voltage of the bank"}},
                 .value = s.current_mean_A,
                 .unit = "A",
                 .source = kDefinition});
  }
}

void check_record(const HoldRunInput& in, const HoldRun& r, Trace& trace) {
  trace.checks.push_back({.id = "holding.spot",
                          .label = "Keeps the spot",
                          .actual = r.statistics.radius_max_m,
                          .limit = r.lost_m,
                          .unit = "m",
                          .comparison = Comparison::at_most,
                          .source = kProjectDecision,
                          .remedy = "Take a stronger motor, cut windage, or hold in less exposed "
                                    "water."});
  trace.checks.push_back({.id = "holding.tolerance",
                          .label = "Time spent too far off",
                          .actual = 1.0 - r.statistics.within_frac,
                          .limit = 1.0 - in.tolerance_frac,
                          .unit = "",
                          .comparison = Comparison::at_most,
                          .source = kProjectDecision,
                          .remedy = "Take a stronger motor, allow a wider circle, or give the "
                                    "receiver a clearer view of the sky."});
}

void add_assumptions(const HoldRunInput& in, Trace& trace) {
  const auto assume = [&](const char* field, const char* text, const Source& source) {
    trace.assumptions.push_back({field, text, source});
  };
  assume("water.wind_mps", "The wind is the mean of the whole time; gusts come about it.",
         source_of(in.gust.law));
  assume("", "Gusts across the wind are 0.8 of those along it.", kAcrossGusts);
  assume("", "Waves push in step with the square of their envelope.", kSlowDrift);
  assume("",
         "Receiver, compass and steering are those of a common unit; other honest programs "
         "find circles up to 30 % larger or smaller.",
         kProjectDecision);
}

}  // namespace

HoldRunInput run_input(const HoldInput& in, const HoldResult& held, bool gusty) {
  const double wind_mps = wind_on_boat_mps(in, in.wind_mps);
  return {.hull = held_hull(in),
          .displacement_kg = in.displacement_kg,
          .length_m = in.length_m,
          .motor = {.thrust_N = held.thrust_effective_N},
          .power = {.thrust_N = held.thrust_effective_N,
                    .power_full_W = held.motor.power_full_W,
                    .power_idle_W = held.motor.power_idle_W,
                    .nominal_V = held.motor.nominal_V},
          .wind_mps = wind_mps,
          .gust = {.wind_mps = in.wind_mps,
                   .height_m = in.wind_at_boat_height ? profile_height_m(in) : 10.0,
                   .strength_factor = gusty ? kShelteredGust_factor : 1.0},
          .sea = given_sea(in),
          .current_mps = in.current_mps,
          .current_from_rad = rad_from_deg(in.current_angle_deg),
          .start_heading_rad = rad_from_deg(held.heading_deg)};
}

struct HoldSimulation::Engine {
  Hour hour;
};

HoldSimulation::HoldSimulation(const HoldRunInput& in) {
  result_.lost_m = kLost_ratio * in.length_m;
  result_.issues = faults(in);
  if (has_error(result_.issues)) return;
  result_.mass = inertia({.displacement_kg = in.displacement_kg,
                          .length_m = in.length_m,
                          .waterline_length_m = in.hull.current.waterline_length_m,
                          .water_density_kg_per_m3 = in.hull.water_density_kg_per_m3});
  result_.gains = hold_gains(result_.mass, in.hull.thruster_forward_m, in.law);
  engine_ = std::make_unique<Engine>(Engine{Hour(in, result_)});
}

HoldSimulation::~HoldSimulation() = default;
HoldSimulation::HoldSimulation(HoldSimulation&&) noexcept = default;
HoldSimulation& HoldSimulation::operator=(HoldSimulation&&) noexcept = default;

double HoldSimulation::done_frac() const { return engine_ ? engine_->hour.done_frac() : 1.0; }

bool HoldSimulation::advance(long step_count) {
  if (!engine_) return false;
  Hour& hour = engine_->hour;
  for (long i = 0; i < step_count && !hour.done(); ++i) {
    if (hour.step()) continue;
    result_.issues.push_back(
        {Severity::error, "", "This boat in this weather moves too violently to be computed."});
    engine_.reset();
    return false;
  }
  if (!hour.done()) return true;
  hour.conclude(result_);
  const HoldRunInput& in = hour.input();
  show_mass(in, result_, result_.trace);
  show_record(in, result_, result_.trace);
  check_record(in, result_, result_.trace);
  add_assumptions(in, result_.trace);
  engine_.reset();
  return false;
}

HoldRun simulate_hold(const HoldRunInput& in) {
  HoldSimulation simulation(in);
  while (simulation.advance(1L << 20)) {
  }
  return simulation.take();
}

namespace {

constexpr int kMarginSeeds_count = 3;
constexpr double kLeastMargin_factor = 0.5;
constexpr double kMostMargin_factor = 4.0;
constexpr double kMarginStep_factor = 0.02;

// Runs with the most thrust, and with each half of what is left.
int margin_run_count() {
  const double halvings =
      std::ceil(std::log2((kMostMargin_factor - kLeastMargin_factor) / kMarginStep_factor));
  return kMarginSeeds_count * (1 + static_cast<int>(halvings));
}

HoldRunInput with_thrust(HoldRunInput in, double thrust_N, int seed_offset) {
  in.motor.thrust_N = thrust_N;
  in.power.thrust_N = thrust_N;
  in.track_s = 0.0;
  in.seed += static_cast<std::uint64_t>(seed_offset);
  return in;
}

}  // namespace

MarginSearch::MarginSearch(const HoldRunInput& in, double mean_load_N)
    : in_(in),
      load_N_(std::max(1.0, mean_load_N)),
      low_factor_(kLeastMargin_factor),
      high_factor_(kMostMargin_factor),
      tried_factor_(kMostMargin_factor),
      run_(with_thrust(in, kMostMargin_factor * load_N_, 0)) {}

void MarginSearch::begin_run() {
  run_ = HoldSimulation(with_thrust(in_, tried_factor_ * load_N_, run_count_));
}

bool MarginSearch::advance(long step_count) {
  if (result_.found || runs_done_ >= margin_run_count()) return false;
  if (run_.advance(step_count)) return true;
  within_frac_ += run_.take().statistics.within_frac;
  ++runs_done_;
  if (++run_count_ == kMarginSeeds_count && !conclude_trial()) return false;
  begin_run();
  return true;
}

// False when there is nothing more to try.
bool MarginSearch::conclude_trial() {
  const double within = within_frac_ / kMarginSeeds_count;
  const bool first = runs_done_ == kMarginSeeds_count;
  const bool holds = within >= in_.tolerance_frac;
  if (first || holds) result_.within_frac = within;
  if (first && !holds) {
    runs_done_ = margin_run_count();
    return false;
  }
  (holds ? high_factor_ : low_factor_) = tried_factor_;
  tried_factor_ = 0.5 * (low_factor_ + high_factor_);
  run_count_ = 0;
  within_frac_ = 0.0;
  if (high_factor_ - low_factor_ > kMarginStep_factor) return true;
  result_.found = true;
  result_.margin_factor = high_factor_;
  result_.thrust_N = high_factor_ * load_N_;
  return false;
}

double MarginSearch::done_frac() const {
  if (result_.found) return 1.0;
  return std::min(1.0, (runs_done_ + run_.done_frac()) / margin_run_count());
}

RequiredMargin required_margin(const HoldRunInput& in, double mean_load_N) {
  MarginSearch search(in, mean_load_N);
  while (search.advance(1L << 20)) {
  }
  return search.result();
}

}  // namespace thole
