// Drawings as SVG: places worked out by hand from a sheet of round numbers.

#include "draw/svg.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>
#include <vector>

#include "calc/design.h"
#include "draw/chapters.h"
#include "draw/layout.h"
#include "io/presets.h"
#include "support.h"

using namespace thole;

namespace {

bool has(std::string_view text, std::string_view part) { return text.find(part) != text.npos; }

std::size_t count(std::string_view text, std::string_view part) {
  std::size_t times = 0;
  for (std::size_t at = text.find(part); at != text.npos; at = text.find(part, at + 1)) ++times;
  return times;
}

// A sheet of 10 by 5 units; at 124 px wide one unit is 10 px, its low corner at (12, 62).
Drawing ten_by_five() {
  return {.title = "Sheet", .description = "Round numbers.", .low = {0, 0}, .high = {10, 5}};
}
constexpr SvgStyle kTenPxPerUnit{.width_px = 124.0};

}  // namespace

TEST_SUITE("derived") {
  TEST_CASE("a shape stands where its sheet puts it, y up") {
    Drawing drawing = ten_by_five();
    drawing.shapes.push_back({.points = {{0, 0}, {10, 0}, {10, 5}},
                              .closed = true,
                              .line = Line::estimated,
                              .fill = Fill::water});
    const std::string svg = write_svg(drawing, kTenPxPerUnit);
    CHECK(has(svg, "viewBox=\"0 0 124 74\""));
    CHECK(has(svg, "<path class=\"line-estimated fill-water\" d=\"M12 62L112 62L112 12Z\"/>"));
    CHECK(has(svg, "<title>Sheet</title>\n<desc>Round numbers.</desc>"));
  }

  TEST_CASE("to scale, a circle stays round in a sheet of another shape") {
    Drawing drawing = ten_by_five();
    drawing.circles.push_back({.centre = {5, 2.5}, .radius = 2.0, .fill = Fill::accent});
    // 200 px high: the width decides the scale, and the drawing stands in the middle.
    const std::string svg = write_svg(drawing, {.width_px = 124.0, .height_px = 200.0});
    CHECK(has(svg, "<circle class=\"line-outline fill-accent\" cx=\"62\" cy=\"100\" r=\"20\"/>"));
    drawing.to_scale = false;  // then it fills the sheet: 176 px for 5 units
    drawing.circles[0].centre = {0, 5};
    CHECK(has(write_svg(drawing, {.width_px = 124.0, .height_px = 200.0}), "cx=\"12\" cy=\"12\""));
  }

  TEST_CASE("a dimension leaves room for its figure, with ticks of 45 degrees") {
    Drawing drawing = ten_by_five();
    drawing.dimensions.push_back({{0, 1}, {10, 1}, "10 m"});
    const std::string svg = write_svg(drawing, {.width_px = 1024.0});  // 100 px to a unit
    CHECK(has(svg, "<path class=\"tick\" d=\"M8 416L16 408M1008 416L1016 408\"/>"));
    CHECK(count(svg, "class=\"dimension\"") == 1);
    CHECK(has(svg, "<text class=\"figure\" x=\"512\""));
    const DimensionLayout wide = lay_dimension({0, 0}, {100, 0}, {32, 20});
    REQUIRE(wide.lines.size() == 2);
    CHECK(wide.lines[0].b.x == doctest::Approx(30.0));  // 40 px free: the figure and 4 px each side
    CHECK(wide.lines[1].a.x == doctest::Approx(70.0));
    const DimensionLayout narrow = lay_dimension({0, 50}, {20, 50}, {32, 20});
    CHECK(narrow.lines.size() == 1);
    CHECK(narrow.figure.y == doctest::Approx(34.0));  // over the line
  }

  TEST_CASE("an arrow ends in a head of ten px") {
    const ArrowLayout arrow = lay_arrow({0, 0}, {50, 0});
    CHECK(arrow.drawn);
    CHECK(arrow.shaft.b.x == doctest::Approx(40.0));
    CHECK(arrow.head[0].x == doctest::Approx(50.0));
    CHECK(arrow.head[1].y == doctest::Approx(4.5));
    CHECK_FALSE(lay_arrow({3, 3}, {3, 3}).drawn);
  }

  TEST_CASE("hatching lies within its outline") {
    // A square of 70 px: lines x + y = 7, 14 ... 133, each from edge to edge.
    const std::vector<Point> square{{0, 0}, {70, 0}, {70, 70}, {0, 70}};
    const std::vector<Stroke> lines = hatch(square);
    CHECK(lines.size() == 19);
    for (const Stroke& line : lines) {
      CHECK(line.a.x + line.a.y == doctest::Approx(line.b.x + line.b.y));
      CHECK(std::min(line.a.x, line.b.x) >= 0.0);
      CHECK(std::max(line.a.y, line.b.y) <= 70.0);
    }
    // A U: its gap stays free. Every second line crosses one arm or both.
    const std::vector<Point> u{{0, 0},  {20, 0}, {20, 50}, {50, 50},
                               {50, 0}, {70, 0}, {70, 70}, {0, 70}};
    for (const Stroke& line : hatch(u)) {
      const Point middle{0.5 * (line.a.x + line.b.x), 0.5 * (line.a.y + line.b.y)};
      CHECK_FALSE((middle.x > 20.0 && middle.x < 50.0 && middle.y < 50.0));
    }
    CHECK(hatch(std::vector<Point>{{0, 0}, {1, 1}}).empty());
  }

  TEST_CASE("a label at the edge is moved into the sheet") {
    Drawing drawing = ten_by_five();
    drawing.labels.push_back({{10, 5}, "a rather long label", Align::left});
    drawing.labels.push_back({{0, 0}, "another one of those", Align::right});
    const std::string svg = write_svg(drawing, {.width_px = 324.0});
    std::size_t texts = 0;
    for (std::size_t at = svg.find("<text"); at != svg.npos; at = svg.find("<text", at + 1)) {
      const std::size_t from = svg.find("x=\"", at) + 3;
      const double x = std::stod(svg.substr(from));
      const bool starts = svg.compare(svg.find("text-anchor=\"", at) + 13, 5, "start") == 0;
      CHECK((starts ? x < 260.0 : x > 64.0));  // room for at least 64 px of text
      CHECK(x >= 0.0);
      CHECK(x <= 324.0);
      ++texts;
    }
    CHECK(texts == 2);
  }

  TEST_CASE("what is written is escaped") {
    Drawing drawing = ten_by_five();
    drawing.title = "<script>alert('x')</script>";
    drawing.description = "a & \"b\"";
    drawing.labels.push_back({{5, 2}, "</text><script>"});
    const std::string svg = write_svg(drawing);
    CHECK_FALSE(has(svg, "<script"));
    CHECK(has(svg, "<title>&lt;script&gt;alert(&#39;x&#39;)&lt;/script&gt;</title>"));
    CHECK(has(svg, "a &amp; &quot;b&quot;"));
  }

  TEST_CASE("a file states its size in mm and brings its style, an inlined picture neither") {
    const std::string file = write_svg(ten_by_five(), {.width_px = 192.0, .file = true});
    CHECK(has(file, "xmlns=\"http://www.w3.org/2000/svg\""));
    CHECK(has(file, "width=\"50.8mm\""));  // 192 px at 96 to the inch: two inches
    CHECK(has(file, "<style>"));
    const std::string inlined = write_svg(ten_by_five(), {.width_px = 192.0});
    CHECK(has(inlined, "width=\"192\""));
    CHECK_FALSE(has(inlined, "style"));
    CHECK_FALSE(has(inlined, "http"));
  }

  TEST_CASE("the style knows every class that a picture bears") {
    for (const ReadyJob& ready : ready_jobs()) {
      const Design design = evaluate(ready.job, default_catalogue());
      for (const Chapter& chapter : all_chapters()) {
        if (chapter.picture == nullptr || !chapter.told(design)) continue;
        CAPTURE(ready.id);
        CAPTURE(chapter.key);
        const Drawing drawing = chapter.picture(design, System::us);
        const std::string svg = write_svg(drawing);
        CHECK(count(svg, "<text") == drawing.dimensions.size() + drawing.labels.size());
        CHECK(count(svg, "class=\"hatch\"") ==
              static_cast<std::size_t>(std::count_if(drawing.shapes.begin(), drawing.shapes.end(),
                                                     [](const Shape& s) { return s.hatched; })));
        for (const std::string_view bad : {"nan", "inf", " id=", " style=", "<script", "\"-\""}) {
          CAPTURE(bad);
          CHECK_FALSE(has(svg.substr(svg.find("</desc>")), bad));
        }
        std::size_t at = 0;
        while ((at = svg.find("class=\"", at)) != svg.npos) {
          at += 7;
          std::string name;
          for (; svg[at] != '"'; ++at) {
            if (svg[at] != ' ') {
              name += svg[at];
              if (svg[at + 1] != ' ' && svg[at + 1] != '"') continue;
            }
            if (name.empty() || name == "drawing" || name == "note" || name == "figure") {
              name.clear();  // plain text of the drawing
              continue;
            }
            CAPTURE(name);
            CHECK(has(svg_style(), "." + name));
            name.clear();
          }
        }
      }
    }
  }

  TEST_CASE("a QR code has its quiet zone and one bar for each run of dark modules") {
    // A code of two modules a side, dark on the diagonal.
    const Qr qr{.side = 2, .dark = {true, false, false, true}};
    const std::string svg = write_svg(qr, "Code <1>");
    CHECK(has(svg, "viewBox=\"0 0 10 10\""));
    CHECK(has(svg, "d=\"M4 4h1v1h-1zM5 5h1v1h-1z\""));
    CHECK(has(svg, "Code &lt;1&gt;"));
    CHECK(write_svg(Qr{}, "none").empty());
  }
}
