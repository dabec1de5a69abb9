// Where a heading sensor may stand: the feeder's field over the boat's plan.

#include "base/number.h"
#include "draw/compass_plan.h"
#include "io/figures.h"
#include "ui/studies.h"

namespace thole::ui {
namespace {

// The picture is kept with its answer: it sums the field at a thousand places.
HeadingView heading_view(const Design& design, System system) {
  HeadingView view{.study = compass_study(design), .system = system};
  view.plan = compass_plan_picture(view.study.input, view.study.result, view.study.boat_length_m, system);
  return view;
}

void draw_rows(Context& ui, const CompassStudy& study) {
  const CompassResult& at = study.result;
  const System system = ui.state.system;
  const auto thin = [&](const std::optional<double>& length_m) {
    return length_m ? show(1000.0 * *length_m, "mm", system) : Shown{"none keeps it", ""};
  };
  const Within list(ui.sheet, Role::list, "At the heading sensor");
  const auto row = [&](const char* id, std::string_view label, const Shown& value) {
    const Within item(ui.sheet, Role::listitem);
    result_row(ui, id, label, value, "");
  };
  row("heading.gap", "To the feeder", show(study.gap_m, "m", system));
  row("heading.field", "Feeder's field, level", {fixed(1e6 * at.level_T, 2), "µT"});
  row("heading.earth", "Earth's field, level", {fixed(1e6 * study.earth.horizontal_T, 1), "µT"});
  if (!study.earth.assumed) {
    row("heading.declination", "Magnetic north off true", {fixed(study.earth.declination_deg, 1) + "°", ""});
  }
  row("heading.worst", "Worst at a heading of", {fixed(at.worst_heading_deg, 0) + "°", ""});
  row("heading.spacing", "Cables apart at most", thin(at.spacing_m));
  row("heading.pitch", "Or twisted, a turn in at most", thin(at.pitch_m));
}

}  // namespace

void draw_heading_sensor(Context& ui) {
  const System system = ui.state.system;
  Remembered<HeadingView>& kept = studies_of(ui.state).heading;
  if (kept.result && kept.result->system != system) kept = {};
  const HeadingView& view =
      up_to_date(ui, kept, [&](const Design& design) { return heading_view(design, system); });
  const Drawing& plan = view.plan;
  const double shape = (plan.high.y - plan.low.y) / (plan.high.x - plan.low.x);
  figure(ui, "heading-plan", plan, ui.sheet.width * static_cast<float>(shape) + 24.0f);
  if (has_error(view.study.result.issues)) {
    note(ui, view.study.result.issues.front().message);
    return;
  }
  note(ui, "Lines of equal heading error at full thrust, at the sensor's height, at the worst heading; the line in "
           "colour is the limit. Outside it the sensor may stand.");
  draw_rows(ui, view.study);
  if (const Check* check = ui.document.design().find_check("control.heading")) check_row(ui, *check);
  note(ui, view.study.earth.assumed
               ? "No place given: a middle latitude's field. Give latitude and longitude below."
           : view.study.earth.year_outside
               ? "That year lies outside IGRF-14 (2025 to 2030): its nearest end is taken."
               : "Earth's field by IGRF-14, which holds from 2025 to 2030.");
}

}  // namespace thole::ui
