#include "data/circuit_line.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <utility>

#include "base/number.h"
#include "base/units.h"
#include "data/conductors.h"

namespace thole {
namespace {

constexpr double kLeastPiece_ohm = 1e-6;
constexpr double kMostPiece_ohm = 1e3;
constexpr double kMostBlock_V = 100.0;
constexpr double kMostBlock_Ah = 5000.0;
constexpr double kMostAir_C = 90.0;
constexpr double kLeastAir_C = -40.0;
constexpr int kMostBundled = 60;
constexpr std::size_t kMostName = 16;
constexpr std::string_view kBlank = " \t\r\n";

using Words = std::vector<std::string_view>;

Words split(std::string_view text, std::string_view at) {
  Words words;
  while (true) {
    const std::size_t start = text.find_first_not_of(at);
    if (start == text.npos) return words;
    const std::size_t end = std::min(text.find_first_of(at, start), text.size());
    words.push_back(text.substr(start, end - start));
    text.remove_prefix(end);
  }
}

std::string quoted(std::string_view word) { return "\"" + std::string(word) + "\""; }
std::string bracketed(std::string_view name) { return "[" + std::string(name) + "]"; }

bool is_node(std::string_view word) { return word.front() == '['; }

// "5m": a number and what it counts.
struct Amount {
  double value = 0.0;
  std::string_view unit{};
};
std::optional<Amount> amount_in(std::string_view word) {
  const std::size_t end = std::min(word.find_first_not_of("0123456789.,-"), word.size());
  const std::optional<double> value = plain_number(word.substr(0, end));
  if (!value) return std::nullopt;
  return Amount{*value, word.substr(end)};
}

// "4AWG" and "25mm2" as the tables have them; empty when it is neither.
std::string conductor_in(std::string_view word) {
  for (const std::string_view family : {"AWG", "awg", "mm2", "mm²"}) {
    if (!word.ends_with(family)) continue;
    const std::string size(word.substr(0, word.size() - family.size()));
    return size + (family[0] == 'm' ? " mm2" : " AWG");
  }
  return {};
}

// What a word may be called, and what it is.
struct Called {
  std::string_view word{};
  PieceKind kind = PieceKind::lug;
  std::string_view label{};
};
constexpr std::array kCalled{
    Called{"jumper", PieceKind::jumper, "Jumper"}, Called{"lug", PieceKind::lug, "Lug"},
    Called{"stud", PieceKind::lug, "Stud"},        Called{"plug", PieceKind::plug, "Plug"},
    Called{"device", PieceKind::device, "Device"}, Called{"switch", PieceKind::device, "Switch"},
    Called{"block", PieceKind::block, "Block"},    Called{"load", PieceKind::load, "Load"},
    Called{"motor", PieceKind::load, "Motor"}};

// One piece of the line: what it is, how many of it, or what is wrong with it.
struct PieceRead {
  TypedPiece piece{};
  int count = 1;
  std::string message{};
};

// Puts one measure of its own into the piece; says what is wrong, or what else would be right.
std::string take_resistance(double value_ohm, TypedPiece& piece) {
  if (!(value_ohm >= kLeastPiece_ohm && value_ohm <= kMostPiece_ohm)) {
    return "a piece has 0.001 mohm to 1000 ohm; leave it out where it has none.";
  }
  piece.resistance_ohm = value_ohm;
  return {};
}

std::string take_length(double length_m, TypedPiece& piece) {
  if (!(length_m > 0.0)) return "a cable is longer than 0 m; leave it out where there is none.";
  if (!(length_m <= kMostCable_m)) return "a cable is 10 km long at most.";
  piece.length_m = length_m;
  return {};
}

std::string take_air(double air_C, TypedPiece& piece) {
  if (!(air_C >= kLeastAir_C && air_C <= kMostAir_C)) return "the air round a cable has -40 to 90 C.";
  piece.ambient_C = air_C;
  return {};
}

std::string take_wires(double count, TypedPiece& piece) {
  if (!(count >= 1.0 && count <= kMostBundled) || count != std::floor(count)) {
    return "a bundle has 1 to 60 wires that carry current.";
  }
  piece.bundled_count = static_cast<int>(count);
  return {};
}

std::string take_volts(double volts_V, TypedPiece& piece) {
  if (!(volts_V > 0.0 && volts_V <= kMostBlock_V)) return "a block has more than 0 V and 100 V at most.";
  piece.open_circuit_V = volts_V;
  return {};
}

std::string take_charge(double percent, TypedPiece& piece) {
  if (!(percent >= 0.0 && percent <= 100.0)) return "a block is charged to 0 to 100 %.";
  piece.charge_frac = 0.01 * percent;
  return {};
}

std::string take_capacity(double capacity_Ah, TypedPiece& piece) {
  if (!(capacity_Ah > 0.0 && capacity_Ah <= kMostBlock_Ah)) return "a block has more than 0 Ah and 5000 Ah at most.";
  piece.capacity_Ah = capacity_Ah;
  return {};
}

std::string take_demand(double value, double TypedPiece::*demand, TypedPiece& piece) {
  if (!(value > 0.0)) return "a load takes more than 0.";
  piece.*demand = value;
  return {};
}

std::string_view usual_of(const TypedPiece& piece) {
  if (piece.kind == PieceKind::cable) return "write 5m:4AWG, and :45C for its air, :4wires for its bundle.";
  if (piece.kind == PieceKind::block) return "write block, block:80%, block:12.4V:9mohm or block:80Ah.";
  if (piece.kind == PieceKind::device) return "write device, device:0.8mohm or device:ID of the catalogue.";
  if (piece.motor) return "the motor has nothing of its own here.";
  if (piece.kind == PieceKind::load) return "write load:30W, load:3A or load:2ohm.";
  return "write lug, plug or jumper, or with its own lug:0.2mohm.";
}

std::string take(std::string_view word, PieceRead& read) {
  TypedPiece& piece = read.piece;
  const PieceKind kind = piece.kind;
  const std::string otherwise(usual_of(piece));
  if (kind == PieceKind::block && word.front() == 'x') {
    const std::optional<double> count = plain_number(word.substr(1));
    if (!count || !(*count >= 1.0 && *count <= kMostTypedBlocks) || *count != std::floor(*count)) {
      return "x1 to x200 blocks stand in a string.";
    }
    read.count = static_cast<int>(*count);
    return {};
  }
  const std::optional<Amount> amount = amount_in(word);
  if (!amount) {
    if (kind != PieceKind::device) return otherwise;
    piece.device = std::string(word);
    return {};
  }
  const auto [value, unit] = *amount;
  if (piece.motor) return otherwise;
  if (kind == PieceKind::cable) {
    if (unit == "m") return take_length(value, piece);
    if (unit == "ft") return take_length(m_from_ft(value), piece);
    if (unit == "C") return take_air(value, piece);
    if (unit == "wires") return take_wires(value, piece);
    return otherwise;
  }
  if (unit == "mohm") return take_resistance(1e-3 * value, piece);
  if (unit == "ohm") return take_resistance(value, piece);
  if (kind == PieceKind::load && unit == "W") return take_demand(value, &TypedPiece::power_W, piece);
  if (kind == PieceKind::load && unit == "A") return take_demand(value, &TypedPiece::current_A, piece);
  if (kind != PieceKind::block) return otherwise;
  if (unit == "V") return take_volts(value, piece);
  if (unit == "%") return take_charge(value, piece);
  if (unit == "Ah") return take_capacity(value, piece);
  return otherwise;
}

// A cable may begin with its length or its size.
PieceRead piece_in(std::string_view word) {
  PieceRead read;
  TypedPiece& piece = read.piece;
  Words own = split(word, ":");
  const auto wrong = [&](std::string why) {
    read.message = quoted(word) + ": " + std::move(why);
    return read;
  };
  const auto size = std::find_if(own.begin(), own.end(), [](std::string_view w) { return !conductor_in(w).empty(); });
  if (size != own.end()) {
    piece.conductor = conductor_in(*size);
    if (find_conductor(piece.conductor) == nullptr) {
      return wrong("the tables have 14AWG to 4/0AWG and 2.5mm2 to 150mm2.");
    }
    own.erase(size);
  } else {
    const auto called = std::find_if(kCalled.begin(), kCalled.end(), [&](const Called& c) { return !own.empty() && c.word == own.front(); });
    if (called == kCalled.end()) {
      const std::optional<Amount> amount = amount_in(word);
      if (amount && amount->unit == "x") return wrong("this stands before a whole way: 2x [bow] 5m:8AWG [back].");
      return wrong("this is no piece; write 5m:4AWG, lug, stud, plug, jumper, device, switch, block, load or motor.");
    }
    piece.kind = called->kind;
    piece.label = std::string(called->label);
    piece.motor = called->word == "motor";
    own.erase(own.begin());
  }
  for (const std::string_view each : own) {
    if (std::string why = take(each, read); !why.empty()) return wrong(std::move(why));
  }
  if (piece.kind == PieceKind::cable) {
    if (!(piece.length_m > 0.0)) return wrong("its length is missing; write 5m:4AWG.");
    piece.label = piece.conductor + " " + trimmed(fixed(piece.length_m, 2)) + " m";
  }
  const bool takes_nothing = piece.power_W == 0.0 && piece.current_A == 0.0 && !piece.resistance_ohm;
  if (piece.kind == PieceKind::load && !piece.motor && takes_nothing) {
    return wrong(std::string(usual_of(piece)));
  }
  return read;
}

// Which nodes are one by what joins them.
class Groups {
 public:
  explicit Groups(std::size_t count) : root_(count) { std::iota(root_.begin(), root_.end(), std::size_t{0}); }
  std::size_t root(int node) const {
    auto at = static_cast<std::size_t>(node);
    while (root_[at] != at) at = root_[at];
    return at;
  }
  bool same(int a, int b) const { return root(a) == root(b); }
  void join(int a, int b) { root_[root(a)] = root(b); }

 private:
  std::vector<std::size_t> root_;
};

class Reader {
 public:
  CircuitRead read(std::string_view text) {
    out_.nodes = {"Bank \u2212", "Bank +"};
    names_ = {"-", "+"};
    for (const std::string_view way : split(text, ";")) {
      const Words words = split(way, kBlank);
      if (words.empty()) continue;
      add_way(words);
      if (!out_.message.empty()) return {.message = out_.message};
    }
    count_labels();
    out_.message = wrong();
    if (!out_.message.empty()) return {.message = out_.message};
    return std::move(out_);
  }

 private:
  void fail(std::string message) {
    if (out_.message.empty()) out_.message = std::move(message);
  }

  int named_node(std::string_view word) {
    const std::string_view name = word.substr(1, word.size() - 2);
    const bool plain = std::all_of(name.begin(), name.end(), [](char c) {
      return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-' || c == '+';
    });
    if (word.size() < 3 || word.back() != ']' || name.size() > kMostName || !plain) {
      fail(quoted(word) + ": a node is named in brackets, by up to 16 letters and digits: [bow].");
      return 0;
    }
    const auto known = std::find(names_.begin(), names_.end(), name);
    if (known != names_.end()) return static_cast<int>(known - names_.begin());
    return add_node(std::string(name), std::string(name));
  }
  int add_node(std::string name, std::string label) {
    names_.push_back(std::move(name));
    out_.nodes.push_back(std::move(label));
    return static_cast<int>(names_.size()) - 1;
  }

  // Pieces one after the other between two nodes.
  void lay(const std::vector<TypedPiece>& stretch, int from, int to) {
    for (std::size_t k = 0; k < stretch.size(); ++k) {
      const bool last = k + 1 == stretch.size();
      TypedPiece piece = stretch[k];
      piece.from = from;
      piece.to = last ? to : add_node("", "");
      from = piece.to;
      out_.pieces.push_back(std::move(piece));
      if (static_cast<int>(names_.size()) > kMostTypedNodes) return fail("More than 500 nodes are not worked out.");
    }
  }

  void close(std::vector<TypedPiece>& stretch, int& here, int node, std::string_view said, int times) {
    if (stretch.empty()) return fail(quoted(said) + ": no piece lies before it; write one between two nodes.");
    if (here == node) return fail(bracketed(names_[static_cast<std::size_t>(node)]) + ": a way from it leads back to it and is shorted; name another node.");
    for (int k = 0; k < times; ++k) {
      if (out_.message.empty()) lay(stretch, here, node);
    }
    stretch.clear();
    here = node;
  }

  void add_way(Words words) {
    int times = 1;
    if (const std::optional<Amount> amount = amount_in(words.front()); amount && amount->unit == "x") {
      if (!(amount->value >= 1.0 && amount->value <= kMostTypedBlocks) || amount->value != std::floor(amount->value)) {
        return fail(quoted(words.front()) + ": a way lies 1x to 200x side by side.");
      }
      times = static_cast<int>(amount->value);
      words.erase(words.begin());
    }
    if (words.empty()) return fail("A way has a piece; write 5m:4AWG or motor.");
    int here = 1;
    if (is_node(words.front())) {
      here = named_node(words.front());
      words.erase(words.begin());
    }
    std::vector<TypedPiece> stretch;
    for (const std::string_view word : words) {
      if (!out_.message.empty()) return;
      if (is_node(word)) {
        const int node = named_node(word);
        if (out_.message.empty()) close(stretch, here, node, word, times);
        continue;
      }
      const PieceRead read = piece_in(word);
      if (!read.message.empty()) return fail(read.message);
      for (int k = 0; k < read.count; ++k) {
        if (k > 0) stretch.push_back({.kind = PieceKind::jumper, .label = "Jumper"});
        stretch.push_back(read.piece);
      }
    }
    if (!out_.message.empty()) return;
    if (!stretch.empty()) return close(stretch, here, 0, words.back(), times);
    if (words.empty()) fail("A way has a piece after its first node; write [bow] load:30W [back].");
  }

  // Of several alike each has its number; nodes without a name are called by what comes before them.
  void count_labels() {
    for (std::size_t k = 0; k < out_.pieces.size(); ++k) {
      const std::string label = out_.pieces[k].label;
      int number = 1;
      const auto alike = [&](const TypedPiece& piece) { return piece.label == label; };
      if (std::none_of(out_.pieces.begin() + static_cast<std::ptrdiff_t>(k) + 1, out_.pieces.end(), alike)) continue;
      const bool cable = out_.pieces[k].kind == PieceKind::cable;
      for (std::size_t j = k; j < out_.pieces.size(); ++j) {
        if (out_.pieces[j].label == label) out_.pieces[j].label = label + (cable ? " no. " : " ") + std::to_string(number++);
      }
    }
    for (const TypedPiece& piece : out_.pieces) {
      std::string& node = out_.nodes[static_cast<std::size_t>(piece.to)];
      if (node.empty()) node = "after " + piece.label;
    }
  }

  std::string wrong() {
    int motors = 0;
    int blocks = 0;
    double cable_m = 0.0;
    Groups joined(names_.size());  // by copper and joints alone
    std::vector<int> ends(names_.size(), 0);
    for (const TypedPiece& piece : out_.pieces) {
      motors += piece.motor ? 1 : 0;
      blocks += piece.kind == PieceKind::block ? 1 : 0;
      cable_m += piece.length_m;
      if (piece.kind != PieceKind::block && piece.kind != PieceKind::load) joined.join(piece.from, piece.to);
      ++ends[static_cast<std::size_t>(piece.from)];
      ++ends[static_cast<std::size_t>(piece.to)];
    }
    out_.has_blocks = blocks > 0;
    if (motors != 1) return motors == 0 ? "The motor is missing; write motor where it stands." : "There is one motor; write load:500W for another.";
    if (blocks > kMostTypedBlocks) return "A bank has 200 blocks at most.";
    if (cable_m > kMostCable_m) return "All cable together is 10 km long at most.";
    if (joined.same(0, 1)) return "The bank is shorted: a way leads from [+] to [-] without a load; put the motor between them.";
    for (const TypedPiece& piece : out_.pieces) {
      const bool drives = piece.kind == PieceKind::block || piece.kind == PieceKind::load;
      if (drives && joined.same(piece.from, piece.to)) return quoted(piece.label) + " is shorted: a way leads round it; name other nodes.";
    }
    for (std::size_t node = 2; node < ends.size(); ++node) {
      if (ends[node] < 2) return bracketed(names_[node]) + " is named once and the circuit is open there; end the way at another node.";
    }
    if (out_.has_blocks && (ends[0] < 2 || ends[1] < 2)) {
      return bracketed(names_[ends[0] < 2 ? 0 : 1]) + ": the circuit is open there; blocks go between [-] and [+], and the feeder from [+] back to [-].";
    }
    return {};
  }

  CircuitRead out_{};
  std::vector<std::string> names_{};  // "": without
};

}  // namespace

CircuitRead read_circuit(std::string_view text) { return Reader().read(text); }

}  // namespace thole
