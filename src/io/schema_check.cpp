#include "io/schema_check.h"

#include "base/edition.h"
#include "base/number.h"

namespace thole {

Issues check_schema(const JsonScan& scan) {
  const JsonItem* schema = nullptr;
  for (const JsonItem& item : scan.items) {
    if (item.path == "schema") schema = &item;
  }
  const std::string present = std::to_string(kSchema);
  if (schema == nullptr) {
    return {{Severity::note, "schema", "No schema is given; the file is read as schema 1."}};
  }
  const double number = schema->kind == JsonKind::number ? schema->number : 0.0;
  if (number > kSchema) {
    return {{Severity::error, "schema",
             "Made with a newer version of Thole (schema " + fixed(number, 0) +
                 "; this one knows " + present +
                 "). What it knows was read; the rest is missing."}};
  }
  if (number != kSchema) {
    return {{Severity::error, "schema", "The schema must be the number " + present + "."}};
  }
  return {};
}

}  // namespace thole
