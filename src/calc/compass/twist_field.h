#pragma once

// The field of a twisted pair at many places: the same wires as circuit_of() draws, in a fraction of the time.

#include <memory>

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
  ~TwistField();
  bool empty() const;
  Disturbance at(Place place) const;

 private:
  struct Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace thole
