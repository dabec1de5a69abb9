#include "data/fitted_blocks.h"

#include <algorithm>
#include <array>
#include <utility>

#include "base/number.h"
#include "data/batteries.h"

namespace thole {
namespace {

constexpr std::string_view kWhatIsUnderstood = "write 100Ah, 2y, agm, 12V, 4mohm or 90%.";

struct ChemistryWord {
  std::string_view word{};
  Chemistry chemistry = Chemistry::agm;
};
constexpr std::array kChemistryWords{
    ChemistryWord{"flooded", Chemistry::flooded}, ChemistryWord{"agm", Chemistry::agm},
    ChemistryWord{"gel", Chemistry::gel}, ChemistryWord{"lifepo4", Chemistry::lifepo4},
    ChemistryWord{"lfp", Chemistry::lifepo4}, ChemistryWord{"lithium", Chemistry::lifepo4}};

constexpr bool is_figure(char c) { return (c >= '0' && c <= '9') || c == '.' || c == '-' || c == '+'; }

std::string lower(std::string_view text) {
  std::string out(text);
  for (char& c : out) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return out;
}

// A figure with the unit behind it, blanks between them or not, or a word alone.
std::string_view take_word(std::string_view& text) {
  std::size_t end = 0;
  while (end < text.size() && is_figure(text[end])) ++end;
  if (end > 0) {
    const std::size_t unit = text.find_first_not_of(' ', end);
    if (unit != text.npos && !is_figure(text[unit])) end = unit;
  }
  while (end < text.size() && text[end] != ' ') ++end;
  const std::string_view word = text.substr(0, end);
  text.remove_prefix(end);
  return word;
}

std::string within(std::string_view what, std::string_view range) {
  return std::string(what) + " is " + std::string(range) + ".";
}

// Empty when the word was put into the block.
std::string put(SaidBlock& block, std::string_view word) {
  const std::string said = lower(word);
  const auto kind = std::find_if(kChemistryWords.begin(), kChemistryWords.end(),
                                 [&](const ChemistryWord& it) { return it.word == said; });
  if (kind != kChemistryWords.end()) {
    block.chemistry = kind->chemistry;
    return {};
  }
  std::size_t end = 0;
  while (end < said.size() && is_figure(said[end])) ++end;
  const std::optional<double> number = plain_number(std::string_view(said).substr(0, end));
  const std::size_t at = std::min(said.find_first_not_of(' ', end), said.size());
  const std::string_view unit = std::string_view(said).substr(at);
  if (!number) return "this is nothing said of a block; " + std::string(kWhatIsUnderstood);
  const double value = *number;
  const auto keep = [&](std::optional<double>& target, double si, double least, double most,
                        std::string_view what, std::string_view range) {
    if (!(si >= least && si <= most)) return within(what, range);
    target = si;
    return std::string();
  };
  if (unit == "ah") {
    if (!(value >= 5.0 && value <= 600.0)) return within("the capacity of a block", "5 to 600 Ah");
    block.capacity_Ah = value;
    return {};
  }
  if (unit == "y" || unit == "yr") {
    return keep(block.age_years_count, value, 0.0, 30.0, "the age of a block", "0 to 30 years");
  }
  if (unit == "v") {
    return keep(block.nominal_V, value, 2.0, 60.0, "the voltage of a block", "2 to 60 V");
  }
  if (unit == "mohm") {
    return keep(block.resistance_ohm, 1e-3 * value, 1e-4, 0.1, "the resistance of a block",
                "0.1 to 100 mohm");
  }
  if (unit == "%") {
    return keep(block.charge_frac, 0.01 * value, 0.0, 1.0, "the charge in the morning",
                "0 to 100 %");
  }
  return "this is nothing said of a block; " + std::string(kWhatIsUnderstood);
}

std::string_view trimmed_blanks(std::string_view text) {
  const std::size_t start = text.find_first_not_of(' ');
  if (start == text.npos) return {};
  return text.substr(start, text.find_last_not_of(' ') - start + 1);
}

// One block; a sentence in `message` when it cannot be.
SaidBlock block_in(std::string_view text, std::string& message) {
  SaidBlock block;
  std::string_view rest = text;
  while (message.empty()) {
    rest = trimmed_blanks(rest);
    if (rest.empty()) break;
    const std::string_view word = take_word(rest);
    const std::string wrong = put(block, word);
    if (!wrong.empty()) message = "\"" + std::string(word) + "\": " + wrong;
  }
  if (message.empty() && !(block.capacity_Ah > 0.0)) {
    message = text.empty() ? "A block is missing at a comma or stroke; write 100Ah 2y, 80Ah 5y."
                           : "\"" + std::string(text) + "\": each block needs its amp-hours, as 100Ah.";
  }
  return block;
}

// Calls `each` with the parts of a text between the marks.
template <class Each>
void split(std::string_view text, char mark, Each each) {
  for (;;) {
    const std::size_t end = text.find(mark);
    each(trimmed_blanks(text.substr(0, end)));
    if (end == text.npos) return;
    text.remove_prefix(end + 1);
  }
}

}  // namespace

FittedRead read_fitted(std::string_view text) {
  FittedRead read;
  if (trimmed_blanks(text).empty()) return {.message = "No block is named here; write 100Ah 2y, 80Ah 5y."};
  split(text, '/', [&](std::string_view string) {
    std::vector<SaidBlock> blocks;
    split(string, ',', [&](std::string_view block) {
      if (read.message.empty()) blocks.push_back(block_in(block, read.message));
    });
    read.strings.push_back(std::move(blocks));
  });
  if (!read.message.empty()) return {.message = read.message};
  std::size_t count = 0;
  for (const std::vector<SaidBlock>& string : read.strings) count += string.size();
  const bool parted = read.strings.size() > 1;
  const bool too_long =
      parted && std::any_of(read.strings.begin(), read.strings.end(),
                            [](const auto& string) { return string.size() > kMostInString; });
  if (too_long) return {.message = "A string has 8 blocks at most."};
  if (read.strings.size() > kMostStrings || count > kMostStrings * kMostInString) {
    return {.message = "A bank has 6 strings of 8 blocks at most."};
  }
  return read;
}

std::vector<std::vector<SaidBlock>> strings_of(const FittedRead& read, int series_count,
                                               double motor_V, double nominal_V) {
  if (read.strings.size() != 1) return read.strings;
  constexpr double kNear_frac = 0.9;  // "24 V" is there with 21.6 V
  std::vector<std::vector<SaidBlock>> strings;
  double sum_V = 0.0;
  bool begins = true;
  for (const SaidBlock& block : read.strings.front()) {
    if (begins) {
      strings.emplace_back();
      sum_V = 0.0;
    }
    strings.back().push_back(block);
    const Chemistry kind = block.chemistry.value_or(Chemistry::agm);
    sum_V += named_V(kind, block.nominal_V.value_or(nominal_V));
    begins = series_count > 0
                 ? strings.back().size() >= static_cast<std::size_t>(series_count)
                 : sum_V >= kNear_frac * motor_V;
  }
  return strings;
}

}  // namespace thole
