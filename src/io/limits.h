#pragma once

// How much a document from outside may hold.

#include <cstddef>

namespace thole {

inline constexpr std::size_t kMostJobBytes = 100'000;
inline constexpr std::size_t kMostCatalogueBytes = 1'000'000;
inline constexpr std::size_t kMostLinkBytes = 20'000;
inline constexpr std::size_t kMostTextBytes = 120;  // of a title or an id
inline constexpr std::size_t kMostRows = 1000;      // of one list in a catalogue

}  // namespace thole
