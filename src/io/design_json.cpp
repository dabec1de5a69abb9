#include "io/design_json.h"


#include "base/edition.h"
#include "calc/outputs.h"
#include "io/json_build.h"
#include "job/fields.h"

namespace thole {
namespace {

std::string text(std::string_view view) { return std::string(view); }

std::string_view word(Origin origin) {
  switch (origin) {
    case Origin::absent:
      return "absent";
    case Origin::given:
      return "given";
    case Origin::preset:
      return "preset";
    case Origin::estimated:
      return "estimated";
    case Origin::chosen:
      return "chosen";
  }
  return "absent";
}

using thole::json_of;  // of text, numbers and issues
Json json_of(const Change& change);
Json json_of(const Term& term);
Json json_of(const PartLine& line);
Json json_of(const TaskLine& task);

template <class Item>
Json list_of(const std::vector<Item>& items) {
  Json out = Json::array();
  for (const Item& item : items) out.push_back(json_of(item));
  return out;
}

Json json_of(const Source& source) {
  return JsonObject()
      .put("id", source.id)
      .put("title", source.title)
      .put("locator", source.locator)
      .put("confirmed", source.confirmed)
      .take();
}

Json json_of(const Change& change) {
  JsonObject out;
  out.put("field", change.field).put("label", change.label);
  const Field* field = find_field(change.field);
  if (change.clear) {
    out.put("clear", true);
  } else if (field != nullptr && field->access.is_text()) {
    out.put("value", change.text);
  } else {
    out.put("value", change.value);
  }
  return out.take();
}

Json json_of(const Check& check) {
  return JsonObject()
      .put("id", check.id)
      .put("label", check.label)
      .put("verdict", word(check.verdict()))
      .put("utilisation", check.utilisation())
      .put("actual", check.actual)
      .put("limit", check.limit)
      .put("unit", check.unit)
      .put("comparison", check.comparison == Comparison::at_most ? "at most" : "at least")
      .put("source", json_of(check.source))
      .put("remedy", check.remedy)
      .put("changes", list_of(check.changes))
      .take();
}

Json json_of(const Term& term) {
  return JsonObject()
      .put("symbol", term.symbol)
      .put("value", term.value)
      .put("unit", term.unit)
      .put("meaning", term.meaning)
      .take();
}

Json json_of(const Step& step) {
  return JsonObject()
      .put("id", step.id)
      .put("label", step.label)
      .put("symbol", step.symbol)
      .put("formula", step.formula)
      .put("terms", list_of(step.terms))
      .put("value", step.value)
      .put("unit", step.unit)
      .put("source", json_of(step.source))
      .put("assumptions", Json(step.assumptions))
      .take();
}

Json json_of(const Caution& caution) {
  return JsonObject()
      .put("id", caution.id)
      .put("text", caution.text)
      .put("source", json_of(caution.source))
      .take();
}

Json json_of(const Assumption& assumption) {
  return JsonObject()
      .put("field", assumption.field)
      .put("text", assumption.text)
      .put("source", json_of(assumption.source))
      .take();
}

void add_results(const Design& design, Json& out) {
  for (const Output& output : all_outputs()) {
    if (output.applies != nullptr && !output.applies(design)) continue;
    out[text(output.stage)][text(output.key)] =
        output.text != nullptr ? Json(output.text(design)) : json_of(output.number(design));
  }
}

Json value_of(const Field& field, const Job& job) {
  if (field.access.is_text()) return field.access.get_text(job);
  const double value = field.access.get(job);
  if (field.kind == Kind::toggle) return value != 0.0;
  if (field.kind == Kind::choice) return text(field.options[static_cast<std::size_t>(value)].key);
  if (field.kind == Kind::count) return static_cast<int>(value);
  return json_of(value);
}

Json job_of(const Design& design) {
  Json out = Json::object();
  for (const Field& field : all_fields()) {
    const Origin origin = field.access.origin(design.job);
    if (origin == Origin::absent) continue;
    Json& place = field.section.empty() ? out : out[text(field.section)];
    place[text(field.key)] =
        JsonObject().put("value", value_of(field, design.job)).put("origin", word(origin)).take();
  }
  return out;
}

template <class Item>
Json all_of(const Design& design, std::vector<Item> Trace::*list) {
  Json out = Json::array();
  for (const Trace* trace : design.traces()) {
    for (const Item& item : trace->*list) out.push_back(json_of(item));
  }
  return out;
}

Json json_of(const PartLine& line) {
  return JsonObject()
      .put("id", line.id)
      .put("label", line.label)
      .put("detail", line.detail)
      .put("quantity", line.quantity)
      .put("unit", line.unit)
      .put("mass_kg", line.mass_kg)
      .put("unit_price", line.unit_price)
      .put("price", line.price)
      .put("lead_days", line.lead_days)
      .take();
}

Json json_of(const TaskLine& task) {
  return JsonObject().put("id", task.id).put("label", task.label).put("labour_h", task.labour_h).take();
}

}  // namespace

std::string write_design(const Design& design) {
  Json out = JsonObject()
                 .put("schema", kSchema)
                 .put("engine_edition", kEngineEdition)
                 .put("title", design.job.title.value)
                 .put("verdict", word(design.outcome.fit))
                 .put("governing", design.outcome.governing)
                 .put("changes", list_of(design.outcome.changes))
                 .take();
  add_results(design, out);
  out["parts"]["lines"] = list_of(design.parts.lines);
  out["parts"]["tasks"] = list_of(design.parts.tasks);
  out["job"] = job_of(design);
  out["checks"] = all_of(design, &Trace::checks);
  out["steps"] = all_of(design, &Trace::steps);
  out["cautions"] = all_of(design, &Trace::cautions);
  out["assumptions"] = all_of(design, &Trace::assumptions);
  out["issues"] = json_of(design.issues);
  return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace thole
