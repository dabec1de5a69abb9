// The boat afloat: the bank on a slider, each weight's share, the capacity plate, the tests at the dock.

#include <algorithm>
#include <cmath>

#include "base/number.h"
#include "calc/dock_study.h"
#include "draw/list_picture.h"
#include "io/figures.h"
#include "ui/studies.h"

namespace thole::ui {
namespace {

// "12 mm down".
std::string moved(double sinkage_m, System system) {
  return show(1000.0 * std::abs(sinkage_m), "mm", system).text() + (sinkage_m < 0.0 ? " up" : " down");
}

std::string within(double value, double spread, std::string_view unit, System system) {
  return show(value, unit, system).text() + " ± " + show(spread, unit, system).text();
}

void draw_how(Context& ui, std::size_t worksheet) {
  caution(ui, dock_caution());
  note(ui, dock_worksheets()[worksheet].how);
}

void draw_doubts(Context& ui, const std::vector<std::string>& doubts) {
  for (const std::string& doubt : doubts) note(ui, doubt);
}

// The button that puts the figure into the job; dead where it is there already.
void draw_use(Context& ui, std::string_view id, const std::optional<Change>& change) {
  if (!change) return;
  const Field* field = find_field(change->field);
  const Job& given = ui.document.given();
  const bool used = field->access.origin(given) == Origin::given &&
                    std::abs(field->access.get(given) - change->value) < 0.5 * field->quantum;
  if (button(ui, id, used ? "This figure is in use" : change->label, Weight::primary, 0.0f, {}, !used)) {
    ui.document.apply(*change);
    ui.state.message = "Trim worked out anew with what you measured.";
  }
}

void draw_gm(Context& ui, std::string_view id, const GmReading& reading) {
  const System system = ui.state.system;
  {
    const Within list(ui.sheet, Role::list, "What it came to");
    const Within item(ui.sheet, Role::listitem);
    result_row(ui, std::string(id) + ".gm", "Metacentric height", {within(reading.gm_m, reading.spread_m, "m", system), ""}, "");
  }
  note(ui, "So far the job has " + show(ui.document.design().job.trim.gm_m.value, "m", system).text() +
               ". Nineteen of twenty true heights lie within the band.");
  draw_doubts(ui, reading.doubts);
  draw_use(ui, std::string(id) + ".use", use_gm(reading));
  for (const Step& step : reading.trace.steps) step_note(ui, step);
}

void draw_agreement(Context& ui) {
  const Design& design = ui.document.design();
  const std::optional<GmReading> roll = roll_test_of(design);
  const std::optional<GmReading> incline = inclining_test_of(design);
  if (!roll || !incline) return;
  note(ui, disagree(*roll, *incline)
               ? "Roll and inclining test differ by more than their bands explain: read again, and weigh the boat."
               : "Roll and inclining test agree within their bands. The narrower one is the better.");
}

}  // namespace

void draw_bank_slider(Context& ui) {
  const Field* field = find_field("trim.bank_x_m");
  const double length_m = ui.document.design().job.boat.waterline_length_m.value;
  field_slider(ui, *field,
               {.name = "Bank, stern to bow", .low = 0.0, .high = std::max(0.05 * std::floor(length_m / 0.05), 0.5), .step = 0.05});
}

void draw_weight_shares(Context& ui) {
  const Design& design = ui.document.design();
  const System system = ui.state.system;
  note(ui, "Each thing by itself, on the boat as she floats with all of them. Bow and stern add up; so does the list.");
  const Within list(ui.sheet, Role::list, "Each weight's share");
  int count = 0;
  for (const TrimShare& share : design.trim.shares) {
    const Within item(ui.sheet, Role::listitem);
    std::string text = "bow " + moved(share.bow_sinkage_m, system) + ", stern " + moved(share.stern_sinkage_m, system);
    if (share.heel_deg != 0.0) {
      text += ", list " + fixed(std::abs(share.heel_deg), 2) + (share.heel_deg > 0.0 ? "° to starboard" : "° to port");
    }
    result_row(ui, "share." + std::to_string(count++), share.label + ", " + show(share.mass_kg, "kg", system).text(), {text, ""}, "");
  }
}

void draw_heights(Context& ui) {
  const Design& design = ui.document.design();
  const System system = ui.state.system;
  figure(ui, "list-picture", list_picture(design, system), std::min(0.62f * ui.sheet.width, 320.0f));
  note(ui, "From astern, before (dashed) and after. Metacentric height goes from " +
               show(design.job.trim.gm_m.value, "m", system).text() + " to " +
               show(design.trim.gm_after_m, "m", system).text() +
               ": the less of it, the farther she lists and the slower she rolls.");
}

void draw_capacity_plate(Context& ui) {
  const Design& design = ui.document.design();
  const TrimResult& trim = design.trim;
  note(ui,
       "On outboard boats under 20 ft built for the United States the plate gives persons (as a number and as a "
       "weight) and a weight for persons, engine and gear together. It counted an engine, its controls and one "
       "battery of 45 lb. What you add beyond that battery comes off the people: one of them for every 141 lb. "
       "Boats elsewhere bear a builder's plate; read its persons and weight in here likewise.");
  const Within list(ui.sheet, Role::list, "What the plate leaves");
  const auto row = [&](std::string_view id, std::string_view label, Shown value, std::string_view step) {
    const Within item(ui.sheet, Role::listitem);
    result_row(ui, id, label, value, step);
  };
  if (design.find_step("trim.persons_taken") != nullptr)
    row("plate.taken", "Persons that the work weighs as much as", {fixed(trim.persons_taken_count, 2), ""}, "trim.persons_taken");
  if (design.find_step("trim.persons_left") != nullptr)
    row("plate.persons", "Persons left", {fixed(std::max(std::floor(trim.persons_left_count), 0.0), 0), ""}, "trim.persons_left");
  if (design.find_step("trim.plate_left") != nullptr)
    row("plate.left", "Left for people, engine and gear", show(trim.plate_left_kg, "kg", ui.state.system), "trim.plate_left");
}

void draw_roll_test(Context& ui) {
  draw_how(ui, 0);
  const std::optional<GmReading> reading = roll_test_of(ui.document.design());
  if (!reading) {
    note(ui, "Not measured yet.");
    return;
  }
  draw_gm(ui, "roll-test", *reading);
  draw_agreement(ui);
}

void draw_inclining_test(Context& ui) {
  draw_how(ui, 1);
  const std::optional<GmReading> reading = inclining_test_of(ui.document.design());
  if (!reading) {
    note(ui, "Not measured yet: all four readings are needed.");
    return;
  }
  draw_gm(ui, "incline-test", *reading);
  draw_agreement(ui);
}

void draw_immersion_test(Context& ui) {
  draw_how(ui, 2);
  const std::optional<ImmersionReading> reading = immersion_test_of(ui.document.design());
  if (!reading) {
    note(ui, "Not measured yet: both readings are needed.");
    return;
  }
  const System system = ui.state.system;
  {
    const Within list(ui.sheet, Role::list, "What it came to");
    {
      const Within item(ui.sheet, Role::listitem);
      result_row(ui, "immersion-test.weight", "Weight for a centimetre",
                 {within(reading->immersion_kg_per_cm, reading->immersion_spread_kg_per_cm, "kg_per_cm", system), ""}, "");
    }
    const Within item(ui.sheet, Role::listitem);
    result_row(ui, "immersion-test.ratio", "Waterplane coefficient",
               {fixed(reading->waterplane_ratio, 3) + " ± " + fixed(reading->waterplane_spread_ratio, 3), ""}, "");
  }
  note(ui, "So far the job has " + fixed(ui.document.design().job.trim.waterplane_ratio.value, 3) +
               ". Nineteen of twenty true ones lie within the band.");
  draw_doubts(ui, reading->doubts);
  draw_use(ui, "immersion-test.use", use_waterplane(*reading));
  for (const Step& step : reading->trace.steps) step_note(ui, step);
}

}  // namespace thole::ui
