#pragma once

#include "io/json_scan.h"

namespace thole {

// What there is to say of the "schema" of a document: nothing when it is the present one. A newer
// one is an error, though what is understood is still read.
Issues check_schema(const JsonScan& scan);

}  // namespace thole
