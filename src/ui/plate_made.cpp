// Which stock makes the plate by the elements, and what a flex test says about the deck.

#include <algorithm>

#include "base/number.h"
#include "data/sources.h"
#include "io/figures.h"
#include "ui/studies.h"

namespace thole::ui {
namespace {

std::string percent(double factor) { return fixed(100.0 * factor, 0) + " %"; }

std::string said(const PlateTrial& trial, System system) {
  if (!trial.problem.empty()) return trial.problem;
  std::string text = trial.serves ? "Serves: " : "Does not: ";
  text += "stress " + percent(trial.strength_factor) + ", bolts " + percent(trial.bolts_factor) + ", sag " +
          percent(trial.sag_factor) + ", " + show(trial.frequency_Hz, "Hz", system).text();
  if (trial.shakes) text += " shakes with the idling engine";
  return text + ", " + show(trial.mass_kg, "kg", system).text();
}

}  // namespace

void draw_plate_choice(Context& ui) {
  ChosenStock& stock = studies_of(ui.state).stock;
  note(ui, "Each stock by the whole plate, in every load case: stress, the worst bolt and the sag as shares of what may be.");
  const bool stale = !stock.running || stock.version != ui.document.version();
  if (stale) {
    if (!button(ui, "stock.start", "Try every stock", Weight::primary)) return;
    stock.version = ui.document.version();
    stock.running = std::make_unique<PlateChooser>(ui.document.design(), ui.document.catalogue().plates);
  }
  PlateChooser& chooser = *stock.running;
  if (chooser.advance()) {
    ui.state.easing = true;
    progress_bar(ui, "stock.running", "Trying", chooser.done_frac());
    return;
  }
  const System system = ui.state.system;
  const int choice = chooser.choice();
  for (std::size_t i = 0; i < chooser.trials().size(); ++i) {
    const PlateTrial& trial = chooser.trials()[i];
    note(ui, trial.stock.label + (static_cast<int>(i) == choice ? " (the lightest that serves). " : ". ") + said(trial, system) + ".");
  }
  if (choice >= 0) {
    const PlateStock& best = chooser.trials()[static_cast<std::size_t>(choice)].stock;
    const Mount& given = ui.document.given().mount;
    const bool taken = given.plate.known() && given.plate.value == best.id;
    if (button(ui, "stock.take", taken ? best.label + " is taken" : "Take " + best.label, Weight::primary, 0.0f, {}, !taken))
      ui.document.apply({.field = "mount.plate", .text = best.id, .label = "Take " + best.label});
    return;
  }
  note(ui, "None does. What helps:");
  const Design& design = ui.document.design();
  for (const std::string& remedy : remedies_without_plate(design)) note(ui, remedy);
  const std::vector<Change> changes = changes_without_plate(design);
  for (std::size_t i = 0; i < changes.size(); ++i)
    if (button(ui, "stock.change." + std::to_string(i), changes[i].label)) ui.document.apply(changes[i]);
}

void draw_flex_test(Context& ui) {
  caution(ui, {.id = "flex-test",
               .text = "Nobody under the weight, and no foot: hang on no more than the motor weighs, slowly.",
               .source = kProjectDecision});
  const FlexTest& test = up_to_date(ui, studies_of(ui.state).flex, flex_test);
  const System system = ui.state.system;
  if (test.verdict == FlexVerdict::found || test.verdict == FlexVerdict::plate_softer || test.verdict == FlexVerdict::plate_stiffer) {
    note(ui, "Measured " + show(test.measured_mm, "mm", system).text() + ", computed " + show(test.computed_mm, "mm", system).text() +
                 (test.told_apart ? ", with rigid bolts and bedding " : ", on a rigid deck ") + show(test.rigid_mm, "mm", system).text() +
                 (test.verdict == FlexVerdict::found ? "; the deck's panel has " + show(test.panel_mm, "mm", system).text() + " of it." : "."));
  }
  note(ui, test.says);
  if (test.changes.empty()) return;
  const Mount& given = ui.document.given().mount;
  const auto has = [&](const Change& change) {
    const Given<double>& value = change.field == "mount.deck_factor" ? given.deck_factor : given.panel_factor;
    return value.known() && value.value == change.value;
  };
  const bool used = std::all_of(test.changes.begin(), test.changes.end(), has);
  if (!button(ui, "flex.use.0", used ? "This deck is in use" : test.changes.front().label, Weight::primary, 0.0f, {}, !used)) return;
  const std::vector<Change> changes = test.changes;  // the first one makes the test out of date
  for (const Change& change : changes) ui.document.apply(change);
}

}  // namespace thole::ui
