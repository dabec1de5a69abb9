#pragma once

// The field of a twisted pair at many places: the same wires as circuit_of() draws, in a fraction of the time.

#include <array>
#include <cstddef>
#include <span>
#include <vector>

#include "calc/compass/compass.h"

namespace thole {

// Between two conductors of one current lies a strip of magnetic dipoles, square to it and to the way. Seen from
// farther than 1.5 times its length (and 32 times the spacing), a stretch of the strip is its dipole density,
// integrated over the stretch against the eight polynomials of Gauss and Legendre's points: the twist's turns,
// which cancel nearly, are in those integrals, so that a stretch may be as long as it is far. What is nearer is
// halved, down to one turn, and that is summed wire by wire as wire_field() does. Stretches are closed loops; the
// short pieces between them cancel.
//
// Within 1e-3 of disturbance(), or of what turns a heading by a degree where that is more.
// Source: kBiotSavartSegment; a dipole is the limit of a small loop.
class TwistField {
 public:
  // Of a twisted pair; of any other circuit nothing.
  explicit TwistField(const Circuit& circuit);
  bool empty() const { return spans_.empty(); }
  Disturbance at(Place place) const;

 private:
  static constexpr std::size_t kNodes = 8;
  struct Vector {
    double x = 0.0;
    double y = 0.0;
    double z = 0.0;
  };
  struct Dipoles {  // in A m2: of the twist, and of the one that is turned by a quarter
    Vector at{};
    Vector straight{};
    Vector turned{};
  };
  struct Span {
    Vector middle{};
    double beyond2_m2 = 0.0;  // farther than the root of it, the dipoles serve
    int left = -1;            // its halves; -1: one turn
    int right = -1;
    std::array<Dipoles, kNodes> dipoles{};
    std::array<Wire, 2> loops{};  // of one turn
  };
  struct Corner {  // the loop between two legs: two triangles of opposite turn
    std::array<Dipoles, 2> dipoles{};
    std::array<Wire, 2> loops{};
    double beyond2_m2 = 0.0;
  };
  struct Ladder;
  struct Bases {
    std::array<double, kNodes> value{};
    std::array<double, kNodes> slope{};
  };

  const std::vector<Bases>& bases_of(std::size_t step_count);
  int build(const Ladder& ladder, std::size_t first, std::size_t last, std::size_t leaf_count);
  void add(int span, Vector here, Disturbance& sum) const;
  // B = mu0 / (4 pi) (3 (m r) r / r^5 - m / r^3), of each.
  static void add_dipoles(std::span<const Dipoles> dipoles, Vector here, Disturbance& sum);

  std::vector<Span> spans_{};
  std::vector<int> legs_{};
  std::vector<Corner> corners_{};
  std::vector<Bases> bases_{};
};

}  // namespace thole
