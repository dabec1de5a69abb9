// Where the bank lives: how the blocks lie in the locker, what is near them, what holds them down.

#include <algorithm>
#include <string>
#include <vector>

#include "draw/locker_plan.h"
#include "io/figures.h"
#include "io/locker_text.h"
#include "ui/studies.h"

namespace thole::ui {
namespace {

const LockerStudy& study_of(Context& ui) {
  return up_to_date(ui, studies_of(ui.state).locker.study,
                    [&](const Design& design) { return locker_study(design, ui.document.catalogue()); });
}

bool without_bank(Context& ui) {
  if (ui.document.design().bank.found) return false;
  note(ui, "There is no bank to put anywhere.");
  return true;
}

void draw_missing_sizes(Context& ui) {
  std::string missing;
  for (const std::string_view path : {"locker.length_m", "locker.width_m", "locker.height_m"}) {
    const Field* field = find_field(path);
    if (field->access.origin(ui.document.design().job) != Origin::absent) continue;
    missing += (missing.empty() ? "" : ", ") + std::string(field->label);
  }
  note(ui, "Not measured yet: " + missing + ". Measure inside, where it is narrowest; then the blocks are laid in.");
}

// The arrangement that is shown, among those that hold the bank.
std::size_t choose_arrangement(Context& ui, const PackingResult& packing) {
  std::size_t& shown = studies_of(ui.state).locker.shown;
  if (shown >= packing.arrangements.size()) shown = 0;
  if (packing.arrangements.size() < 2) return shown;
  std::vector<SemOption> options;
  for (const Arrangement& arrangement : packing.arrangements) {
    options.push_back({std::to_string(options.size()), arrangement_name(arrangement)});
  }
  const int picked = segments(ui, "locker.lie", "How they lie", options, static_cast<int>(shown));
  if (picked >= 0) shown = static_cast<std::size_t>(picked);
  ui.sheet.space(kUnit);
  return shown;
}

void draw_plan(Context& ui, const LockerStudy& study, std::size_t shown) {
  const Drawing drawing = locker_plan_picture(study.input.packing, study.packing, study.restraint.strap_count,
                                              ui.state.system, shown);
  const double shape = (drawing.high.y - drawing.low.y) / (drawing.high.x - drawing.low.x);
  const float width = std::min(ui.sheet.width, ui.sheet.scaled(560.0f));
  figure(ui, "locker-plan", drawing, width * std::clamp(static_cast<float>(shape), 0.4f, 1.6f) + 24.0f);
}

void draw_jumpers(Context& ui, const Arrangement& arrangement) {
  const Design& design = ui.document.design();
  const System system = ui.state.system;
  if (arrangement.jumpers.empty()) return;
  {
    const Within list(ui.sheet, Role::list, "Jumpers");
    for (std::size_t i = 0; i < arrangement.jumpers.size(); ++i) {
      const Within item(ui.sheet, Role::listitem);
      const Jumper& jumper = arrangement.jumpers[i];
      result_row(ui, "locker.jumper." + std::to_string(i), jumper_name(jumper), show(1000.0 * jumper.length_m, "mm", system), "");
    }
  }
  note(ui, arrangement.proved ? "To cut, bends at both ends included. No shorter ones exist for blocks that lie so."
                              : "To cut, bends at both ends included. Shorter ones may exist: the search has a bound.");
  check_row(ui, jumper_check(arrangement, design.job.feeder.jumper_m.value));
}

void draw_options(Context& ui, const LockerStudy& study) {
  if (study.options.empty()) {
    note(ui, "No other blocks of this catalogue pass the bank's checks and go into this locker.");
    return;
  }
  note(ui, "These pass the bank's checks and go in:");
  for (std::size_t i = 0; i < study.options.size(); ++i) {
    const LockerOption& option = study.options[i];
    const std::string label = option.change.label + ", " + show(option.mass_kg, "kg", ui.state.system).text();
    if (button(ui, "locker.option." + std::to_string(i), label)) ui.document.apply(option.change);
  }
}

// An open check neither passes nor fails: what is asked stands where the verdict would.
void draw_open(Context& ui, const Check& check) {
  const std::string limit = show(check.limit, check.unit, ui.state.system).text();
  std::string asked = "not measured yet";
  if (check.limit > 0.0) asked += check.comparison == Comparison::at_least ? ": at least " + limit : ": at most " + limit;
  result_row(ui, "open." + check.id, check.label, {asked, ""}, "");
}

}  // namespace

void draw_locker_room(Context& ui) {
  if (without_bank(ui)) return;
  if (!ui.document.design().locker.measured) {
    draw_missing_sizes(ui);
    return;
  }
  const LockerStudy& study = study_of(ui);
  const std::size_t shown = choose_arrangement(ui, study.packing);
  draw_plan(ui, study, shown);
  for (const std::string& remark : locker_remarks(study, ui.document.design(), ui.state.system)) note(ui, remark);
  if (!study.packing.fits) {
    if (const Check* check = ui.document.design().find_check("locker.fit")) {
      check_row(ui, *check);
    } else {
      body(ui, study.packing.problem);
    }
    draw_options(ui, study);
    return;
  }
  if (shown < study.packing.arrangements.size()) draw_jumpers(ui, study.packing.arrangements[shown]);
}

void draw_near_bank(Context& ui) {
  if (without_bank(ui)) return;
  const LockerStudy& study = study_of(ui);
  {
    const Within list(ui.sheet, Role::list, "Near the bank");
    for (const Check& check : study.place.checks) {
      const Within item(ui.sheet, Role::listitem);
      if (check.verdict() == Verdict::not_evaluated) {
        draw_open(ui, check);
      } else {
        check_row(ui, check);
      }
    }
  }
  for (const Caution& item : study.place.cautions) caution(ui, item);
}

void draw_held_down(Context& ui) {
  if (without_bank(ui)) return;
  const LockerStudy& study = study_of(ui);
  const RestraintResult& restraint = study.restraint;
  const System system = ui.state.system;
  {
    const Within list(ui.sheet, Role::list, "What each block must be held against");
    for (const RestraintRule& rule : restraint.rules) {
      const Within item(ui.sheet, Role::listitem);
      result_row(ui, "locker.rule." + rule.id, rule_name(rule, restraint, system), {rule_figures(rule, system), ""},
                 "locker.restraint_" + rule.id);
    }
  }
  note(ui, "In the first two the block may give only so far under the load. The largest counts.");
  {
    const Within list(ui.sheet, Role::list, "Straps");
    for (const RestraintLine& line : restraint_lines(study, system)) {
      const Within item(ui.sheet, Role::listitem);
      result_row(ui, "locker.line." + line.step, line.label, {line.value, ""}, line.step);
    }
  }
  for (const Check& check : restraint.trace.checks) check_row(ui, check);
  for (const Caution& item : restraint.trace.cautions) caution(ui, item);
}

}  // namespace thole::ui
