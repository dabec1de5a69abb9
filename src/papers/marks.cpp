#include "papers/marks.h"

#include <algorithm>
#include <cmath>

namespace thole {
namespace {

struct Shape {
  std::string_view name{};
  std::string_view svg{};
};
constexpr Shape kTick{
    "good",
    "<svg class=\"mark\" viewBox=\"0 0 24 24\" aria-hidden=\"true\"><circle cx=\"12\" cy=\"12\" "
    "r=\"11\"/><path class=\"in\" d=\"M7 12.2l3.8 3.9L17.3 8\"/></svg>"};
constexpr Shape kStroke{
    "close",
    "<svg class=\"mark\" viewBox=\"0 0 24 24\" aria-hidden=\"true\"><path d=\"M12 .5L23.5 12 12 "
    "23.5 .5 12z\"/><path class=\"in\" d=\"M8.6 15.4l6.8-6.8\"/></svg>"};
constexpr Shape kBar{
    "bad",
    "<svg class=\"mark\" viewBox=\"0 0 24 24\" aria-hidden=\"true\"><path d=\"M1 1h22v22H1z\"/>"
    "<path class=\"in\" d=\"M6 12h12\"/></svg>"};
constexpr Shape kDash{
    "unknown",
    "<svg class=\"mark\" viewBox=\"0 0 24 24\" aria-hidden=\"true\"><circle class=\"out\" "
    "cx=\"12\" cy=\"12\" r=\"10\"/><path class=\"out\" d=\"M7 12h10\"/></svg>"};

const Shape& shape_of(Verdict verdict) {
  switch (verdict) {
    case Verdict::pass:
      return kTick;
    case Verdict::marginal:
      return kStroke;
    case Verdict::fail:
      return kBar;
    case Verdict::not_evaluated:
      return kDash;
  }
  return kDash;
}

const Shape& shape_of(Fit fit) {
  switch (fit) {
    case Fit::fits:
      return kTick;
    case Fit::fits_with_changes:
      return kStroke;
    case Fit::does_not_fit:
      return kBar;
    case Fit::not_evaluated:
      return kDash;
  }
  return kDash;
}

}  // namespace

std::string_view class_of(Verdict verdict) { return shape_of(verdict).name; }
std::string_view class_of(Fit fit) { return shape_of(fit).name; }
std::string_view mark(Verdict verdict) { return shape_of(verdict).svg; }
std::string_view mark(Fit fit) { return shape_of(fit).svg; }

std::string_view caution_mark() {
  return "<svg class=\"mark\" viewBox=\"0 0 24 24\" aria-hidden=\"true\"><path d=\"M12 1.5L23.5 "
         "22.5H.5z\"/><path class=\"in\" d=\"M12 9v6.5M12 18v2.2\"/></svg>";
}

void utilisation_bar(Markup& out, const Check& check) {
  constexpr double kFullScale = 1.5;
  constexpr double kWidth = 90.0;
  const double used = check.utilisation();
  out.raw(
      "<svg class=\"bar\" viewBox=\"0 0 90 12\" aria-hidden=\"true\">"
      "<path class=\"rail\" d=\"M0 9.5h90\"/>");
  if (!std::isnan(used)) {
    out.raw("<path d=\"M0 3h");
    out.number(kWidth * std::clamp(used / kFullScale, 0.0, 1.0));
    out.raw("v6H0z\"/>");
    if (used > kFullScale) out.raw("<path class=\"in\" d=\"M80 1l3 2.5-3 2.5 3 2.5-3 2.5\"/>");
  }
  out.raw("<path class=\"limit\" d=\"M60 0v12\"/></svg>");
}

}  // namespace thole
