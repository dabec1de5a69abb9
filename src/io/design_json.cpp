#include "io/design_json.h"


#include "base/edition.h"
#include "calc/outputs.h"
#include "io/json_build.h"
#include "job/fields.h"

namespace thole {
namespace {


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
JsonText json_of(const Change& change);
JsonText json_of(const Term& term);
JsonText json_of(const PartLine& line);
JsonText json_of(const TaskLine& task);

JsonText json_of(const std::string& text) { return json_of(std::string_view(text)); }

template <class Item>
JsonText list_of(const std::vector<Item>& items) {
  JsonList out;
  for (const Item& item : items) out.add(json_of(item));
  return out.take();
}

JsonText json_of(const Source& source) {
  return JsonObject()
      .put("id", source.id)
      .put("title", source.title)
      .put("locator", source.locator)
      .put("confirmed", source.confirmed)
      .take();
}

JsonText json_of(const Change& change) {
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

JsonText json_of(const Check& check) {
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

JsonText json_of(const Term& term) {
  return JsonObject()
      .put("symbol", term.symbol)
      .put("value", term.value)
      .put("unit", term.unit)
      .put("meaning", term.meaning)
      .take();
}

JsonText json_of(const Step& step) {
  return JsonObject()
      .put("id", step.id)
      .put("label", step.label)
      .put("symbol", step.symbol)
      .put("formula", step.formula)
      .put("terms", list_of(step.terms))
      .put("value", step.value)
      .put("unit", step.unit)
      .put("source", json_of(step.source))
      .put("assumptions", list_of(step.assumptions))
      .take();
}

JsonText json_of(const Caution& caution) {
  return JsonObject()
      .put("id", caution.id)
      .put("text", caution.text)
      .put("source", json_of(caution.source))
      .take();
}

JsonText json_of(const Assumption& assumption) {
  return JsonObject()
      .put("field", assumption.field)
      .put("text", assumption.text)
      .put("source", json_of(assumption.source))
      .take();
}

void add_results(const Design& design, JsonSections& out) {
  for (const Output& output : all_outputs()) {
    if (output.applies != nullptr && !output.applies(design)) continue;
    JsonObject& stage = out.in(output.stage);
    if (output.text != nullptr) {
      stage.put(output.key, output.text(design));
    } else {
      stage.put(output.key, output.number(design));
    }
  }
}

JsonText value_of(const Field& field, const Job& job) {
  if (field.access.is_text()) return json_of(field.access.get_text(job));
  const double value = field.access.get(job);
  if (field.kind == Kind::toggle) return json_of(value != 0.0);
  if (field.kind == Kind::choice) return json_of(field.options[static_cast<std::size_t>(value)].key);
  if (field.kind == Kind::count) return json_of(static_cast<int>(value));
  return json_of(value);
}

JsonText job_of(const Design& design) {
  JsonObject out;
  JsonSections sections;
  for (const Field& field : all_fields()) {
    const Origin origin = field.access.origin(design.job);
    if (origin == Origin::absent) continue;
    JsonObject& place = field.section.empty() ? out : sections.in(field.section);
    place.put(field.key, JsonObject()
                             .put("value", value_of(field, design.job))
                             .put("origin", word(origin))
                             .take());
  }
  sections.put_into(out);
  return out.take();
}

template <class Item>
JsonText all_of(const Design& design, std::vector<Item> Trace::*list) {
  JsonList out;
  for (const Trace* trace : design.traces()) {
    for (const Item& item : trace->*list) out.add(json_of(item));
  }
  return out.take();
}

JsonText json_of(const PartLine& line) {
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

JsonText json_of(const TaskLine& task) {
  return JsonObject().put("id", task.id).put("label", task.label).put("labour_h", task.labour_h).take();
}

}  // namespace

std::string write_design(const Design& design) {
  JsonObject out;
  out.put("schema", kSchema)
      .put("engine_edition", kEngineEdition)
      .put("title", design.job.title.value)
      .put("verdict", word(design.outcome.fit))
      .put("governing", design.outcome.governing)
      .put("changes", list_of(design.outcome.changes))
      .put("proven", design.outcome.proven);
  JsonSections stages;
  add_results(design, stages);
  stages.in("parts").put("lines", list_of(design.parts.lines)).put("tasks", list_of(design.parts.tasks));
  stages.put_into(out);
  out.put("job", job_of(design))
      .put("checks", all_of(design, &Trace::checks))
      .put("steps", all_of(design, &Trace::steps))
      .put("cautions", all_of(design, &Trace::cautions))
      .put("assumptions", all_of(design, &Trace::assumptions))
      .put("issues", json_of(design.issues));
  return out.take().text + "\n";
}

}  // namespace thole
