#pragma once

// Steps and checks as plain text, the way an engineer writes a calculation: formula, numbers put
// in, result, source.

#include <string>
#include <string_view>

#include "base/trace.h"

namespace thole {

// The formula with the values of its terms in place of the symbols: "52 * 0.000866 * 12".
std::string numbers_put_in(const Step& step);

// Several lines each, "\n" at the end.
std::string explain(const Step& step);
std::string explain(const Check& check);

}  // namespace thole
