#pragma once

// A text as a QR code (ISO/IEC 18004), made by the library qrcodegen: level M, so that a crease or
// a drop on the paper still leaves 15 % to spare. The reader of the picture adds the quiet zone of
// four modules.

#include <cstddef>
#include <string_view>
#include <vector>

namespace thole {

inline constexpr int kQrQuiet = 4;  // modules left light all round

struct Qr {
  int side = 0;              // modules along an edge; 0: the text does not fit
  std::vector<char> dark{};  // row by row from the upper left
  bool at(int x, int y) const {
    return x >= 0 && y >= 0 && x < side && y < side && dark[place(x, y)];
  }
  std::size_t place(int x, int y) const {
    return static_cast<std::size_t>(y) * static_cast<std::size_t>(side) +
           static_cast<std::size_t>(x);
  }
};

// At most 2331 bytes fit at level M.
Qr make_qr(std::string_view text);

}  // namespace thole
