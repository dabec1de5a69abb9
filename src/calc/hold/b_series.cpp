#include "calc/hold/b_series.h"

#include <array>
#include <cmath>
#include <numbers>
#include <span>

namespace thole {
namespace {

// C J^s (P/D)^t (AE/A0)^u Z^v
struct Piece {
  double share_factor = 0.0;
  int advance_power = 0;
  int pitch_power = 0;
  int area_power = 0;
  int blade_power = 0;
};

constexpr std::array kThrust{
    Piece{0.00880496, 0, 0, 0, 0},   Piece{-0.204554, 1, 0, 0, 0},
    Piece{0.166351, 0, 1, 0, 0},     Piece{0.158114, 0, 2, 0, 0},
    Piece{-0.147581, 2, 0, 1, 0},    Piece{-0.481497, 1, 1, 1, 0},
    Piece{0.415437, 0, 2, 1, 0},     Piece{0.0144043, 0, 0, 0, 1},
    Piece{-0.0530054, 2, 0, 0, 1},   Piece{0.0143481, 0, 1, 0, 1},
    Piece{0.0606826, 1, 1, 0, 1},    Piece{-0.0125894, 0, 0, 1, 1},
    Piece{0.0109689, 1, 0, 1, 1},    Piece{-0.133698, 0, 3, 0, 0},
    Piece{0.00638407, 0, 6, 0, 0},   Piece{-0.00132718, 2, 6, 0, 0},
    Piece{0.168496, 3, 0, 1, 0},     Piece{-0.0507214, 0, 0, 2, 0},
    Piece{0.0854559, 2, 0, 2, 0},    Piece{-0.0504475, 3, 0, 2, 0},
    Piece{0.010465, 1, 6, 2, 0},     Piece{-0.00648272, 2, 6, 2, 0},
    Piece{-0.00841728, 0, 3, 0, 1},  Piece{0.0168424, 1, 3, 0, 1},
    Piece{-0.00102296, 3, 3, 0, 1},  Piece{-0.0317791, 0, 3, 1, 1},
    Piece{0.018604, 1, 0, 2, 1},     Piece{-0.00410798, 0, 2, 2, 1},
    Piece{-0.000606848, 0, 0, 0, 2}, Piece{-0.0049819, 1, 0, 0, 2},
    Piece{0.0025983, 2, 0, 0, 2},    Piece{-0.000560528, 3, 0, 0, 2},
    Piece{-0.00163652, 1, 2, 0, 2},  Piece{-0.000328787, 1, 6, 0, 2},
    Piece{0.000116502, 2, 6, 0, 2},  Piece{0.000690904, 0, 0, 1, 2},
    Piece{0.00421749, 0, 3, 1, 2},   Piece{5.65229e-05, 3, 6, 1, 2},
    Piece{-0.00146564, 0, 3, 2, 2},
};

constexpr std::array kTorque{
    Piece{0.00379368, 0, 0, 0, 0},  Piece{0.00886523, 2, 0, 0, 0},   Piece{-0.032241, 1, 1, 0, 0},
    Piece{0.00344778, 0, 2, 0, 0},  Piece{-0.0408811, 0, 1, 1, 0},   Piece{-0.108009, 1, 1, 1, 0},
    Piece{-0.0885381, 2, 1, 1, 0},  Piece{0.188561, 0, 2, 1, 0},     Piece{-0.00370871, 1, 0, 0, 1},
    Piece{0.00513696, 0, 1, 0, 1},  Piece{0.0209449, 1, 1, 0, 1},    Piece{0.00474319, 2, 1, 0, 1},
    Piece{-0.00723408, 2, 0, 1, 1}, Piece{0.00438388, 1, 1, 1, 1},   Piece{-0.0269403, 0, 2, 1, 1},
    Piece{0.0558082, 3, 0, 1, 0},   Piece{0.0161886, 0, 3, 1, 0},    Piece{0.00318086, 1, 3, 1, 0},
    Piece{0.015896, 0, 0, 2, 0},    Piece{0.0471729, 1, 0, 2, 0},    Piece{0.0196283, 3, 0, 2, 0},
    Piece{-0.0502782, 0, 1, 2, 0},  Piece{-0.030055, 3, 1, 2, 0},    Piece{0.0417122, 2, 2, 2, 0},
    Piece{-0.0397722, 0, 3, 2, 0},  Piece{-0.00350024, 0, 6, 2, 0},  Piece{-0.0106854, 3, 0, 0, 1},
    Piece{0.00110903, 3, 3, 0, 1},  Piece{-0.000313912, 0, 6, 0, 1}, Piece{0.0035985, 3, 0, 1, 1},
    Piece{-0.00142121, 0, 6, 1, 1}, Piece{-0.00383637, 1, 0, 2, 1},  Piece{0.0126803, 0, 2, 2, 1},
    Piece{-0.00318278, 2, 3, 2, 1}, Piece{0.00334268, 0, 6, 2, 1},   Piece{-0.00183491, 1, 1, 0, 2},
    Piece{0.000112451, 3, 2, 0, 2}, Piece{-2.97228e-05, 3, 6, 0, 2}, Piece{0.000269551, 1, 0, 1, 2},
    Piece{0.00083265, 2, 0, 1, 2},  Piece{0.00155334, 0, 2, 1, 2},   Piece{0.000302683, 0, 6, 1, 2},
    Piece{-0.0001843, 0, 0, 2, 2},  Piece{-0.000425399, 0, 3, 2, 2}, Piece{8.69243e-05, 3, 3, 2, 2},
    Piece{-0.0004659, 0, 6, 2, 2},  Piece{5.54194e-05, 1, 6, 2, 2},
};

double power(double base, int exponent) {
  double product = 1.0;
  for (int i = 0; i < exponent; ++i) product *= base;
  return product;
}

double sum_of(std::span<const Piece> pieces, const Propeller& propeller, double advance_ratio) {
  double sum = 0.0;
  for (const Piece& piece : pieces) {
    sum += piece.share_factor * power(advance_ratio, piece.advance_power) *
           power(propeller.pitch_ratio, piece.pitch_power) *
           power(propeller.area_ratio, piece.area_power) *
           power(propeller.blade_count, piece.blade_power);
  }
  return sum;
}

}  // namespace

OpenWater open_water(const Propeller& propeller, double advance_ratio) {
  return {.thrust_factor = sum_of(kThrust, propeller, advance_ratio),
          .torque_factor = sum_of(kTorque, propeller, advance_ratio)};
}

double bollard_merit_frac(const Propeller& propeller) {
  using std::numbers::pi;
  const OpenWater rest = open_water(propeller, 0.0);
  if (!(rest.thrust_factor > 0.0) || !(rest.torque_factor > 0.0)) return 0.0;
  return std::pow(rest.thrust_factor, 1.5) / (2.0 * pi * rest.torque_factor * std::sqrt(pi / 2.0));
}

}  // namespace thole
