#include "base/order.h"

#include <algorithm>
#include <numeric>

namespace thole {

std::vector<std::size_t> places_in_order(
    std::size_t count, const std::function<bool(std::size_t, std::size_t)>& before) {
  std::vector<std::size_t> places(count);
  std::iota(places.begin(), places.end(), std::size_t{0});
  // Equals by their place: half the code of a stable sort, with the same result.
  std::sort(places.begin(), places.end(),
            [&](std::size_t a, std::size_t b) { return before(a, b) || (a < b && !before(b, a)); });
  return places;
}

}  // namespace thole
