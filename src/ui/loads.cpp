// What the mount must stand: cases, how hard she slams by each formula, how fast she may go.

#include <algorithm>
#include <cmath>

#include "base/number.h"
#include "data/sources_mount.h"
#include "draw/load_bars.h"
#include "io/figures.h"
#include "ui/studies.h"

namespace thole::ui {
namespace {

// Of the thrusts from every side only the worst has a row.
std::vector<const LoadCase*> rows_of(const LoadCases& loads) {
  std::vector<const LoadCase*> rows;
  const LoadCase* worst = nullptr;
  for (const LoadCase& at : loads.cases) {
    if (at.id.starts_with("thrust.")) {
      if (worst == nullptr || at.bolt_N > worst->bolt_N * (1.0 + 1e-9)) worst = &at;
    } else {
      rows.push_back(&at);
    }
  }
  if (worst != nullptr) rows.insert(rows.begin(), worst);
  return rows;
}

void draw_limits_of_speed(Context& ui, const LoadsStudy& study) {
  const System system = ui.state.system;
  const Within list(ui.sheet, Role::list, "Speed limits");
  {
    const Within item(ui.sheet, Role::listitem);
    result_row(ui, "loads.stowed", "Never faster, stowed, in " + show(study.stowed_wave_m, "m", system).text() + " of sea",
               show(study.stowed_limit_mps, "mps", system), "mount.speed_limit");
  }
  const Within item(ui.sheet, Role::listitem);
  result_row(ui, "loads.deployed", "Never faster with the motor down", show(study.deployed_limit_mps, "mps", system),
             "shaft.speed_limit_deployed");
}

void draw_cases(Context& ui, const LoadsStudy& study) {
  const System system = ui.state.system;
  heading(ui, 2, "Cases");
  const Within list(ui.sheet, Role::list, "Cases");
  for (const LoadCase* at : rows_of(study.loads)) {
    const Within item(ui.sheet, Role::listitem);
    const double force_N = std::hypot(at->force.force_x_N, at->force.force_y_N, at->force.force_z_N);
    std::string text = show(force_N, "N", system).text();
    if (at->load_factor != 1.0) text += " × " + fixed(at->load_factor, 1);
    text += ", " + show(at->moment_Nm, "Nm", system).text() + ", bolt " + show(at->bolt_N, "N", system).text();
    if (study.bolt_breaking_N > 0.0) text += " of " + show(bolt_share(at->grade) * study.bolt_breaking_N, "N", system).text();
    if (!at->in_range && !(force_N > 0.0)) text = "not worked out";
    result_row(ui, "load." + at->id, at->label, {text, ""}, "");
    note(ui, std::string(at->in_range ? "" : "Outside. ") + at->range + " (" + std::string(word(at->grade)) + "). Source: " +
                 shown_source(at->source));
  }
}

void draw_formulas(Context& ui, const LoadsStudy& study) {
  ui.sheet.space(kFieldGap);
  heading(ui, 2, "How hard she slams, by each formula");
  note(ui, "In g above gravity, the hundredth highest: centre of gravity, bow, stowed motor. The plate is designed for the first.");
  const Within list(ui.sheet, Role::list, "Slams by formula");
  int count = 0;
  for (const SlamFormula& row : study.loads.formulas) {
    const Within item(ui.sheet, Role::listitem);
    result_row(ui, "slam-formula." + std::to_string(count++), row.label,
               {fixed(row.cg_g, 1) + ", " + fixed(row.bow_g, 1) + ", " + fixed(row.motor_g, 1) + (row.outside.empty() ? "" : "; outside"), ""},
               "");
    for (const std::string& outside : row.outside) note(ui, outside);
  }
}

void draw_seas(Context& ui, const LoadsStudy& study) {
  const System system = ui.state.system;
  ui.sheet.space(kFieldGap);
  heading(ui, 2, "Stowed, sea by sea");
  const Within list(ui.sheet, Role::list, "Speeds by sea");
  int count = 0;
  for (const SeaSpeed& sea : study.loads.seas) {
    const Within item(ui.sheet, Role::listitem);
    result_row(ui, "sea-speed." + std::to_string(count++), show(sea.wave_m, "m", system).text() + " of sea",
               {show(sea.speed_mps, "mps", system).text() + (sea.in_range ? "" : ", below the formula's range"), ""}, "");
  }
}

}  // namespace

void draw_loads(Context& ui) {
  const LoadsStudy& study = up_to_date(ui, studies_of(ui.state).loads, load_cases_study);
  if (!study.known) {
    note(ui, "There is no motor, or no pattern of bolts, to work it out for.");
    return;
  }
  draw_limits_of_speed(ui, study);
  const Drawing bars = load_bars_picture(study, ui.state.system);
  figure(ui, "load-bars", bars, ui.sheet.scaled(42.0f) * static_cast<float>(bars.high.y) + 24.0f);
  note(ui, "Overturning moment on the bolts, factor included. Bars not filled are outside of their formula's range.");
  draw_cases(ui, study);
  draw_formulas(ui, study);
  for (const Step& step : study.loads.trace.steps) step_note(ui, step);
  draw_seas(ui, study);
  if (study.input.trailered) {
    caution(ui, {.id = "loads.road",
                 .text = "For the road take the motor off, or strap it down besides its latch, its battery leads unplugged: "
                         "a load that comes loose kills. Mind the law on overhang and on securing loads.",
                 .source = kRoadLoads});
  }
}

}  // namespace thole::ui
