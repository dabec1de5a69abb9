#include "io/schema_json.h"

#include <nlohmann/json.hpp>
#include <type_traits>

#include "base/edition.h"
#include "calc/outputs.h"
#include "io/limits.h"
#include "io/text.h"
#include "job/catalogue_fields.h"
#include "job/fields.h"

namespace thole {
namespace {

using Json = nlohmann::ordered_json;

Json closed_object() {
  return {{"type", "object"}, {"additionalProperties", false}, {"properties", Json::object()}};
}

Json text_line() { return {{"type", "string"}, {"maxLength", kMostTextBytes}}; }

// A document: its head, and the two keys that every one may have.
Json document(std::string_view name, std::string_view title) {
  Json out = {{"$schema", "https://json-schema.org/draft/2020-12/schema"},
              {"$id", std::string(name) + ".schema.json"},
              {"title", std::string(title)}};
  out.update(closed_object());
  out["properties"]["$schema"] = {{"type", "string"}};
  out["properties"]["schema"] = {{"const", kSchema}};
  out["required"] = {"schema"};
  return out;
}

void add_options(Json& out, std::span<const Option> options) {
  out["enum"] = Json::array();
  for (const Option& option : options) out["enum"].push_back(std::string(option.key));
}

Json field_schema(const Field& field) {
  Json out = {{"title", std::string(field.label)}};
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
    entry = {{"title", std::string(section.label)}};
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
    if (!help_of(column).empty()) entry["description"] = std::string(help_of(column));
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
            entry["items"] = {{"type", "number"}};
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

// --- what a design says
// ---------------------------------------------------------------------------

// An object with exactly these properties, all of them there.
Json whole_object(Json properties) {
  Json required = Json::array();
  for (const auto& item : properties.items()) required.push_back(item.key());
  Json out = closed_object();
  out["properties"] = std::move(properties);
  out["required"] = std::move(required);
  return out;
}

Json text_value() { return {{"type", "string"}}; }
Json number_value() { return {{"type", "number"}}; }
Json truth_value() { return {{"type", "boolean"}}; }
// Null where the number does not exist: of a check that was not evaluated, say.
Json number_or_null() { return {{"type", Json::array({"number", "null"})}}; }
Json one_of(std::initializer_list<std::string_view> words) {
  Json list = Json::array();
  for (const std::string_view item : words) list.push_back(std::string(item));
  return {{"enum", std::move(list)}};
}
Json reference(const char* name) { return {{"$ref", std::string("#/$defs/") + name}}; }
Json list_of(Json items) { return {{"type", "array"}, {"items", std::move(items)}}; }
Json said(Json schema, std::string_view description) {
  schema["description"] = std::string(description);
  return schema;
}

Json design_definitions() {
  Json change = whole_object(
      {{"field", said(text_value(), "Path of the job's field.")}, {"label", text_value()}});
  change["description"] = "What to set, or to clear so that Thole chooses it.";
  change["properties"]["clear"] = {{"const", true}};
  change["properties"]["value"] = {{"type", Json::array({"number", "string", "null"})}};
  return {
      {"Source", whole_object({{"id", text_value()},
                               {"title", text_value()},
                               {"locator", said(text_value(), "Clause, table or page.")},
                               {"confirmed", truth_value()}})},
      {"Change", std::move(change)},
      {"Check",
       whole_object({{"id", text_value()},
                     {"label", text_value()},
                     {"verdict", one_of({word(Verdict::pass), word(Verdict::marginal),
                                         word(Verdict::fail), word(Verdict::not_evaluated)})},
                     {"utilisation", said(number_or_null(), "1 at the limit.")},
                     {"actual", number_or_null()},
                     {"limit", number_or_null()},
                     {"unit", text_value()},
                     {"comparison", one_of({"at most", "at least"})},
                     {"source", said(reference("Source"), "Of the limit.")},
                     {"remedy", text_value()},
                     {"changes", list_of(reference("Change"))}})},
      {"Term", whole_object({{"symbol", text_value()},
                             {"value", number_or_null()},
                             {"unit", text_value()},
                             {"meaning", text_value()}})},
      {"Step", whole_object({{"id", text_value()},
                             {"label", text_value()},
                             {"symbol", text_value()},
                             {"formula", text_value()},
                             {"terms", list_of(reference("Term"))},
                             {"value", number_or_null()},
                             {"unit", text_value()},
                             {"source", reference("Source")},
                             {"assumptions", list_of(text_value())}})},
      {"Caution",
       whole_object(
           {{"id", text_value()}, {"text", text_value()}, {"source", reference("Source")}})},
      {"Assumption",
       whole_object(
           {{"field", text_value()}, {"text", text_value()}, {"source", reference("Source")}})},
      {"Issue", whole_object({{"severity", one_of({"note", "warning", "error"})},
                              {"field", said(text_value(), "Path; empty: the whole document.")},
                              {"message", text_value()}})},
      {"PartLine", whole_object({{"id", text_value()},
                                 {"label", text_value()},
                                 {"detail", text_value()},
                                 {"quantity", number_or_null()},
                                 {"unit", said(text_value(), "Empty: pieces.")},
                                 {"mass_kg", number_or_null()},
                                 {"unit_price", number_or_null()},
                                 {"price", number_or_null()},
                                 {"lead_days", number_value()}})},
      {"TaskLine",
       whole_object(
           {{"id", text_value()}, {"label", text_value()}, {"labour_h", number_or_null()}})},
  };
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
        said(output.text != nullptr ? text_value() : number_or_null(), std::string(label_of(output)));
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
    Json entry = whole_object({{"value", std::move(value)}, {"origin", origins}});
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
    properties[std::string(key)] = {{"description", std::string(help)},
                                    {"type", "array"},
                                    {"maxItems", kMostRows},
                                    {"items", row_schema<Row>()}};
  });
  return finished(out);
}

std::string design_schema() {
  Json out = document("design", "Design: what evaluate says of a job");
  out["$defs"] = design_definitions();
  Json properties = {{"schema", {{"const", kSchema}}},
                     {"engine_edition", {{"type", "integer"}}},
                     {"title", text_value()},
                     {"verdict", one_of({word(Fit::fits), word(Fit::fits_with_changes),
                                         word(Fit::does_not_fit), word(Fit::not_evaluated)})},
                     {"governing", said(text_value(), "Id of the check that governs.")},
                     {"changes", said(list_of(reference("Change")), "What makes it fit; tried.")},
                     {"proven", said(truth_value(), "Whether the plate by finite elements, snag and foredeck have a say in that.")}};
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
