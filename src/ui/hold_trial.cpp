// A trial at sea: its readings are fields; here is what they came to.

#include "base/number.h"
#include "data/sources.h"
#include "draw/trial_bands.h"
#include "io/figures.h"
#include "job/fields.h"
#include "ui/studies.h"

namespace thole::ui {
namespace {

void draw_readings(Context& ui, const CalibrateResult& trial) {
  const Within list(ui.sheet, Role::list, "Readings");
  const auto percent = [](double frac) { return fixed(100.0 * frac, 1) + " %"; };
  int count = 0;
  for (const ReadingFit& reading : trial.readings) {
    const Within item(ui.sheet, Role::listitem);
    result_row(ui, "reading." + std::to_string(count++),
               reading.label,
               {percent(reading.measured_frac) + ", " + percent(reading.computed_frac) + ", " +
                    percent(reading.calibrated_frac),
                ""},
               "");
  }
}

}  // namespace

void draw_trial(Context& ui) {
  caution(ui, {.id = "trial-at-sea",
               .text = "Adrift you are not under command: open water to leeward, a lookout, the engine warm "
                       "and its cut-off lanyard on, nobody in the water, clear of traffic and lines.",
               .source = kCommonPractice});
  note(ui, "Drift: on a steady wind, motor up and engine out of gear, note the track for five minutes or "
           "more. Hold: let the motor hold for the same time and note the mean thrust it shows. Slack water "
           "and little sea tell most.");
  note(ui, "Why it is worth it: adrift in wind alone, this model goes 3 to 21 % faster than the Coast Guard "
           "measured for sport boats and centre consoles, in steep chop half as fast again, and a light skiff "
           "twice as fast as their laden ones.");
  const CalibrateInput input = trial_input(ui.document.design());
  if (input.drifts.empty() && input.holds.empty()) {
    note(ui, "Still missing: the wind, and with it the minutes and speed of a drift, or the thrust of a hold.");
    return;
  }
  const CalibrateResult& trial = up_to_date(ui, studies_of(ui.state).trial, [](const Design& design) { return calibrate(trial_input(design)); });
  for (const Issue& issue : trial.issues) note(ui, issue.message);
  if (!trial.fitted) return;
  figure(ui, "trial-bands", trial_picture(trial), std::min(0.5f * ui.sheet.width, 260.0f));
  note(ui, "Read, computed, and computed with the factors: drift as a share of the wind over the water, held "
           "as a share of full thrust.");
  draw_readings(ui, trial);
  for (const Check& check : trial.trace.checks) check_row(ui, check);
  const Job with = with_trial_factors(ui.document.given(), trial);
  const bool used = with == ui.document.given();
  if (button(ui, "trial.use", used ? "These factors are in use" : "Use these factors", Weight::primary, 0.0f,
             {}, !used)) {
    ui.document.replace(with);  // both at once: one step of undo
    ui.state.message = "Designed anew with the factors of the trial.";
  }
  if (disclosure(ui, "trial.steps", "Steps of the fit")) {
    for (const Step& step : trial.trace.steps) step_note(ui, step);
  }
}

Studies& studies_of(UiState& state) {
  if (!state.studies) state.studies = std::make_shared<Studies>();
  return *state.studies;
}

}  // namespace thole::ui
