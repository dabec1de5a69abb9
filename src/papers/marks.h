#pragma once

// Shapes that speak without colour, for paper: drawn as SVG because browsers leave backgrounds out
// of print.

#include <string_view>

#include "base/trace.h"
#include "calc/design.h"
#include "io/markup.h"

namespace thole {

// What a style sheet calls a verdict: "good", "close", "bad", "unknown".
std::string_view class_of(Verdict verdict);
std::string_view class_of(Fit fit);

// Tick in a circle, stroke in a diamond, bar in a square, dash in an open circle. Seen only: the
// word stands beside it.
std::string_view mark(Verdict verdict);
std::string_view mark(Fit fit);

// A triangle with a stroke, beside the word "Caution".
std::string_view caution_mark();

// How much of its limit a check uses, to one and a half times the limit; cut with a zigzag beyond.
void utilisation_bar(Markup& out, const Check& check);

}  // namespace thole
