// The bank's day, hour by hour: run in slices, then scrubbed.

#include <algorithm>

#include "base/number.h"
#include "calc/fitted_bank.h"
#include "draw/day_curves.h"
#include "io/figures.h"
#include "ui/studies.h"

namespace thole::ui {
namespace {

// Starts anew when the design has changed; under a finger the last answer stays.
void keep_up(Context& ui, ScrubbedDay& page) {
  const bool held = !ui.state.dragged.id.empty();
  if (page.version != ui.document.version() && !(held && page.result)) {
    page.version = ui.document.version();
    const Design& design = ui.document.design();
    page.running = std::make_unique<BankDayStudy>(design, bank_day_input(design));
  }
  if (!page.running) return;
  ui.state.easing = true;
  if (page.running->step()) return;
  page.result = page.running->result();
  page.running.reset();
}

void row(Context& ui, std::string_view id, std::string_view label, const Shown& value) {
  const Within item(ui.sheet, Role::listitem);
  result_row(ui, id, label, value, "");
}

std::string lasting(const BankDay& day, System system) {
  const bool longer = day.day.run.cut_off == CutOff::none && day.day.left_until == CutOff::none;
  return (longer ? "more than " : "") + show(day.hours_h, "h", system).text();
}

void draw_moment(Context& ui, ScrubbedDay& page) {
  const BankDay& day = *page.result;
  const System system = ui.state.system;
  const double end_h = day.day.run.moments.back().time_h;
  page.at_h = std::clamp(page.at_h, 0.0, end_h);
  if (const std::optional<double> minutes = slider(ui, {.id = "bank-day.at",
                                                        .name = "Moment of the day",
                                                        .words = fixed(page.at_h, 1) + " h",
                                                        .value_min = 60.0 * page.at_h,
                                                        .most_min = std::max(1.0, 60.0 * end_h),
                                                        .step_min = 10.0})) {
    page.at_h = std::clamp(*minutes / 60.0, 0.0, end_h);
  }
  const BankMoment& at = moment_at(day.day.run, page.at_h);
  const Within list(ui.sheet, Role::list, "At this moment");
  row(ui, "bank-day.bank", "Lowest at the bank", show(at.lowest_bank_V, "V", system));
  row(ui, "bank-day.plug", "Lowest at the motor", show(at.lowest_plug_V, "V", system));
  row(ui, "bank-day.charge", "Charge of the weakest block", show(at.charge_frac, "frac", system));
  row(ui, "bank-day.load", "Mean load", show(at.mean_W, "W", system));
  row(ui, "bank-day.left", "Hours left",
      show(std::max(0.0, day.hours_h - at.time_h), "h", system));
}

void draw_blocks(Context& ui, const BankDay& day) {
  const System system = ui.state.system;
  heading(ui, 2, "Block by block, at the end");
  const Within list(ui.sheet, Role::list, "Blocks");
  const BankMoment& last = day.day.run.moments.back();
  std::size_t i = 0;
  for (std::size_t s = 0; s < day.bank.strings.size(); ++s) {
    for (std::size_t b = 0; b < day.bank.strings[s].blocks.size(); ++b, ++i) {
      const RunBlock& block = day.bank.strings[s].blocks[b];
      std::string name = name_of({s, b}, day.bank.strings.size());
      name.front() = 'B';
      row(ui, "bank-day.block." + std::to_string(i),
          name + ", " + show(left_Ah(block), "Ah", system).text() + " left of " +
              show(block.block.capacity_Ah, "Ah", system).text(),
          {show(last.block_charge_frac[i], "frac", system).text() + ", " +
               show(last.block_V[i], "V", system).text(),
           ""});
    }
  }
}

void draw_ending(Context& ui, const BankDay& day) {
  const System system = ui.state.system;
  const PowerDay& run = day.day;
  const Within list(ui.sheet, Role::list, "How long it lasts");
  row(ui, "bank-day.hours", "Lasts, day and after it at the mean load", {lasting(day, system), ""});
  const Shown cost = show(weak_cost_h(day), "h", system);
  row(ui, "bank-day.cost",
      day.unlike ? "The weak blocks cost" : "One block at 80 % would cost", cost);
  if (run.after.cut_off != CutOff::none) {
    note(ui, "Ends when " + end_of(run.after, day.bank.strings.size()) + ".");
  }
}

}  // namespace

void draw_bank_day(Context& ui) {
  ScrubbedDay& page = studies_of(ui.state).bank_day;
  keep_up(ui, page);
  if (!page.result) {
    progress_bar(ui, "bank-day.running", "Running the day", page.running->done_frac());
    return;
  }
  const BankDay& day = *page.result;
  if (!day.possible || day.day.run.moments.empty()) {
    note(ui, "There is no motor, no bank, or no day to run.");
    return;
  }
  figure(ui, "bank-day", day_curves_picture(day, page.at_h, ui.state.system),
         std::min(1.12f * ui.sheet.width, ui.sheet.scaled(460.0f)));
  draw_moment(ui, page);
  ui.sheet.space(kUnit);
  draw_ending(ui, day);
  for (const Check& check : day.trace.checks) check_row(ui, check);
  for (const Caution& item : day.trace.cautions) caution(ui, item);
  if (day.unlike) draw_blocks(ui, day);
  ui.sheet.space(kUnit);
  heading(ui, 2, "Hours against wind");
  figure(ui, "wind-hours", wind_hours_picture(day, ui.state.system),
         std::min(0.8f * ui.sheet.width, ui.sheet.scaled(340.0f)));
  note(ui, "Kinetic battery model (Manwell and McGowan 1993), second by second, at one temperature. Volts and "
           "resistance are of one kind of block each: yours differ.");
  for (const Assumption& assumption : day.trace.assumptions) note(ui, assumption.text);
}

}  // namespace thole::ui
