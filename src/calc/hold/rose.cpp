#include "calc/hold/rose.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "base/number.h"
#include "base/units.h"
#include "calc/hold/manoeuvre.h"
#include "calc/hold/root.h"
#include "calc/hold/site.h"
#include "calc/hold/wind_checks.h"
#include "data/sources.h"
#include "data/sources_hold.h"

namespace thole {
namespace {

constexpr double kRowStep_deg = 360.0 / kRoseRowCount;

// How far the parts of the load may be off: project decision, docs/decisions.md. Wind: height and
// coefficients; waves: kWaveUncertainty_factor either way; current: growth, legs, eddies.
constexpr double kWindLow_factor = 0.7;
constexpr double kWindHigh_factor = 1.1;
constexpr double kCurrentLow_factor = 0.5;
constexpr double kCurrentHigh_factor = 1.2;

double show(Trace& trace, Step step) {
  trace.steps.push_back(std::move(step));
  return trace.steps.back().value;
}

struct Search {
  double step = 0.0;
  double top = 0.0;
  double tolerance = 0.0;
};
constexpr Search kWindSearch{.step = 2.0, .top = kHighestWind_mps, .tolerance = 0.02};
constexpr Search kCurrentSearch{.step = 0.2, .top = kRoseHighestCurrent_mps, .tolerance = 0.005};

// Where `excess` first grows above 0, looked for in steps and then narrowed in; the last place
// where it has not.
template <class Function>
double first_limit(Function excess, const Search& search) {
  double low = 0.0;
  double f_low = excess(0.0);
  if (f_low > 0.0) return 0.0;
  while (low < search.top) {
    const double high = std::min(search.top, low + search.step);
    const double f_high = excess(high);
    if (f_high > 0.0) {
      return narrow(excess, Bracket<double>{low, f_low, high, f_high}, search.tolerance).low;
    }
    low = high;
    f_low = f_high;
  }
  return search.top;
}

// The boat at one angle of the current, under either law of the wind.
class Corner {
 public:
  Corner(const HoldInput& in, const MotorClass& motor)
      : in_(in), motor_(motor), site_(in_), likely_(likely_hull(in_)) {
    table_ = vane_table(site_.hull, 0.0);
    likely_table_ = vane_table(likely_, 0.0);
  }
  Corner(const Corner&) = delete;  // the site refers to the input
  Corner& operator=(const Corner&) = delete;

  const Site& site() const { return site_; }

  RoseRow row(double angle_deg) {
    const double from_rad = rad_from_deg(angle_deg);
    turn_current(table_, site_.hull, from_rad);
    likely_table_.current = table_.current;
    RoseRow row{.angle_deg = angle_deg,
                .balances = balances(site_.hull, table_, site_.given_weather(from_rad))};
    if (const Balance* worst = worst_of(row.balances)) {
      row.heading_deg = deg_from_rad(worst->heading_rad);
      row.azimuth_deg = deg_from_rad(worst->azimuth_rad);
      row.thrust_N = worst->thrust_N;
    }
    row.limiting_wind_mps = limiting_wind_mps(site_.hull, table_, from_rad);
    row.likely_wind_mps = limiting_wind_mps(likely_, likely_table_, from_rad);
    row.limiting_current_mps = limiting_current_mps(from_rad);
    return row;
  }

 private:
  // As worst_heading() chooses.
  static const Balance* worst_of(const std::vector<Balance>& all) {
    constexpr double kAlike_ratio = 1.0 + 1e-6;
    const Balance* worst = nullptr;
    for (const Balance& one : all) {
      if (!one.stable) continue;
      const bool more = worst == nullptr || one.thrust_N > worst->thrust_N * kAlike_ratio;
      const bool alike = worst != nullptr && one.thrust_N * kAlike_ratio >= worst->thrust_N;
      if (more || (alike && one.heading_rad > worst->heading_rad)) worst = &one;
    }
    return worst;
  }

  double allowed_N() const { return effective_thrust_N(in_, motor_) / in_.margin_factor; }

  double limiting_wind_mps(const HeldHull& hull, const VaneTable& table, double from_rad) const {
    const double allowed = allowed_N();
    const auto excess_N = [&](double wind_mps) {
      return worst_heading(hull, table, site_.weather_in(wind_mps, from_rad)).thrust_N - allowed;
    };
    return first_limit(excess_N, kWindSearch);
  }

  // The drag along the boat and the thrust that is left change with the current; what turns the
  // boat does not, so that the table stays.
  double limiting_current_mps(double from_rad) const {
    HoldInput there = in_;
    HeldHull hull = site_.hull;
    Weather weather = site_.given_weather(from_rad);
    const auto excess_N = [&](double current_mps) {
      there.current_mps = current_mps;
      weather.current_mps = current_mps;
      hull.current.surge_area_m2 = current_surge_area_m2(there);
      return worst_heading(hull, table_, weather).thrust_N -
             effective_thrust_N(there, motor_) / there.margin_factor;
    };
    return first_limit(excess_N, kCurrentSearch);
  }

  HoldInput in_;
  MotorClass motor_;
  Site site_;
  HeldHull likely_{};
  VaneTable table_{};
  VaneTable likely_table_{};
};

double mirrored_rad(double angle_rad) {
  return angle_rad > -std::numbers::pi ? -angle_rad : angle_rad;
}

// A boat is alike on both sides.
RoseRow mirrored(const RoseRow& row) {
  RoseRow other = row;
  other.angle_deg = 360.0 - row.angle_deg;
  other.heading_deg = -row.heading_deg;
  other.azimuth_deg = -row.azimuth_deg;
  for (Balance& one : other.balances) {
    one.heading_rad = mirrored_rad(one.heading_rad);
    one.azimuth_rad = mirrored_rad(one.azimuth_rad);
  }
  std::reverse(other.balances.begin(), other.balances.end());
  return other;
}

// --- the trace
// ------------------------------------------------------------------------------------

void show_likely_wind(const HoldInput& in, const Site& site, Trace& trace) {
  const WindKind kind = likely_hull(in).wind.kind;
  show(trace,
       {.id = "rose.wind_likely",
        .label = "Wind from ahead, as it likely is",
        .symbol = "F_likely",
        .formula = "0.5 * rho_a * V^2 * A_F * c",
        .terms = {{"rho_a", site.hull.air_density_kg_per_m3, "kg/m3", "density of the air"},
                  {"V", wind_on_boat_mps(in, in.wind_mps), "m/s", "wind that acts on the boat"},
                  {"A_F", site.hull.wind.frontal_area_m2, "m2", "windage from ahead"},
                  {"c", kind.bow_factor, "", "drag of the bow of such a vessel"}},
        .value = dynamic_pressure_Pa(site.hull.air_density_kg_per_m3,
                                     wind_on_boat_mps(in, in.wind_mps)) *
                 site.hull.wind.frontal_area_m2 * kind.bow_factor,
        .unit = "N",
        .source = kBlendermannWind,
        .assumptions = {"A speed boat of his table, or a fishing vessel where a house has a flat "
                        "front. His models were of ships."}});
}

LoadBand show_band(const HoldInput& in, const Site& site, Trace& trace) {
  const LoadParts parts = loads_at(site.hull, site.given_weather(0.0), 0.0);
  const double wind_N = std::abs(parts.wind.surge_N);
  const double current_N = std::abs(parts.current.surge_N);
  const double wave_N = std::abs(parts.wave.surge_N);
  const std::vector<Term> terms{
      {"W", wind_N, "N", "wind"}, {"C", current_N, "N", "current"}, {"S", wave_N, "N", "waves"}};
  const auto bound = [&](const char* id, const char* label, std::string_view symbol,
                         std::string_view formula, double value_N) {
    return show(trace, {.id = id,
                        .label = label,
                        .symbol = symbol,
                        .formula = formula,
                        .terms = terms,
                        .value = value_N,
                        .unit = "N",
                        .source = kProjectDecision,
                        .assumptions = {"Wind 30 % less to 10 % more, the drift in waves half to "
                                        "double, the current half to a fifth more."}});
  };
  show_likely_wind(in, site, trace);
  return {.low_N = bound("rose.band_low", "Bow-on load at its least", "F_low",
                         "0.7 * W + 0.5 * C + S / 2",
                         kWindLow_factor * wind_N + kCurrentLow_factor * current_N +
                             wave_N / kWaveUncertainty_factor),
          .sizing_N = wind_N + current_N + wave_N,
          .likely_N = trace.steps.front().value + current_N + wave_N,
          .high_N = bound("rose.band_high", "Bow-on load at its most", "F_high",
                          "1.1 * W + 1.2 * C + 2 * S",
                          kWindHigh_factor * wind_N + kCurrentHigh_factor * current_N +
                              kWaveUncertainty_factor * wave_N)};
}

void show_seas(const HoldInput& in, const Site& site, Trace& trace) {
  const double wind_mps = std::max(0.1, in.wind_mps);
  const double stress_mps = adjusted_wind_mps(in.wind_mps);
  const Term gravity{"g", kGravity_mps2, "m/s2", "gravity"};
  const Term fetch{"X", in.fetch_m, "m", "open water upwind"};
  const Term wind{"U", wind_mps, "m/s", "wind at 10 m"};
  show(trace, {.id = "rose.wave_height_spm_deep",
               .label = "Wave height in deep water, for comparison",
               .symbol = "H_deep",
               .formula = "U_A^2 / g * min(0.2433, 0.0016 * sqrt(g * X / U_A^2))",
               .terms = {{"U_A", stress_mps, "m/s", "wind stress factor"}, gravity, fetch},
               .value = spm_deep_sea(in.wind_mps, in.fetch_m).height_m,
               .unit = "m",
               .source = kSpmDeepSea});
  show(trace, {.id = "rose.wave_height_cem",
               .label = "Wave height by the coastal engineers' manual, for comparison",
               .symbol = "H_C",
               .formula = "U^2 * 0.001 * (1.1 + 0.035 * U) / g * min(211.5, 0.0413 * sqrt(g * X / "
                          "(U^2 * 0.001 * (1.1 + 0.035 * U))))",
               .terms = {wind, gravity, fetch},
               .value = cem_sea(in.wind_mps, in.fetch_m).height_m,
               .unit = "m",
               .source = kCemSea});
  show(trace, {.id = "rose.wave_height_kahma",
               .label = "Wave height by Kahma and Calkoen, for comparison",
               .symbol = "H_K",
               .formula = "4 * U^2 / g * sqrt(min(0.00364, 0.00000052 * (g * X / U^2)^0.9))",
               .terms = {wind, gravity, fetch},
               .value = kahma_calkoen_sea(in.wind_mps, in.fetch_m).height_m,
               .unit = "m",
               .source = kKahmaCalkoenSea});
  show(trace, {.id = "rose.wave_growth",
               .label = "Hours of such wind until this sea has grown",
               .symbol = "t_sea",
               .formula = "68.8 * (g * X / U_A^2)^(2 / 3) * U_A / g / 3600",
               .terms = {{"U_A", stress_mps, "m/s", "wind stress factor"}, gravity, fetch},
               .value = sea_growth_h(in.wind_mps, in.fetch_m),
               .unit = "h",
               .source = kSpmGrowth});
  const double height_m = site.sea.given().height_m;
  show(trace,
       {.id = "rose.wave_most",
        .label = "Waves all turned back by the boat's side: never more than this",
        .symbol = "F_all",
        .formula = "rho_w * g * H^2 / 16 * L",
        .terms = {{"rho_w", site.hull.water_density_kg_per_m3, "kg/m3", "density of the water"},
                  gravity,
                  {"H", height_m, "m", "significant wave height"},
                  {"L", in.waterline_length_m, "m", "waterline length"}},
        .value = full_reflection_N_per_m(site.hull.water_density_kg_per_m3, height_m) *
                 in.waterline_length_m,
        .unit = "N",
        .source = kMaruoReflection});
}

void show_cross_flow(const HoldInput& in, const Site& site, Trace& trace) {
  const double section = section_cross_flow_factor(in.waterline_beam_m / (2.0 * in.draft_m));
  const double here = cross_flow_factor(section, in.draft_m / in.depth_m);
  const Load strips = cross_flow({.length_m = in.waterline_length_m,
                                  .area_m2 = in.underwater_area_m2,
                                  .centroid_m = in.underwater_centroid_m,
                                  .drag_factor = here,
                                  .water_density_kg_per_m3 = site.hull.water_density_kg_per_m3},
                                 in.current_mps, 0.0);
  const double factor = show(
      trace, {.id = "rose.section_drag",
              .label = "Drag of a section across the current, at this depth",
              .symbol = "c",
              .formula = "C + (3.2 - C) * min(1, T / d)^2",
              .terms = {{"C", section, "", "in deep water, by beam over twice the draft"},
                        {"T", in.draft_m, "m", "hull draft"},
                        {"d", in.depth_m, "m", "depth of the water"}},
              .value = here,
              .unit = "",
              .source = kSectionDragCurve,
              .assumptions = {"Read off the curve, linear between its points; shallow water as in "
                              "UFC 4-159-03."}});
  show(trace,
       {.id = "rose.current_strips",
        .label = "Current from abeam, strip by strip, for comparison",
        .symbol = "F_strips",
        .formula = "0.5 * rho_w * c * A_w * V^2",
        .terms = {{"rho_w", site.hull.water_density_kg_per_m3, "kg/m3", "density of the water"},
                  {"c", factor, "", "drag of a section"},
                  {"A_w", in.underwater_area_m2, "m2", "side area under water"},
                  {"V", in.current_mps, "m/s", "current"}},
        .value = std::abs(strips.sway_N),
        .unit = "N",
        .source = kSectionDragCurve});
}

void show_other_tables(const HoldInput& in, const LoadBand& band, Trace& trace) {
  show(trace,
       {.id = "rose.land_gust",
        .label = "Three-second gust over the ten-minute mean, off the land",
        .symbol = "G",
        .formula = "(1.277 + 0.296 * tanh(0.9 * log10(45 / 3))) / (1.277 + 0.296 * tanh(0.9 * "
                   "log10(45 / 600)))",
        .value = land_gust_ratio(3.0) / land_gust_ratio(600.0),
        .unit = "",
        .source = kCemGust});
  const double anchor_N = anchor_load_N(in.length_m);
  const double in_fifteen_kn_N = anchor_N * std::pow(in.wind_mps / mps_from_kn(15.0), 2.0);
  show(trace, {.id = "rose.anchor_ratio",
               .label = "Load of a small anchor by the table, over the bow-on load",
               .symbol = "k",
               .formula = "P * (U / 7.716666666666667)^2 / max(1, F)",
               .terms = {{"P", anchor_N, "N", "table's load in 15 kn, by length"},
                         {"U", in.wind_mps, "m/s", "wind at 10 m"},
                         {"F", band.sizing_N, "N", "all from ahead"}},
               .value = in_fifteen_kn_N / std::max(1.0, band.sizing_N),
               .unit = "",
               .source = kAbycAnchor,
               .assumptions = {
                   "The table is for boats that sheer and surge at anchor: for the strength of "
                   "fittings, never for thrust."}});
}

void add_cautions(const RoseResult& r, Trace& trace) {
  int stable_count = 0;
  for (const Balance& one : r.balances) stable_count += one.stable ? 1 : 0;
  if (stable_count > 1) {
    trace.cautions.push_back({"rose.flips",
                              "Expect the boat to flip from one side to the other: it has " +
                                  std::to_string(stable_count) +
                                  " headings to settle on, and a wave is enough to change them.",
                              kProjectDecision});
  }
  trace.assumptions.push_back({"",
                               "Mean loads, no gusts beyond the margin: a rose is no promise. The "
                               "coefficients were measured on ships.",
                               kDnvCapability});
}

}  // namespace

RoseResult rose(const HoldInput& in, const MotorClass& motor) {
  RoseResult r{.thrust_effective_N = effective_thrust_N(in, motor),
               .margin_factor = in.margin_factor};
  Corner corner(in, motor);
  constexpr int kHalf = kRoseRowCount / 2;
  for (int i = 0; i <= kHalf; ++i) r.rows.push_back(corner.row(i * kRowStep_deg));
  for (int i = kHalf - 1; i > 0; --i)
    r.rows.push_back(mirrored(r.rows[static_cast<std::size_t>(i)]));

  const double from_rad = rad_from_deg(in.current_angle_deg);
  const HeldHull& hull = corner.site().hull;
  const Weather weather = corner.site().given_weather(from_rad);
  r.balances = balances(hull, vane_table(hull, from_rad), weather);
  r.loads = load_table({.hull = hull,
                        .likely_wind = likely_hull(in).wind,
                        .weather = weather,
                        .dynamic_factor = kDynamic_factor});
  r.capability_number = capability_number(in, motor, true);
  r.capability_here_number = capability_number(in, motor, false);
  // Off the weather nothing balances a single unit at the bow: 0, whatever its thrust.
  r.notation = capability_notation({}, std::nullopt);

  r.band = show_band(in, corner.site(), r.trace);
  show_seas(in, corner.site(), r.trace);
  show_cross_flow(in, corner.site(), r.trace);
  show_other_tables(in, r.band, r.trace);
  add_cautions(r, r.trace);
  return r;
}

}  // namespace thole
