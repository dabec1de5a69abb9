#include "calc/foredeck/light.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/units.h"
#include "data/sources_foredeck.h"

namespace thole {
namespace {

constexpr double kNothing_deg = 1e-9;
constexpr double kPitch_ratio = 0.25;  // of a bar's radius: from one ball to the next along it
constexpr int kMostBalls = 4000;

double degrees(double rad) { return deg_from_rad(rad); }

// One ball of a bar; nothing where it stands too high or too low.
void add_ball(const Place3& light, const Place3& middle, double radius_m, double within_deg, std::vector<Arc>& arcs) {
  const double ahead = light.aft_m - middle.aft_m;
  const double side = middle.starboard_m - light.starboard_m;
  const double up = middle.up_m - light.up_m;
  const double flat = std::hypot(ahead, side);
  const double away = std::hypot(flat, up);
  if (away <= radius_m) {
    arcs.push_back({-180.0, 180.0});
    return;
  }
  const double height = degrees(std::atan2(up, flat));
  const double half_height = degrees(std::asin(radius_m / away));
  if (height - half_height > within_deg || height + half_height < -within_deg) return;
  if (flat <= radius_m) {
    arcs.push_back({-180.0, 180.0});
    return;
  }
  const double bearing = degrees(std::atan2(side, ahead));
  const double half = degrees(std::asin(radius_m / flat));
  const double from = bearing - half;
  const double to = bearing + half;
  arcs.push_back({std::max(from, -180.0), std::min(to, 180.0)});
  if (from < -180.0) arcs.push_back({from + 360.0, 180.0});
  if (to > 180.0) arcs.push_back({-180.0, to - 360.0});
}

std::vector<Arc> joined(std::vector<Arc> arcs) {
  std::sort(arcs.begin(), arcs.end(), [](const Arc& a, const Arc& b) { return a.from_deg < b.from_deg; });
  std::vector<Arc> whole;
  for (const Arc& arc : arcs) {
    if (!whole.empty() && arc.from_deg <= whole.back().to_deg) {
      whole.back().to_deg = std::max(whole.back().to_deg, arc.to_deg);
    } else {
      whole.push_back(arc);
    }
  }
  return whole;
}

Shadow shadow_of(const Place3& light, const std::vector<Bar>& bars, const Arc& arc) {
  const std::vector<Arc> full = hidden_arcs(light, bars, kFullLight_deg);
  Shadow shadow{.full = within(full, arc), .most = within(hidden_arcs(light, bars, kMostLight_deg), arc)};
  shadow.hidden_deg = sum_deg(shadow.full);
  shadow.hidden_most_deg = sum_deg(shadow.most);
  shadow.all_round_deg = widest_deg(full);
  return shadow;
}

void add_check(std::string id, std::string label, bool measured, double hidden_deg, const Source& source, std::string remedy, Trace& trace) {
  trace.checks.push_back({.id = std::move(id),
                          .label = std::move(label),
                          .actual = measured ? hidden_deg : std::numeric_limits<double>::quiet_NaN(),
                          .limit = 0.0,
                          .unit = "deg",
                          .source = source,
                          .remedy = measured ? std::move(remedy)
                                             : "Not measured yet: give the light's place (aft of the stem, to starboard, above the deck) and the mount's."});
}

}  // namespace

Arc sidelight_arc(double light_starboard_m) {
  if (light_starboard_m > kOneLantern_m) return {0.0, kSidelight_deg};
  if (light_starboard_m < -kOneLantern_m) return {-kSidelight_deg, 0.0};
  return {-kSidelight_deg, kSidelight_deg};
}

std::vector<Arc> hidden_arcs(const Place3& light, const std::vector<Bar>& bars, double within_deg) {
  std::vector<Arc> arcs;
  for (const Bar& bar : bars) {
    const Place3 d{bar.b.aft_m - bar.a.aft_m, bar.b.starboard_m - bar.a.starboard_m, bar.b.up_m - bar.a.up_m};
    const double length = std::sqrt(d.aft_m * d.aft_m + d.starboard_m * d.starboard_m + d.up_m * d.up_m);
    const int count = static_cast<int>(std::clamp(std::ceil(length / (kPitch_ratio * bar.radius_m)), 1.0, double{kMostBalls}));
    for (int i = 0; i <= count; ++i) {
      const double t = double(i) / count;
      add_ball(light, {bar.a.aft_m + t * d.aft_m, bar.a.starboard_m + t * d.starboard_m, bar.a.up_m + t * d.up_m}, bar.radius_m,
               within_deg, arcs);
    }
  }
  return joined(std::move(arcs));
}

std::vector<Arc> within(const std::vector<Arc>& arcs, const Arc& arc) {
  std::vector<Arc> parts;
  for (const Arc& each : arcs) {
    const Arc part{std::max(each.from_deg, arc.from_deg), std::min(each.to_deg, arc.to_deg)};
    if (part.to_deg > part.from_deg) parts.push_back(part);
  }
  return parts;
}

double sum_deg(const std::vector<Arc>& arcs) {
  double sum = 0.0;
  for (const Arc& arc : arcs) sum += arc.to_deg - arc.from_deg;
  return sum;
}

double widest_deg(const std::vector<Arc>& arcs) {
  double widest = 0.0;
  for (const Arc& arc : arcs) widest = std::max(widest, arc.to_deg - arc.from_deg);
  const bool astern = arcs.size() > 1 && arcs.front().from_deg <= -180.0 + kNothing_deg && arcs.back().to_deg >= 180.0 - kNothing_deg;
  if (astern) widest = std::max(widest, arcs.front().to_deg - arcs.front().from_deg + arcs.back().to_deg - arcs.back().from_deg);
  return widest;
}

LightResult bow_light(const LightInput& in) {
  LightResult result{.arc = sidelight_arc(in.light.starboard_m)};
  if (in.measured) {
    result.stowed = shadow_of(in.light, in.stowed, result.arc);
    result.deployed = shadow_of(in.light, in.deployed, result.arc);
    result.trace.steps.push_back({.id = "foredeck.all_round",
                                  .label = "Widest hidden by the motor, were it an all-round light (6 degrees are allowed)",
                                  .symbol = "w",
                                  .formula = "max(w_s, w_d)",
                                  .terms = {{"w_s", result.stowed.all_round_deg, "deg", "motor stowed"},
                                            {"w_d", result.deployed.all_round_deg, "deg", "motor lowered"}},
                                  .value = std::max(result.stowed.all_round_deg, result.deployed.all_round_deg),
                                  .unit = "deg",
                                  .source = kColregsAnnexHorizontal});
  }
  const std::string remedy = "Move the light ahead of, above or beside the motor, or the mount away from it: the rule allows a sidelight no shadow.";
  add_check("foredeck.light_stowed", "Sidelight hidden by the stowed motor", in.measured, result.stowed.hidden_deg, kColregsRule21, remedy, result.trace);
  add_check("foredeck.light_deployed", "Sidelight hidden by the lowered motor", in.measured, result.deployed.hidden_deg, kColregsRule21, remedy, result.trace);
  add_check("foredeck.light_high_low", "Sidelight hidden at 7.5° above or below level", in.measured,
            std::max(result.stowed.hidden_most_deg, result.deployed.hidden_most_deg), kColregsAnnexVertical, remedy, result.trace);
  result.trace.cautions.push_back({.id = "foredeck.under_way",
                                   .text = "A boat held in place by a motor is under way, not at anchor: from dusk to dawn show sidelights "
                                           "and the lights that go with them, no anchor light. Your flag's own rules may ask for more.",
                                   .source = kColregsRule3});
  return result;
}

}  // namespace thole
