#pragma once

// A feeder piece by piece, as one line of text: the way of the current from the bank's plus to the motor
// and back to the minus, branches beside it by the names of the nodes where they part and meet.
//
//   lug device 5m:4AWG [bow] 1m:6AWG plug motor plug 1m:6AWG [back] 5m:4AWG lug;
//   [-] block jumper block:80% [+]; [bow] load:30W [back]
//
// Pieces stand between blanks, ways between semicolons. [name] is a node; [+] and [-] are the bank's
// posts, where a way begins and ends that names no node there. "3x" before a way lays it three times
// side by side. What follows a piece after a colon is its own: lengths, milliohms, volts, degrees.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace thole {

enum class PieceKind { cable, jumper, lug, plug, device, block, load };

struct TypedPiece {
  PieceKind kind = PieceKind::cable;
  std::string label{};  // "4 AWG 5 m", "Lug 2"
  int from = 0;
  int to = 0;
  std::string conductor{};  // of a cable: "4 AWG"
  double length_m = 0.0;    // of a cable, this one conductor
  std::string device{};     // id in the catalogue
  std::optional<double> ambient_C{};
  std::optional<int> bundled_count{};
  std::optional<double> resistance_ohm{};  // measured; of a load, its own
  std::optional<double> open_circuit_V{};  // of a block, at rest
  std::optional<double> charge_frac{};
  std::optional<double> capacity_Ah{};
  bool motor = false;      // of a load: the motor
  double power_W = 0.0;    // of a load
  double current_A = 0.0;  // of a load
};

inline constexpr int kMostTypedBlocks = 200;
inline constexpr int kMostTypedNodes = 500;
inline constexpr double kMostCable_m = 10e3;

// Node 0 is the bank's minus, node 1 its plus. Without a block of its own the usual bank stands between
// them. Not understood, out of range, open or shorted: `message` is one sentence that names the piece.
struct CircuitRead {
  std::vector<std::string> nodes{};
  std::vector<TypedPiece> pieces{};
  bool has_blocks = false;
  std::string message{};  // empty: it was understood
};
CircuitRead read_circuit(std::string_view text);

}  // namespace thole
