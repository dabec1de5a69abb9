#include "data/plate_lines.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "base/number.h"

namespace thole {
namespace {

constexpr double kApart_mm = 1.0;  // nearer places are the same, and less off a line is on it

std::optional<std::string_view> next_word(std::string_view& text) {
  const std::size_t start = text.find_first_not_of(' ');
  if (start == text.npos) return std::nullopt;
  const std::size_t end = std::min(text.find(' ', start), text.size());
  const std::string_view word = text.substr(start, end - start);
  text.remove_prefix(end);
  return word;
}

struct Pair {
  double first = 0.0;
  double second = 0.0;
};
std::optional<Pair> pair_in(std::string_view word, char between) {
  const std::size_t at = word.find(between);
  if (at == word.npos) return std::nullopt;
  const std::optional<double> first = plain_number(word.substr(0, at));
  const std::optional<double> second = plain_number(word.substr(at + 1));
  if (!first || !second) return std::nullopt;
  return Pair{*first, *second};
}

std::string quoted(std::string_view word) { return "\"" + std::string(word) + "\""; }

// A comma parts forward from port here: decimals take a point.
std::optional<BoltPlace> place_in(std::string_view word) {
  if (std::count(word.begin(), word.end(), ',') != 1) return std::nullopt;
  const std::optional<Pair> pair = pair_in(word, ',');
  if (!pair) return std::nullopt;
  return BoltPlace{pair->first, pair->second};
}

bool within_reach(const BoltPlace& place) {
  return place.forward_mm >= 0.0 && place.forward_mm <= kMostPlatePlace_mm &&
         std::abs(place.port_mm) <= kMostPlatePlace_mm;
}
constexpr const char* kReach = " lies outside of any plate: 0 to 1500 mm forward, at most 1500 mm to a side.";

std::optional<CutOut> cut_out_in(std::string_view word) {
  const std::size_t at = word.find('@');
  if (at == word.npos) return std::nullopt;
  const std::optional<BoltPlace> middle = place_in(word.substr(at + 1));
  if (!middle) return std::nullopt;
  const std::string_view size = word.substr(0, at);
  if (const std::optional<Pair> sides = pair_in(size, 'x'))
    return CutOut{.middle = *middle, .length_mm = sides->first, .width_mm = sides->second};
  const std::optional<double> diameter_mm = plain_number(size);
  if (!diameter_mm) return std::nullopt;
  return CutOut{.middle = *middle, .length_mm = *diameter_mm, .width_mm = *diameter_mm, .round = true};
}

double distance_mm(const BoltPlace& a, const BoltPlace& b) {
  return std::hypot(a.forward_mm - b.forward_mm, a.port_mm - b.port_mm);
}

bool on_one_line(const std::vector<BoltPlace>& places) {
  BoltPlace far = places.front();
  for (const BoltPlace& place : places)
    if (distance_mm(place, places.front()) > distance_mm(far, places.front())) far = place;
  const double length_mm = std::max(distance_mm(far, places.front()), 1e-9);
  return std::all_of(places.begin(), places.end(), [&](const BoltPlace& place) {
    const double twice_mm2 = (far.forward_mm - places.front().forward_mm) * (place.port_mm - places.front().port_mm) -
                             (far.port_mm - places.front().port_mm) * (place.forward_mm - places.front().forward_mm);
    return std::abs(twice_mm2) / length_mm < kApart_mm;
  });
}

}  // namespace

PlateLine<OutlineStation> read_outline(std::string_view text) {
  PlateLine<OutlineStation> read;
  while (const std::optional<std::string_view> word = next_word(text)) {
    const std::optional<Pair> pair = pair_in(*word, '/');
    if (!pair) return {.message = quoted(*word) + " is no station of an outline; write forward/half width in mm: 0/110 300/90 450/60."};
    const auto& [forward_mm, half_width_mm] = *pair;
    if (!within_reach({forward_mm, half_width_mm}) || half_width_mm < 0.0)
      return {.message = quoted(*word) + kReach};
    if (!read.items.empty() && forward_mm < read.items.back().forward_mm + kApart_mm)
      return {.message = quoted(*word) + " does not lie ahead of the station before it: list them from aft forward, or the outline crosses itself."};
    read.items.push_back({forward_mm, half_width_mm});
    if (read.items.size() > kMostStations) return {.message = "More than 24 stations of an outline are not needed."};
  }
  if (read.items.size() < 2) return {.message = "An outline needs at least two stations: 0/110 450/60."};
  const bool wide = std::any_of(read.items.begin(), read.items.end(),
                                [](const OutlineStation& at) { return at.half_width_mm >= 20.0; });
  if (!wide || read.items.front().half_width_mm < 1.0)
    return {.message = "The outline is too narrow for a plate: half widths are from the middle line to the edge, in mm."};
  return read;
}

PlateLine<BoltPlace> read_bolt_places(std::string_view text) {
  PlateLine<BoltPlace> read;
  while (const std::optional<std::string_view> word = next_word(text)) {
    const std::optional<BoltPlace> place = place_in(*word);
    if (!place) return {.message = quoted(*word) + " is no place of a bolt; write forward,port in mm, starboard negative: 50,70 50,-70 170,70."};
    if (!within_reach(*place)) return {.message = quoted(*word) + kReach};
    for (const BoltPlace& other : read.items)
      if (distance_mm(*place, other) < kApart_mm) return {.message = "Two bolts stand at " + std::string(*word) + "."};
    read.items.push_back(*place);
    if (read.items.size() > kMostBoltPlaces) return {.message = "More than 60 bolts: a plate of this size holds fewer."};
  }
  if (read.items.size() < 3) return {.message = "A plate needs at least three bolts, not all on one line."};
  if (on_one_line(read.items)) return {.message = "All bolts lie on one line: the plate would tip about it. Set one beside it."};
  return read;
}

PlateLine<CutOut> read_cut_outs(std::string_view text) {
  PlateLine<CutOut> read;
  while (const std::optional<std::string_view> word = next_word(text)) {
    const std::optional<CutOut> cut = cut_out_in(*word);
    if (!cut) return {.message = quoted(*word) + " is no cut-out; write length x width @ forward,port in mm, or a diameter: 60x40@200,0 or 50@200,0."};
    if (!(cut->length_mm >= 2.0) || !(cut->width_mm >= 2.0) || cut->length_mm > kMostPlatePlace_mm || cut->width_mm > kMostPlatePlace_mm)
      return {.message = quoted(*word) + ": a cut-out is 2 to 1500 mm long and wide."};
    if (!within_reach(cut->middle)) return {.message = quoted(*word) + kReach};
    read.items.push_back(*cut);
    if (read.items.size() > kMostCutOuts) return {.message = "More than 8 cut-outs leave no plate."};
  }
  if (read.items.empty()) return {.message = "Nothing is cut out here; write 60x40@200,0."};
  return read;
}

std::string bolt_places_text(const std::vector<BoltPlace>& places) {
  std::string text;
  for (const BoltPlace& place : places)
    text += (text.empty() ? "" : " ") + trimmed(fixed(place.forward_mm, 1)) + "," + trimmed(fixed(place.port_mm, 1));
  return text;
}

}  // namespace thole
