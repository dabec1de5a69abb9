// The plan with lines of equal heading error: what stands where, worked out by hand.

#include "draw/compass_plan.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>

#include "draw/svg.h"
#include "support.h"

using namespace thole;

namespace {

// A bay boat of 7 m: the bank aft at port, the pair along the middle to the bow, the sensor 0.5 m
// over it amidships.
CompassInput along_the_middle() {
  return {.pair = {.route = {{1.0, 0.6, 0.4}, {1.0, 0.0, 0.4}, {6.5, 0.0, 0.4}},
                   .spacing_m = 0.10,
                   .lay = FeederLay::one_above_other,
                   .current_A = 60.0},
          .sensor = {3.5, 0.3, 0.8},
          .horizontal_T = 20e-6,
          .limit_deg = 2.0};
}

bool has(std::string_view text, std::string_view part) { return text.find(part) != text.npos; }

bool labelled(const Drawing& drawing, std::string_view part) {
  return std::any_of(drawing.labels.begin(), drawing.labels.end(),
                     [&](const Label& label) { return has(label.text, part); });
}

bool has_line(const Drawing& drawing, std::string_view level) {
  return std::any_of(drawing.labels.begin(), drawing.labels.end(),
                     [&](const Label& label) { return label.text == level; });
}

}  // namespace

TEST_SUITE("derived") {
  TEST_CASE("compass plan: the limit's line runs where the field is sin 2 degrees of the earth's") {
    CompassInput in = along_the_middle();
    in.pair.route = {{-30.0, 0.0, 0.4}, {40.0, 0.0, 0.4}};
    const Drawing drawing = compass_plan_picture(in, compass(in), 7.0, System::metric);
    // A long pair one above the other, seen from h over it and y aside: the level part of its field
    // is 0.2 I d (y^2 - h^2) / (y^2 + h^2)^2 uT, here 1.2 (y^2 - 0.16) / (y^2 + 0.16)^2. It is 20
    // uT sin 2 degrees = 0.698 uT where 0.698 u^2 - 0.9766 u + 0.2099 = 0 with u = y^2: at y =
    // 0.515 m and at y = 1.065 m.
    double most_y = 0.0;
    for (const Shape& shape : drawing.shapes) {
      if (shape.line != Line::accent) continue;
      for (const Point& point : shape.points) {
        if (std::abs(point.x - 3.75) < 0.2) most_y = std::max(most_y, point.y);
      }
    }
    CHECK(most_y == rel(1.065, 0.005));
  }

  TEST_CASE("compass plan: marks, names and words") {
    const CompassInput in = along_the_middle();
    const CompassResult result = compass(in);
    const Drawing drawing = compass_plan_picture(in, result, 7.0, System::metric);
    for (const char* name : {"sensor", "bank", "motor"}) {
      CAPTURE(name);
      CHECK(labelled(drawing, name));
    }
    for (const char* level : {"1°", "2°", "5°", "10°"}) {
      CAPTURE(level);
      CHECK(has_line(drawing, level));
    }
    CHECK_FALSE(has_line(drawing, "3°"));
    const auto mark = [&](Point at) {
      return std::any_of(drawing.circles.begin(), drawing.circles.end(),
                         [&](const Circle& circle) { return circle.centre == at; });
    };
    CHECK(mark({3.5, 0.3}));
    CHECK(mark({6.5, 0.0}));
    CHECK(std::any_of(drawing.shapes.begin(), drawing.shapes.end(), [](const Shape& shape) {
      return shape.line == Line::outline && !shape.closed && shape.points.size() == 3 &&
             shape.points.back() == Point{6.5, 0.0};
    }));
    CHECK(has(drawing.description, "60 A"));
    const std::string svg = write_svg(drawing);
    for (const std::string_view bad : {"nan", "inf", "\"-\""}) {
      CAPTURE(bad);
      CHECK_FALSE(has(svg.substr(svg.find("</desc>")), bad));
    }
  }

  TEST_CASE("compass plan: a limit of its own gets its line, and a quiet boat has none") {
    CompassInput in = along_the_middle();
    in.limit_deg = 3.0;
    CHECK(has_line(compass_plan_picture(in, compass(in), 7.0, System::metric), "3°"));
    in.pair.current_A = 0.0;
    const Drawing quiet = compass_plan_picture(in, compass(in), 7.0, System::metric);
    CHECK_FALSE(has_line(quiet, "1°"));
    CHECK(has(quiet.description, "may stay"));
  }

  TEST_CASE("compass plan: what cannot be evaluated says why") {
    CompassInput in = along_the_middle();
    in.horizontal_T = 0.0;
    const Drawing drawing = compass_plan_picture(in, compass(in), 7.0, System::us);
    CHECK(labelled(drawing, "not evaluated"));
    CHECK(has(drawing.description, "level part"));
    in = along_the_middle();
    in.pair.current_A = 4000.0;
    CHECK(labelled(compass_plan_picture(in, compass(in), 7.0, System::us), "shows no heading"));
  }
}
