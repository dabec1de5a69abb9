#include "draw/footprint.h"

#include <algorithm>
#include <cmath>

#include "base/number.h"
#include "base/units.h"
#include "draw/sketch.h"

namespace thole {
namespace {

constexpr std::size_t kMostPoints = 1800;  // of the track
constexpr std::size_t kMostColumns = 120;  // of a history: each the mean of its moments
constexpr double kFresh_s = 60.0;         // of the track, drawn strong

Point place_of(const TrackPoint& point) { return {point.right_m, point.upwind_m}; }

Point off(double angle_deg, double length) {
  return {length * std::sin(rad_from_deg(angle_deg)), length * std::cos(rad_from_deg(angle_deg))};
}

// Every so many of these points, and the last.
std::vector<Point> thinned(const std::vector<TrackPoint>& track, std::size_t from, std::size_t to) {
  std::vector<Point> points;
  const std::size_t stride = 1 + (to - from) / kMostPoints;
  for (std::size_t i = from; i < to; i += stride) points.push_back(place_of(track[i]));
  if (to > from) points.push_back(place_of(track[to - 1]));
  return points;
}

std::size_t index_at(const std::vector<TrackPoint>& track, double at_s) {
  const auto next = std::upper_bound(track.begin(), track.end(), at_s,
                                     [](double time_s, const TrackPoint& point) {
                                       return time_s < point.time_s;
                                     });
  return next == track.begin() ? 0 : static_cast<std::size_t>(next - track.begin()) - 1;
}

// Round, and about a third of the width.
double scale_bar_m(double width_m) {
  const double decade = std::pow(10.0, std::floor(std::log10(0.4 * width_m)));
  for (const double step : {5.0, 2.0}) {
    if (step * decade <= 0.4 * width_m) return step * decade;
  }
  return decade;
}

// As an outline, which can be dashed.
void add_circle(Drawing& drawing, double radius_m, Line line) {
  Shape circle{.closed = true, .line = line};
  for (int angle = 0; angle < 360; angle += 4) circle.points.push_back(off(angle, radius_m));
  drawing.shapes.push_back(std::move(circle));
}

std::string minutes_text(double time_s) {
  const auto whole_s = static_cast<long>(std::lround(time_s));
  const std::string seconds = std::to_string(whole_s % 60);
  return std::to_string(whole_s / 60) + ":" + (seconds.size() < 2 ? "0" : "") + seconds;
}

}  // namespace

Drawing footprint_picture(const HoldRun& run, const HoldRunInput& in, double at_s, System system) {
  const HoldStatistics& s = run.statistics;
  Drawing drawing{.title = "The hour on the water, from above"};
  const TrackPoint now = run.track[index_at(run.track, at_s)];
  const double reach_m = std::max({s.radius_max_m, in.tolerance_m, 0.2 * in.length_m});
  // Spot and boat: it lies downwind of its bow, aside where a current turns it.
  const double aside_m = std::max(reach_m, 0.9 * in.length_m);
  drawing.low = {-1.45 * aside_m, -std::max(reach_m, 1.05 * in.length_m) - 0.1 * aside_m};
  drawing.high = {1.45 * aside_m, reach_m + 0.45 * aside_m};
  const double width_m = drawing.high.x - drawing.low.x;
  add_box(drawing, {drawing.low.x - width_m, drawing.low.y - width_m},
          {drawing.high.x + width_m, drawing.high.y + width_m}, Line::none, Fill::water);

  const std::size_t shown = index_at(run.track, at_s) + 1;
  const std::size_t fresh = index_at(run.track, at_s - kFresh_s);
  const Point stern_to_bow = off(now.heading_deg, 0.5 * in.length_m);
  const Point bow = place_of(now);
  add_boat_from_above(drawing, in.length_m, now.heading_deg,
                      {bow.x - stern_to_bow.x, bow.y - stern_to_bow.y});
  add_polyline(drawing, thinned(run.track, 0, shown), Line::thin);
  add_polyline(drawing, thinned(run.track, fresh, shown), Line::outline);
  add_circle(drawing, s.radius_half_m, Line::hidden);
  add_circle(drawing, s.radius_95_m, Line::outline);
  add_circle(drawing, s.radius_max_m, Line::hidden);
  add_circle(drawing, in.tolerance_m, Line::accent);
  drawing.circles.push_back({.centre = {}, .radius = 0.0, .line = Line::none, .fill = Fill::strong});
  const double thrust_m = 0.9 * in.length_m * now.thrust_N / std::max(1.0, in.motor.thrust_N);
  const Point pull = off(now.thrust_from_wind_deg, thrust_m);
  drawing.arrows.push_back({bow, {bow.x + pull.x, bow.y + pull.y}, Line::accent});

  const double top = drawing.high.y - 0.06 * aside_m;
  const double left = drawing.low.x + 0.24 * aside_m;
  drawing.arrows.push_back({{left, top}, {left, top - 0.42 * aside_m}, Line::outline});
  add_label(drawing, {left + 0.08 * aside_m, top - 0.2 * aside_m},
            "wind " + speed_text(now.wind_mps, system), Align::left);
  if (in.current_mps > 0.0) {
    const Point from = off(deg_from_rad(in.current_from_rad), 0.18 * aside_m);
    const Point middle{drawing.high.x - 0.3 * aside_m, top - 0.22 * aside_m};
    drawing.arrows.push_back({{middle.x + from.x, middle.y + from.y},
                              {middle.x - from.x, middle.y - from.y},
                              Line::outline});
    add_label(drawing, {middle.x - 0.24 * aside_m, middle.y},
              "current " + speed_text(in.current_mps, system), Align::right);
  }
  const double bar_m = scale_bar_m(width_m);
  const double foot = drawing.low.y + 0.08 * aside_m;
  const double right = drawing.high.x - 0.1 * aside_m;
  add_dimension(drawing, {right - bar_m, foot}, {right, foot}, length_text(bar_m, system));
  add_label(drawing, {drawing.low.x + 0.08 * aside_m, foot}, minutes_text(now.time_s), Align::left,
            TextRole::strong);
  drawing.description =
      "The bow stays within " + length_text(s.radius_half_m, system) +
      " of the spot for half of the time (inner dashes), " + length_text(s.radius_95_m, system) +
      " for 95 % (solid), and never leaves " + length_text(s.radius_max_m, system) +
      " (outer dashes). Asked for is " + length_text(in.tolerance_m, system) +
      " (colour). The bow's track is drawn up to the moment shown, its last minute strong; the arrow "
      "at the bow is the thrust.";
  return drawing;
}

Drawing effort_picture(const HoldRun& run, const HoldRunInput& in, Effort effort, double at_s,
                       System system) {
  const bool thrust = effort == Effort::thrust;
  const double full = thrust ? in.motor.thrust_N : in.power.power_full_W;
  const HoldStatistics& s = run.statistics;
  const Histogram& shares = thrust ? s.thrust_share : s.power_share;
  Drawing drawing{.title = thrust ? "Thrust over the time" : "Power over the time",
                  .to_scale = false};
  const double span_min = std::max(run.track.back().time_s / 60.0, 0.1);
  constexpr double kHistory = 0.7;  // of the width; the bars have the rest
  const auto x_at = [&](const TrackPoint& point) { return kHistory * point.time_s / 60.0 / span_min; };
  drawing.low = {-0.12, -0.2};
  drawing.high = {1.04, 1.18};
  std::vector<Point> curve;
  const std::size_t stride = 1 + run.track.size() / kMostColumns;
  for (std::size_t from = 0; from < run.track.size(); from += stride) {
    const std::size_t to = std::min(from + stride, run.track.size());
    double sum = 0.0;
    for (std::size_t i = from; i < to; ++i) sum += thrust ? run.track[i].thrust_N : run.track[i].power_W;
    const double mean = sum / static_cast<double>(to - from);
    curve.push_back({x_at(run.track[(from + to - 1) / 2]), mean / std::max(full, 1.0)});
  }
  Shape below{.closed = true, .line = Line::none, .fill = Fill::water};
  below.points.push_back({curve.front().x, 0.0});
  below.points.insert(below.points.end(), curve.begin(), curve.end());
  below.points.push_back({curve.back().x, 0.0});
  drawing.shapes.push_back(std::move(below));
  add_polyline(drawing, {{0.0, 1.0}, {1.0, 1.0}}, Line::hidden);
  add_polyline(drawing, std::move(curve), Line::outline);
  const double mean = (thrust ? s.thrust_mean_N : s.power_mean_W) / std::max(full, 1.0);
  add_polyline(drawing, {{0.0, mean}, {kHistory, mean}}, Line::accent);
  const double most = *std::max_element(shares.begin(), shares.end());
  constexpr double kBars = kHistory + 0.03;
  for (std::size_t i = 0; i < shares.size(); ++i) {
    if (shares[i] <= 0.0) continue;
    const double low = static_cast<double>(i) / kHistogramBins;
    add_box(drawing, {kBars, low}, {kBars + (1.0 - kBars) * shares[i] / most, low + 0.8 / kHistogramBins},
            Line::none, Fill::accent);
  }
  add_polyline(drawing, {{0.0, 1.0}, {0.0, 0.0}, {kHistory, 0.0}}, Line::thin);
  add_polyline(drawing, {{kBars, 0.0}, {kBars, 1.0}}, Line::thin);
  const double now = kHistory * std::min(1.0, at_s / 60.0 / span_min);
  add_polyline(drawing, {{now, 0.0}, {now, 1.06}}, Line::thin);
  const std::string unit = thrust ? "N" : "W";
  const auto said = [&](double value) { return show(value, unit, system).text(); };
  add_label(drawing, {0.0, 1.09}, "all there is, " + said(full), Align::left);
  add_label(drawing, {0.0, -0.11}, "0 min", Align::left);
  add_label(drawing, {kHistory, -0.11}, fixed(span_min, span_min < 3.0 ? 1 : 0) + " min", Align::right);
  add_label(drawing, {1.0, -0.11}, "how often", Align::right);
  add_label(drawing, {1.0, 1.09}, "mean " + said(mean * full), Align::right, TextRole::strong);
  drawing.description =
      "Mean " + said(mean * full) + " of " + said(full) +
      (thrust ? "; all there is was wanted for " + fixed(100.0 * s.full_frac, 0) + " % of the time."
              : "; highest " + said(s.power_peak_W) + ", root mean square " + said(s.power_rms_W) +
                    ".");
  return drawing;
}

}  // namespace thole
