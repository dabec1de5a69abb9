#pragma once

// How the figures of a design are said, the same on screen and on paper.

#include <string>
#include <string_view>

#include "calc/design.h"
#include "calc/outputs.h"
#include "io/measure.h"
#include "job/fields.h"

namespace thole {

// What a design says, in the unit of its name; prices in the currency, the sinkages as small
// lengths.
Shown shown_output(const Output& output, const Design& design, std::string_view currency,
                   System system);

// A value of the full job with its unit: choices and catalogue entries by their labels; empty when
// it is absent.
std::string shown_field(const Field& field, const Job& job, const Catalogue& catalogue,
                        System system);

// A row of a catalogue's list ("cables") as people read it; the id when it is not there.
std::string shown_item(const Catalogue& catalogue, std::string_view list, std::string_view id);

// "16 mm2" is an identifier; people read "16 mm²".
std::string shown_conductor(std::string name);

// The unit in which a value of this name is shown: fractions as percent.
std::string_view shown_unit(std::string_view key);

// "1.62 m, needs 1.5 m", "4.1 of 3 %"; "not evaluated".
std::string shown_check(const Check& check, System system);

// "Design guide, clause 3 (not confirmed)".
std::string shown_source(const Source& source);

// "Yours", "typical" ...: where a value came from; lower case.
std::string_view origin_word(Origin origin);

}  // namespace thole
