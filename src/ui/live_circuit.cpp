// The feeder as a live circuit, worst piece first, and the same cable by every method in use.

#include <algorithm>
#include <array>
#include <cmath>

#include "base/number.h"
#include "data/sources.h"
#include "data/sources_power.h"
#include "draw/circuit_plan.h"
#include "io/figures.h"
#include "ui/studies.h"

namespace thole::ui {
namespace {

constexpr std::size_t kMostListed = 40;

constexpr std::array kMoments{CircuitMoment::full_thrust, CircuitMoment::at_rest, CircuitMoment::end_of_day};

std::string_view said_of(CircuitMoment moment) {
  switch (moment) {
    case CircuitMoment::full_thrust:
      return "Full thrust, the bank new, warm and charged.";
    case CircuitMoment::at_rest:
      return "The bank charged, the motor's electronics alone.";
    case CircuitMoment::end_of_day:
      break;
  }
  return "Full thrust, the bank old, cold and at the end of its allowed discharge: what the checks of this page count on.";
}

std::string figures_of(const FeederCircuit& circuit, std::size_t k, System system) {
  const PieceFigures figures = piece_figures(circuit, k, system);
  return figures.watts + ", " + figures.amperes + (figures.degrees.empty() ? "" : ", " + figures.degrees);
}

void draw_pieces(Context& ui, const FeederCircuit& circuit) {
  const Within list(ui.sheet, Role::list, "Pieces, what loses most first");
  const std::vector<std::size_t> order = branches_by_loss(circuit.solution);
  for (std::size_t i = 0; i < std::min(order.size(), kMostListed); ++i) {
    const std::size_t k = order[i];
    const Within item(ui.sheet, Role::listitem);
    result_row(ui, "circuit.piece." + std::to_string(i), std::to_string(i + 1) + ". " + circuit.network.branches[k].label,
               {figures_of(circuit, k, ui.state.system), ""}, "");
  }
}

bool has_feeder(Context& ui) {
  const Design& design = ui.document.design();
  if (design.bank.found && design.feeder.found) return true;
  note(ui, "There is no bank, or no cable and device for it, to make a circuit of.");
  return false;
}

}  // namespace

void draw_live_circuit(Context& ui) {
  if (!has_feeder(ui)) return;
  LiveCircuit& live = studies_of(ui.state).circuit;
  const std::vector<SemOption> options{{"full", "Full thrust"}, {"rest", "At rest"}, {"end", "End of day"}};
  const int picked = segments(ui, "circuit.moment", "Moment", options, static_cast<int>(live.shown));
  if (picked >= 0 && static_cast<std::size_t>(picked) != live.shown) {
    live.shown = static_cast<std::size_t>(picked);
    live.solved.result.reset();
  }
  const CircuitMoment moment = kMoments[live.shown];
  const FeederCircuit& circuit = up_to_date(ui, live.solved, [&](const Design& design) {
    return feeder_circuit(design, ui.document.catalogue(), {.moment = moment});
  });
  ui.sheet.space(kUnit);
  if (!circuit.solution.solved) {
    note(ui, "It cannot be: " + circuit.solution.message);
    return;
  }
  const Drawing drawing = circuit_plan_picture(circuit, ui.state.system);
  figure(ui, "live-circuit", drawing, std::max(1.0f, ui.sheet.scaled(1.0f)) * static_cast<float>(drawing.high.y) + 24.0f);
  note(ui, said_of(moment));
  note(ui, "Numbers go from what loses most; strokes are as thick as their share of it. Each conductor is as warm as its own load, bundle and air "
           "make it, and resists accordingly.");
  if (!circuit.rests) note(ui, "Currents and temperatures did not come to rest: a conductor here would burn.");
  draw_pieces(ui, circuit);
  if (circuit.typed) {
    note(ui, "This is the circuit that you typed, and the checks of this page are of it.");
  } else {
    note(ui, "Another circuit is typed in the order of its pieces, from plus to the motor and back: lug device 5m:4AWG [bow] 1m:6AWG plug motor plug 1m:6AWG "
             "[back] 5m:4AWG lug. Names in brackets are nodes; after a semicolon comes a branch beside it: ; [bow] load:30W [back]. Blocks of your own, from minus "
             "to plus: ; [-] block jumper block:80% [+].");
  }
  note(ui, "Nodal analysis; steady state. " + cited(kCableHeating));
}

void draw_six_answers(Context& ui) {
  if (!has_feeder(ui)) return;
  const CableStudy& cable = up_to_date(ui, studies_of(ui.state).cable, cable_study);
  if (cable.methods.empty()) {
    note(ui, "There is no run to compare methods on.");
    return;
  }
  const System system = ui.state.system;
  note(ui, "Volts lost in the run alone, " + shown_conductor(cable.conductor) + ", " + show(cable.loop_m, "m", system).text() + " out and back at " +
               show(cable.current_A, "A", system).text() + ", and the copper's temperature that each method stands for.");
  {
    const Within list(ui.sheet, Role::list, "Drop by every method");
    for (const DropMethod& method : cable.methods) {
      const Within item(ui.sheet, Role::listitem);
      result_row(ui, "answers.drop." + std::string(method.id), method.label,
                 {show(method.drop_V, "V", system).text() + " at " + show(std::round(method.temperature_C), "C", system).text(), ""}, "");
      note(ui, std::string(method.table) + ". " + cited(method.source));
    }
  }
  ui.sheet.space(kUnit);
  heading(ui, 3, "What it may carry, by three practices");
  for (const AmpacityPractice& practice : cable.practices) {
    const Within list(ui.sheet, Role::list, std::string(practice.label));
    const std::string id = "answers.ampacity." + std::string(practice.id);
    const auto row = [&](std::string_view key, std::string_view label, std::string value) {
      const Within item(ui.sheet, Role::listitem);
      result_row(ui, id + std::string(key), label, {std::move(value), ""}, "");
    };
    row("", practice.label, show(practice.ampacity_A, "A", system).text());
    row(".table", std::string(practice.table) + ", " + shown_conductor(practice.conductor), show(practice.table_A, "A", system).text());
    for (const AmpacityFactor& factor : practice.factors) {
      row("." + std::string(factor.label), std::string(factor.label) + ", " + std::string(factor.why), "× " + fixed(factor.factor, 2));
    }
    if (!practice.own_size) note(ui, "Its table does not list your conductor; this is its own size that resists no less.");
    note(ui, cited(practice.source));
  }
  caution(ui, {"feeder.practices", "Wire by the code that holds where the boat is registered; where two differ, take the smaller figure.", kCommonPractice});
}

}  // namespace thole::ui
