#pragma once

// Every displayed formula, evaluated with its displayed terms, must give the displayed value.

#include "base/trace.h"

namespace thole::test {

void check_formulas(const Trace& trace);

}  // namespace thole::test
