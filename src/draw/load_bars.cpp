#include "draw/load_bars.h"

#include <algorithm>
#include <vector>

#include "draw/sketch.h"

namespace thole {
namespace {

struct Bar {
  std::string label{};
  double moment_Nm = 0.0;
  bool in_range = true;
};

std::vector<Bar> bars_of(const LoadCases& loads) {
  std::vector<Bar> bars{{"Full thrust", 0.0, true}};
  for (const LoadCase& at : loads.cases) {
    if (at.id.starts_with("thrust.")) {
      bars.front().moment_Nm = std::max(bars.front().moment_Nm, at.moment_Nm);
    } else if (at.id != "down.run" && at.moment_Nm > 0.0) {
      bars.push_back({at.label, at.moment_Nm, at.in_range});
    }
  }
  return bars;
}

}  // namespace

Drawing load_bars_picture(const LoadsStudy& study, System system) {
  const std::vector<Bar> bars = bars_of(study.loads);
  double most_Nm = 1.0;
  for (const Bar& bar : bars) most_Nm = std::max(most_Nm, bar.moment_Nm);
  const double rows = static_cast<double>(bars.size());
  Drawing drawing{.title = "Moment on the bolts, case by case"};
  drawing.to_scale = false;
  drawing.low = {0.0, 0.0};
  drawing.high = {1.0, rows};
  constexpr double kLongest = 0.74;  // the figure stands behind it
  double y = rows;
  for (const Bar& bar : bars) {
    const double end = std::max(kLongest * bar.moment_Nm / most_Nm, 0.004);
    add_label(drawing, {0.0, y - 0.28}, bar.label, Align::left);
    add_box(drawing, {0.0, y - 0.88}, {end, y - 0.64}, Line::outline, bar.in_range ? Fill::accent : Fill::paper);
    add_label(drawing, {end + 0.015, y - 0.76}, show(bar.moment_Nm, "Nm", system).text(), Align::left);
    drawing.description += bar.label + " " + show(bar.moment_Nm, "Nm", system).text() + (bar.in_range ? ". " : " (outside of its range). ");
    y -= 1.0;
  }
  return drawing;
}

}  // namespace thole
