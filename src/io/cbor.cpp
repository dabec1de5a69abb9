#include "io/cbor.h"

#include <limits>

namespace thole {
namespace {

// Major types, RFC 8949 section 3.1.
constexpr unsigned kUnsigned = 0;
constexpr unsigned kNegative = 1;
constexpr unsigned kText = 3;
constexpr unsigned kList = 4;
constexpr unsigned kMap = 5;

// Bytes that follow the first one in the shortest form of an argument.
constexpr unsigned argument_bytes(std::uint64_t argument) {
  if (argument < 24) return 0;
  if (argument <= 0xFF) return 1;
  if (argument <= 0xFFFF) return 2;
  return argument <= 0xFFFFFFFF ? 4 : 8;
}

constexpr std::uint64_t kMost = std::numeric_limits<std::int64_t>::max();

}  // namespace

void CborWriter::head(unsigned major, std::uint64_t argument) {
  const unsigned count = argument_bytes(argument);
  const unsigned info = count == 0   ? static_cast<unsigned>(argument)
                        : count == 1 ? 24u
                        : count == 2 ? 25u
                        : count == 4 ? 26u
                                     : 27u;
  bytes_ += static_cast<char>((major << 5) | info);
  for (unsigned i = count; i > 0; --i) {
    bytes_ += static_cast<char>((argument >> (8 * (i - 1))) & 0xFF);
  }
}

void CborWriter::integer(std::int64_t value) {
  if (value >= 0) {
    head(kUnsigned, static_cast<std::uint64_t>(value));
  } else {
    head(kNegative, static_cast<std::uint64_t>(-(value + 1)));
  }
}

void CborWriter::text(std::string_view value) {
  head(kText, value.size());
  bytes_ += value;
}

void CborWriter::list(std::uint64_t count) { head(kList, count); }
void CborWriter::map(std::uint64_t pair_count) { head(kMap, pair_count); }

CborReader::Head CborReader::head() {
  if (state_ != State::sound) return {};
  if (rest_.empty()) {
    state_ = State::ended;
    return {};
  }
  const unsigned first = static_cast<unsigned char>(rest_.front());
  const unsigned info = first & 31u;
  if (info > 27) {
    state_ = State::malformed;
    return {};
  }
  const std::size_t count = info < 24 ? 0 : std::size_t{1} << (info - 24);
  if (rest_.size() < 1 + count) {
    state_ = State::ended;
    return {};
  }
  std::uint64_t argument = info;
  if (count > 0) {
    argument = 0;
    for (std::size_t i = 1; i <= count; ++i) {
      argument = (argument << 8) | static_cast<unsigned char>(rest_[i]);
    }
    if (argument_bytes(argument) != count) {
      state_ = State::malformed;
      return {};
    }
  }
  rest_.remove_prefix(1 + count);
  return {first >> 5, argument};
}

std::int64_t CborReader::integer() {
  const Head item = head();
  if (state_ != State::sound) return 0;
  if (item.major > kNegative || item.argument > kMost) {
    state_ = State::malformed;
    return 0;
  }
  const auto value = static_cast<std::int64_t>(item.argument);
  return item.major == kUnsigned ? value : -1 - value;
}

std::string_view CborReader::text() {
  const Head item = head();
  if (state_ != State::sound) return {};
  if (item.major != kText) {
    state_ = State::malformed;
    return {};
  }
  if (rest_.size() < item.argument) {
    state_ = State::ended;
    return {};
  }
  const std::string_view value = rest_.substr(0, static_cast<std::size_t>(item.argument));
  rest_.remove_prefix(value.size());
  return value;
}

std::uint64_t CborReader::count_in(unsigned major) {
  const Head item = head();
  if (state_ == State::sound && item.major != major) state_ = State::malformed;
  return state_ == State::sound ? item.argument : 0;
}

std::uint64_t CborReader::list() { return count_in(kList); }
std::uint64_t CborReader::map() { return count_in(kMap); }

bool CborReader::next_is_text() const {
  return !rest_.empty() && static_cast<unsigned char>(rest_.front()) >> 5 == kText;
}
bool CborReader::next_is_list() const {
  return !rest_.empty() && static_cast<unsigned char>(rest_.front()) >> 5 == kList;
}

}  // namespace thole
