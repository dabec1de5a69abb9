#include "io/schema_json.h"

#include <nlohmann/json.hpp>
#include <type_traits>

#include "base/edition.h"
#include "io/limits.h"
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
  if (!field.help.empty()) out["description"] = std::string(field.help);
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
      out.update(text_line());
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
    if (!column.help.empty()) entry["description"] = std::string(column.help);
    const auto in_range = [&column](Json& number) {
      number["minimum"] = column.min;
      number["maximum"] = column.max;
    };
    const bool must = std::visit(
        [&]<class T>(T Row::*member) {
          if constexpr (std::is_enum_v<T>) {
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

}  // namespace thole
