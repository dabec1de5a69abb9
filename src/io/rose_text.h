#pragma once

// The rose of a hold, its balances and its loads, as text: tables for a person, JSON for a program.

#include <string>

#include "calc/hold/rose.h"
#include "io/measure.h"

namespace thole {

std::string rose_text(const RoseResult& rose, System system);
std::string write_rose(const RoseResult& rose);  // SI

}  // namespace thole
