#include "draw/locker_plan.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>
#include <vector>

#include "base/order.h"
#include "draw/sketch.h"

namespace thole {
namespace {

constexpr double kLeast_m = 0.01;  // keeps a sheet for an impossible locker drawable
constexpr int kMostStraps_count = 8;

// The two views on one sheet: the plan's low corner at (0, 0), the side view's above it.
struct Sheet {
  double length_m = 0.0;
  double width_m = 0.0;
  double height_m = 0.0;
  double margin_m = 0.0;  // round and between the views

  double floor_m() const { return width_m + 0.8 * margin_m; }
  Point plan(const Spot& spot) const { return {spot.x_m, spot.y_m}; }
  Point side(const Spot& spot) const { return {spot.x_m, floor_m() + spot.z_m}; }
};

Sheet sheet_of(const PackingInput& in) {
  Sheet sheet{std::max(in.locker_length_m, kLeast_m), std::max(in.locker_width_m, kLeast_m),
              std::max(in.locker_height_m, kLeast_m)};
  sheet.margin_m = 0.14 * std::max(sheet.length_m, sheet.width_m + sheet.height_m);
  return sheet;
}

void add_post(Drawing& drawing, Point at, bool plus, double radius_m) {
  drawing.circles.push_back({.centre = at,
                             .radius = radius_m,
                             .line = Line::outline,
                             .fill = plus ? Fill::strong : Fill::paper});
}

bool holds(const PlacedBlock& block, Point at) {
  return at.x >= block.low.x_m && at.x <= block.low.x_m + block.size.x_m && at.y >= block.low.y_m &&
         at.y <= block.low.y_m + block.size.y_m;
}

// Straps lie across the long side of the case, evenly along it.
std::vector<std::array<Spot, 2>> straps_of(const PlacedBlock& block, int count, double beyond_m) {
  std::vector<std::array<Spot, 2>> straps;
  const bool along_x = block.size.x_m >= block.size.y_m;
  const double top_m = block.low.z_m + block.size.z_m;
  for (int i = 0; i < count; ++i) {
    const double share = (i + 0.5) / count;
    if (along_x) {
      const double x_m = block.low.x_m + share * block.size.x_m;
      straps.push_back({Spot{x_m, block.low.y_m - beyond_m, top_m},
                        Spot{x_m, block.low.y_m + block.size.y_m + beyond_m, top_m}});
    } else {
      const double y_m = block.low.y_m + share * block.size.y_m;
      straps.push_back({Spot{block.low.x_m - beyond_m, y_m, top_m},
                        Spot{block.low.x_m + block.size.x_m + beyond_m, y_m, top_m}});
    }
  }
  return straps;
}

void add_plan(Drawing& drawing, const Sheet& sheet, const PackingInput& in,
              const Arrangement& arrangement, int strap_count, bool upper) {
  const double post_m = 0.06 * std::min(in.block_width_m, in.block_length_m);
  const auto shown = [&](const PlacedBlock& block) { return (block.low.z_m > 0.0) == upper; };
  for (std::size_t i = 0; i < arrangement.blocks.size(); ++i) {
    const PlacedBlock& block = arrangement.blocks[i];
    if (!shown(block)) continue;
    add_box(drawing, sheet.plan(block.low),
            {block.low.x_m + block.size.x_m, block.low.y_m + block.size.y_m}, Line::outline,
            Fill::hull);
    for (const auto& strap : straps_of(block, strap_count, 0.5 * in.strap_room_m)) {
      add_polyline(drawing, {sheet.plan(strap[0]), sheet.plan(strap[1])}, Line::thin);
    }
    add_post(drawing, sheet.plan(block.minus), false, post_m);
    add_post(drawing, sheet.plan(block.plus), true, post_m);
    // Beside the straps and the posts' line, which are the middle ones.
    const bool along_x = block.size.x_m >= block.size.y_m;
    const Point at{block.low.x_m + (along_x ? 0.5 : 0.75) * block.size.x_m,
                   block.low.y_m + (along_x ? 0.78 : 0.5) * block.size.y_m};
    const bool covered = !upper && std::any_of(arrangement.blocks.begin(), arrangement.blocks.end(),
                                               [&](const PlacedBlock& other) {
                                                 return other.low.z_m > 0.0 && holds(other, at);
                                               });
    if (!covered) {
      add_label(drawing, at, std::to_string(i + 1), Align::centre, TextRole::strong);
    }
  }
}

void add_side(Drawing& drawing, const Sheet& sheet, const PackingInput& in,
              const Arrangement& arrangement, int strap_count) {
  std::vector<std::size_t> far_first(arrangement.blocks.size());
  for (std::size_t i = 0; i < far_first.size(); ++i) far_first[i] = i;
  far_first = sorted(std::move(far_first), [&](std::size_t a, std::size_t b) {
    return arrangement.blocks[a].low.y_m > arrangement.blocks[b].low.y_m;
  });
  for (const std::size_t i : far_first) {
    const PlacedBlock& block = arrangement.blocks[i];
    const Point low = sheet.side(block.low);
    const Point high{low.x + block.size.x_m, low.y + block.size.z_m};
    add_box(drawing, low, high, Line::outline, Fill::hull);
    for (const auto& strap : straps_of(block, strap_count, 0.0)) {
      if (strap[0].x_m == strap[1].x_m) {
        add_polyline(drawing, {{strap[0].x_m, low.y}, {strap[0].x_m, high.y}}, Line::thin);
      }
    }
    const double middle_m = block.low.x_m + 0.5 * block.size.x_m;
    const bool hidden = std::any_of(
        arrangement.blocks.begin(), arrangement.blocks.end(), [&](const PlacedBlock& other) {
          return other.low.y_m < block.low.y_m && other.low.z_m == block.low.z_m &&
                 middle_m >= other.low.x_m && middle_m <= other.low.x_m + other.size.x_m;
        });
    if (!hidden) {
      add_label(drawing, {0.5 * (low.x + high.x), low.y + 0.3 * block.size.z_m},
                std::to_string(i + 1));
    }
  }
  for (const Jumper& jumper : arrangement.jumpers) {
    const double over_m =
        sheet.floor_m() + std::max(jumper.a.z_m, jumper.b.z_m) + 0.5 * in.terminal_room_m;
    add_polyline(drawing,
                 {sheet.side(jumper.a),
                  {jumper.a.x_m, over_m},
                  {jumper.b.x_m, over_m},
                  sheet.side(jumper.b)},
                 Line::accent);
  }
  const double needed_m = sheet.floor_m() + arrangement.height_m;
  add_polyline(drawing, {{0.0, needed_m}, {sheet.length_m, needed_m}}, Line::hidden);
  if (arrangement.tier_count > 1) {
    const double shelf_m = arrangement.blocks.back().low.z_m > 0.0
                               ? arrangement.blocks.back().low.z_m
                               : arrangement.blocks.front().low.z_m;
    add_box(drawing, {0.0, sheet.floor_m() + shelf_m - in.shelf_m},
            {sheet.length_m, sheet.floor_m() + shelf_m}, Line::thin, Fill::none, true);
  }
}

// What is missing: of the height in the side view, of the plan, or of the opening, in the plan; where
// either of two would do, the smaller.
void add_missing(Drawing& drawing, const Sheet& sheet, const PackingResult& result) {
  std::string plan;
  for (const Shortfall& shortfall : result.all_of) {
    if (shortfall.direction == Direction::height) {
      const double needed_m = sheet.floor_m() + sheet.height_m;
      add_label(drawing, {0.5 * sheet.length_m, needed_m - 0.5 * sheet.height_m}, said(shortfall),
                Align::centre, TextRole::strong);
    } else if (plan.empty()) {
      plan = said(shortfall);
    }
  }
  const auto least = std::min_element(
      result.one_of.begin(), result.one_of.end(),
      [](const Shortfall& a, const Shortfall& b) { return a.missing_m < b.missing_m; });
  if (plan.empty() && least != result.one_of.end()) plan = said(*least);
  if (plan.empty() && result.all_of.empty()) plan = "does not fit";
  if (!plan.empty()) {
    add_label(drawing, {0.5 * sheet.length_m, 0.5 * sheet.width_m}, plan, Align::centre,
              TextRole::strong);
  }
}

std::string counted(std::size_t count, const std::string& one) {
  return std::to_string(count) + " " + one + (count == 1 ? "" : "s");
}

std::string description(const PackingInput& in, const Arrangement& arrangement, int strap_count,
                        System system) {
  std::string text = counted(arrangement.blocks.size(), "block");
  text += arrangement.posture == Posture::upright ? " upright" : " on their sides";
  text += arrangement.tier_count > 1 ? ", in two tiers" : "";
  text += " in a locker of " + length_text(in.locker_length_m, system) + " by " +
          length_text(in.locker_width_m, system) + ", " + length_text(in.locker_height_m, system) +
          " high, of which they take " + length_text(arrangement.height_m, system) +
          " with their lugs. " + show(1000.0 * in.air_gap_m, "mm", system).text() +
          " of air to each neighbour and wall. ";
  text += arrangement.jumpers.empty()
              ? "No jumpers."
              : counted(arrangement.jumpers.size(), "jumper") + ", " +
                    length_text(arrangement.jumpers_m, system) + " of cable together.";
  if (strap_count > 0) {
    text += " " + counted(static_cast<std::size_t>(strap_count), "strap") + " over each block.";
  }
  return text;
}

}  // namespace

Drawing locker_plan_picture(const PackingInput& in, const PackingResult& result,
                            int straps_per_block_count, System system, std::size_t shown) {
  Drawing drawing{.title = "The battery locker from the side, and below from above"};
  const Sheet sheet = sheet_of(in);
  const double edge_m = sheet.margin_m;
  const double top_m = sheet.floor_m() + sheet.height_m;
  drawing.low = {-1.7 * edge_m, -1.2 * edge_m};
  drawing.high = {sheet.length_m + 0.5 * edge_m, top_m + 0.7 * edge_m};
  add_box(drawing, {0.0, 0.0}, {sheet.length_m, sheet.width_m}, Line::outline, Fill::paper);
  add_box(drawing, {0.0, sheet.floor_m()}, {sheet.length_m, top_m}, Line::outline, Fill::paper);
  add_dimension(drawing, {0.0, -0.6 * edge_m}, {sheet.length_m, -0.6 * edge_m},
                length_text(sheet.length_m, system));
  add_dimension(drawing, {-0.8 * edge_m, 0.0}, {-0.8 * edge_m, sheet.width_m},
                length_text(sheet.width_m, system));
  add_dimension(drawing, {-0.8 * edge_m, sheet.floor_m()}, {-0.8 * edge_m, top_m},
                length_text(sheet.height_m, system));
  if (!result.fits || result.arrangements.empty()) {
    add_missing(drawing, sheet, result);
    drawing.description = result.problem;
    return drawing;
  }
  const Arrangement& best = result.arrangements[std::min(shown, result.arrangements.size() - 1)];
  const int strap_count = std::clamp(straps_per_block_count, 0, kMostStraps_count);
  add_plan(drawing, sheet, in, best, strap_count, false);
  add_plan(drawing, sheet, in, best, strap_count, true);
  for (const Jumper& jumper : best.jumpers) {
    add_polyline(drawing,
                 {sheet.plan(jumper.a), {jumper.b.x_m, jumper.a.y_m}, sheet.plan(jumper.b)},
                 Line::accent);
  }
  add_side(drawing, sheet, in, best, strap_count);
  const std::string jumpers = best.jumpers.empty() ? "no jumpers"
                                                   : counted(best.jumpers.size(), "jumper") + ", " +
                                                         length_text(best.jumpers_m, system);
  add_label(drawing, {0.0, top_m + 0.4 * edge_m}, jumpers, Align::left, TextRole::strong);
  drawing.description = description(in, best, strap_count, system);
  return drawing;
}

Drawing locker_picture(const Design& design, System system) {
  const PackingInput in = locker_input(design).packing;
  return locker_plan_picture(in, pack(in), design.locker.strap_count, system);
}

}  // namespace thole
