#include "data/day_plan.h"

#include <optional>

#include "base/number.h"
#include "base/units.h"

namespace thole {
namespace {

constexpr std::size_t kMostStretches = 24;

// Takes the ending off when it is there.
bool take_ending(std::string_view& text, std::string_view ending) {
  if (!text.ends_with(ending)) return false;
  text.remove_suffix(ending.size());
  return true;
}

std::optional<PlannedStretch> stretch_in(std::string_view word) {
  const std::size_t at = word.find('@');
  if (at == word.npos) return std::nullopt;
  std::string_view hours = word.substr(0, at);
  std::string_view rest = word.substr(at + 1);
  take_ending(hours, "h");
  PlannedStretch stretch;
  double unit = 1.0;
  if (take_ending(rest, "%")) {
    stretch.creeping = true;
    unit = 0.01;
  } else if (take_ending(rest, "kn")) {
    unit = mps_from_kn(1.0);
  } else if (!take_ending(rest, "m/s")) {
    return std::nullopt;
  }
  const std::optional<double> duration_h = plain_number(hours);
  const std::optional<double> amount = plain_number(rest);
  if (!duration_h || !amount) return std::nullopt;
  stretch.duration_h = *duration_h;
  (stretch.creeping ? stretch.thrust_frac : stretch.wind_mps) = unit * *amount;
  return stretch;
}

std::string wrong_with(const PlannedStretch& stretch, std::string_view word) {
  const std::string said = "\"" + std::string(word) + "\": ";
  if (!(stretch.duration_h > 0.0)) return said + "a stretch takes more than no time.";
  if (!(stretch.wind_mps >= 0.0 && stretch.wind_mps <= kMostPlannedWind_mps)) {
    return said + "wind is 0 to 35 m/s (68 kn).";
  }
  if (!(stretch.thrust_frac >= 0.0 && stretch.thrust_frac <= 1.0)) {
    return said + "thrust is 0 to 100 %.";
  }
  return {};
}

}  // namespace

DayPlanRead read_day_plan(std::string_view text) {
  DayPlanRead read;
  double sum_h = 0.0;
  while (!text.empty()) {
    const std::size_t start = text.find_first_not_of(' ');
    if (start == text.npos) break;
    const std::size_t end = std::min(text.find(' ', start), text.size());
    const std::string_view word = text.substr(start, end - start);
    text.remove_prefix(end);
    const std::optional<PlannedStretch> stretch = stretch_in(word);
    if (!stretch) {
      return {.message = "\"" + std::string(word) + "\" is no stretch; write 2h@8kn, 2h@4m/s or 0.5h@50%."};
    }
    if (std::string wrong = wrong_with(*stretch, word); !wrong.empty()) return {.message = wrong};
    sum_h += stretch->duration_h;
    read.stretches.push_back(*stretch);
    if (read.stretches.size() > kMostStretches) return {.message = "More than 24 stretches are not needed."};
  }
  if (read.stretches.empty()) return {.message = "Nothing is planned here; write 2h@8kn 0.5h@50%."};
  if (sum_h > kMostDay_h) return {.message = "A day has 24 hours."};
  return read;
}

}  // namespace thole
