#pragma once

// The catalogue as JSON: {"schema": 1, "shop": {...}, "motors": [{"id": ...}], ...}. Columns, units
// and ranges are those of job/catalogue_fields.h. A row that is not sound is left out with an issue
// that names it ("motors[2].price"); the others are kept. Boat types and waters are files of their
// own.

#include <string>
#include <string_view>

#include "base/issue.h"
#include "job/catalogue.h"

namespace thole {

struct CatalogueRead {
  Catalogue catalogue{};
  Issues issues{};
};
CatalogueRead read_catalogue(std::string_view text);

// Without boats and waters. Two-space indent, a row to a line.
std::string write_catalogue(const Catalogue& catalogue);

}  // namespace thole
