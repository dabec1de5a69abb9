#include "data/windage.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "base/number.h"

namespace thole {
namespace {

constexpr std::size_t kMostPieces = 60;
constexpr double kFarthest_m = 20.0;  // of anything on a boat, along or up

// The words of a line, without empty ones.
std::vector<std::string_view> words_of(std::string_view text) {
  constexpr std::string_view kBlanks = " \t;";
  std::vector<std::string_view> words;
  while (true) {
    const std::size_t from = text.find_first_not_of(kBlanks);
    if (from == text.npos) return words;
    text.remove_prefix(from);
    const std::size_t end = std::min(text.find_first_of(kBlanks), text.size());
    words.push_back(text.substr(0, end));
    text.remove_prefix(end);
  }
}

// A number with a point for decimals: a comma stands between the two of a point.
std::optional<double> number_in(std::string_view text) {
  if (text.find(',') != text.npos) return std::nullopt;
  const std::optional<double> value = plain_number(text);
  return value && std::abs(*value) <= kFarthest_m ? value : std::nullopt;
}

// What stands before the mark, which is taken off `text` with it; all of it where there is none.
std::string_view up_to(std::string_view& text, char mark) {
  const std::size_t at = text.find(mark);
  const std::string_view head = text.substr(0, at);
  text = at == text.npos ? std::string_view{} : text.substr(at + 1);
  return head;
}

std::optional<OutlinePoint> point_in(std::string_view word) {
  const std::string_view along = up_to(word, ',');
  const std::optional<double> along_m = number_in(along);
  const std::optional<double> up_m = number_in(word);
  if (!along_m || !up_m) return std::nullopt;
  return OutlinePoint{.along_m = *along_m, .up_m = *up_m};
}

std::optional<WindagePart> part_in(std::string_view word) {
  std::string_view size = up_to(word, '@');
  const bool has_centre = !word.empty();
  const std::optional<double> centre_m = has_centre ? number_in(word) : 0.0;
  std::string_view sides = up_to(size, '*');
  const std::optional<double> fill = size.empty() ? 1.0 : number_in(size);
  const std::optional<double> length_m = number_in(up_to(sides, 'x'));
  const std::optional<double> height_m = number_in(sides);
  if (!centre_m || !fill || !length_m || !height_m) return std::nullopt;
  if (*length_m <= 0.0 || *height_m <= 0.0 || *fill <= 0.0 || *fill > 1.0) return std::nullopt;
  return WindagePart{
      .length_m = *length_m, .height_m = *height_m, .fill_factor = *fill, .centre_m = *centre_m};
}

// Twice the area of the triangle, positive when c lies to the left of a to b.
double turn_m2(const OutlinePoint& a, const OutlinePoint& b, const OutlinePoint& c) {
  return (b.along_m - a.along_m) * (c.up_m - a.up_m) - (c.along_m - a.along_m) * (b.up_m - a.up_m);
}

bool crosses(const OutlinePoint& a, const OutlinePoint& b, const OutlinePoint& c,
             const OutlinePoint& d) {
  return turn_m2(a, b, c) * turn_m2(a, b, d) < 0.0 && turn_m2(c, d, a) * turn_m2(c, d, b) < 0.0;
}

bool crosses_itself(std::span<const OutlinePoint> outline) {
  const std::size_t count = outline.size();
  for (std::size_t i = 0; i < count; ++i) {
    for (std::size_t k = i + 2; k < count; ++k) {
      if (crosses(outline[i], outline[i + 1], outline[k], outline[(k + 1) % count])) return true;
    }
  }
  return false;
}

ViewRead refused(std::string message) { return {.message = std::move(message)}; }

ViewRead read_outline(std::span<const std::string_view> words) {
  std::vector<OutlinePoint> outline;
  for (const std::string_view word : words) {
    const std::optional<OutlinePoint> point = point_in(word);
    if (!point) return refused("\"" + std::string(word) + "\" is no point; write 3.2,0.9.");
    if (point->up_m < 0.0) return refused("\"" + std::string(word) + "\" lies under water.");
    outline.push_back(*point);
  }
  if (outline.size() < 3) return refused("An outline has three points or more.");
  if (crosses_itself(outline)) return refused("The outline crosses itself.");
  return {.silhouette = silhouette_of(outline), .outline = true, .points = std::move(outline)};
}

ViewRead read_parts(std::span<const std::string_view> words) {
  std::vector<WindagePart> parts;
  for (const std::string_view word : words) {
    const std::optional<WindagePart> part = part_in(word);
    if (!part) {
      return refused("\"" + std::string(word) + "\" is no part; write 1.8x1.1*0.25@2.6.");
    }
    parts.push_back(*part);
  }
  return {.silhouette = silhouette_of(parts)};
}

}  // namespace

Silhouette silhouette_of(std::span<const OutlinePoint> outline) {
  if (outline.empty()) return {};
  double twice_m2 = 0.0;
  double moment_m3 = 0.0;  // six times that of the area about along = 0
  double low_m = outline.front().along_m;
  double high_m = low_m;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const OutlinePoint& a = outline[i];
    const OutlinePoint& b = outline[(i + 1) % outline.size()];
    const double piece_m2 = a.along_m * b.up_m - b.along_m * a.up_m;
    twice_m2 += piece_m2;
    moment_m3 += piece_m2 * (a.along_m + b.along_m);
    low_m = std::min(low_m, b.along_m);
    high_m = std::max(high_m, b.along_m);
  }
  if (std::abs(twice_m2) < 1e-12) return {};
  return {.area_m2 = 0.5 * std::abs(twice_m2),
          .centre_m = moment_m3 / (3.0 * twice_m2),
          .extent_m = high_m - low_m};
}

Silhouette silhouette_of(std::span<const WindagePart> parts) {
  double area_m2 = 0.0;
  double moment_m3 = 0.0;
  double extent_m = 0.0;
  for (const WindagePart& part : parts) {
    const double own_m2 = part.length_m * part.height_m * part.fill_factor;
    area_m2 += own_m2;
    moment_m3 += own_m2 * part.centre_m;
    extent_m += part.length_m;
  }
  if (!(area_m2 > 0.0)) return {};
  return {.area_m2 = area_m2, .centre_m = moment_m3 / area_m2, .extent_m = extent_m};
}

ViewRead read_view(std::string_view text) {
  const std::vector<std::string_view> words = words_of(text);
  if (words.empty()) return refused("Nothing is drawn here.");
  if (words.size() > kMostPieces) return refused("More than 60 points or parts are not needed.");
  const bool parts = words.front().find('x') != text.npos;
  ViewRead read = parts ? read_parts(words) : read_outline(words);
  if (read.message.empty() && !(read.silhouette.area_m2 > 0.01)) {
    return refused("What is drawn here has no area.");
  }
  return read;
}

}  // namespace thole
