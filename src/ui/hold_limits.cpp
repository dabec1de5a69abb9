// Limits from every side, loads by angle, and what moves the answer most.

#include <array>
#include <cmath>

#include "base/number.h"
#include "base/units.h"
#include "draw/tornado.h"
#include "io/figures.h"
#include "ui/studies.h"

namespace thole::ui {
namespace {

// What may be asked for on this page.
constexpr std::array<std::string_view, 4> kOutputs{"hold.margin_actual_factor", "bank.endurance_h",
                                                   "hold.limiting_wind_mps", "hold.thrust_required_N"};

void draw_limit_rows(Context& ui, const RoseResult& limits) {
  const System system = ui.state.system;
  heading(ui, 2, "Current from each side");
  note(ui, "Strongest wind held in this current, and strongest current held in this wind; both sides are "
           "alike.");
  const Within list(ui.sheet, Role::list, "Limits by angle");
  for (const RoseRow& row : limits.rows) {
    if (row.angle_deg > 180.0 || std::fmod(row.angle_deg, 30.0) != 0.0) continue;
    const Within item(ui.sheet, Role::listitem);
    const std::string angle = fixed(row.angle_deg, 0);
    result_row(ui, "limit." + angle, angle + "° off the wind",
               {show(row.limiting_wind_mps, "mps", system).text() + " wind, " +
                    show(row.limiting_current_mps, "mps", system).text() + " current",
                ""},
               "");
  }
}

void draw_balances(Context& ui, const RoseResult& limits) {
  ui.sheet.space(kFieldGap);
  heading(ui, 2, "Headings where she balances");
  const Within list(ui.sheet, Role::list, "Headings");
  int count = 0;
  for (const Balance& balance : limits.balances) {
    const Within item(ui.sheet, Role::listitem);
    const double off_deg = std::remainder(deg_from_rad(balance.heading_rad), 360.0);
    result_row(ui, "balance." + std::to_string(count++),
               fixed(std::abs(off_deg), 0) + "° off the wind, " +
                   (balance.stable ? "stays there" : "turns away from it"),
               show(balance.thrust_N, "N", ui.state.system), "");
  }
}

void draw_loads(Context& ui, const RoseResult& limits) {
  const System system = ui.state.system;
  ui.sheet.space(kFieldGap);
  heading(ui, 2, "Loads over angle");
  note(ui, "Wind, current and waves all from one side, so far off the bow. Ahead, to starboard and clockwise "
           "count up. By DNV-ST-0111 level 1, made for ships, with its factor of 1.25 on the sum.");
  const Within list(ui.sheet, Role::list, "Loads by angle");
  for (const LoadRow& row : limits.loads) {
    if (std::fmod(row.from_deg, 30.0) != 0.0) continue;
    const Within item(ui.sheet, Role::listitem);
    const std::string angle = fixed(row.from_deg, 0);
    result_row(ui, "load." + angle, "From " + angle + "°",
               {show(row.total.surge_N, "N", system).text() + " ahead, " +
                    show(row.total.sway_N, "N", system).text() + " aside, " +
                    show(row.total.yaw_Nm, "Nm", system).text() + " turning",
                ""},
               "");
  }
}

}  // namespace

void draw_limits(Context& ui) {
  if (!ui.document.design().hold.motor_found) return;
  const RoseResult& limits = up_to_date(ui, studies_of(ui.state).limits, [](const Design& design) {
    return rose(hold_input(design), design.hold.motor);
  });
  draw_limit_rows(ui, limits);
  draw_balances(ui, limits);
  draw_loads(ui, limits);
  const Within list(ui.sheet, Role::list, "Capability");
  const Within item(ui.sheet, Role::listitem);
  result_row(ui, "capability", "Capability by the ships' standard, letter of it",
             {limits.notation, ""}, "");
  note(ui, "Made for ships in the ocean's sea states: for a boat it only shows where the scale begins.");
}

void draw_ranked_inputs(Context& ui) {
  RankedInputs& ranked = studies_of(ui.state).ranked;
  std::vector<SemOption> options;
  for (const std::string_view path : kOutputs) {
    options.push_back({std::string(path), std::string(label_of(*find_output(path)))});
  }
  const int picked = segments(ui, "ranked", "What is asked for", options, static_cast<int>(ranked.output));
  const bool fresh = ranked.version != ui.document.version() || (!ranked.running && !ranked.result);
  if (fresh || (picked >= 0 && static_cast<std::size_t>(picked) != ranked.output)) {
    if (picked >= 0) ranked.output = static_cast<std::size_t>(picked);
    ranked.version = ui.document.version();
    ranked.result.reset();
    ranked.running = std::make_unique<SensitivityStudy>(
        ui.document.given(), ui.document.catalogue(), SensitivityInput{kOutputs[ranked.output]});
  }
  ui.sheet.space(kUnit);
  if (ranked.running) {
    ui.state.easing = true;
    progress_bar(ui, "ranked.running", "Trying each value", ranked.running->done_frac());
    if (ranked.running->step()) return;
    ranked.result = ranked.running->result();
    ranked.running.reset();
    return;
  }
  const SensitivityResult& result = *ranked.result;
  if (result.swings.empty()) {
    note(ui, "No value of this job moves it.");
    return;
  }
  note(ui, "Each value alone, at the ends between which nineteen of twenty true ones lie: open bars at its "
           "low end, filled at its high end. Parts stay as chosen.");
  const std::size_t rows = std::min(result.swings.size(), kTornadoRows);
  figure(ui, "tornado", tornado_picture(result, *find_output(kOutputs[ranked.output]), ui.state.system),
         ui.sheet.scaled(40.0f) * static_cast<float>(rows) + 60.0f);
  const Within list(ui.sheet, Role::list, "Why they are not known better");
  for (std::size_t i = 0; i < rows; ++i) {
    const Within item(ui.sheet, Role::listitem);
    const Field* field = find_field(result.swings[i].field);
    if (field != nullptr) note(ui, std::string(field->label) + ": " + std::string(result.swings[i].why));
  }
}

}  // namespace thole::ui
