#include "io/design_json.h"

#include <cmath>
#include <nlohmann/json.hpp>

#include "base/edition.h"
#include "calc/outputs.h"
#include "io/issues_json.h"
#include "job/fields.h"

namespace thole {
namespace {

using Json = nlohmann::ordered_json;

std::string text(std::string_view view) { return std::string(view); }

Json number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

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

Json json_of(const Source& source) {
  return {{"id", text(source.id)},
          {"title", text(source.title)},
          {"locator", text(source.locator)},
          {"confirmed", source.confirmed}};
}

Json json_of(const Change& change) {
  Json out = {{"field", change.field}, {"label", change.label}};
  const Field* field = find_field(change.field);
  if (change.clear) {
    out["clear"] = true;
  } else if (field != nullptr && field->access.set_text != nullptr) {
    out["value"] = change.text;
  } else {
    out["value"] = number(change.value);
  }
  return out;
}

Json json_of(const std::vector<Change>& changes) {
  Json out = Json::array();
  for (const Change& change : changes) out.push_back(json_of(change));
  return out;
}

Json json_of(const Check& check) {
  return {{"id", check.id},
          {"label", check.label},
          {"verdict", text(word(check.verdict()))},
          {"utilisation", number(check.utilisation())},
          {"actual", number(check.actual)},
          {"limit", number(check.limit)},
          {"unit", text(check.unit)},
          {"comparison", check.comparison == Comparison::at_most ? "at most" : "at least"},
          {"source", json_of(check.source)},
          {"remedy", check.remedy},
          {"changes", json_of(check.changes)}};
}

Json json_of(const Step& step) {
  Json terms = Json::array();
  for (const Term& term : step.terms) {
    terms.push_back({{"symbol", text(term.symbol)},
                     {"value", number(term.value)},
                     {"unit", text(term.unit)},
                     {"meaning", text(term.meaning)}});
  }
  return {{"id", step.id},
          {"label", step.label},
          {"symbol", text(step.symbol)},
          {"formula", text(step.formula)},
          {"terms", std::move(terms)},
          {"value", number(step.value)},
          {"unit", text(step.unit)},
          {"source", json_of(step.source)},
          {"assumptions", step.assumptions}};
}

void add_results(const Design& design, Json& out) {
  for (const Output& output : all_outputs()) {
    if (output.applies != nullptr && !output.applies(design)) continue;
    out[text(output.stage)][text(output.key)] =
        output.text != nullptr ? Json(output.text(design)) : number(output.number(design));
  }
}

Json value_of(const Field& field, const Job& job) {
  if (field.access.get_text != nullptr) return field.access.get_text(job);
  const double value = field.access.get(job);
  if (field.kind == Kind::toggle) return value != 0.0;
  if (field.kind == Kind::choice) return text(field.options[static_cast<std::size_t>(value)].key);
  if (field.kind == Kind::count) return static_cast<int>(value);
  return number(value);
}

Json job_of(const Design& design) {
  Json out = Json::object();
  for (const Field& field : all_fields()) {
    const Origin origin = field.access.origin(design.job);
    if (origin == Origin::absent) continue;
    Json& place = field.section.empty() ? out : out[text(field.section)];
    place[text(field.key)] = {{"value", value_of(field, design.job)},
                              {"origin", text(word(origin))}};
  }
  return out;
}

template <class Item, class ToJson>
Json all_of(const Design& design, std::vector<Item> Trace::*list, ToJson to_json) {
  Json out = Json::array();
  for (const Trace* trace : design.traces()) {
    for (const Item& item : trace->*list) out.push_back(to_json(item));
  }
  return out;
}

Json issues_of(const Issues& issues) { return Json::parse(write_issues(issues), nullptr, false); }

void add_parts(const PartsResult& parts, Json& out) {
  Json lines = Json::array();
  for (const PartLine& line : parts.lines) {
    lines.push_back({{"id", line.id},
                     {"label", line.label},
                     {"detail", line.detail},
                     {"quantity", number(line.quantity)},
                     {"unit", text(line.unit)},
                     {"mass_kg", number(line.mass_kg)},
                     {"unit_price", number(line.unit_price)},
                     {"price", number(line.price)},
                     {"lead_days", line.lead_days}});
  }
  Json tasks = Json::array();
  for (const TaskLine& task : parts.tasks) {
    tasks.push_back({{"id", task.id}, {"label", task.label}, {"labour_h", number(task.labour_h)}});
  }
  out["lines"] = std::move(lines);
  out["tasks"] = std::move(tasks);
}

}  // namespace

std::string write_design(const Design& design) {
  Json out = {{"schema", kSchema},
              {"engine_edition", kEngineEdition},
              {"title", design.job.title.value},
              {"verdict", text(word(design.outcome.fit))},
              {"governing", design.outcome.governing},
              {"changes", json_of(design.outcome.changes)}};
  add_results(design, out);
  add_parts(design.parts, out["parts"]);
  out.update(
      {{"job", job_of(design)},
       {"checks",
        all_of(design, &Trace::checks, [](const Check& check) { return json_of(check); })},
       {"steps", all_of(design, &Trace::steps, [](const Step& step) { return json_of(step); })},
       {"cautions", all_of(design, &Trace::cautions,
                           [](const Caution& caution) -> Json {
                             return {{"id", caution.id},
                                     {"text", caution.text},
                                     {"source", json_of(caution.source)}};
                           })},
       {"assumptions", all_of(design, &Trace::assumptions,
                              [](const Assumption& assumption) -> Json {
                                return {{"field", assumption.field},
                                        {"text", assumption.text},
                                        {"source", json_of(assumption.source)}};
                              })},
       {"issues", issues_of(design.issues)}});
  return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace thole
