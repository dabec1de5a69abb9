#include "draw/day_curves.h"

#include <algorithm>
#include <cmath>

#include "base/number.h"
#include "draw/sketch.h"

namespace thole {
namespace {

// One above the other, in the drawing's own units; each with its title over it.
struct Panel {
  double foot = 0.0;
  double top = 1.0;
  double low = 0.0;  // values at foot and top
  double high = 1.0;

  double at(double value) const {
    const double share = (value - low) / std::max(high - low, 1e-9);
    return foot + (top - foot) * std::clamp(share, 0.0, 1.0);
  }
};
constexpr double kVoltsFoot = 2.72;
constexpr double kVoltsTop = 3.72;
constexpr double kChargeFoot = 1.34;
constexpr double kChargeTop = 2.14;
constexpr double kLoadTop = 0.76;
constexpr double kTitle = 0.17;  // above a panel's top

struct Hours {
  double span_h = 1.0;
  double at(double time_h) const { return std::clamp(time_h / span_h, 0.0, 1.0); }
};

using Value = double BankMoment::*;

// `value` at each moment; what a moment says of the stretch before it.
std::vector<Point> curve(const BankRunResult& run, const Hours& hours, const Panel& panel,
                         Value value) {
  std::vector<Point> points;
  for (const BankMoment& at : run.moments) points.push_back({hours.at(at.time_h), panel.at(at.*value)});
  return points;
}

void add_area(Drawing& drawing, const std::vector<Point>& above, double foot, Fill fill) {
  if (above.empty()) return;
  Shape shape{.closed = true, .line = Line::none, .fill = fill};
  shape.points.push_back({above.front().x, foot});
  shape.points.insert(shape.points.end(), above.begin(), above.end());
  shape.points.push_back({above.back().x, foot});
  drawing.shapes.push_back(std::move(shape));
}

// Mean load of each stretch as a step.
std::vector<Point> load_steps(const BankRunResult& run, const Hours& hours, const Panel& panel) {
  std::vector<Point> points;
  for (std::size_t i = 1; i < run.moments.size(); ++i) {
    const double y = panel.at(run.moments[i].mean_W);
    points.push_back({hours.at(run.moments[i - 1].time_h), y});
    points.push_back({hours.at(run.moments[i].time_h), y});
  }
  return points;
}

// Through all panels, and through no title.
void add_upright(Drawing& drawing, double x, Line line) {
  add_polyline(drawing, {{x, kVoltsFoot}, {x, kVoltsTop}}, line);
  add_polyline(drawing, {{x, kChargeFoot}, {x, kChargeTop}}, line);
  add_polyline(drawing, {{x, 0.0}, {x, kLoadTop}}, line);
}

void add_frame(Drawing& drawing, const Panel& panel, std::string title, std::string figures) {
  add_polyline(drawing, {{0.0, panel.top}, {0.0, panel.foot}, {1.0, panel.foot}}, Line::thin);
  add_label(drawing, {0.0, panel.top + kTitle}, std::move(title), Align::left);
  add_label(drawing, {1.0, panel.top + kTitle}, std::move(figures), Align::right, TextRole::strong);
}

// Whole steps that leave three to six of them in the span.
double step_of(double span) {
  for (const double step : {0.25, 0.5, 1.0, 2.0, 4.0, 6.0, 12.0, 24.0}) {
    if (span / step <= 6.0) return step;
  }
  return 48.0;
}

void add_hours(Drawing& drawing, const Hours& hours, double y) {
  const double step_h = step_of(hours.span_h);
  for (double time_h = 0.0; time_h <= hours.span_h * 1.001; time_h += step_h) {
    const double x = hours.at(time_h);
    add_polyline(drawing, {{x, 0.0}, {x, -0.05}}, Line::thin);
    add_label(drawing, {x, y}, trimmed(fixed(time_h, 2)) + (time_h == 0.0 ? " h" : ""));
  }
}

std::string volts(double value_V, System system) { return show(value_V, "V", system).text(); }

// Rounded so that the figure stays short.
double above(double value, double step) { return step * std::ceil(value / step); }

}  // namespace

const BankMoment& moment_at(const BankRunResult& run, double at_h) {
  const auto after =
      std::upper_bound(run.moments.begin(), run.moments.end(), at_h + 1e-9,
                       [](double time_h, const BankMoment& at) { return time_h < at.time_h; });
  return after == run.moments.begin() ? run.moments.front() : *(after - 1);
}

Drawing day_curves_picture(const BankDay& at, double at_h, System system) {
  const BankRunResult& run = at.day.run;
  const Hours hours{std::max(at.day.asked_h, 0.01)};
  Drawing drawing{.title = "The bank over the day", .to_scale = false};
  drawing.low = {-0.04, -0.46};
  drawing.high = {1.04, kVoltsTop + 0.42};

  double most_W = 1.0;
  for (const BankMoment& moment : run.moments) most_W = std::max(most_W, moment.mean_W);
  const double least_V = std::min(at.minimum_V > 0.0 ? at.minimum_V : run.lowest_plug_V,
                                  run.lowest_plug_V);
  const double margin_V = 0.12 * (at.maximum_V - least_V) + 0.05;
  const Panel volts_panel{kVoltsFoot, kVoltsTop, least_V - margin_V, at.maximum_V + 0.5 * margin_V};
  const Panel charge{kChargeFoot, kChargeTop, 0.0, 1.0};
  const Panel load{0.0, kLoadTop, 0.0, most_W};

  const std::vector<Point> charges = curve(run, hours, charge, &BankMoment::charge_frac);
  add_area(drawing, charges, charge.foot, Fill::water);
  const std::vector<Point> loads = load_steps(run, hours, load);
  add_area(drawing, loads, load.foot, Fill::hull);
  add_polyline(drawing, loads, Line::thin);
  add_polyline(drawing, charges, Line::outline);
  add_polyline(drawing, curve(run, hours, volts_panel, &BankMoment::lowest_bank_V), Line::thin);
  add_polyline(drawing, curve(run, hours, volts_panel, &BankMoment::lowest_plug_V), Line::outline);
  if (at.minimum_V > 0.0) {
    const double y = volts_panel.at(at.minimum_V);
    add_polyline(drawing, {{0.0, y}, {1.0, y}}, Line::hidden);
    add_label(drawing, {0.02, y + 0.14}, "the motor needs " + volts(at.minimum_V, system), Align::left);
  }
  add_frame(drawing, volts_panel, "Volts, bank and motor",
            "lowest " + volts(run.lowest_plug_V, system));
  const BankMoment& last = run.moments.back();
  add_frame(drawing, charge, "Charge, weakest block",
            show(last.charge_frac, "frac", system).text() + " left");
  add_frame(drawing, load, "Load", "to " + show(most_W, "W", system).text());
  add_hours(drawing, hours, -0.27);

  const double now = hours.at(at_h);
  add_upright(drawing, now, Line::thin);
  drawing.circles.push_back({.centre = {now, charge.at(moment_at(run, at_h).charge_frac)},
                             .radius = 0.0, .line = Line::accent, .fill = Fill::accent});
  std::string ending;
  if (run.cut_off != CutOff::none) {
    const double x = hours.at(run.cut_off_h);
    add_upright(drawing, x, Line::accent);
    add_label(drawing, {x > 0.6 ? x - 0.02 : x + 0.02, 0.5 * (kChargeFoot + kChargeTop)},
              "cuts off at " + show(run.cut_off_h, "h", system).text(),
              x > 0.6 ? Align::right : Align::left, TextRole::strong);
    ending = "Cuts off after " + show(run.cut_off_h, "h", system).text() + ": " +
             end_of(run, at.bank.strings.size()) + ".";
  } else {
    ending = "Lasts the day of " + show(at.day.asked_h, "h", system).text() + " with " +
             show(last.charge_frac, "frac", system).text() + " left in the weakest block.";
  }
  drawing.description = "Over the hours: lowest volts at the bank (thin) and at the motor (thick), " +
                        volts(run.lowest_plug_V, system) +
                        " at the least; charge of the weakest block; mean load. " + ending;
  return drawing;
}

double hours_at_wind(const BankDay& day, double wind_mps) {
  const std::vector<WindRuntime>& winds = day.winds;
  std::size_t high = 1;
  while (high + 1 < winds.size() && winds[high].wind_mps < wind_mps) ++high;
  if (winds.size() < 2) return winds.empty() ? 0.0 : winds.front().time_h;
  const WindRuntime& a = winds[high - 1];
  const WindRuntime& b = winds[high];
  const double share = std::clamp((wind_mps - a.wind_mps) / (b.wind_mps - a.wind_mps), 0.0, 1.0);
  return a.time_h + share * (b.time_h - a.time_h);
}

Drawing wind_hours_picture(const BankDay& day, System system) {
  Drawing drawing{.title = "Hours of holding against wind", .to_scale = false};
  const double first_mps = day.winds.front().wind_mps;
  const double last_mps = day.winds.back().wind_mps;
  const double today_h = hours_at_wind(day, day.day_wind_mps);
  const double most_h = above(std::clamp(3.0 * today_h, 4.0, kLongestRuntime_h), 2.0);
  const Panel hours{0.0, 1.0, 0.0, most_h};
  const auto x_of = [&](double wind_mps) {
    return std::clamp((wind_mps - first_mps) / std::max(last_mps - first_mps, 1e-9), 0.0, 1.0);
  };
  drawing.low = {-0.1, -0.24};
  drawing.high = {1.04, 1.2};

  const double holds = x_of(day.limiting_wind_mps);
  if (holds < 1.0) add_box(drawing, {holds, 0.0}, {1.0, 1.0}, Line::none, Fill::hull, true);
  constexpr int kPieces = 60;
  std::vector<Point> held;
  std::vector<Point> beyond;
  for (int i = 0; i <= kPieces; ++i) {
    const double wind_mps = first_mps + (last_mps - first_mps) * i / kPieces;
    const double time_h = hours_at_wind(day, wind_mps);
    if (time_h > most_h) continue;
    const Point point{x_of(wind_mps), hours.at(time_h)};
    if (wind_mps <= day.limiting_wind_mps || held.empty()) held.push_back(point);
    if (wind_mps >= day.limiting_wind_mps || i == kPieces) beyond.push_back(point);
  }
  if (!held.empty() && !beyond.empty()) beyond.insert(beyond.begin(), held.back());
  if (held.size() > 1) add_polyline(drawing, held, Line::outline);
  if (beyond.size() > 1) add_polyline(drawing, beyond, Line::hidden);
  add_polyline(drawing, {{0.0, 1.0}, {0.0, 0.0}, {1.0, 0.0}}, Line::thin);

  const double step_h = step_of(most_h);
  for (double time_h = 0.0; time_h <= most_h * 1.001; time_h += step_h) {
    const double y = hours.at(time_h);
    add_polyline(drawing, {{-0.012, y}, {0.0, y}}, Line::thin);
    add_label(drawing, {-0.025, y}, trimmed(fixed(time_h, 2)), Align::right);
  }
  add_label(drawing, {0.0, 1.1}, "hours", Align::left);
  const double first = shown_number(first_mps, "mps", system);
  const double last = shown_number(last_mps, "mps", system);
  const double step = std::max(1.0, above((last - first) / 5.0, last - first > 12.0 ? 5.0 : 2.0));
  for (double number = above(first, step); number <= last; number += step) {
    const double x = x_of(value_of_shown(number, "mps", system));
    add_polyline(drawing, {{x, 0.0}, {x, -0.02}}, Line::thin);
    add_label(drawing, {x, -0.1}, trimmed(fixed(number, 1)));
  }
  add_label(drawing, {1.0, -0.1}, show(last_mps, "mps", system).unit, Align::right);

  const double today = x_of(day.day_wind_mps);
  const std::string hours_text = show(today_h, "h", system).text();
  add_polyline(drawing, {{today, 0.0}, {today, 1.0}}, Line::accent);
  drawing.circles.push_back(
      {.centre = {today, hours.at(today_h)}, .radius = 0.0, .line = Line::accent, .fill = Fill::accent});
  // Under the falling curve to the left, or over it to the right.
  const bool left = today > 0.45;
  add_label(drawing, {left ? today - 0.02 : today + 0.02, left ? 0.08 : 0.9}, "this day: " + hours_text,
            left ? Align::right : Align::left, TextRole::strong);
  const std::string limit = speed_text(day.limiting_wind_mps, system);
  if (holds < 1.0) {
    add_polyline(drawing, {{holds, 0.0}, {holds, 1.0}}, Line::hidden);
    add_label(drawing, {1.0, 1.1}, "beyond " + limit + " it no longer holds", Align::right);
  }
  drawing.description = "In the wind of this day, " + speed_text(day.day_wind_mps, system) +
                        ", the bank holds her for " + hours_text + "; the motor holds with its margin up to " +
                        limit + ". The more wind, the fewer hours.";
  return drawing;
}

}  // namespace thole
