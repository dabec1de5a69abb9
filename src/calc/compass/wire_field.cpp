#include "calc/compass/wire_field.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace thole {
namespace {

constexpr double kQuarter_T_m_per_A = 1e-7;  // mu0 / (4 pi), kBiotSavartSegment

struct Arrow3 {
  double x = 0.0;
  double y = 0.0;
  double z = 0.0;
};

Arrow3 between(Place from, Place to) {
  return {to.x_m - from.x_m, to.y_m - from.y_m, to.z_m - from.z_m};
}
double dot(Arrow3 a, Arrow3 b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
Arrow3 cross(Arrow3 a, Arrow3 b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
Arrow3 scaled(Arrow3 a, double by) { return {by * a.x, by * a.y, by * a.z}; }
Arrow3 sum(Arrow3 a, Arrow3 b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
double length(Arrow3 a) { return std::sqrt(dot(a, a)); }
Arrow3 unit(Arrow3 a) { return scaled(a, 1.0 / length(a)); }
Place moved(Place from, Arrow3 by) { return {from.x_m + by.x, from.y_m + by.y, from.z_m + by.z}; }

// A piece from a to b; the distances of its ends from `at` come in, for the next piece needs one
// again.
void add_piece(Place a, Place b, Place at, double to_a, double to_b, double scale, double radius_m,
               FieldVector& field) {
  const Arrow3 along = between(a, b);
  const Arrow3 from_a = between(a, at);
  const Arrow3 round = cross(along, from_a);  // its length: run times the distance from the axis
  const double run2 = dot(along, along);
  double gap = (to_a + to_b) * (to_a + to_b) - run2;  // 0 on the piece and nowhere else
  const double passed = dot(along, from_a);
  const double aside2 = dot(round, round);
  const double within2 = radius_m * radius_m * run2;
  if (aside2 < within2 && passed >= 0.0 && passed <= run2) {  // inside the conductor
    if (!(aside2 > 0.0) || !(gap > 0.0)) return;
    gap *= within2 / aside2;
  }
  const double by = scale * (to_a + to_b) / (to_a * to_b * gap);
  field.x_T += by * round.x;
  field.y_T += by * round.y;
  field.z_T += by * round.z;
}

// Legs of a route that have a length, each with a direction square to it.
struct Piece {
  Place from{};
  Place to{};
  Arrow3 along{};  // unit
  Arrow3 side{};   // unit, square to it
  double run_m = 0.0;
};

// Level, and to port of somebody who walks along; for an upright piece as on the piece before.
Arrow3 level_side(Arrow3 along, const std::vector<Piece>& before) {
  constexpr double kUpright = 1e-6;
  const Arrow3 level{-along.y, along.x, 0.0};
  if (length(level) > kUpright) return unit(level);
  return before.empty() ? Arrow3{0.0, 1.0, 0.0} : before.back().side;
}

// The side of the piece before without its part along this piece: the wires do not turn at a corner.
Arrow3 carried_side(Arrow3 along, const std::vector<Piece>& before) {
  constexpr double kFold = 1e-6;
  if (before.empty()) return level_side(along, before);
  const Arrow3 last = before.back().side;
  const Arrow3 square = sum(last, scaled(along, -dot(last, along)));
  return length(square) > kFold ? unit(square) : level_side(along, {});
}

std::vector<Piece> pieces_of(const PairInput& in) {
  std::vector<Piece> pieces;
  for (std::size_t i = 0; i + 1 < in.route.size(); ++i) {
    const Arrow3 run = between(in.route[i], in.route[i + 1]);
    const double run_m = length(run);
    if (!(run_m > 0.0)) continue;
    const Arrow3 along = scaled(run, 1.0 / run_m);
    const bool twisted = in.lay == FeederLay::twisted;
    pieces.push_back({in.route[i], in.route[i + 1], along,
                    twisted ? carried_side(along, pieces) : level_side(along, pieces), run_m});
  }
  if (in.lay == FeederLay::one_above_other) {
    for (Piece& piece : pieces) piece.side = cross(piece.along, piece.side);
  }
  return pieces;
}

// How far to go aside at a corner so that both pieces keep their spacing; sharper corners are cut
// off.
void add_corner(const Piece& before, const Piece& after, double aside_m, std::vector<Place>& line) {
  constexpr double kSharp = 0.5;
  const double together = 1.0 + dot(before.side, after.side);
  if (together > kSharp) {
    const Arrow3 mitre = scaled(sum(before.side, after.side), aside_m / together);
    line.push_back(moved(before.to, mitre));
  } else {
    line.push_back(moved(before.to, scaled(before.side, aside_m)));
    line.push_back(moved(after.from, scaled(after.side, aside_m)));
  }
}

std::vector<Place> parallel(const std::vector<Piece>& pieces, double aside_m) {
  std::vector<Place> line{moved(pieces.front().from, scaled(pieces.front().side, aside_m))};
  for (std::size_t i = 0; i + 1 < pieces.size(); ++i) add_corner(pieces[i], pieces[i + 1], aside_m, line);
  line.push_back(moved(pieces.back().to, scaled(pieces.back().side, aside_m)));
  return line;
}

// Chords hold sinc^2(pi / pieces) of a turn's fundamental, and so does their field; drawn that much
// wider they have all of it.
double chord_factor() {
  constexpr double kHalfPiece_rad = std::numbers::pi / kPieces_count;
  const double sinc = std::sin(kHalfPiece_rad) / kHalfPiece_rad;
  return 1.0 / (sinc * sinc);
}

std::vector<Place> helix(const std::vector<Piece>& pieces, const PairInput& in, double half_m) {
  const double aside_m = chord_factor() * half_m;
  std::vector<Place> line;
  double gone_m = 0.0;
  for (const Piece& piece : pieces) {
    const Arrow3 other = cross(piece.along, piece.side);
    const int step_count =
        std::max(1, static_cast<int>(std::ceil(piece.run_m / in.pitch_m * kPieces_count)));
    for (int i = 0; i <= step_count; ++i) {
      const double here_m = piece.run_m * i / step_count;
      const double angle_rad =
          in.phase_rad + 2.0 * std::numbers::pi * (gone_m + here_m) / in.pitch_m;
      const Arrow3 off = sum(scaled(piece.side, aside_m * std::cos(angle_rad)),
                             scaled(other, aside_m * std::sin(angle_rad)));
      line.push_back(moved(piece.from, sum(scaled(piece.along, here_m), off)));
    }
    gone_m += piece.run_m;
  }
  return line;
}

constexpr double kMostTurns = 2000.0;  // of a twist; more is a mistake of the unit

bool usable(const PairInput& in, const std::vector<Piece>& pieces) {
  const bool finite = std::all_of(in.route.begin(), in.route.end(), [](Place place) {
    return std::isfinite(place.x_m) && std::isfinite(place.y_m) && std::isfinite(place.z_m);
  });
  if (!finite || pieces.empty() || !(in.spacing_m > 0.0) || !std::isfinite(in.spacing_m))
    return false;
  if (in.lay != FeederLay::twisted) return true;
  double run_m = 0.0;
  for (const Piece& piece : pieces) run_m += piece.run_m;
  return in.pitch_m > 0.0 && run_m / in.pitch_m <= kMostTurns && std::isfinite(in.phase_rad);
}

}  // namespace

FieldVector wire_field(std::span<const Wire> wires, Place at, double conductor_radius_m) {
  FieldVector field;
  for (const Wire& wire : wires) {
    const double scale = 2.0 * kQuarter_T_m_per_A * wire.current_A;
    const auto away_m = [&](Place place) {
      return std::max(length(between(place, at)), conductor_radius_m);
    };
    double to_a = wire.places.empty() ? 0.0 : away_m(wire.places.front());
    for (std::size_t i = 0; i + 1 < wire.places.size(); ++i) {
      const double to_b = away_m(wire.places[i + 1]);
      add_piece(wire.places[i], wire.places[i + 1], at, to_a, to_b, scale, conductor_radius_m,
                field);
      to_a = to_b;
    }
  }
  return field;
}

Wire loop_wire(std::span<const Place> out, std::span<const Place> back, double current_A) {
  Wire wire{.current_A = current_A};
  wire.places.assign(out.begin(), out.end());
  wire.places.insert(wire.places.end(), back.rbegin(), back.rend());
  if (!wire.places.empty()) wire.places.push_back(wire.places.front());
  return wire;
}

Wire pair_wire(const PairInput& in) {
  const std::vector<Piece> pieces = pieces_of(in);
  if (!usable(in, pieces)) return {};
  const double aside_m = 0.5 * in.spacing_m;
  if (in.lay == FeederLay::twisted) {
    return loop_wire(helix(pieces, in, aside_m), helix(pieces, in, -aside_m), in.current_A);
  }
  return loop_wire(parallel(pieces, aside_m), parallel(pieces, -aside_m), in.current_A);
}

}  // namespace thole
