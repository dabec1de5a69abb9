#include "io/summary_json.h"

#include <array>
#include <cmath>
#include <nlohmann/json.hpp>
#include <string_view>

#include "base/edition.h"
#include "calc/outputs.h"
#include "io/figures.h"

namespace thole {
namespace {

using Json = nlohmann::ordered_json;

// What was decided, in the order of the wizard's pages.
constexpr std::array<std::string_view, 17> kDecided{
    "hold.motor",       "hold.thrust_required_N", "hold.limiting_wind_mps", "shaft.length_m",
    "bank.block",       "bank.block_count",       "bank.usable_Wh",         "bank.endurance_h",
    "feeder.conductor", "feeder.device",          "charge.charger",         "mount.plate",
    "mount.bolt",       "trim.added_kg",          "trim.bow_sinkage_m",     "parts.labour_h",
    "parts.lead_days"};

Json number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

Json json_of(const Output& output, const Design& design, const Catalogue& catalogue,
             System system) {
  return {
      {"path", output.path()},
      {"label", std::string(label_of(output))},
      {"value", output.text != nullptr ? Json(output.text(design)) : number(output.number(design))},
      {"unit", std::string(unit_of(output.key))},
      {"text", shown_output(output, design, catalogue.shop.currency, system).text()}};
}

Json governing(const Design& design, System system) {
  const Check* check = design.find_check(design.outcome.governing);
  if (check == nullptr) return {{"id", ""}, {"label", ""}, {"text", ""}};
  return {{"id", check->id}, {"label", check->label}, {"text", shown_check(*check, system)}};
}

std::string finished(const Json& json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace

std::string write_summary(const Design& design, const Catalogue& catalogue, System system) {
  Json outputs = Json::array();
  for (const std::string_view path : kDecided) {
    const Output* output = find_output(path);
    if (output != nullptr) outputs.push_back(json_of(*output, design, catalogue, system));
  }
  return finished({{"verdict", std::string(word(design.outcome.fit))},
                   {"governing", governing(design, system)},
                   {"outputs", std::move(outputs)},
                   {"price", number(design.parts.total_price)},
                   {"currency", catalogue.shop.currency},
                   {"edition", kEngineEdition}});
}

std::string write_quote(const Design& design) {
  Json parts = Json::array();
  for (const PartLine& line : design.parts.lines) {
    parts.push_back({{"id", line.id},
                     {"label", line.label},
                     {"detail", line.detail},
                     {"quantity", number(line.quantity)},
                     {"unit", std::string(line.unit)},
                     {"price", number(line.price)},
                     {"lead_days", line.lead_days}});
  }
  Json tasks = Json::array();
  for (const TaskLine& task : design.parts.tasks) {
    tasks.push_back({{"id", task.id}, {"label", task.label}, {"labour_h", number(task.labour_h)}});
  }
  Json cautions = Json::array();
  for (const Trace* trace : design.traces()) {
    for (const Caution& caution : trace->cautions) cautions.push_back(caution.text);
  }
  return finished({{"parts", std::move(parts)},
                   {"tasks", std::move(tasks)},
                   {"cautions", std::move(cautions)}});
}

}  // namespace thole
