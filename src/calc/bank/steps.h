#pragma once

// The arithmetic of the chosen bank, for the reader. Of this stage alone.

#include "calc/bank/choice.h"

namespace thole {

inline constexpr double kLeastDepth_frac = 0.02;  // below it no cycle life is known

void write_bank_steps(const BankInput& in, const BankFigures& f, const BankResult& result,
                      Trace& trace);

}  // namespace thole
