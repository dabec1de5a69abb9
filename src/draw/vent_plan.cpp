#include "draw/vent_plan.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "draw/sketch.h"

namespace thole {
namespace {

constexpr int kMostBlocks_count = 8;
constexpr double kPitch_ratio = 1.15;  // of blocks in a row to their width
constexpr double kLeast_m = 0.05;
constexpr double kFailedCellHole_mm = 60.0;  // drawn for lithium; no rule gives a size

struct Room {
  double length_m = 0.0;
  double height_m = 0.0;
  bool measured = false;
};

Room room_of(const ChargingStudy& study, const Design& design) {
  const Locker& locker = design.job.locker;
  if (locker.length_m.known() && locker.height_m.known()) {
    return {std::max(locker.length_m.value, kLeast_m), std::max(locker.height_m.value, kLeast_m),
            locker.length_m.given() && locker.height_m.given()};
  }
  const BatteryBlock& block = design.bank.block;
  const double blocks_m3 = 1e-9 * block.length_mm * block.width_mm * block.height_mm *
                           design.bank.series_count * design.bank.parallel_count;
  const double height_m = std::cbrt((study.input.locker_volume_m3 + blocks_m3) / 3.0);
  return {2.0 * height_m, height_m, false};
}

// What is cut, or has to be.
double hole_mm(const ChargingStudy& study, double cut_cm2) {
  if (study.venting.demands.empty()) return kFailedCellHole_mm;
  return round_hole_mm(study.vents.cut_to_size ? study.venting.opening_cm2 : cut_cm2);
}

// The blocks as they are drawn.
struct Row {
  int count = 0;
  double low_m = 0.0;  // where it begins
  double wide_m = 0.0;
  double high_m = 0.0;
};

Row row_of(const Design& design, const Room& room) {
  const BatteryBlock& block = design.bank.block;
  Row row{.wide_m = 1e-3 * std::max(block.width_mm, 50.0),
          .high_m = std::min(1e-3 * std::max(block.height_mm, 50.0), 0.95 * room.height_m)};
  row.count = std::min({design.bank.series_count * design.bank.parallel_count, kMostBlocks_count,
                        std::max(1, static_cast<int>(0.9 * room.length_m /
                                                     (kPitch_ratio * row.wide_m)))});
  row.low_m = 0.5 * (room.length_m - row.wide_m * (1.0 + kPitch_ratio * (row.count - 1)));
  return row;
}

class Plan {
 public:
  Plan(const ChargingStudy& study, const Design& design, System system)
      : study_(study), system_(system), room_(room_of(study, design)), row_(row_of(design, room_)) {}

  Drawing draw() {
    drawing_.title = "Air through the battery locker";
    const double beyond_m = row_.low_m + 0.5 * row_.wide_m - 1e-3 * study_.venting.spark_mm;
    const double margin_m = std::max(0.3 * room_.length_m, 0.02 * room_.length_m - beyond_m);
    drawing_.low = {-margin_m, -0.16 * room_.length_m};
    drawing_.high = {room_.length_m + margin_m, room_.height_m + 0.33 * room_.length_m};
    add_walls();
    add_blocks();
    if (lead()) add_low_opening();
    add_high_opening();
    add_captions();
    drawing_.description = said();
    return std::move(drawing_);
  }

 private:
  bool lead() const { return !study_.venting.demands.empty(); }
  bool fan() const { return study_.vents.fan_m3_per_h > 0.0; }
  double low_m() const { return 1e-3 * hole_mm(study_, study_.vents.low_opening_cm2); }
  double high_m() const { return 1e-3 * hole_mm(study_, study_.vents.high_opening_cm2); }
  // Both on one wall when they are.
  double high_x() const { return study_.vents.opposite_sides ? room_.length_m : 0.0; }
  double low_foot_m() const { return 0.04 * room_.height_m; }
  double high_head_m() const { return 0.97 * room_.height_m; }

  std::string small(double length_mm) const { return show(length_mm, "mm", system_).text(); }

  // A wall with a hole in it: two strokes.
  void add_wall(double x, std::vector<std::pair<double, double>> holes) {
    std::sort(holes.begin(), holes.end());
    double from = 0.0;
    for (const auto& hole : holes) {
      const double foot = std::clamp(hole.first, from, room_.height_m);
      if (foot > from) add_polyline(drawing_, {{x, from}, {x, foot}}, Line::outline);
      from = std::clamp(hole.second, foot, room_.height_m);
    }
    if (from < room_.height_m) add_polyline(drawing_, {{x, from}, {x, room_.height_m}}, Line::outline);
  }

  void add_walls() {
    add_box(drawing_, {0.0, 0.0}, {room_.length_m, room_.height_m}, Line::none, Fill::paper);
    add_polyline(drawing_, {{0.0, 0.0}, {room_.length_m, 0.0}}, Line::outline);
    add_polyline(drawing_, {{0.0, room_.height_m}, {room_.length_m, room_.height_m}}, Line::outline);
    std::vector<std::pair<double, double>> left;
    std::vector<std::pair<double, double>> right;
    if (lead()) left.push_back({low_foot_m(), low_foot_m() + low_m()});
    (high_x() > 0.0 ? right : left).push_back({high_head_m() - high_m(), high_head_m()});
    add_wall(0.0, std::move(left));
    add_wall(room_.length_m, std::move(right));
  }

  void add_blocks() {
    double x = row_.low_m;
    for (int i = 0; i < row_.count; ++i) {
      add_box(drawing_, {x, 0.0}, {x + row_.wide_m, row_.high_m}, Line::outline, Fill::hull);
      const Point vent{x + 0.5 * row_.wide_m, row_.high_m};
      if (lead() && i == 0) add_reach(vent, std::numbers::pi);
      if (lead() && i + 1 == row_.count) add_reach(vent, 0.0);
      x += kPitch_ratio * row_.wide_m;
    }
  }

  // How near nothing may spark: a quarter of the circle, outward of the row, as far as the lid.
  void add_reach(Point vent, double from_rad) {
    const double radius_m = 1e-3 * study_.venting.spark_mm;
    const auto seen = drawing_.shapes.size();
    constexpr int kArc_count = 72;
    std::vector<Point> arc;
    const auto flush = [&] {
      if (arc.size() > 1) add_polyline(drawing_, std::move(arc), Line::hidden);
      arc.clear();
    };
    for (int i = 0; i <= kArc_count; ++i) {
      const double angle = from_rad + (0.5 * std::numbers::pi - from_rad) * i / kArc_count;
      const Point point{vent.x + radius_m * std::cos(angle), vent.y + radius_m * std::sin(angle)};
      const bool inside = point.x >= drawing_.low.x && point.x <= drawing_.high.x &&
                          point.y <= room_.height_m;  // texts stand above the lid
      if (inside) {
        arc.push_back(point);
      } else {
        flush();
      }
    }
    flush();
    reach_shown_ = reach_shown_ || drawing_.shapes.size() > seen;
  }

  void add_low_opening() {
    const double y = low_foot_m() + 0.5 * low_m();
    const double reach_m = 0.16 * room_.length_m;
    drawing_.arrows.push_back({.a = {-reach_m, y}, .b = {0.35 * reach_m, y}});
    if (!fan()) return;
    const double radius_m = 0.45 * std::max(low_m(), 0.06 * room_.length_m);
    const Point hub{-0.5 * reach_m, y};
    drawing_.circles.push_back({.centre = hub, .radius = radius_m, .fill = Fill::paper});
    add_polyline(drawing_, {{hub.x, hub.y - radius_m}, {hub.x, hub.y + radius_m}}, Line::thin);
    add_polyline(drawing_, {{hub.x - radius_m, hub.y}, {hub.x + radius_m, hub.y}}, Line::thin);
  }

  void add_high_opening() {
    const double y = high_head_m() - 0.5 * high_m();
    const double out = high_x() > 0.0 ? 1.0 : -1.0;
    const double reach_m = 0.16 * room_.length_m;
    drawing_.arrows.push_back(
        {.a = {high_x() - out * 0.35 * reach_m, y}, .b = {high_x() + out * reach_m, y}});
  }

  void add_captions() {
    const double line_m = 0.085 * room_.length_m;
    const double top_m = room_.height_m + 0.07 * room_.length_m;  // a text's half clear of the lid
    if (!lead()) {
      add_label(drawing_, {0.5 * room_.length_m, top_m + line_m}, "high opening, out of the boat");
      add_label(drawing_, {0.5 * room_.length_m, top_m}, "for the gas of a failed cell");
      return;
    }
    const std::string wanted = study_.vents.cut_to_size ? "needs " : "has ";
    const double high_cm2 = study_.vents.cut_to_size ? study_.venting.opening_cm2
                                                     : study_.vents.high_opening_cm2;
    const double low_cm2 =
        study_.vents.cut_to_size ? study_.venting.opening_cm2 : study_.vents.low_opening_cm2;
    const auto hole = [&](double area_cm2, double across_m) {
      return wanted + show(area_cm2, "cm2", system_).text() + ", a hole of " + small(1e3 * across_m);
    };
    add_label(drawing_, {0.5 * room_.length_m, top_m + 2.0 * line_m}, "high " + hole(high_cm2, high_m()));
    add_label(drawing_, {0.5 * room_.length_m, top_m + line_m},
              "no spark within " + small(study_.venting.spark_mm) + (reach_shown_ ? " (dashed)" : ""));
    const double minutes =
        study_.venting.demands[static_cast<std::size_t>(VentCase::failed)].closed_min;
    add_label(drawing_, {0.5 * room_.length_m, top_m},
              "closed, charger failed: 4 % in " + show(minutes, "min", system_).text(),
              Align::centre, TextRole::strong);
    const std::string low = fan() ? "fan, " + show(study_.vents.fan_m3_per_h, "m3/h", system_).text()
                                  : "low " + hole(low_cm2, low_m());
    add_label(drawing_, {0.5 * room_.length_m, -0.08 * room_.length_m}, low);
  }

  std::string said() const {
    if (!lead()) {
      return "The battery locker with a high opening for the gas of a failed cell. Lithium gives off "
             "no hydrogen on charge.";
    }
    return std::string("The battery locker from the side") +
           (room_.measured ? "" : ", its shape assumed") + ". Openings low and high need " +
           show(study_.venting.opening_cm2, "cm2", system_).text() + " each, a round hole of " +
           small(round_hole_mm(study_.venting.opening_cm2)) + ". No spark within " +
           small(study_.venting.spark_mm) + " of a block's vent. Closed, with a charger that has "
           "failed, it holds 4 % of hydrogen after " +
           show(study_.venting.demands[static_cast<std::size_t>(VentCase::failed)].closed_min, "min",
                system_)
               .text() +
           "." + (fan() ? " A fan blows in low." : "");
  }

  const ChargingStudy& study_;
  System system_;
  Room room_;
  Row row_;
  Drawing drawing_{};
  bool reach_shown_ = false;
};

}  // namespace

Drawing vent_plan_picture(const ChargingStudy& study, const Design& design, System system) {
  return Plan(study, design, system).draw();
}

}  // namespace thole
