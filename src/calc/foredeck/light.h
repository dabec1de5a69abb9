#pragma once

// What the motor hides of the bow's sidelights.
//
// Rule 21(b): an unbroken light from right ahead to 22.5 degrees abaft the beam, 112.5 degrees to a side;
// in one lantern on the centreline of a vessel of less than 20 m, or two. Annex I, 9: the light ends
// between 1 and 3 degrees outside of that ahead. Annex I, 10: all of the light from 5 degrees above to 5
// below the horizontal, 60 % of it to 7.5. The boat upright, the light a point; reflections left out.

#include <vector>

#include "base/trace.h"
#include "calc/foredeck/envelope.h"

namespace thole {

inline constexpr double kSidelight_deg = 112.5;     // Rule 21(b)
inline constexpr double kCutOffLeast_deg = 1.0;     // Annex I, 9(a)(i), outside of the sector ahead
inline constexpr double kCutOffMost_deg = 3.0;
inline constexpr double kAllRoundHidden_deg = 6.0;  // Annex I, 9(b)(i)
inline constexpr double kFullLight_deg = 5.0;       // Annex I, 10(a), above and below the horizontal
inline constexpr double kMostLight_deg = 7.5;
inline constexpr double kOneLantern_m = 0.05;       // so near the centreline it is one for both sides; project decision

// Degrees from right ahead, to starboard positive; from < to.
struct Arc {
  double from_deg = 0.0;
  double to_deg = 0.0;
};

// The arc that a sidelight (or one lantern for both sides) so far to starboard must show.
Arc sidelight_arc(double light_starboard_m);

// What the bars hide, seen from the light, where they stand within so many degrees of the horizontal.
// In order, apart from each other, within -180 .. 180.
std::vector<Arc> hidden_arcs(const Place3& light, const std::vector<Bar>& bars, double within_deg);

// Those parts that lie within `arc`.
std::vector<Arc> within(const std::vector<Arc>& arcs, const Arc& arc);
double sum_deg(const std::vector<Arc>& arcs);
// The widest, with what meets right astern taken as one.
double widest_deg(const std::vector<Arc>& arcs);

struct Shadow {
  std::vector<Arc> full{};   // of the sidelight's arc, where all of its light is asked for
  std::vector<Arc> most{};   // ... where 60 % is
  double hidden_deg = 0.0;   // sum of `full`
  double hidden_most_deg = 0.0;
  double all_round_deg = 0.0;  // widest hidden, were it an all-round light
};

struct LightInput {
  bool measured = false;
  Place3 light{};
  std::vector<Bar> stowed{};
  std::vector<Bar> deployed{};
};

struct LightResult {
  Arc arc{};
  Shadow stowed{};
  Shadow deployed{};
  Trace trace{};
};

LightResult bow_light(const LightInput& in);

}  // namespace thole
