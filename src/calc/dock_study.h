#pragma once

// The tests at the dock, as far as the job holds their readings.

#include <optional>
#include <span>
#include <string_view>

#include "calc/design.h"
#include "calc/trim/dock_tests.h"

namespace thole {

// Empty while a reading is missing.
std::optional<GmReading> roll_test_of(const Design& design);
std::optional<GmReading> inclining_test_of(const Design& design);
std::optional<ImmersionReading> immersion_test_of(const Design& design);

// What puts the test's figure into the job, as fine as the field is; empty where it is doubted to be
// one at all (outside of the field's range).
std::optional<Change> use_gm(const GmReading& reading);
std::optional<Change> use_waterplane(const ImmersionReading& reading);

// The two tests of GM differ by more than their spreads explain.
bool disagree(const GmReading& a, const GmReading& b);

// The fields a test is read into, in the order of its worksheet.
struct DockWorksheet {
  std::string_view title{};
  std::string_view how{};  // what to do, one paragraph
  std::span<const std::string_view> fields{};
};
std::span<const DockWorksheet> dock_worksheets();

// Said before each of them: people aboard, at a dock.
Caution dock_caution();

}  // namespace thole
