#pragma once

// What stands on a foredeck, as one line of text: what it is, where its middle is, how large it is.

#include <string>
#include <string_view>
#include <vector>

namespace thole {

enum class DeckItemKind { roller, cleat, hatch, lid, windlass, pulpit, post, seat, other };

// A box on the deck, its sides along and across the boat.
struct DeckItem {
  DeckItemKind kind = DeckItemKind::other;
  double aft_m = 0.0;        // of the stem, its middle; forward of it negative
  double starboard_m = 0.0;  // of the centreline, its middle; port is negative
  double length_m = 0.0;     // fore and aft
  double width_m = 0.0;      // athwart
  double height_m = 0.0;     // above the deck

  bool operator==(const DeckItem&) const = default;
};

std::string_view word(DeckItemKind kind);  // "anchor roller", "hatch" ...
std::string_view key(DeckItemKind kind);   // as it is typed: "roller"

// Needs the room above it to be opened.
bool opens(DeckItemKind kind);

// Reads "kind@aft,starboard:length x width x height" in metres, blanks between one and the next, as in
// "roller@0.1,0:0.4x0.12x0.15 cleat@0.8,-0.45:0.2x0.06x0.08 hatch@1.5,0:0.5x0.5x0.03": up to 24, each
// within 6 m of the stem and 3 m of the centreline, every size above 0 and at most 3 m. Decimals have a
// point. Not understood or out of range: `message` is one sentence.
struct DeckItemsRead {
  std::vector<DeckItem> items{};
  std::string message{};  // empty: it was understood
};
DeckItemsRead read_deck_items(std::string_view text);

}  // namespace thole
