#include "calc/compass/contours.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "base/units.h"
#include "calc/compass/twist_field.h"

namespace thole {
namespace {

constexpr double kLeastRatio = 1e-12;  // so that its logarithm is a number

bool possible(const PlanArea& area) {
  return area.columns_count >= 2 && area.rows_count >= 2 && area.high.x_m > area.low.x_m &&
         area.high.y_m > area.low.y_m && std::isfinite(area.z_m) && std::isfinite(area.low.x_m) &&
         std::isfinite(area.high.x_m) && std::isfinite(area.low.y_m) &&
         std::isfinite(area.high.y_m);
}

// Places of the lines on the edges of the grid, each edge with its one or two neighbours.
class Squares {
 public:
  Squares(const ErrorGrid& grid, double level_ratio)
      : grid_(grid),
        columns_(grid.area.columns_count),
        rows_(grid.area.rows_count),
        level_(std::log(level_ratio)),
        links_(2 * static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_),
               {kNone, kNone}) {
    for (int row = 0; row + 1 < rows_; ++row) {
      for (int column = 0; column + 1 < columns_; ++column) cell(column, row);
    }
  }

  std::vector<PlanLine> lines() {
    std::vector<PlanLine> found;
    std::vector<char> used(links_.size(), 0);
    const auto follow = [&](std::size_t edge) {
      PlanLine line;
      const std::size_t start = edge;
      while (edge != kNone && !used[edge]) {
        used[edge] = true;
        line.push_back(crossing(edge));
        const auto [first, second] = links_[edge];
        edge = first != kNone && !used[first] ? first : second;
      }
      if (links_[start].second != kNone) line.push_back(line.front());
      found.push_back(std::move(line));
    };
    for (std::size_t edge = 0; edge < links_.size(); ++edge) {  // those that end at the edge first
      if (!used[edge] && links_[edge].first != kNone && links_[edge].second == kNone) follow(edge);
    }
    for (std::size_t edge = 0; edge < links_.size(); ++edge) {
      if (!used[edge] && links_[edge].first != kNone) follow(edge);
    }
    return found;
  }

 private:
  static constexpr std::size_t kNone = static_cast<std::size_t>(-1);

  double height(int column, int row) const {
    return std::log(std::max(grid_.ratio(column, row), kLeastRatio));
  }
  bool inside(int column, int row) const { return height(column, row) >= level_; }

  // Even: along x from this point; odd: along y.
  std::size_t edge(int column, int row, bool up) const {
    return 2 * (static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) +
                static_cast<std::size_t>(column)) +
           (up ? 1 : 0);
  }

  PlanPoint crossing(std::size_t edge) const {
    const auto place = static_cast<int>(edge / 2);
    const int column = place % columns_;
    const int row = place / columns_;
    const bool up = edge % 2 == 1;
    const PlanPoint a = grid_.point(column, row);
    const PlanPoint b = up ? grid_.point(column, row + 1) : grid_.point(column + 1, row);
    const double from = height(column, row);
    const double to = up ? height(column, row + 1) : height(column + 1, row);
    const double share = std::clamp((level_ - from) / (to - from), 0.0, 1.0);
    return {a.x_m + share * (b.x_m - a.x_m), a.y_m + share * (b.y_m - a.y_m)};
  }

  void link(std::size_t a, std::size_t b) {
    for (const auto& [here, there] : {std::pair{a, b}, std::pair{b, a}}) {
      auto& ends = links_[here];
      (ends.first == kNone ? ends.first : ends.second) = there;
    }
  }

  void cell(int column, int row) {
    // Corners and the edges that follow them, counter-clockwise from the low one.
    const std::array corner{inside(column, row), inside(column + 1, row),
                            inside(column + 1, row + 1), inside(column, row + 1)};
    const std::array side{edge(column, row, false), edge(column + 1, row, true),
                          edge(column, row + 1, false), edge(column, row, true)};
    std::array<std::size_t, 4> crossed{};
    std::size_t count = 0;
    for (std::size_t i = 0; i < 4; ++i) {
      if (corner[i] != corner[(i + 1) % 4]) crossed[count++] = side[i];
    }
    if (count == 2) link(crossed[0], crossed[1]);
    if (count < 4) return;
    const double middle = 0.25 * (height(column, row) + height(column + 1, row) +
                                  height(column + 1, row + 1) + height(column, row + 1));
    // The line cuts off the corners that are not like the middle.
    if ((middle >= level_) == corner[0]) {
      link(side[0], side[1]);
      link(side[2], side[3]);
    } else {
      link(side[3], side[0]);
      link(side[1], side[2]);
    }
  }

  const ErrorGrid& grid_;
  int columns_;
  int rows_;
  double level_;
  std::vector<std::pair<std::size_t, std::size_t>> links_;
};

}  // namespace

PlanPoint ErrorGrid::point(int column, int row) const {
  const double x = static_cast<double>(column) / (area.columns_count - 1);
  const double y = static_cast<double>(row) / (area.rows_count - 1);
  return {area.low.x_m + x * (area.high.x_m - area.low.x_m),
          area.low.y_m + y * (area.high.y_m - area.low.y_m)};
}

double ErrorGrid::ratio(int column, int row) const {
  return field_ratio[static_cast<std::size_t>(row) * static_cast<std::size_t>(area.columns_count) +
                     static_cast<std::size_t>(column)];
}

double ErrorGrid::error_deg(int column, int row) const {
  return worst_error_deg(ratio(column, row), 1.0);
}

ErrorGrid error_grid(const CompassInput& in, const PlanArea& area) {
  ErrorGrid grid{.area = area};
  const Circuit circuit = circuit_of(in);
  if (!possible(area) || circuit.wires.empty() || !(in.horizontal_T > 0.0)) return grid;
  const TwistField twist(circuit);
  for (int row = 0; row < area.rows_count; ++row) {
    for (int column = 0; column < area.columns_count; ++column) {
      const PlanPoint here = grid.point(column, row);
      const Place place{here.x_m, here.y_m, area.z_m};
      const Disturbance field = twist.empty() ? disturbance(circuit, place) : twist.at(place);
      grid.field_ratio.push_back(level_field_T(field, in.tilt_deg) / in.horizontal_T);
    }
  }
  return grid;
}

std::vector<PlanLine> iso_lines(const ErrorGrid& grid, double error_deg) {
  if (grid.field_ratio.empty() || !(error_deg > 0.0 && error_deg < 90.0)) return {};
  return Squares(grid, std::sin(rad_from_deg(error_deg))).lines();
}

}  // namespace thole
