#include "data/igrf.h"

#include <array>

namespace thole {
namespace {

// kIgrf14, with the yearly change of kIgrf14Forecast.
constexpr std::array kTerms{
    IgrfTerm{1, 0, -29350.0, 0.0, 12.6, 0.0},
    IgrfTerm{1, 1, -1410.3, 4545.5, 10.0, -21.5},
    IgrfTerm{2, 0, -2556.2, 0.0, -11.2, 0.0},
    IgrfTerm{2, 1, 2950.9, -3133.6, -5.3, -27.3},
    IgrfTerm{2, 2, 1648.7, -814.2, -8.3, -11.1},
    IgrfTerm{3, 0, 1360.9, 0.0, -1.5, 0.0},
    IgrfTerm{3, 1, -2404.2, -56.9, -4.4, 3.8},
    IgrfTerm{3, 2, 1243.8, 237.6, 0.4, -0.2},
    IgrfTerm{3, 3, 453.4, -549.6, -15.6, -3.9},
    IgrfTerm{4, 0, 894.7, 0.0, -1.7, 0.0},
    IgrfTerm{4, 1, 799.6, 278.6, -2.3, -1.3},
    IgrfTerm{4, 2, 55.8, -134.0, -5.8, 4.1},
    IgrfTerm{4, 3, -281.1, 212.0, 5.4, 1.6},
    IgrfTerm{4, 4, 12.0, -375.4, -6.8, -4.1},
    IgrfTerm{5, 0, -232.9, 0.0, 0.6, 0.0},
    IgrfTerm{5, 1, 369.0, 45.3, 1.3, -0.5},
    IgrfTerm{5, 2, 187.2, 220.0, 0.0, 2.1},
    IgrfTerm{5, 3, -138.7, -122.9, 0.7, 0.5},
    IgrfTerm{5, 4, -141.9, 42.9, 2.3, 1.7},
    IgrfTerm{5, 5, 20.9, 106.2, 1.0, 1.9},
    IgrfTerm{6, 0, 64.3, 0.0, -0.2, 0.0},
    IgrfTerm{6, 1, 63.8, -18.4, -0.3, 0.3},
    IgrfTerm{6, 2, 76.7, 16.8, 0.8, -1.6},
    IgrfTerm{6, 3, -115.7, 48.9, 1.2, -0.4},
    IgrfTerm{6, 4, -40.9, -59.8, -0.8, 0.8},
    IgrfTerm{6, 5, 14.9, 10.9, 0.4, 0.7},
    IgrfTerm{6, 6, -60.8, 72.8, 0.9, 0.9},
    IgrfTerm{7, 0, 79.6, 0.0, -0.1, 0.0},
    IgrfTerm{7, 1, -76.9, -48.9, -0.1, 0.6},
    IgrfTerm{7, 2, -8.8, -14.4, -0.1, 0.5},
    IgrfTerm{7, 3, 59.3, -1.0, 0.5, -0.7},
    IgrfTerm{7, 4, 15.8, 23.5, -0.1, 0.0},
    IgrfTerm{7, 5, 2.5, -7.4, -0.8, -0.9},
    IgrfTerm{7, 6, -11.2, -25.1, -0.8, 0.5},
    IgrfTerm{7, 7, 14.3, -2.2, 0.9, -0.3},
    IgrfTerm{8, 0, 23.1, 0.0, -0.1, 0.0},
    IgrfTerm{8, 1, 10.9, 7.2, 0.2, -0.3},
    IgrfTerm{8, 2, -17.5, -12.6, 0.0, 0.4},
    IgrfTerm{8, 3, 2.0, 11.5, 0.4, -0.3},
    IgrfTerm{8, 4, -21.8, -9.7, -0.1, 0.4},
    IgrfTerm{8, 5, 16.9, 12.7, 0.3, -0.5},
    IgrfTerm{8, 6, 14.9, 0.7, 0.1, -0.6},
    IgrfTerm{8, 7, -16.8, -5.2, 0.0, 0.3},
    IgrfTerm{8, 8, 1.0, 3.9, 0.3, 0.2},
    IgrfTerm{9, 0, 4.7, 0.0, 0.0, 0.0},
    IgrfTerm{9, 1, 8.0, -24.8, 0.0, 0.0},
    IgrfTerm{9, 2, 3.0, 12.1, 0.0, 0.0},
    IgrfTerm{9, 3, -0.2, 8.3, 0.0, 0.0},
    IgrfTerm{9, 4, -2.5, -3.4, 0.0, 0.0},
    IgrfTerm{9, 5, -13.1, -5.3, 0.0, 0.0},
    IgrfTerm{9, 6, 2.4, 7.2, 0.0, 0.0},
    IgrfTerm{9, 7, 8.6, -0.6, 0.0, 0.0},
    IgrfTerm{9, 8, -8.7, 0.8, 0.0, 0.0},
    IgrfTerm{9, 9, -12.8, 9.8, 0.0, 0.0},
    IgrfTerm{10, 0, -1.3, 0.0, 0.0, 0.0},
    IgrfTerm{10, 1, -6.4, 3.3, 0.0, 0.0},
    IgrfTerm{10, 2, 0.2, 0.1, 0.0, 0.0},
    IgrfTerm{10, 3, 2.0, 2.5, 0.0, 0.0},
    IgrfTerm{10, 4, -1.0, 5.4, 0.0, 0.0},
    IgrfTerm{10, 5, -0.5, -9.0, 0.0, 0.0},
    IgrfTerm{10, 6, -0.9, 0.4, 0.0, 0.0},
    IgrfTerm{10, 7, 1.5, -4.2, 0.0, 0.0},
    IgrfTerm{10, 8, 0.9, -3.8, 0.0, 0.0},
    IgrfTerm{10, 9, -2.6, 0.9, 0.0, 0.0},
    IgrfTerm{10, 10, -3.9, -9.0, 0.0, 0.0},
    IgrfTerm{11, 0, 3.0, 0.0, 0.0, 0.0},
    IgrfTerm{11, 1, -1.4, 0.0, 0.0, 0.0},
    IgrfTerm{11, 2, -2.5, 2.8, 0.0, 0.0},
    IgrfTerm{11, 3, 2.4, -0.6, 0.0, 0.0},
    IgrfTerm{11, 4, -0.6, 0.1, 0.0, 0.0},
    IgrfTerm{11, 5, 0.0, 0.5, 0.0, 0.0},
    IgrfTerm{11, 6, -0.6, -0.3, 0.0, 0.0},
    IgrfTerm{11, 7, -0.1, -1.2, 0.0, 0.0},
    IgrfTerm{11, 8, 1.1, -1.7, 0.0, 0.0},
    IgrfTerm{11, 9, -1.0, -2.9, 0.0, 0.0},
    IgrfTerm{11, 10, -0.1, -1.8, 0.0, 0.0},
    IgrfTerm{11, 11, 2.6, -2.3, 0.0, 0.0},
    IgrfTerm{12, 0, -2.0, 0.0, 0.0, 0.0},
    IgrfTerm{12, 1, -0.1, -1.2, 0.0, 0.0},
    IgrfTerm{12, 2, 0.4, 0.6, 0.0, 0.0},
    IgrfTerm{12, 3, 1.2, 1.0, 0.0, 0.0},
    IgrfTerm{12, 4, -1.2, -1.5, 0.0, 0.0},
    IgrfTerm{12, 5, 0.6, 0.0, 0.0, 0.0},
    IgrfTerm{12, 6, 0.5, 0.6, 0.0, 0.0},
    IgrfTerm{12, 7, 0.5, -0.2, 0.0, 0.0},
    IgrfTerm{12, 8, -0.1, 0.8, 0.0, 0.0},
    IgrfTerm{12, 9, -0.5, 0.1, 0.0, 0.0},
    IgrfTerm{12, 10, -0.2, -0.9, 0.0, 0.0},
    IgrfTerm{12, 11, -1.2, 0.1, 0.0, 0.0},
    IgrfTerm{12, 12, -0.7, 0.2, 0.0, 0.0},
    IgrfTerm{13, 0, 0.2, 0.0, 0.0, 0.0},
    IgrfTerm{13, 1, -0.9, -0.9, 0.0, 0.0},
    IgrfTerm{13, 2, 0.6, 0.7, 0.0, 0.0},
    IgrfTerm{13, 3, 0.7, 1.2, 0.0, 0.0},
    IgrfTerm{13, 4, -0.2, -0.3, 0.0, 0.0},
    IgrfTerm{13, 5, 0.5, -1.3, 0.0, 0.0},
    IgrfTerm{13, 6, 0.1, -0.1, 0.0, 0.0},
    IgrfTerm{13, 7, 0.7, 0.2, 0.0, 0.0},
    IgrfTerm{13, 8, 0.0, -0.2, 0.0, 0.0},
    IgrfTerm{13, 9, 0.3, 0.5, 0.0, 0.0},
    IgrfTerm{13, 10, 0.2, 0.6, 0.0, 0.0},
    IgrfTerm{13, 11, 0.4, -0.6, 0.0, 0.0},
    IgrfTerm{13, 12, -0.5, -0.3, 0.0, 0.0},
    IgrfTerm{13, 13, -0.4, -0.5, 0.0, 0.0},
};

constexpr bool complete() {
  std::size_t i = 0;
  for (int degree = 1; degree <= kIgrfDegree; ++degree) {
    for (int order = 0; order <= degree; ++order, ++i) {
      if (i >= kTerms.size() || kTerms[i].degree != degree || kTerms[i].order != order) return false;
    }
  }
  return i == kTerms.size();
}
static_assert(complete());

}  // namespace

std::span<const IgrfTerm> igrf_terms() { return kTerms; }

}  // namespace thole
