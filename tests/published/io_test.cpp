// Encodings and conversions against the examples that their documents print. Exact: no tolerance
// unless a row says so.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/units.h"
#include "io/base64url.h"
#include "io/cbor.h"
#include "io/crc32.h"
#include "io/measure.h"
#include "io/text.h"
#include "support.h"

using namespace thole;

namespace {

std::string from_hex(std::string_view hex) {
  std::string bytes;
  for (std::size_t i = 0; i + 1 < hex.size(); i += 2) {
    bytes += static_cast<char>(std::stoi(std::string(hex.substr(i, 2)), nullptr, 16));
  }
  return bytes;
}

double measured(std::string_view text, std::string_view unit, System system = System::metric) {
  std::string message;
  const std::optional<double> value = read_measure(text, unit, system, &message);
  CHECK_MESSAGE(value.has_value(), text, ": ", message);
  return value.value_or(-1e9);
}

}  // namespace

TEST_SUITE("published") {
  // RFC 4648 section 10, test vectors, the padding left off as section 3.2 allows.
  TEST_CASE("base64 [rfc-4648-2006 section 10]") {
    struct Row {
      std::string_view bytes, text;
    };
    const Row rows[] = {
        {"", ""},           {"f", "Zg"},          {"fo", "Zm8"},         {"foo", "Zm9v"},
        {"foob", "Zm9vYg"}, {"fooba", "Zm9vYmE"}, {"foobar", "Zm9vYmFy"}};
    for (const Row& row : rows) {
      CAPTURE(row.bytes);
      CHECK(to_base64url(row.bytes) == row.text);
      CHECK(from_base64url(row.text) == std::string(row.bytes));
    }
  }

  // RFC 4648 section 9: 0x14fb9c03d97e is "FPucA9l+"; table 2 of section 5 has "-" for 62 and "_"
  // for 63.
  TEST_CASE("base64url alphabet [rfc-4648-2006 sections 5 and 9]") {
    CHECK(to_base64url(from_hex("14fb9c03d97e")) == "FPucA9l-");
    CHECK(to_base64url(from_hex("14fb9c03d9")) == "FPucA9k");
    CHECK(to_base64url(from_hex("14fb9c03")) == "FPucAw");
    CHECK(to_base64url(from_hex("ff")) == "_w");
  }

  // RFC 8949 appendix A, the rows that the link uses.
  TEST_CASE("CBOR integers [rfc-8949-2020 appendix A]") {
    struct Row {
      std::int64_t value;
      std::string_view hex;
    };
    const Row rows[] = {{0, "00"},
                        {1, "01"},
                        {10, "0a"},
                        {23, "17"},
                        {24, "1818"},
                        {25, "1819"},
                        {100, "1864"},
                        {1000, "1903e8"},
                        {1000000, "1a000f4240"},
                        {1000000000000, "1b000000e8d4a51000"},
                        {-1, "20"},
                        {-10, "29"},
                        {-100, "3863"},
                        {-1000, "3903e7"}};
    for (const Row& row : rows) {
      CAPTURE(row.value);
      CborWriter writer;
      writer.integer(row.value);
      CHECK(writer.bytes() == from_hex(row.hex));
      const std::string bytes = from_hex(row.hex);
      CborReader reader(bytes);
      CHECK(reader.integer() == row.value);
      CHECK(reader.state() == CborReader::State::sound);
      CHECK(reader.rest().empty());
    }
  }

  TEST_CASE("CBOR text and maps [rfc-8949-2020 appendix A]") {
    struct Row {
      std::string_view value, hex;
    };
    const Row rows[] = {{"", "60"},
                        {"a", "6161"},
                        {"IETF", "6449455446"},
                        {"\"\\", "62225c"},
                        {"\u00fc", "62c3bc"},
                        {"\u6c34", "63e6b0b4"},
                        {"\U00010151", "64f0908591"}};
    for (const Row& row : rows) {
      CAPTURE(row.hex);
      CborWriter writer;
      writer.text(row.value);
      CHECK(writer.bytes() == from_hex(row.hex));
      const std::string bytes = from_hex(row.hex);
      CborReader reader(bytes);
      CHECK(reader.next_is_text());
      CHECK(reader.text() == row.value);
    }
    CborWriter map;  // {1: 2, 3: 4}
    map.map(2);
    for (const int item : {1, 2, 3, 4}) map.integer(item);
    CHECK(map.bytes() == from_hex("a201020304"));
  }

  // RFC 8949 section 4.2.1 and appendix F: what is not shortest, not finite or not there is
  // refused.
  TEST_CASE("CBOR that is not well formed or not the shortest [rfc-8949-2020]") {
    for (const std::string_view hex : {"1800", "1817", "190001", "1a0000ffff", "1b00000000ffffffff",
                                       "1c", "1d", "1e", "1f", "1bffffffffffffffff"}) {
      CAPTURE(hex);
      const std::string bytes = from_hex(hex);
      CborReader reader(bytes);
      reader.integer();
      CHECK(reader.state() == CborReader::State::malformed);
    }
    for (const std::string_view hex :
         {"", "18", "19", "1a", "1b", "1901", "1a0102", "1b01020304050607"}) {
      CAPTURE(hex);
      const std::string bytes = from_hex(hex);
      CborReader reader(bytes);
      reader.integer();
      CHECK(reader.state() == CborReader::State::ended);
    }
    const std::string text = from_hex("6449");  // four bytes promised, one there
    CborReader reader(text);
    CHECK(reader.text().empty());
    CHECK(reader.state() == CborReader::State::ended);
  }

  // The check value that catalogues of CRC parameters print for CRC-32/ISO-HDLC: the digits 1 to 9.
  TEST_CASE("CRC-32 check value [common practice]") {
    CHECK(crc32("123456789") == 0xCBF43926u);
    CHECK(crc32("") == 0u);
  }

  // RFC 3629 section 3 and 10: what is not UTF-8.
  TEST_CASE("UTF-8 [rfc-3629-2003]") {
    for (const std::string_view good :
         {"", "plain", "\u00fc", "\u6c34", "\U00010151", "\U0010FFFF"}) {
      CHECK(is_utf8(good));
    }
    for (const std::string_view hex : {"c0af", "c1bf", "e08080", "f08080af", "eda080", "edbfbf",
                                       "f4908080", "ff", "80", "c3", "e6b0"}) {
      CAPTURE(hex);
      CHECK_FALSE(is_utf8(from_hex(hex)));
    }
  }

  // Exact by definition (international foot, pound, nautical mile; standard gravity). Recalled.
  TEST_CASE("typed measures [definition, from memory]") {
    CHECK(measured("1 ft", "m") == 0.3048);
    CHECK(measured("1 in", "mm") == 25.4);
    CHECK(measured("1 lb", "kg") == 0.45359237);
    CHECK(measured("1 lbf", "N") == 4.4482216152605);
    CHECK(measured("1 nmi", "m") == 1852.0);
    CHECK(measured("3600 kn", "mps") == rel(1852.0, 1e-14));
    CHECK(measured("1 mph", "mps") == 0.44704);
    CHECK(measured("212 F", "C") == rel(100.0, 1e-14));
    CHECK(measured("-40 F", "C") == rel(-40.0, 1e-14));
    CHECK(measured("1 sq ft", "m2") == rel(0.09290304, 1e-14));
    CHECK(measured("1 sq in", "cm2") == rel(6.4516, 1e-14));
    CHECK(measured("1 cu ft", "m3") == rel(0.028316846592, 1e-14));
  }

  // One pound-force per square inch is 6894.757 Pa, one foot pound-force 1.355818 N m (seven
  // figures, as tables print them; recalled).
  TEST_CASE("stress and torque [from memory]") {
    CHECK(measured("1 ksi", "MPa") == rel(6.894757, 1e-7));
    CHECK(measured("1 lbf ft", "Nm") == rel(1.355818, 4e-7));
  }
}
