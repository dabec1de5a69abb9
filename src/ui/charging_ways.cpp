// The ways to charge, each below its fields: the locker's air, tonight, the engine, the sun.

#include <algorithm>
#include <array>

#include "draw/charge_curve.h"
#include "draw/vent_plan.h"
#include "io/charging_text.h"
#include "ui/studies.h"

namespace thole::ui {
namespace {

// Null, and a note, when there is nothing to charge.
const ChargingStudy* study_for(Context& ui) {
  const ChargingStudy& study = up_to_date(ui, studies_of(ui.state).charging, charging_study);
  if (study.problem.empty()) return &study;
  note(ui, study.problem);
  return nullptr;
}

// Checks, cautions that do not stand on the page already, steps.
void draw_way(Context& ui, std::string_view name, const Trace& trace) {
  const Trace& page = ui.document.design().charge.trace;
  for (const Caution& item : trace.cautions) {
    const bool stands = std::any_of(page.cautions.begin(), page.cautions.end(),
                                    [&](const Caution& other) { return other.id == item.id; });
    if (!stands) caution(ui, item);
  }
  if (!trace.checks.empty()) {
    const Within list(ui.sheet, Role::list, std::string(name));
    for (const Check& check : trace.checks) {
      const Within item(ui.sheet, Role::listitem);
      check_row(ui, check);
    }
  }
  for (const Step& step : trace.steps) step_note(ui, step);
}

struct Row {
  std::string_view id{};
  std::string_view label{};
  double value = 0.0;
  std::string_view unit{};
};

void draw_rows(Context& ui, std::string_view name, const std::vector<Row>& rows) {
  const Within list(ui.sheet, Role::list, std::string(name));
  for (const Row& row : rows) {
    const Within item(ui.sheet, Role::listitem);
    result_row(ui, row.id, row.label, show(row.value, row.unit, ui.state.system), "");
  }
}

void draw_demands(Context& ui, const std::vector<VentDemand>& demands) {
  const System system = ui.state.system;
  const Within list(ui.sheet, Role::list, "Air by charge");
  for (const VentDemand& demand : demands) {
    const Within item(ui.sheet, Role::listitem);
    const std::string kind(word(demand.of));
    result_row(ui, "charge.vent." + kind, kind,
               {show(demand.flow_m3_per_h, "m3/h", system).text() + ", each " +
                    show(demand.opening_cm2, "cm2", system).text() + ", hole " +
                    show(demand.round_hole_mm, "mm", system).text(),
                ""},
               "");
  }
}

}  // namespace

void draw_locker_air(Context& ui) {
  const ChargingStudy* study = study_for(ui);
  if (study == nullptr) return;
  if (!study->venting.problem.empty()) {
    note(ui, study->venting.problem);
    return;
  }
  const Drawing drawing = vent_plan_picture(*study, ui.document.design(), ui.state.system);
  const double shape = (drawing.high.y - drawing.low.y) / (drawing.high.x - drawing.low.x);
  figure(ui, "vent-plan", drawing,
         std::min(ui.sheet.width, ui.sheet.scaled(560.0f)) * static_cast<float>(shape) + 24.0f);
  if (study->venting.demands.empty()) {
    note(ui, "Lithium gives off no hydrogen on charge, and no rule asks for openings of a size: the "
             "standards want a way out for the gas of a failed cell, and the reasons written down.");
  }
  if (!study->venting.demands.empty()) {
    draw_demands(ui, study->venting.demands);
    note(ui, "Openings are made for boost, which is every day's charge. A charger that fails asks for "
             "more than natural draught gives: it has to stop itself, or a fan has to serve.");
  }
  // Checks and steps are the page's own; what only this plan says stands here.
  draw_way(ui, "Locker's air", {.cautions = study->venting.trace.cautions});
}

void draw_tonight(Context& ui) {
  const ChargingStudy* study = study_for(ui);
  if (study == nullptr) return;
  note(ui, night_said(*study, ui.state.system));
  if (!study->night.points.empty()) {
    figure(ui, "charge-curve", charge_curve_picture(study->night, ui.state.system),
           std::min(ui.sheet.width * 0.95f, ui.sheet.scaled(430.0f)));
    const ShoreResult& shore = study->shore;
    draw_rows(ui, "Tonight",
              {{"charge.night.output_A", "Into each block", shore.output_A, "A"},
               {"charge.night.shore_A", "From shore", shore.shore_A, "A"},
               {"charge.night.full_h", "Full after", shore.full_h, "h"},
               {"charge.night.left_frac", "Charge when leaving", shore.left_frac, "frac"},
               {"charge.night.absorption_V", "Absorption volts of a block", study->night.absorption_V, "V"},
               {"charge.night.absorption_25_V", "At 25 °C it would be", study->night.absorption_25_V, "V"}});
    note(ui, study->night.float_V > 0.0
                 ? "Volts follow the bank's temperature, -4 mV a cell and degree, between two sources "
                   "that disagree. A charger that feels the cold by a sensor does this itself."
                 : "Lithium wants the same volts warm and cold: switch compensation off.");
  }
  note(ui, "One isolated output to a block, or a charger made for the whole string. The shore side is "
           "a licensed electrician's: the ratings below are what to ask for.");
  draw_way(ui, "Tonight on shore", study->shore.trace);
}

void draw_engine_way(Context& ui) {
  const ChargingStudy* study = study_for(ui);
  if (study == nullptr) return;
  note(ui, engine_said(*study, ui.state.system));
  if (study->engine.problem.empty()) {
    const DcDcResult& engine = study->engine;
    draw_rows(ui, "Under way",
              {{"charge.engine.converter_A", study->converter ? "Converter" : "Largest converter", study->converter_A, "A"},
               {"charge.engine.input_A", "From the alternator", engine.input_A, "A"},
               {"charge.engine.share_frac", "Of its label", engine.share_frac, "frac"},
               {"charge.engine.full_h", "Full after running", engine.full_h, "h"},
               {"charge.engine.left_frac", "Charge after a day's running", engine.left_frac, "frac"}});
  }
  if (!study->converter) {  // it is only a proposal: nothing to pass or fail
    for (const Step& step : study->engine.trace.steps) step_note(ui, step);
    return;
  }
  draw_way(ui, "From the engine", study->engine.trace);
}

void draw_sun_way(Context& ui) {
  const ChargingStudy* study = study_for(ui);
  if (study == nullptr) return;
  note(ui, sun_said(*study, ui.state.system));
  const SolarResult& sun = study->sun;
  if (sun.problem.empty()) {
    draw_rows(ui, "The sun",
              {{"charge.sun.gain_Wh", "Into the bank, a day", sun.gain_Wh, "Wh"},
               {"charge.sun.self_loss_Wh", "Lost at rest, a day", sun.self_loss_Wh, "Wh"},
               {"charge.sun.standing_Wh", "Drawn at rest, a day", sun.standing_Wh, "Wh"},
               {"charge.sun.panel_least_W", "Least panel that keeps it", sun.panel_least_W, "W"}});
  }
  if (!study->panel) {
    for (const Step& step : sun.trace.steps) step_note(ui, step);
    return;
  }
  draw_way(ui, "By the sun", sun.trace);
}

}  // namespace thole::ui
