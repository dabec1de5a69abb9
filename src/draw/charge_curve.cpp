#include "draw/charge_curve.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "base/number.h"
#include "draw/sketch.h"
#include "io/charging_text.h"

namespace thole {
namespace {

// The sheet: a unit wide; charge from 0 to kPlot, above a gap the amps.
constexpr double kPlot = 0.36;
constexpr double kGap = 0.17;
constexpr double kTop = 2.0 * kPlot + kGap;
constexpr double kLine = 0.075;  // between texts above each other

struct Scale {
  double end_h = 1.0;
  double most_A = 1.0;

  double x(double time_h) const { return time_h / end_h; }
  double charge_y(double share_frac) const { return kPlot * share_frac; }
  double amps_y(double current_A) const { return kPlot + kGap + kPlot * current_A / most_A; }
};

Scale scale_of(const ChargingNight& night) {
  Scale scale{.end_h = std::max(night.points.back().time_h, 0.1), .most_A = 0.1};
  for (const NightPoint& point : night.points) {
    scale.most_A = std::max(scale.most_A, 1.15 * point.current_A);
  }
  return scale;
}

void add_stages(Drawing& drawing, const ChargingNight& night, const Scale& scale) {
  const std::array<std::pair<double, Fill>, 3> stages{
      std::pair{0.0, Fill::water}, {night.bulk_h, Fill::hull}, {night.full_h, Fill::paper}};
  for (std::size_t i = 0; i < stages.size(); ++i) {
    const double to_h = i + 1 < stages.size() ? stages[i + 1].first : scale.end_h;
    if (to_h <= stages[i].first) continue;
    for (const double foot : {0.0, kPlot + kGap}) {
      add_box(drawing, {scale.x(stages[i].first), foot}, {scale.x(to_h), foot + kPlot}, Line::none,
              stages[i].second);
    }
  }
}

// Hours between marks: at most seven of them.
double step_h(double end_h) {
  for (const double step : {0.5, 1.0, 2.0, 4.0, 6.0, 12.0}) {
    if (end_h <= 7.0 * step) return step;
  }
  return 24.0;
}

void add_axes(Drawing& drawing, const Scale& scale, System system) {
  for (const double foot : {0.0, kPlot + kGap}) {
    add_polyline(drawing, {{0.0, foot + kPlot}, {0.0, foot}, {1.0, foot}}, Line::thin);
  }
  for (double hour = 0.0; hour <= scale.end_h; hour += step_h(scale.end_h)) {
    const double x = scale.x(hour);
    add_polyline(drawing, {{x, 0.0}, {x, -0.015}}, Line::thin);
    add_label(drawing, {x, -0.06}, trimmed(fixed(hour, 1)));
  }
  add_label(drawing, {1.0, -0.06 - kLine}, "hours after plugging in", Align::right);
  for (const double share : {0.5, 1.0}) {
    add_polyline(drawing, {{0.0, scale.charge_y(share)}, {1.0, scale.charge_y(share)}}, Line::thin);
    add_label(drawing, {-0.02, scale.charge_y(share)}, fixed(100.0 * share, 0) + " %", Align::right);
  }
  add_label(drawing, {-0.02, scale.amps_y(0.0)}, "0", Align::right);
  const double most_A = scale.most_A / 1.15;
  add_label(drawing, {-0.02, scale.amps_y(most_A)}, show(most_A, "A", system).text(), Align::right);
}

void add_curves(Drawing& drawing, const ChargingNight& night, const Scale& scale) {
  std::vector<Point> charge;
  std::vector<Point> amps;
  for (const NightPoint& point : night.points) {
    charge.push_back({scale.x(point.time_h), scale.charge_y(point.charge_frac)});
    if (!amps.empty() && point.current_A <= 0.0 && night.full_h > 0.0 &&
        amps.back().y > scale.amps_y(0.0)) {
      // The current stops when the block is full, not at the next point.
      amps.push_back({scale.x(night.full_h), amps.back().y});
      amps.push_back({scale.x(night.full_h), scale.amps_y(0.0)});
    }
    amps.push_back({scale.x(point.time_h), scale.amps_y(point.current_A)});
  }
  add_polyline(drawing, std::move(charge), Line::outline);
  add_polyline(drawing, std::move(amps), Line::outline);
}

// Each stage with its volts on a line of its own, from where it begins.
void add_names(Drawing& drawing, const ChargingNight& night, const Scale& scale, System system) {
  const auto volts = [&](double value_V) { return show(value_V, "V", system).text(); };
  double y = kTop + 3.9 * kLine;
  const auto name = [&](double from_h, std::string text) {
    const double x = scale.x(from_h);
    add_polyline(drawing, {{x, kTop}, {x, y}}, Line::thin);
    const bool left = x < 0.5;
    add_label(drawing, {x + (left ? 0.015 : -0.015), y}, std::move(text),
              left ? Align::left : Align::right);
    y -= kLine;
  };
  if (night.bulk_h > 0.0) name(0.0, "bulk, up to " + volts(night.absorption_V));
  if (night.full_h > night.bulk_h) name(night.bulk_h, "absorption at " + volts(night.absorption_V));
  if (night.full_h < scale.end_h) {
    name(night.full_h, night.float_V > 0.0 ? "full, float at " + volts(night.float_V) : "full, rests");
  }
}

void add_leaving(Drawing& drawing, const ChargingNight& night, const Scale& scale, System system) {
  const double x = scale.x(night.leaves_h);
  add_polyline(drawing, {{x, 0.0}, {x, kTop}}, Line::accent);
  drawing.circles.push_back({.centre = {x, scale.charge_y(night.charge_at_leaving_frac)},
                             .radius = 0.0,
                             .line = Line::accent,
                             .fill = Fill::accent});
  add_label(drawing, {x - 0.02, kPlot + 0.5 * kGap},
            "leaves at " + show(night.charge_at_leaving_frac, "frac", system).text(), Align::right,
            TextRole::strong);
}

std::string said(const ChargingNight& night, System system) {
  const auto hours = [&](double time_h) { return show(time_h, "h", system).text(); };
  std::string text = "A block's night on shore: " + stages_said(night, system) + ". ";
  if (night.full_h > 0.0) {
    text += "Absorption begins after " + hours(night.bulk_h) + ", it is full after " +
            hours(night.full_h) + ". ";
  }
  return text + "The boat leaves after " + hours(night.leaves_h) + " with " +
         show(night.charge_at_leaving_frac, "frac", system).text() + " in it.";
}

}  // namespace

Drawing charge_curve_picture(const ChargingNight& night, System system) {
  Drawing drawing{.title = "Tonight on shore", .to_scale = false};
  const Scale scale = scale_of(night);
  drawing.low = {-0.19, -0.2};
  drawing.high = {1.03, kTop + 4.5 * kLine};
  add_stages(drawing, night, scale);
  add_axes(drawing, scale, system);
  add_curves(drawing, night, scale);
  add_names(drawing, night, scale, system);
  add_leaving(drawing, night, scale, system);
  drawing.description = said(night, system);
  return drawing;
}

}  // namespace thole
