#include "io/job_json.h"

#include <cmath>

#include "base/edition.h"
#include "io/json_build.h"
#include "io/json_scan.h"
#include "io/limits.h"
#include "io/schema_check.h"
#include "io/text.h"
#include "job/fields.h"

namespace thole {
namespace {

bool is_section(std::string_view key) {
  for (const Section& section : all_sections()) {
    if (section.key == key) return true;
  }
  return false;
}

// What a value of the wrong type should have been.
std::string type_message(const Field& field) {
  const std::string label(field.label);
  switch (field.kind) {
    case Kind::number:
      return label + " must be a number. " + range_message(field, std::nan(""));
    case Kind::count:
      return label + " must be a whole number. " + range_message(field, std::nan(""));
    case Kind::toggle:
      return label + " must be true or false.";
    case Kind::choice: {
      std::string message = label + " must be one of";
      for (const Option& option : field.options) {
        message +=
            (&option == &field.options.front() ? " \"" : ", \"") + std::string(option.key) + "\"";
      }
      return message + ".";
    }
    case Kind::text:
    case Kind::catalogue_id:
      return label + " must be text in quotes.";
  }
  return label + " cannot be read.";
}

// The number that an item holds for a field; NaN when it is of the wrong type.
double number_in(const Field& field, const JsonItem& item) {
  switch (field.kind) {
    case Kind::number:
      return item.kind == JsonKind::number ? item.number : std::nan("");
    case Kind::count:
      return item.kind == JsonKind::number && item.number == std::floor(item.number) ? item.number
                                                                                     : std::nan("");
    case Kind::toggle:
      return item.kind == JsonKind::boolean ? item.number : std::nan("");
    case Kind::choice:
      for (std::size_t i = 0; item.kind == JsonKind::text && i < field.options.size(); ++i) {
        if (field.options[i].key == item.text) return static_cast<double>(i);
      }
      return std::nan("");
    case Kind::text:
    case Kind::catalogue_id:
      break;
  }
  return std::nan("");
}

void read_field(const Field& field, const JsonItem& item, Job& job, Issues& issues) {
  if (item.kind == JsonKind::null) return;  // absent: estimate it
  if (field.access.is_text()) {
    if (item.kind != JsonKind::text) {
      issues.push_back({Severity::error, item.path, type_message(field)});
      return;
    }
    const std::string line = plain_line(item.text, most_text_bytes(field));
    if (line != item.text) {
      issues.push_back({Severity::warning, item.path,
                        std::string(field.label) + " was made one line of at most " +
                            std::to_string(most_text_bytes(field)) + " bytes."});
    }
    field.access.set_text(job, line);
  } else {
    const double value = number_in(field, item);
    const std::string message =
        std::isnan(value) ? type_message(field) : range_message(field, value);
    if (!message.empty()) {
      issues.push_back({Severity::error, item.path, message});
      return;
    }
    field.access.set(job, value);
  }
  field.access.set_origin(job, Origin::given);
}

// Reads the values that stand in the object at `root`, whose own `other_keys` are read elsewhere.
void read_values(const JsonScan& scan, std::string_view root,
                 std::initializer_list<std::string_view> other_keys, Job& job, Issues& issues) {
  std::string_view skipped;  // nothing within it is looked at
  for (const JsonItem& item : scan.items) {
    if (!skipped.empty() && !inside(item.path, skipped).empty()) continue;
    const std::string_view path = inside(item.path, root);
    if (path.empty()) continue;
    skipped = {};
    bool other = false;
    for (const std::string_view key : other_keys) other = other || path == key;
    if (is_section(path)) {
      if (item.kind == JsonKind::object || item.kind == JsonKind::null) continue;
      issues.push_back({Severity::error, item.path, "Must be an object in braces."});
    } else if (const Field* field = find_field(path)) {
      read_field(*field, item, job, issues);
    } else if (!other) {
      issues.push_back({Severity::warning, item.path,
                        "\"" + item.path + "\" is not known here and was left out."});
    }
    skipped = item.path;
  }
}

bool starts_with_object(const JsonScan& scan, Issues& issues) {
  if (!scan.items.empty() && scan.items.front().kind == JsonKind::object) return true;
  if (!has_error(scan.issues)) {
    issues.push_back({Severity::error, "", "The file must hold one object in braces."});
  }
  return false;
}

JsonText value_of(const Field& field, const Job& job) {
  if (field.access.is_text())
    return json_of(plain_line(field.access.get_text(job), most_text_bytes(field)));
  const double value = field.access.get(job);
  switch (field.kind) {
    case Kind::toggle:
      return json_of(value != 0.0);
    case Kind::choice:
      return json_of(field.options[static_cast<std::size_t>(value)].key);
    case Kind::count:
      return json_of(static_cast<int>(value));
    default:
      return json_of(value);
  }
}

// The given values; what is impossible cannot be written so that it reads back, and stays out.
void put_values(const Job& job, JsonObject& out) {
  JsonSections sections;
  for (const Field& field : all_fields()) {
    if (field.access.origin(job) != Origin::given) continue;
    if (!field.access.is_text() && !range_message(field, field.access.get(job)).empty())
      continue;
    JsonObject& place = field.section.empty() ? out : sections.in(field.section);
    place.put(field.key, value_of(field, job));
  }
  sections.put_into(out);
}

}  // namespace

JobRead read_job(std::string_view text) {
  JobRead read;
  const JsonScan scan = scan_json(text, kMostJobBytes);
  if (starts_with_object(scan, read.issues)) {
    read.issues = check_schema(scan);
    read_values(scan, "", {"$schema", "schema"}, read.job, read.issues);
  }
  read.issues.insert(read.issues.begin(), scan.issues.begin(), scan.issues.end());
  return read;
}

std::string write_job(const Job& job) {
  JsonObject document;
  document.put("schema", kSchema);
  put_values(job, document);
  return document.take().text + "\n";
}

PresetRead read_preset(std::string_view text) {
  PresetRead read;
  Preset& preset = read.preset;
  const JsonScan scan = scan_json(text, kMostJobBytes);
  if (starts_with_object(scan, read.issues)) {
    read.issues = check_schema(scan);
    read_values(scan, "job", {}, preset.values, read.issues);
    for (const JsonItem& item : scan.items) {
      if (item.path == "id" && item.kind == JsonKind::text) preset.id = item.text;
      if (item.path == "label" && item.kind == JsonKind::text) preset.label = item.text;
      if (item.path == "help" && item.kind == JsonKind::text) preset.help = item.text;
    }
    if (preset.id.empty()) {
      read.issues.push_back({Severity::error, "id", "A preset needs an id: text that jobs name."});
    }
    if (preset.label.empty()) {
      read.issues.push_back({Severity::error, "label", "A preset needs a label: text to show."});
    }
  }
  read.issues.insert(read.issues.begin(), scan.issues.begin(), scan.issues.end());
  return read;
}

std::string write_preset(const Preset& preset) {
  JsonObject values;
  put_values(preset.values, values);
  return JsonObject()
             .put("schema", kSchema)
             .put("id", preset.id)
             .put("label", preset.label)
             .put("help", preset.help)
             .put("job", values.take())
             .take()
             .text +
         "\n";
}

}  // namespace thole
