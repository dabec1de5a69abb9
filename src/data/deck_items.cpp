#include "data/deck_items.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "base/number.h"

namespace thole {
namespace {

constexpr std::size_t kMostItems = 24;
constexpr double kFarthestAft_m = 6.0;
constexpr double kFarthestAside_m = 3.0;
constexpr double kLargest_m = 3.0;
constexpr std::string_view kBlanks = " \t;";

struct Kind {
  DeckItemKind kind = DeckItemKind::other;
  std::string_view key{};
  std::string_view word{};
  bool opens = false;
};
constexpr std::array<Kind, 9> kKinds{{{DeckItemKind::roller, "roller", "anchor roller"},
                                      {DeckItemKind::cleat, "cleat", "cleat"},
                                      {DeckItemKind::hatch, "hatch", "hatch", true},
                                      {DeckItemKind::lid, "lid", "locker lid", true},
                                      {DeckItemKind::windlass, "windlass", "windlass"},
                                      {DeckItemKind::pulpit, "pulpit", "pulpit"},
                                      {DeckItemKind::post, "post", "post"},
                                      {DeckItemKind::seat, "seat", "seat"},
                                      {DeckItemKind::other, "other", "other fitting"}}};

const Kind& row_of(DeckItemKind kind) {
  return *std::find_if(kKinds.begin(), kKinds.end(), [&](const Kind& row) { return row.kind == kind; });
}

// A number with a point for decimals: a comma stands between aft and starboard.
std::optional<double> number_in(std::string_view text) {
  return text.find(',') == text.npos ? plain_number(text) : std::nullopt;
}

// What stands before the mark, which is taken off `text` with it; all of it where there is none.
std::string_view up_to(std::string_view& text, char mark) {
  const std::size_t at = text.find(mark);
  const std::string_view head = text.substr(0, at);
  text = at == text.npos ? std::string_view{} : text.substr(at + 1);
  return head;
}

std::string kinds_text() {
  std::string text;
  for (const Kind& row : kKinds) text += (text.empty() ? "" : ", ") + std::string(row.key);
  return text;
}

// Empty: `item` is sound.
std::string wrong_with(const DeckItem& item) {
  if (!(std::abs(item.aft_m) <= kFarthestAft_m)) return "it lies within 6 m of the stem.";
  if (!(std::abs(item.starboard_m) <= kFarthestAside_m)) return "it lies within 3 m of the centreline.";
  for (const double size_m : {item.length_m, item.width_m, item.height_m}) {
    if (!(size_m > 0.0 && size_m <= kLargest_m)) return "length, width and height are above 0 and at most 3 m.";
  }
  return {};
}

std::string read_item(std::string_view word, DeckItem& item) {
  const std::string said = "\"" + std::string(word) + "\"";
  const std::string_view name = up_to(word, '@');
  const auto* const row = std::find_if(kKinds.begin(), kKinds.end(), [&](const Kind& kind) { return kind.key == name; });
  if (row == kKinds.end()) return said + ": write one of " + kinds_text() + " before the @.";
  std::string_view place = up_to(word, ':');
  const std::string_view aft = up_to(place, ',');
  const std::string_view length = up_to(word, 'x');
  const std::string_view width = up_to(word, 'x');
  const std::optional<double> numbers[] = {number_in(aft), number_in(place), number_in(length), number_in(width),
                                           number_in(word)};
  for (const std::optional<double>& number : numbers) {
    if (!number) return said + " is not understood; write cleat@0.8,-0.45:0.2x0.06x0.08 (aft, to starboard: length x width x height, m).";
  }
  item = {row->kind, *numbers[0], *numbers[1], *numbers[2], *numbers[3], *numbers[4]};
  const std::string wrong = wrong_with(item);
  return wrong.empty() ? wrong : said + ": " + wrong;
}

}  // namespace

std::string_view word(DeckItemKind kind) { return row_of(kind).word; }
std::string_view key(DeckItemKind kind) { return row_of(kind).key; }
bool opens(DeckItemKind kind) { return row_of(kind).opens; }

DeckItemsRead read_deck_items(std::string_view text) {
  DeckItemsRead read;
  while (true) {
    const std::size_t from = text.find_first_not_of(kBlanks);
    if (from == text.npos) break;
    text.remove_prefix(from);
    const std::size_t end = std::min(text.find_first_of(kBlanks), text.size());
    DeckItem item;
    const std::string wrong = read_item(text.substr(0, end), item);
    if (!wrong.empty()) return {.message = wrong};
    text.remove_prefix(end);
    read.items.push_back(item);
    if (read.items.size() > kMostItems) return {.message = "More than 24 things on a foredeck are not needed: name those near the motor."};
  }
  if (read.items.empty()) return {.message = "Nothing stands here; write cleat@0.8,-0.45:0.2x0.06x0.08, or leave it out."};
  return read;
}

}  // namespace thole
