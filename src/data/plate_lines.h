#pragma once

// The plate as measured on the boat, each a line of text in millimetres: its outline, where bolts
// stand, what is cut out. Forward is counted from the plate's aft edge, sideways from its middle line,
// positive to port.

#include <string>
#include <string_view>
#include <vector>

namespace thole {

struct OutlineStation {
  double forward_mm = 0.0;
  double half_width_mm = 0.0;
};
struct BoltPlace {
  double forward_mm = 0.0;
  double port_mm = 0.0;
};
// Round when width equals length and `round` is set.
struct CutOut {
  BoltPlace middle{};
  double length_mm = 0.0;  // fore and aft
  double width_mm = 0.0;
  bool round = false;
};

template <class Item>
struct PlateLine {
  std::vector<Item> items{};
  std::string message{};  // one sentence; empty: it was understood
};

inline constexpr double kMostPlatePlace_mm = 1500.0;
inline constexpr std::size_t kMostStations = 24;
inline constexpr std::size_t kMostBoltPlaces = 60;
inline constexpr std::size_t kMostCutOuts = 8;

// "0/110 300/90 450/60": forward / half width there, from aft forward, at least two.
PlateLine<OutlineStation> read_outline(std::string_view text);
// "50,70 50,-70 170,70": forward,port; at least three, not all on one line, none twice.
PlateLine<BoltPlace> read_bolt_places(std::string_view text);
// "60x40@200,0 50@300,40": length x width @ forward,port; one figure: round, of that diameter.
PlateLine<CutOut> read_cut_outs(std::string_view text);

// What read_bolt_places reads back; tenths of a millimetre.
std::string bolt_places_text(const std::vector<BoltPlace>& places);

}  // namespace thole
