// When the fuse or breaker opens, against what the cable stands and the motor asks.

#include <algorithm>

#include "draw/trip_curves.h"
#include "ui/studies.h"

namespace thole::ui {

void draw_opening_times(Context& ui) {
  const Design& design = ui.document.design();
  if (!design.bank.found || !design.feeder.found) {
    note(ui, "There is no bank, or no cable and device for it, to hold against each other.");
    return;
  }
  const ProtectionStudy& study = up_to_date(ui, studies_of(ui.state).protection, protection_study);
  figure(ui, "opening-times", trip_curves_picture(study.input, study.result, ui.state.system),
         std::min(ui.sheet.width * 1.05f, ui.sheet.scaled(440.0f)));
  note(ui, "Time against current. In the band it may open, beyond the thick line it surely has; the curves to its right are what "
           "run and tail (dashed) stand. The bar is every short circuit, its dark part those at the plug: from a bank new, charged "
           "and warm to one old, flat and cold. Times are of the device's class: yours follows its "
           "maker's curve. Starting and stalling are taken as three times the motor's current.");
  // The device itself is asked for by the feeder's own check.
  const Within list(ui.sheet, Role::list, "Protection by curves");
  for (const Finding& finding : study.result.findings) {
    if (finding.kind == FindingKind::device) continue;
    const Within item(ui.sheet, Role::listitem);
    check_row(ui, finding.check);
  }
}

}  // namespace thole::ui
