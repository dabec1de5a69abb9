#include "io/schema_json.h"

#include <type_traits>

#include "base/edition.h"
#include "calc/outputs.h"
#include "io/json_build.h"
#include "io/limits.h"
#include "io/text.h"
#include "job/catalogue_fields.h"
#include "job/fields.h"

namespace thole {
namespace {

Json closed_object() {
  return JsonObject()
      .put("type", "object")
      .put("additionalProperties", false)
      .put("properties", Json::object())
      .take();
}

Json text_value() { return JsonObject().put("type", "string").take(); }
Json text_line() {
  return JsonObject().put("type", "string").put("maxLength", static_cast<int>(kMostTextBytes)).take();
}

// A document: its head, and the two keys that every one may have.
Json document(std::string_view name, std::string_view title) {
  Json out = JsonObject()
                 .put("$schema", "https://json-schema.org/draft/2020-12/schema")
                 .put("$id", std::string(name) + ".schema.json")
                 .put("title", title)
                 .take();
  out.update(closed_object());
  out["properties"]["$schema"] = text_value();
  out["properties"]["schema"]["const"] = kSchema;
  out["required"] = {"schema"};
  return out;
}

void add_options(Json& out, std::span<const Option> options) {
  out["enum"] = Json::array();
  for (const Option& option : options) out["enum"].push_back(std::string(option.key));
}

Json field_schema(const Field& field) {
  Json out = JsonObject().put("title", field.label).take();
  if (!help_of(field).empty()) out["description"] = std::string(help_of(field));
  switch (field.kind) {
    case Kind::number:
    case Kind::count:
      out["type"] = field.kind == Kind::count ? "integer" : "number";
      out["minimum"] = field.min;
      out["maximum"] = field.max;
      break;
    case Kind::toggle:
      out["type"] = "boolean";
      break;
    case Kind::choice:
      add_options(out, field.options);
      break;
    case Kind::text:
    case Kind::catalogue_id:
      out["type"] = "string";
      out["maxLength"] = most_text_bytes(field);
      break;
  }
  return out;
}

// The values of a job, as properties of `object`.
void add_job_values(Json& object) {
  Json& properties = object["properties"];
  for (const Section& section : all_sections()) {
    Json& entry = properties[std::string(section.key)];
    entry["title"] = std::string(section.label);
    entry.update(closed_object());
  }
  for (const Field& field : all_fields()) {
    Json& place =
        field.section.empty() ? properties : properties[std::string(field.section)]["properties"];
    place[std::string(field.key)] = field_schema(field);
  }
}

template <class Row>
Json row_schema() {
  Json out = closed_object();
  Json required = Json::array();
  const Row standard;
  for (const Column<Row>& column : columns<Row>()) {
    Json& entry = out["properties"][std::string(column.key)];
    if (!column.help.empty()) entry["description"] = std::string(column.help);
    const auto in_range = [&column](Json& number) {
      number["minimum"] = column.min;
      number["maximum"] = column.max;
    };
    const bool must = std::visit(
        [&]<class T>(T Row::*member) {
          if constexpr (is_optional<T>) {
            add_options(entry, options_of(typename T::value_type{}));
          } else if constexpr (std::is_enum_v<T>) {
            add_options(entry, options_of(T{}));
          } else if constexpr (std::is_same_v<T, bool>) {
            entry["type"] = "boolean";
          } else if constexpr (std::is_same_v<T, std::string>) {
            entry.update(text_line());
            entry["minLength"] = 1;
            return (standard.*member).empty();
          } else if constexpr (std::is_same_v<T, std::vector<double>>) {
            entry["type"] = "array";
            entry["minItems"] = 1;
            entry["items"]["type"] = "number";
            in_range(entry["items"]);
            return true;
          } else {
            entry["type"] = std::is_same_v<T, int> ? "integer" : "number";
            in_range(entry);
            return standard.*member < column.min;
          }
          return false;
        },
        column.member);
    if (must) required.push_back(std::string(column.key));
  }
  if (!required.empty()) out["required"] = required;
  return out;
}

// --- what a design says ----------------------------------------------------------------------------

// An object with exactly these properties, all of them there.
Json whole_object(Json properties) {
  Json required = Json::array();
  for (const auto& item : properties.items()) required.push_back(item.key());
  Json out = closed_object();
  out["properties"] = std::move(properties);
  out["required"] = std::move(required);
  return out;
}

Json number_value() { return JsonObject().put("type", "number").take(); }
// Null where the number does not exist: of a check that was not evaluated, say.
Json number_or_null() {
  Json out;
  out["type"].push_back("number");
  out["type"].push_back("null");
  return out;
}
Json one_of(std::initializer_list<std::string_view> words) {
  Json out;
  for (const std::string_view item : words) out["enum"].push_back(std::string(item));
  return out;
}
Json reference(const char* name) {
  return JsonObject().put("$ref", std::string("#/$defs/") + name).take();
}
Json list_of(Json items) {
  return JsonObject().put("type", "array").put("items", std::move(items)).take();
}
Json said(Json schema, std::string_view description) {
  schema["description"] = std::string(description);
  return schema;
}

enum class Shape { text, texts, number, number_or_null, truth, words, one, many };

struct Property {
  const char* key = nullptr;
  Shape shape = Shape::text;
  const char* of = nullptr;           // the definition, of one or many
  const char* description = nullptr;  // where the key does not say it all
};

Json schema_of(const Property& property) {
  switch (property.shape) {
    case Shape::text:
      return text_value();
    case Shape::texts:
      return list_of(text_value());
    case Shape::number:
      return number_value();
    case Shape::number_or_null:
      return number_or_null();
    case Shape::truth:
      return JsonObject().put("type", "boolean").take();
    case Shape::words:  // filled in by the caller
      return Json::object();
    case Shape::one:
      return reference(property.of);
    case Shape::many:
      return list_of(reference(property.of));
  }
  return {};
}

Json whole_object(std::span<const Property> properties) {
  Json out = Json::object();
  for (const Property& property : properties) {
    Json schema = schema_of(property);
    if (property.description != nullptr) schema = said(std::move(schema), property.description);
    out[property.key] = std::move(schema);
  }
  return whole_object(std::move(out));
}

constexpr Property kSource[] = {{"id"},
                                {"title"},
                                {"locator", Shape::text, nullptr, "Clause, table or page."},
                                {"confirmed", Shape::truth}};
constexpr Property kChange[] = {{"field", Shape::text, nullptr, "Path of the job's field."}, {"label"}};
constexpr Property kCheck[] = {{"id"},
                               {"label"},
                               {"verdict", Shape::words},
                               {"utilisation", Shape::number_or_null, nullptr, "1 at the limit."},
                               {"actual", Shape::number_or_null},
                               {"limit", Shape::number_or_null},
                               {"unit"},
                               {"comparison", Shape::words},
                               {"source", Shape::one, "Source", "Of the limit."},
                               {"remedy"},
                               {"changes", Shape::many, "Change"}};
constexpr Property kTerm[] = {{"symbol"}, {"value", Shape::number_or_null}, {"unit"}, {"meaning"}};
constexpr Property kStep[] = {{"id"},
                              {"label"},
                              {"symbol"},
                              {"formula"},
                              {"terms", Shape::many, "Term"},
                              {"value", Shape::number_or_null},
                              {"unit"},
                              {"source", Shape::one, "Source"},
                              {"assumptions", Shape::texts}};
constexpr Property kCaution[] = {{"id"}, {"text"}, {"source", Shape::one, "Source"}};
constexpr Property kAssumption[] = {{"field"}, {"text"}, {"source", Shape::one, "Source"}};
constexpr Property kIssue[] = {{"severity", Shape::words},
                               {"field", Shape::text, nullptr, "Path; empty: the whole document."},
                               {"message"}};
constexpr Property kPartLine[] = {{"id"},
                                  {"label"},
                                  {"detail"},
                                  {"quantity", Shape::number_or_null},
                                  {"unit", Shape::text, nullptr, "Empty: pieces."},
                                  {"mass_kg", Shape::number_or_null},
                                  {"unit_price", Shape::number_or_null},
                                  {"price", Shape::number_or_null},
                                  {"lead_days", Shape::number}};
constexpr Property kTaskLine[] = {{"id"}, {"label"}, {"labour_h", Shape::number_or_null}};

Json design_definitions() {
  constexpr std::pair<const char*, std::span<const Property>> kDefinitions[] = {
      {"Source", kSource},     {"Change", kChange},         {"Check", kCheck},
      {"Term", kTerm},         {"Step", kStep},             {"Caution", kCaution},
      {"Assumption", kAssumption}, {"Issue", kIssue},       {"PartLine", kPartLine},
      {"TaskLine", kTaskLine}};
  Json out;
  for (const auto& [name, properties] : kDefinitions) out[name] = whole_object(properties);

  out["Change"]["description"] = "What to set, or to clear so that Thole chooses it.";
  Json& change = out["Change"]["properties"];
  change["clear"]["const"] = true;
  for (const char* kind : {"number", "string", "null"}) change["value"]["type"].push_back(kind);
  Json& check = out["Check"]["properties"];
  check["verdict"] = one_of({word(Verdict::pass), word(Verdict::marginal), word(Verdict::fail),
                             word(Verdict::not_evaluated)});
  check["comparison"] = one_of({"at most", "at least"});
  out["Issue"]["properties"]["severity"] = one_of({"note", "warning", "error"});
  return out;
}

// The results of each stage, by the table of outputs.
void add_results(Json& properties) {
  for (const Output& output : all_outputs()) {
    Json& stage = properties[std::string(output.stage)];
    if (stage.is_null()) {
      stage = closed_object();
      stage["required"] = Json::array();
    }
    const std::string key(output.key);
    stage["properties"][key] =
        said(output.text != nullptr ? text_value() : number_or_null(), output.label);
    if (output.applies == nullptr) stage["required"].push_back(key);
  }
}

// The full job: each value with where it came from.
Json full_job() {
  Json out = closed_object();
  const Json origins = one_of({"given", "preset", "estimated", "chosen"});
  for (const Field& field : all_fields()) {
    Json& place =
        field.section.empty() ? out["properties"] : out["properties"][std::string(field.section)];
    if (place.is_null()) place = closed_object();
    Json value = field_schema(field);
    value.erase("title");
    value.erase("description");
    Json entry = whole_object(JsonObject().put("value", std::move(value)).put("origin", origins).take());
    entry["title"] = std::string(field.label);
    Json& properties = field.section.empty() ? place : place["properties"];
    properties[std::string(field.key)] = std::move(entry);
  }
  return out;
}

std::string finished(const Json& schema) { return schema.dump(2) + "\n"; }

}  // namespace

std::string job_schema() {
  Json out = document("job", "Job: what is known of one boat, its water and its bow motor");
  out["description"] = "Every value may be left out; Thole then estimates or chooses it.";
  add_job_values(out);
  out.erase("required");
  return finished(out);
}

std::string preset_schema() {
  Json out = document("preset", "Preset: a boat type or a water that fills a job's blanks");
  Json& properties = out["properties"];
  for (const char* key : {"id", "label", "help"}) properties[key] = text_line();
  properties["id"]["description"] = "Lower case, digits and hyphens; jobs name it.";
  properties["job"] = closed_object();
  add_job_values(properties["job"]);
  out["required"] = {"schema", "id", "label", "job"};
  return finished(out);
}

std::string catalogue_schema() {
  Json out = document("catalogue", "Catalogue: what a shop sells, in its currency without tax");
  Json& properties = out["properties"];
  properties["shop"] = row_schema<ShopRates>();
  for_each_list([&properties]<class Row>(std::string_view key, std::string_view help,
                                         std::vector<Row> Catalogue::*) {
    properties[std::string(key)] = JsonObject()
                                       .put("description", help)
                                       .put("type", "array")
                                       .put("maxItems", static_cast<int>(kMostRows))
                                       .put("items", row_schema<Row>())
                                       .take();
  });
  return finished(out);
}

std::string design_schema() {
  Json out = document("design", "Design: what evaluate says of a job");
  out["$defs"] = design_definitions();
  Json properties;
  properties["schema"]["const"] = kSchema;
  properties["engine_edition"]["type"] = "integer";
  properties["title"] = text_value();
  properties["verdict"] = one_of({word(Fit::fits), word(Fit::fits_with_changes),
                                  word(Fit::does_not_fit), word(Fit::not_evaluated)});
  properties["governing"] = said(text_value(), "Id of the check that governs.");
  properties["changes"] = said(list_of(reference("Change")), "What makes it fit; tried.");
  add_results(properties);
  for (const auto& [key, name] : {std::pair("lines", "PartLine"), std::pair("tasks", "TaskLine")}) {
    properties["parts"]["properties"][key] = list_of(reference(name));
    properties["parts"]["required"].push_back(key);
  }
  properties["job"] = full_job();
  for (const auto& [key, name] :
       {std::pair("checks", "Check"), std::pair("steps", "Step"), std::pair("cautions", "Caution"),
        std::pair("assumptions", "Assumption"), std::pair("issues", "Issue")}) {
    properties[key] = list_of(reference(name));
  }
  Json whole = whole_object(std::move(properties));
  Json required = Json::array();  // a stage that need not say anything need not be there
  for (const auto& key : whole["required"]) {
    const Json& value = whole["properties"][key.get<std::string>()];
    if (!value.contains("required") || !value["required"].empty()) required.push_back(key);
  }
  whole["required"] = std::move(required);
  out.update(whole);
  return finished(out);
}

}  // namespace thole
