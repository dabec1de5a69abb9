#pragma once

// What of a boat shows above water, measured on a picture or a drawing of it: from an outline, or
// built up from parts. Both are typed as one line of text.
//
// Across a view "along" runs forward from the transom at the waterline (from the side) or from the
// left edge (from ahead); "up" is the height above the water. Metres.

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace thole {

struct OutlinePoint {
  double along_m = 0.0;
  double up_m = 0.0;
};

// A rectangle of length and height; pipework and rails fill only a share of theirs.
struct WindagePart {
  double length_m = 0.0;
  double height_m = 0.0;
  double fill_factor = 1.0;
  double centre_m = 0.0;  // along
};

// Fill of a part's rectangle: project's handbook, own judgement. Panels, curtains, windscreens,
// outboard cowls: 1.
inline constexpr double kPipeworkFill_factor = 0.25;  // frame of a T-top, 0.20 to 0.30
inline constexpr double kRailFill_factor = 0.075;     // 0.05 to 0.10

// One person who stands, as the wind sees one.
inline constexpr double kPersonFront_m2 = 0.7;
inline constexpr double kPersonSide_m2 = 0.6;

struct Silhouette {
  double area_m2 = 0.0;
  double centre_m = 0.0;  // along
  double extent_m = 0.0;  // from end to end; of parts the sum of their lengths
};

// Area inside the outline, which closes by itself: half the sum of x_i z_(i+1) - x_(i+1) z_i (the
// shoelace formula), and its centroid. Either way round. Precondition: the outline does not cross
// itself. An outline without area: 0, 0.
Silhouette silhouette_of(std::span<const OutlinePoint> outline);

// A = sum(l h f), centre = sum(A_i x_i)/A. Nothing: 0, 0.
Silhouette silhouette_of(std::span<const WindagePart> parts);

// Reads one view of a boat: an outline as points "along,up" with blanks between, as in
// "0,0 0,0.8 3,0.9 6.5,1.3 6.2,0"; or parts "length x height * fill @ centre", fill and centre
// left out where they are 1 and 0, as in "6.5x0.8@3.2 1.8x1.1*0.25@2.6". Decimals have a point.
// Not understood, crossing itself, under water, without area: `message` is one sentence.
struct ViewRead {
  Silhouette silhouette{};
  bool outline = false;   // drawn as an outline, not as parts
  std::vector<OutlinePoint> points{};  // of an outline
  std::string message{};  // empty: it was understood
};
ViewRead read_view(std::string_view text);

}  // namespace thole
