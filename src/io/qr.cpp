#include "io/qr.h"

#include <qrcodegen.h>

#include <algorithm>
#include <cstdint>

namespace thole {

Qr make_qr(std::string_view text) {
  constexpr std::size_t kMostBytes = 2331;  // version 40, level M, ISO/IEC 18004, byte mode
  if (text.size() > kMostBytes) return {};
  std::vector<std::uint8_t> data(qrcodegen_BUFFER_LEN_MAX);
  std::vector<std::uint8_t> code(qrcodegen_BUFFER_LEN_MAX);
  std::copy(text.begin(), text.end(), data.begin());
  constexpr bool kBetterWhereRoom = true;  // a higher level when the code grows no larger by it
  if (!qrcodegen_encodeBinary(data.data(), text.size(), code.data(), qrcodegen_Ecc_MEDIUM,
                              qrcodegen_VERSION_MIN, qrcodegen_VERSION_MAX, qrcodegen_Mask_AUTO,
                              kBetterWhereRoom)) {
    return {};
  }
  Qr qr{.side = qrcodegen_getSize(code.data())};
  qr.dark.resize(qr.place(0, qr.side));
  for (int y = 0; y < qr.side; ++y) {
    for (int x = 0; x < qr.side; ++x) {
      qr.dark[qr.place(x, y)] = qrcodegen_getModule(code.data(), x, y);
    }
  }
  return qr;
}

}  // namespace thole
