// The shaft page below its fields: length, tube, snag, room on the foredeck, light, stowing.

#include <algorithm>
#include <vector>

#include "base/number.h"
#include "calc/mount/plate_rules.h"
#include "calc/proof.h"
#include "draw/bow_elevation.h"
#include "draw/foredeck_plan.h"
#include "draw/layout.h"
#include "draw/length_curve.h"
#include "io/figures.h"
#include "ui/studies.h"

namespace thole::ui {
namespace {

const ForedeckStudy& foredeck(Context& ui) { return up_to_date(ui, studies_of(ui.state).shaft.foredeck, foredeck_study); }
const LengthStudy& lengths(Context& ui) { return up_to_date(ui, studies_of(ui.state).shaft.length, length_study); }

void whole_figure(Context& ui, std::string_view id, const Drawing& drawing) {
  const float width = std::min(ui.sheet.width, ui.sheet.scaled(620.0f));
  figure(ui, id, drawing, static_cast<float>(height_for(drawing, static_cast<double>(width))));
}

// What counts in the verdict stands with the page's checks; here is the rest.
void draw_waiting(Context& ui, std::string_view name, const Trace& trace) {
  if (std::none_of(trace.checks.begin(), trace.checks.end(), [](const Check& check) { return !counts(check); })) return;
  const Within list(ui.sheet, Role::list, std::string(name));
  for (const Check& check : trace.checks) {
    if (counts(check)) continue;
    const Within item(ui.sheet, Role::listitem);
    check_row(ui, check);
  }
}

void draw_steps(Context& ui, const Trace& trace) {
  for (const Step& step : trace.steps) step_note(ui, step);
}

void draw_cautions(Context& ui, const Trace& trace) {
  for (const Caution& each : trace.cautions) caution(ui, each);
}

void draw_clearances(Context& ui, std::string_view id, std::string_view name, const std::vector<Clearance>& all) {
  if (all.empty()) return;
  const Within list(ui.sheet, Role::list, std::string(name));
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Within item(ui.sheet, Role::listitem);
    const Clearance& at = all[i];
    result_row(ui, std::string(id) + std::to_string(i), std::string(name) + ", " + at.label,
               {at.distance_m < 0.0 ? "touches" : show(1000.0 * at.distance_m, "mm", ui.state.system).text(), ""}, "");
  }
}

std::string degrees(double angle_deg) { return fixed(angle_deg, 1) + "°"; }

void draw_shadow(Context& ui, std::string_view id, const std::string& name, const Shadow& shadow) {
  const Within item(ui.sheet, Role::listitem);
  std::string text = degrees(shadow.hidden_deg);
  for (const Arc& arc : shadow.full) {
    text += (&arc == &shadow.full.front() ? ": " : ", ") + fixed(arc.from_deg, 0) + " to " + degrees(arc.to_deg);
  }
  result_row(ui, id, name, {text, ""}, "");
}

}  // namespace

void draw_length_curve(Context& ui) {
  const LengthStudy& study = lengths(ui);
  if (!study.problem.empty()) {
    note(ui, study.problem);
    return;
  }
  figure(ui, "length-curve", length_curve_picture(study, ui.state.system), std::min(ui.sheet.width * 0.85f, ui.sheet.scaled(380.0f)));
  note(ui, "Dots are lengths sold, the filled one is chosen. It draws air while its axis lies less than a diameter down; pulling at the post it "
           "then loses more than the upper line shows (Koushan 2006; the line by Minsaas 1983, not confirmed).");
  for (const std::string& line : study.advice) note(ui, line);
}

void draw_tube_bend(Context& ui) {
  const LengthStudy& study = lengths(ui);
  if (!study.problem.empty() || study.bend.empty()) {
    note(ui, "Without the tube's diameter, wall and stiffness its bend is not known.");
    return;
  }
  ui.sheet.space(kUnit);
  figure(ui, "tube-bend", tube_bend_picture(study, ui.state.system), std::min(ui.sheet.width * 0.6f, ui.sheet.scaled(260.0f)));
  note(ui, "Bend and tilt along the shaft at full thrust, drawn larger than they are. The steering can take out the tilt only where it turns the pod.");
}

void draw_snag(Context& ui) {
  const SnagStudy& study = up_to_date(ui, studies_of(ui.state).shaft.snag, [](const Design& design) { return snag_study(design); });
  if (!study.problem.empty()) {
    note(ui, study.problem);
    return;
  }
  const System system = ui.state.system;
  note(ui, "The push at the propeller at which each part gives, weakest first. A bent shaft is replaced; a torn deck lets water in.");
  {
    const Within list(ui.sheet, Role::list, "What gives first");
    for (std::size_t i = 0; i < study.order.size(); ++i) {
      const Within item(ui.sheet, Role::listitem);
      result_row(ui, "snag." + std::to_string(i), std::to_string(i + 1) + ". " + study.order[i].label, show(study.order[i].force_N, "N", system), "");
    }
  }
  note(ui, "Bolts and deck hold " + fixed(study.over_ratio, 2) + " times what the shaft does; " + fixed(kSnagOver_factor, 1) + " times is asked.");
  note(ui, "The boat's own way bends the tube for good from " + show(study.speed_mps, "mps", system).text() + " on.");
  draw_waiting(ui, "Apart from the verdict", study.trace);
  draw_cautions(ui, study.trace);
}

void draw_foredeck_room(Context& ui) {
  const ForedeckStudy& study = foredeck(ui);
  if (!study.room.problem.empty()) {
    note(ui, study.room.problem);
    return;
  }
  ui.sheet.space(kUnit);
  whole_figure(ui, "foredeck-plan", foredeck_plan(study, ui.state.system));
  whole_figure(ui, "foredeck-side", foredeck_side(study, ui.state.system));
  for (const std::string& each : study.notes) note(ui, each);
  draw_clearances(ui, "stowed.", "Stowed", study.room.stowed);
  draw_clearances(ui, "swinging.", "Swinging up", study.room.swinging);
  draw_clearances(ui, "opening.", "To open", study.room.opening);
  draw_waiting(ui, "Room, not measured", study.room.trace);
  note(ui, "Head, pod and propeller have usual proportions (common practice). The deck's edge and the rail are drawn through the width at the "
           "mount. What is measured is among the checks of this page and counts in the verdict: still, try it with the motor in your hands before you drill.");
  draw_steps(ui, study.room.trace);
}

void draw_bow_light(Context& ui) {
  const ForedeckStudy& study = foredeck(ui);
  if (study.light_input.measured) {
    const Within list(ui.sheet, Role::list, "Hidden of the light");
    draw_shadow(ui, "light.stowed", "Hidden, stowed", study.light.stowed);
    draw_shadow(ui, "light.lowered", "Hidden, lowered", study.light.deployed);
  }
  if (study.light_input.measured) note(ui, "Degrees from right ahead, starboard positive.");
  draw_waiting(ui, "Light, not measured", study.light.trace);
  draw_cautions(ui, study.light.trace);
  draw_steps(ui, study.light.trace);
}

void draw_stowing(Context& ui) {
  const ForedeckStudy& study = foredeck(ui);
  const System system = ui.state.system;
  {
    const Within list(ui.sheet, Role::list, "Stowing");
    const auto row = [&](std::string_view id, std::string_view label, const Shown& value) {
      const Within item(ui.sheet, Role::listitem);
      result_row(ui, id, label, value, "");
    };
    row("stow.lift", "Pull to draw it up", show(study.stowing.lift_N, "N", system));
    row("stow.holder", "Latch and strap, each rated for", show(study.stowing.holder_N, "N", system));
  }
  draw_waiting(ui, "Stowing, not measured", study.stowing.trace);
  draw_cautions(ui, study.stowing.trace);
  note(ui, "The lifting limit is for people who stand on firm ground and use both hands. At sea, kneeling, less is wise.");
  draw_steps(ui, study.stowing.trace);
}

void draw_bow_elevation(Context& ui) {
  whole_figure(ui, "bow-elevation", bow_elevation(ui.document.design(), ui.state.system));
  note(ui, "Crest and trough: how far the water moves against the bow in your sea.");
}

}  // namespace thole::ui
