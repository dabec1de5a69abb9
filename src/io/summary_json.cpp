#include "io/summary_json.h"

#include <array>
#include <string_view>

#include "base/edition.h"
#include "calc/outputs.h"
#include "io/figures.h"
#include "io/json_build.h"

namespace thole {
namespace {

using thole::json_of;

// What was decided, in the order of the wizard's pages.
constexpr std::array<std::string_view, 17> kDecided{
    "hold.motor",       "hold.thrust_required_N", "hold.limiting_wind_mps", "shaft.length_m",
    "bank.block",       "bank.block_count",       "bank.usable_Wh",         "bank.endurance_h",
    "feeder.conductor", "feeder.device",          "charge.charger",         "mount.plate",
    "mount.bolt",       "trim.added_kg",          "trim.bow_sinkage_m",     "parts.labour_h",
    "parts.lead_days"};

JsonText json_of(const Output& output, const Design& design, const Catalogue& catalogue,
                 System system) {
  JsonObject out;
  out.put("path", output.path()).put("label", label_of(output));
  if (output.text != nullptr) {
    out.put("value", output.text(design));
  } else {
    out.put("value", output.number(design));
  }
  return out.put("unit", unit_of(output.key))
      .put("text", shown_output(output, design, catalogue.shop.currency, system).text())
      .take();
}

JsonText governing(const Design& design, System system) {
  const Check* check = design.find_check(design.outcome.governing);
  return JsonObject()
      .put("id", check != nullptr ? check->id : "")
      .put("label", check != nullptr ? check->label : "")
      .put("text", check != nullptr ? shown_check(*check, system) : "")
      .take();
}

}  // namespace

std::string write_summary(const Design& design, const Catalogue& catalogue, System system) {
  JsonList outputs;
  for (const std::string_view path : kDecided) {
    const Output* output = find_output(path);
    if (output != nullptr) outputs.add(json_of(*output, design, catalogue, system));
  }
  return JsonObject()
      .put("verdict", word(design.outcome.fit))
      .put("governing", governing(design, system))
      .put("outputs", outputs.take())
      .put("price", design.parts.total_price)
      .put("currency", catalogue.shop.currency)
      .put("edition", kEngineEdition)
      .take()
      .text;
}

std::string write_quote(const Design& design) {
  JsonList parts;
  for (const PartLine& line : design.parts.lines) {
    parts.add(JsonObject()
                  .put("id", line.id)
                  .put("label", line.label)
                  .put("detail", line.detail)
                  .put("quantity", line.quantity)
                  .put("unit", line.unit)
                  .put("price", line.price)
                  .put("lead_days", line.lead_days)
                  .take());
  }
  JsonList tasks;
  for (const TaskLine& task : design.parts.tasks) {
    tasks.add(JsonObject()
                  .put("id", task.id)
                  .put("label", task.label)
                  .put("labour_h", task.labour_h)
                  .take());
  }
  JsonList cautions;
  for (const Trace* trace : design.traces()) {
    for (const Caution& caution : trace->cautions) cautions.add(json_of(std::string_view(caution.text)));
  }
  return JsonObject()
      .put("parts", parts.take())
      .put("tasks", tasks.take())
      .put("cautions", cautions.take())
      .take()
      .text;
}

}  // namespace thole
