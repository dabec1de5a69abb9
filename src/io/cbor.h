#pragma once

// What the link needs of CBOR (RFC 8949): integers, text and the heads of lists and maps, in
// the shortest form only (section 4.2.1). Anything else is refused.

#include <cstdint>
#include <string>
#include <string_view>

namespace thole {

class CborWriter {
 public:
  void integer(std::int64_t value);
  void text(std::string_view value);
  void list(std::uint64_t count);      // followed by that many items
  void map(std::uint64_t pair_count);  // followed by that many keys and values
  const std::string& bytes() const { return bytes_; }

 private:
  void head(unsigned major, std::uint64_t argument);
  std::string bytes_{};
};

// Reads item by item. After the first item that is not as expected every call gives an empty value,
// and `state` says why: the bytes ended, or they are something else.
class CborReader {
 public:
  enum class State { sound, ended, malformed };

  explicit CborReader(std::string_view bytes) : rest_(bytes) {}

  std::int64_t integer();
  std::string_view text();
  std::uint64_t list();
  std::uint64_t map();
  bool next_is_text() const;
  bool next_is_list() const;

  State state() const { return state_; }
  std::string_view rest() const { return rest_; }

 private:
  struct Head {
    unsigned major = 0;
    std::uint64_t argument = 0;
  };
  Head head();
  std::uint64_t count_in(unsigned major);

  std::string_view rest_;
  State state_ = State::sound;
};

}  // namespace thole
