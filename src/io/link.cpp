#include "io/link.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "base/edition.h"
#include "io/base64url.h"
#include "io/cbor.h"
#include "io/crc32.h"
#include "io/limits.h"
#include "io/text.h"
#include "job/fields.h"

namespace thole {
namespace {

constexpr std::size_t kCheckBytes = 4;
constexpr std::int64_t kMostFieldNumber = 1'000'000;

std::string check_sum(std::string_view bytes) {
  const std::uint32_t sum = crc32(bytes);
  std::string text;
  for (int shift = 24; shift >= 0; shift -= 8) text += static_cast<char>((sum >> shift) & 0xFFu);
  return text;
}

// A decimal quantum has a whole number of counts to the unit, and dividing by that gives the number
// that was typed: 760 / 100 is 7.6, 760 * 0.01 is not.
double value_of(const Field& field, std::int64_t count) {
  const double per_unit = std::round(1.0 / field.quantum);
  const bool whole = per_unit >= 1.0 && std::abs(per_unit * field.quantum - 1.0) < 1e-9;
  const double number = static_cast<double>(count);
  return whole ? number / per_unit : number * field.quantum;
}

std::int64_t count_of(const Field& field, double value) {
  return std::llround(value / field.quantum);
}

// Rounding to the quantum may step over an end of the range; that is not the link's fault.
double inside_range(const Field& field, double value) {
  const double slack = 0.5 * field.quantum * (1.0 + 1e-9);
  if (value < field.min && value >= field.min - slack) return field.min;
  if (value > field.max && value <= field.max + slack) return field.max;
  return value;
}

bool travels(const Field& field, const Job& job) {
  return field.access.origin(job) == Origin::given &&
         (field.access.is_text() || range_message(field, field.access.get(job)).empty());
}

// --- reading ------------------------------------------------------------------------------------

// What follows "job=" up to the end or the next "&", without blanks and line breaks, without the
// punctuation that a sentence hangs on. A text without "job=" is taken for the payload itself.
std::string payload_of(std::string_view text) {
  for (const std::string_view mark : {"job=", "job%3D", "job%3d"}) {
    const std::size_t at = text.find(mark);
    if (at == text.npos) continue;
    text.remove_prefix(at + mark.size());
    break;
  }
  text = text.substr(0, text.find('&'));
  std::string payload;
  for (const char c : text) {
    if (c != ' ' && c != '\t' && c != '\r' && c != '\n') payload += c;
  }
  while (!payload.empty() && !is_base64url(payload.back())) payload.pop_back();
  return payload;
}

// One pass over the bytes. Values go into `job`, what is wrong with single ones into `issues`.
class LinkReader {
 public:
  LinkReader(std::string_view bytes, LinkRead& read) : cbor_(bytes), read_(read) {}

  CborReader::State run() {
    schema_ = cbor_.integer();
    read_.edition =
        static_cast<int>(std::min<std::int64_t>(std::max<std::int64_t>(cbor_.integer(), 0), 9999));
    // Links of the first editions held a map of field numbers; those of today a list, in which each
    // number stands as the step from the one before.
    const bool steps = cbor_.next_is_list();
    const std::uint64_t count = steps ? cbor_.list() : cbor_.map();
    if (steps && count % 2 != 0) return CborReader::State::malformed;
    const std::uint64_t pair_count = steps ? count / 2 : count;
    std::int64_t previous = steps ? 0 : -1;
    for (std::uint64_t i = 0; i < pair_count && cbor_.state() == CborReader::State::sound; ++i) {
      const std::int64_t key = cbor_.integer();
      if (cbor_.state() != CborReader::State::sound) break;
      if (key > kMostFieldNumber) return CborReader::State::malformed;
      const std::int64_t number = steps ? previous + key : key;
      if (number <= previous) return CborReader::State::malformed;  // keys ascend
      previous = number;
      value(number);
    }
    return cbor_.state();
  }

  std::int64_t schema() const { return schema_; }
  std::string_view rest() const { return cbor_.rest(); }

 private:
  void value(std::int64_t number) {
    const bool is_text = cbor_.next_is_text();
    const std::string_view text = is_text ? cbor_.text() : std::string_view{};
    const std::int64_t count = is_text ? 0 : cbor_.integer();
    if (cbor_.state() != CborReader::State::sound) return;
    const Field* field = number <= kMostFieldNumber ? find_field(static_cast<int>(number)) : nullptr;
    if (field == nullptr) {
      complain(Severity::warning, "field " + std::to_string(number),
               "Made with a newer version: field " + std::to_string(number) +
                   " is not known here and was left out.");
    } else if (is_text != (field->access.is_text())) {
      complain(Severity::error, field->path(), std::string(field->label) + " cannot be read.");
    } else if (is_text) {
      set_text(*field, text);
    } else {
      set_number(*field, count);
    }
  }

  void set_text(const Field& field, std::string_view text) {
    if (plain_line(text, most_text_bytes(field)) != text) {
      complain(Severity::error, field.path(),
               std::string(field.label) + " must be one line of at most " +
                   std::to_string(most_text_bytes(field)) + " bytes; it was left out.");
      return;
    }
    field.access.set_text(read_.job, text);
    field.access.set_origin(read_.job, Origin::given);
  }

  void set_number(const Field& field, std::int64_t count) {
    const double value = inside_range(field, value_of(field, count));
    const std::string message = range_message(field, value);
    if (!message.empty()) {
      complain(Severity::error, field.path(), message + " The value was left out.");
      return;
    }
    field.access.set(read_.job, value);
    field.access.set_origin(read_.job, Origin::given);
  }

  void complain(Severity severity, std::string field, std::string message) {
    constexpr std::size_t kMostIssues = 50;
    if (read_.issues.size() >= kMostIssues) return;
    read_.issues.push_back({severity, std::move(field), std::move(message)});
  }

  CborReader cbor_;
  LinkRead& read_;
  std::int64_t schema_ = 0;
};

// The two numbers in front tell what a link was made with.
void judge_versions(std::int64_t schema, int edition, Issues& issues) {
  if (schema > kSchema) {
    issues.push_back(
        {Severity::error, "schema",
         "Made with a newer version of Thole. What this one knows was read; the rest is "
         "missing."});
  }
  if (edition < kEngineEdition) {
    issues.push_back({Severity::note, "edition",
                      "Made with older figures (edition " + std::to_string(edition) +
                          "); results may differ from those its sender saw."});
  } else if (edition > kEngineEdition) {
    issues.push_back({Severity::warning, "edition",
                      "Made with newer figures (edition " + std::to_string(edition) +
                          "); results may differ from those its sender saw."});
  }
}

LinkRead refused(std::string message) {
  LinkRead read;
  read.issues.push_back({Severity::error, "", std::move(message)});
  return read;
}

constexpr std::string_view kCutOff =
    "This link is cut off. Ask for it again, whole; what is left was not used.";
constexpr std::string_view kAltered =
    "This link was altered on its way. Ask for it again, as it was copied.";

// A prefix of what the writer makes ends within an item or within the check sum.
bool is_cut_off(std::string_view bytes) {
  LinkRead unused;
  LinkReader reader(bytes, unused);
  const CborReader::State state = reader.run();
  return state == CborReader::State::ended ||
         (state == CborReader::State::sound && reader.rest().size() < kCheckBytes);
}

}  // namespace

std::string write_link(const Job& job) {
  std::uint64_t pair_count = 0;
  for (const Field& field : all_fields()) {
    if (travels(field, job)) ++pair_count;
  }
  CborWriter cbor;
  cbor.integer(kSchema);
  cbor.integer(kEngineEdition);
  cbor.list(2 * pair_count);
  int previous = 0;
  for (const Field& field : all_fields()) {  // in ascending order of their numbers
    if (!travels(field, job)) continue;
    cbor.integer(field.number - previous);
    previous = field.number;
    if (field.access.is_text()) {
      cbor.text(plain_line(field.access.get_text(job), most_text_bytes(field)));
    } else {
      cbor.integer(count_of(field, field.access.get(job)));
    }
  }
  return "job=" + to_base64url(cbor.bytes() + check_sum(cbor.bytes()));
}

LinkRead read_link(std::string_view address_or_fragment) {
  if (address_or_fragment.size() > kMostLinkBytes) {
    return refused("This link is too long to be one of Thole's.");
  }
  std::string payload = payload_of(address_or_fragment);
  if (payload.empty()) return refused("There is no job in this link.");
  const bool named = address_or_fragment.find("job") != address_or_fragment.npos;
  const auto broken = [named](std::string_view why) {
    return refused(std::string(named ? why : "This is not a whole link with a job in it."));
  };
  const std::optional<std::string> bytes = from_base64url(payload);
  if (!bytes) {  // a strange character; or bits left over: cut off within a group of four, or
                 // altered
    if (!std::all_of(payload.begin(), payload.end(), is_base64url)) return broken(kAltered);
    payload.resize(payload.size() / 4 * 4);
    return broken(is_cut_off(*from_base64url(payload)) ? kCutOff : kAltered);
  }
  const std::string_view whole = *bytes;
  const std::size_t content = whole.size() > kCheckBytes ? whole.size() - kCheckBytes : 0;
  if (content == 0 || check_sum(whole.substr(0, content)) != whole.substr(content)) {
    return broken(is_cut_off(whole) ? kCutOff : kAltered);
  }
  LinkRead read;
  LinkReader reader(whole.substr(0, content), read);
  const CborReader::State state = reader.run();
  if (state != CborReader::State::sound || !reader.rest().empty() || reader.schema() < 1) {
    return broken(kAltered);
  }
  judge_versions(reader.schema(), read.edition, read.issues);
  return read;
}

}  // namespace thole
