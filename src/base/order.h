#pragma once

// Putting lists in order, equals as they stood. The sorting itself is there once for all kinds of items: on
// the web each further copy of it travels too.

#include <cstddef>
#include <functional>
#include <utility>
#include <vector>

namespace thole {

// The places 0 ... count - 1, such that `before(a, b)` holds for no b that stands ahead of an a.
std::vector<std::size_t> places_in_order(
    std::size_t count, const std::function<bool(std::size_t, std::size_t)>& before);

template <class Item, class Before>
std::vector<Item> sorted(std::vector<Item> items, Before before) {
  std::vector<Item> out;
  out.reserve(items.size());
  for (const std::size_t i : places_in_order(items.size(), [&](std::size_t a, std::size_t b) {
         return before(items[a], items[b]);
       })) {
    out.push_back(std::move(items[i]));
  }
  return out;
}

}  // namespace thole
