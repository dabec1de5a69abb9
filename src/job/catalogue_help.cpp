#include <cstddef>

#include "job/catalogue_fields.h"

namespace thole {

// In the order of the columns: both are made from one list.
#define THOLE_ROW(Row)                                \
  template <>                                         \
  std::string_view help_of(const Column<Row>& column) { \
    static constexpr std::string_view kHelp[] = {
#define THOLE_COLUMN(Row, name, help, ...) help
#define THOLE_END(Row)                                                             \
  }                                                                                \
  ;                                                                                \
  return kHelp[static_cast<std::size_t>(&column - columns<Row>().data())];         \
  }
#include "job/catalogue_columns.inc"
#undef THOLE_ROW
#undef THOLE_COLUMN
#undef THOLE_END

}  // namespace thole
