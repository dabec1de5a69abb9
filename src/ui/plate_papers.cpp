// The plate to be cut and drilled: drawing, template, cut file. The page around the wizard makes them.

#include <algorithm>

#include "calc/plate/outline.h"
#include "calc/plate_made.h"
#include "papers/plate_papers.h"
#include "ui/studies.h"

namespace thole::ui {

void draw_plate_papers(Context& ui) {
  const std::optional<ChosenPlate> plate = chosen_plate(ui.document.design());
  if (!plate) {
    note(ui, kNoPlate);
    return;
  }
  const Issues issues = plate_issues(plate->shape);
  for (const Issue& issue : issues) note(ui, issue.message);
  for (const std::string& each : bars_amiss(plate->shape, plate->bars)) note(ui, each);
  const bool sound = std::none_of(issues.begin(), issues.end(),
                                  [](const Issue& at) { return at.severity == Severity::error; });
  button(ui, "show-plate", "Drawing with all measures", Weight::plain, 0.0f, "show-plate");
  note(ui, "Prints at true size on A3, or on B size with US units.");
  ui.sheet.space(kUnit);
  pair_of_buttons(ui, {"show-template-a4", "Drill template, A4", "show-template-a4", sound},
                  {"show-template-letter", "Drill template, Letter", "show-template-letter", sound});
  note(ui, "At true size on pages to be joined. Measure its two bars before you drill, and look under "
           "the deck first: wires, tanks, stringers.");
  ui.sheet.space(kUnit);
  const bool motor = ui.document.design().hold.motor_found;
  pair_of_buttons(ui, {"show-elevation-a4", "Bow elevation, A4", "show-elevation-a4", motor},
                  {"show-elevation-letter", "Bow elevation, Letter", "show-elevation-letter", motor});
  note(ui, motor ? "Motor stowed and down, with its measures, to the scale that the sheet says." : kNoElevation);
  ui.sheet.space(kUnit);
  pair_of_buttons(ui, {"save-dxf-r12", "Cut file, DXF R12", "save-dxf-r12", sound},
                  {"save-dxf-r2000", "Cut file, DXF 2000", "save-dxf-r2000", sound});
  note(ui, "Millimetres, seen from above. Layers: outline, cut-outs, holes to drill, marks, places of "
           "stiffeners, notes. "
           "R12 is read by every cutter; 2000 states its units.");
}

}  // namespace thole::ui
