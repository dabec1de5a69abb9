#include "draw/trip_curves.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <utility>

#include "draw/sketch.h"
#include "io/measure.h"

namespace thole {
namespace {

constexpr double kSoonest_s = 0.005;
constexpr double kBeside = 1e-9;     // share by which the two sides of a step are told apart
constexpr double kBar_factor = 2.2;  // height of the faults' bar, below the soonest

struct TimeTick {
  double time_s = 0.0;
  std::string_view text{};
};
constexpr std::array kTimes{TimeTick{0.01, "10 ms"}, TimeTick{1.0, "1 s"}, TimeTick{60.0, "1 min"},
                            TimeTick{3600.0, "1 h"}};

Point at(double current_A, double time_s) { return {std::log10(current_A), std::log10(time_s)}; }

// What the picture spans.
struct Window {
  double least_A = 10.0;
  double most_A = 10e3;

  bool holds(double current_A) const { return current_A >= least_A && current_A <= most_A; }
};

Window window_of(const ProtectionInput& in, const ProtectionResult& result) {
  double least_A = std::min(in.motor.continuous_A > 0.0 ? in.motor.continuous_A : in.run.ampacity_A,
                            result.faults.plug.least_A);
  for (const ProtectionDevice& device : in.devices) least_A = std::min(least_A, device.rating_A);
  return {.least_A = 0.4 * least_A, .most_A = 1.5 * result.faults.posts.most_A};
}

// A falling curve, cut off where it leaves the picture at the foot.
std::vector<Point> above_foot(const std::vector<Point>& points) {
  const double foot = std::log10(kSoonest_s);
  std::vector<Point> cut;
  for (const Point& point : points) {
    if (point.y < foot) {
      if (!cut.empty() && cut.back().y > foot) {
        const Point from = cut.back();
        const double share = (from.y - foot) / (from.y - point.y);
        cut.push_back({from.x + share * (point.x - from.x), foot});
      }
      break;
    }
    cut.push_back(point);
  }
  return cut;
}

// An edge of the band from where it leaves the top to where it leaves the picture.
std::vector<Point> edge(const ProtectionDevice& device, double OpeningBand::*time_s, DeviceAir air,
                        double to_A) {
  const DeviceCurve& curve = curve_of(device.device_class);
  const double from_ratio =
      time_s == &OpeningBand::shortest_s ? holds_ratio(curve, air) : opens_ratio(curve, air);
  const double to_ratio = to_A / device.rating_A;
  std::vector<Point> points{at(from_ratio * device.rating_A, kMayNeverOpen_s)};
  const auto add = [&](double ratio) {
    points.push_back(at(ratio * device.rating_A, opening_band(curve, ratio, air).*time_s));
  };
  for (const double ratio : bends(curve, air)) {
    if (ratio < from_ratio || ratio > to_ratio) continue;
    if (ratio > from_ratio) add(ratio * (1.0 - kBeside));
    add(ratio * (1.0 + kBeside));
  }
  if (to_ratio > from_ratio) add(to_ratio);
  return above_foot(points);
}

struct Band {
  std::vector<Point> soonest{};
  std::vector<Point> latest{};
};

Band band_of(const ProtectionDevice& device, DeviceAir air, const Window& window) {
  // It promises nothing of what it cannot break.
  const double to_A =
      device.interrupt_A > 0.0 ? std::min(device.interrupt_A, window.most_A) : window.most_A;
  return {.soonest = edge(device, &OpeningBand::shortest_s, air, to_A),
          .latest = edge(device, &OpeningBand::longest_s, air, to_A)};
}

// The lines over all fills, for bands overlap.
void add_bands(Drawing& drawing, const ProtectionInput& in, const Window& window) {
  constexpr std::array kFills{Fill::water, Fill::hull, Fill::paper};
  std::vector<Band> bands;
  for (const ProtectionDevice& device : in.devices) {
    bands.push_back(band_of(device, in.air, window));
    const Band& band = bands.back();
    Shape shape{.points = band.soonest,
                .closed = true,
                .line = Line::none,
                .fill = kFills[std::min(bands.size(), kFills.size()) - 1]};
    // Along the foot, should the soonest edge reach it first.
    if (band.latest.back().x > band.soonest.back().x) {
      shape.points.push_back({band.latest.back().x, band.soonest.back().y});
    }
    shape.points.insert(shape.points.end(), band.latest.rbegin(), band.latest.rend());
    drawing.shapes.push_back(std::move(shape));
  }
  for (Band& band : bands) {
    add_polyline(drawing, std::move(band.soonest), Line::thin);
    add_polyline(drawing, std::move(band.latest), Line::outline);
  }
}

void add_withstand(Drawing& drawing, const ProtectedLead& lead, const Window& window, Line line) {
  constexpr int kPoints = 80;
  std::vector<Point> points;
  for (int i = 0; i <= kPoints; ++i) {
    const double current_A =
        window.least_A * std::pow(window.most_A / window.least_A, i / double{kPoints});
    const double time_s = lead_withstand_s(lead, current_A);
    if (time_s < kMayNeverOpen_s && time_s > 0.0) points.push_back(at(current_A, time_s));
  }
  points = above_foot(points);
  if (points.size() > 1) add_polyline(drawing, std::move(points), line);
}

void add_grid(Drawing& drawing, const Window& window) {
  const double left = std::log10(window.least_A);
  const double right = std::log10(window.most_A);
  const double foot = std::log10(kSoonest_s);
  const double top = std::log10(kMayNeverOpen_s);
  for (const TimeTick& tick : kTimes) {
    const double y = std::log10(tick.time_s);
    add_polyline(drawing, {{left, y}, {right, y}}, Line::thin);
    add_label(drawing, {left - 0.03 * (right - left), y}, std::string(tick.text), Align::right);
  }
  for (double decade = std::ceil(left); decade <= right; decade += 1.0) {
    add_polyline(drawing, {{decade, foot}, {decade, top}}, Line::thin);
    const double kilo = std::pow(10.0, decade - 3.0);
    const std::string text = decade < 2.5 ? std::to_string(std::lround(1e3 * kilo)) + " A"
                                          : std::to_string(std::lround(kilo)) + " kA";
    add_label(drawing, {decade, foot - 1.0}, text, Align::centre);
  }
}

// What short circuits draw, along the current's axis: all of them, and those at the plug stronger.
void add_faults(Drawing& drawing, const FaultRanges& faults) {
  const double top = std::log10(kSoonest_s);
  const double low = std::log10(kSoonest_s / kBar_factor);
  const auto bar = [&](FaultRange range, Fill fill) {
    add_box(drawing, {std::log10(range.least_A), low}, {std::log10(range.most_A), top}, Line::thin,
            fill);
  };
  bar({.least_A = faults.plug.least_A, .most_A = faults.posts.most_A}, Fill::warning);
  bar(faults.plug, Fill::strong);
}

void add_motor(Drawing& drawing, const MotorDemand& motor, const Window& window) {
  const auto point = [&](double current_A, double time_s, double above, std::string text) {
    if (time_s <= kSoonest_s || !window.holds(current_A)) return;
    const Point where = at(current_A, time_s);
    drawing.circles.push_back(
        {.centre = where, .radius = 0.0, .line = Line::accent, .fill = Fill::accent});
    add_label(drawing, {where.x - 0.06, where.y + above}, std::move(text), Align::right);
  };
  // Clear of the line of one second.
  point(motor.stall_A, motor.stall_s, 0.24, "stall");
  point(motor.start_A, motor.start_s, -0.1, "start");
}

// "between 140 A and 1.2 kA"
std::string between(FaultRange range, System system) {
  return "between " + show(range.least_A, "A", system).text() + " and " +
         show(range.most_A, "A", system).text();
}

std::string said(const ProtectionInput& in, const ProtectionResult& result, System system) {
  std::string text = "Short circuits draw " + between(result.faults.plug, system) +
                     " at the plug and up to " +
                     show(result.faults.posts.most_A, "A", system).text() +
                     " at the bank, the bar along the axis. ";
  if (in.devices.empty()) {
    text += "Nothing opens. ";
  } else {
    text += "Each band is when a device opens, from soonest to latest: ";
    for (std::size_t i = 0; i < in.devices.size(); ++i) {
      text += (i > 0 ? ", then " : "") + in.devices[i].label + " " +
              show(in.devices[i].rating_A, "A", system).text();
    }
    text += ". ";
  }
  const Finding* run = find(result, FindingKind::run_stands);
  if (run != nullptr) {
    const bool stands = run->check.utilisation() <= 1.0;
    text += std::string("The ") + in.run.label + (stands ? " outlives" : " does not outlive") +
            " them all: at the worst, " + show(run->at_A, "A", system).text() + ", it stands " +
            show(run->check.limit, "s", system).text() + " and the current is gone within " +
            show(run->check.actual, "s", system).text() + ".";
  }
  return text;
}

}  // namespace

Drawing trip_curves_picture(const ProtectionInput& in, const ProtectionResult& result,
                            System system) {
  Drawing drawing{.title = "When the fuses and breakers open", .to_scale = false};
  const Window window = window_of(in, result);
  const double left = std::log10(window.least_A);
  const double right = std::log10(window.most_A);
  const double top = std::log10(kMayNeverOpen_s);
  const double foot = std::log10(kSoonest_s);
  drawing.low = {left - 0.19 * (right - left), foot - 1.4};
  drawing.high = {right + 0.03 * (right - left), top + 0.9};
  add_grid(drawing, window);
  add_bands(drawing, in, window);
  add_withstand(drawing, in.run, window, Line::accent);
  if (in.tail.length_m > 0.0) add_withstand(drawing, in.tail, window, Line::hidden);
  add_faults(drawing, result.faults);
  add_motor(drawing, in.motor, window);

  // Over the bands' tops, the farthest from the bank first: its band stands to the left.
  double y = top + 0.5;
  for (std::size_t i = in.devices.size(); i-- > 0;) {
    const ProtectionDevice& device = in.devices[i];
    const double x =
        std::log10(opens_ratio(curve_of(device.device_class), in.air) * device.rating_A);
    add_label(drawing, {x + 0.05, y}, device.label, Align::left);
    y -= 1.3;
  }
  const double knee_A = 3.0 * in.run.ampacity_A;
  const double knee_s = lead_withstand_s(in.run, knee_A);
  if (window.holds(knee_A) && knee_s > kSoonest_s && knee_s < kMayNeverOpen_s) {
    const Point knee = at(knee_A, knee_s);
    add_label(drawing, {knee.x + 0.08, knee.y + 0.3}, in.run.label + " stands", Align::left,
              TextRole::strong);
  }
  drawing.description = said(in, result, system);
  return drawing;
}

}  // namespace thole
