#include "draw/plate_load.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/number.h"
#include "calc/plate/outline.h"
#include "draw/sketch.h"
#include "io/figures.h"

namespace thole {
namespace {

constexpr double kProfileGap_mm = 130.0;
constexpr double kLeastRadius_mm = 4.0;
constexpr double kMostRadius_mm = 15.0;

// Lines where `values` by node pass `level`, cut in each triangle.
void add_contour(Drawing& drawing, const PlateMesh& mesh, const std::vector<double>& values, double level, Line line) {
  for (const std::array<int, 3>& corners : mesh.triangles) {
    std::vector<Point> cut;
    for (std::size_t k = 0; k < 3; ++k) {
      const auto a = static_cast<std::size_t>(corners[k]);
      const auto b = static_cast<std::size_t>(corners[(k + 1) % 3]);
      if ((values[a] < level) == (values[b] < level)) continue;
      const double share = (level - values[a]) / (values[b] - values[a]);
      cut.push_back({1000.0 * (mesh.nodes[a].x_m + share * (mesh.nodes[b].x_m - mesh.nodes[a].x_m)),
                     1000.0 * (mesh.nodes[a].y_m + share * (mesh.nodes[b].y_m - mesh.nodes[a].y_m))});
    }
    if (cut.size() == 2) add_polyline(drawing, std::move(cut), line);
  }
}

// Along the middle line, aft to fore.
std::vector<std::pair<double, double>> middle_profile(const PlateMesh& mesh, const std::vector<double>& sag_m) {
  std::vector<std::pair<double, double>> profile;
  for (std::size_t i = 0; i < mesh.nodes.size(); ++i)
    if (std::abs(mesh.nodes[i].y_m) < 1e-6) profile.emplace_back(mesh.nodes[i].x_m, sag_m[i]);
  std::sort(profile.begin(), profile.end());
  return profile;
}

// 1, 2 or 5 times a power of ten, at most so much.
double round_down(double value) {
  const double ten = std::pow(10.0, std::floor(std::log10(value)));
  for (const double step : {5.0, 2.0})
    if (value >= step * ten) return step * ten;
  return ten;
}

void add_profile(Drawing& drawing, const PlateStudy& study, const PlateFinding& at, double drawn, double low_mm, double length_mm) {
  const std::vector<std::pair<double, double>> profile =
      middle_profile(study.solution.mesh, study.solution.cases[at.load_case].sag_m);
  const double edge_mm = std::min(1000.0 * study.model.support.deck_edge_m, length_mm);
  add_box(drawing, {-0.1 * length_mm, low_mm - 18.0}, {edge_mm, low_mm - 1.0}, Line::thin, Fill::none, true);
  std::vector<Point> points;
  for (const auto& [x_m, sag_m] : profile) points.push_back({1000.0 * x_m, low_mm + 1000.0 * drawn * at.load_factor * sag_m});
  add_polyline(drawing, std::move(points), Line::accent);
  add_label(drawing, {drawing.high.x, low_mm + 44.0}, "from the side, " + (drawn > 1.0 ? "bent " + fixed(drawn, 0) + " times" : "to scale"), Align::right);
}

}  // namespace

double bent_factor(const PlateStudy& study, std::size_t index) {
  const PlateFinding& at = study.findings[index];
  double most_m = 1e-9;
  for (const auto& [x_m, sag_m] : middle_profile(study.solution.mesh, study.solution.cases[at.load_case].sag_m))
    most_m = std::max(most_m, std::abs(at.load_factor * sag_m));
  return std::max(round_down(0.035 / most_m), 1.0);
}

Drawing plate_load_picture(const PlateStudy& study, std::size_t index, System system, bool to_scale) {
  const PlateFinding& at = study.findings[index];
  const PlateCaseSolution& result = study.solution.cases[at.load_case];
  const PlateMesh& mesh = study.solution.mesh;
  double length_mm = 0.0;
  double half_mm = 0.0;
  for (const PlateCorner& corner : study.model.shape.outline) {
    length_mm = std::max(length_mm, 1000.0 * corner.at.x_m);
    half_mm = std::max(half_mm, 1000.0 * std::abs(corner.at.y_m));
  }
  Drawing drawing{.title = at.label};
  drawing.low = {-0.12 * length_mm, -half_mm - kProfileGap_mm - 70.0};
  drawing.high = {1.12 * length_mm, half_mm + 44.0};
  Shape outline{.closed = true, .line = Line::outline, .fill = Fill::hull};
  for (const PlatePoint& p : chorded(rounded(study.model.shape.outline), 2e-4)) outline.points.push_back({1000.0 * p.x_m, 1000.0 * p.y_m});
  drawing.shapes.push_back(std::move(outline));
  const double edge_mm = 1000.0 * study.model.support.deck_edge_m;
  if (edge_mm < length_mm) {
    add_polyline(drawing, {{edge_mm, -half_mm - 30.0}, {edge_mm, half_mm + 14.0}}, Line::hidden);
    add_label(drawing, {edge_mm, -half_mm - 46.0}, "deck ends");
  }
  std::vector<double> use(result.stress_Pa.size());
  for (std::size_t i = 0; i < use.size(); ++i) use[i] = at.load_factor * result.stress_Pa[i] / (1e6 * at.limit_MPa);
  add_contour(drawing, mesh, use, 0.25, Line::thin);
  add_contour(drawing, mesh, use, 0.5, Line::outline);
  add_contour(drawing, mesh, use, 1.0, Line::accent);
  for (std::size_t i = 0; i < result.bolt_N.size(); ++i) {
    const PlatePoint bolt = study.model.shape.bolts[i].at;
    const double pull_N = at.load_factor * result.bolt_N[i];
    const double share = at.bolt_N > 0.0 ? pull_N / at.bolt_N : 0.0;
    const Point middle{1000.0 * bolt.x_m, 1000.0 * bolt.y_m};
    drawing.circles.push_back({.centre = middle, .radius = kLeastRadius_mm + (kMostRadius_mm - kLeastRadius_mm) * std::sqrt(share),
                               .fill = share > 0.999 ? Fill::accent : Fill::paper});
    if (pull_N >= 0.05 * at.bolt_N && pull_N > 0.0)
      add_label(drawing, {middle.x, bolt.y_m > 0.0 ? half_mm + 22.0 : -half_mm - 22.0}, show(pull_N, "N", system).text());
  }
  drawing.circles.push_back({.centre = {1000.0 * at.stress_at.x_m, 1000.0 * at.stress_at.y_m}, .radius = 3.0, .fill = Fill::strong});
  const double drawn = to_scale ? 1.0 : bent_factor(study, index);
  add_profile(drawing, study, at, drawn, -half_mm - kProfileGap_mm, length_mm);
  add_label(drawing, {drawing.high.x, drawing.low.y + 14.0}, "bow \u2192", Align::right);
  drawing.description = at.label + ": stress at most " + show(at.stress_MPa, "MPa", system).text() + " of " +
                        show(at.limit_MPa, "MPa", system).text() + ", at the dot. Bolts from aft, port and starboard:";
  for (const double pull_N : result.bolt_N) drawing.description += " " + show(at.load_factor * pull_N, "N", system).text() + ";";
  drawing.description.back() = '.';
  drawing.description += " Lines of equal stress at a quarter, half and all of what may be. Below, from the side, ";
  drawing.description += drawn > 1.0 ? "its bending drawn " + fixed(drawn, 0) + " times." : "bent to scale.";
  return drawing;
}

}  // namespace thole
