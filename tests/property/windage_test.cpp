// Windage drawn or listed: areas that anyone can work out, and lines that nobody could mean.

#include "data/windage.h"

#include <algorithm>
#include <vector>

#include "io/presets.h"
#include "job/complete.h"
#include "job/fields.h"
#include "support.h"
#include "trace_support.h"

using namespace thole;

namespace {

Job with_side(const char* view) {
  Job job;
  job.boat.length_m = {7.6, Origin::given};
  job.boat.waterline_length_m = {6.6, Origin::given};
  job.boat.side_view = {view, Origin::given};
  return job;
}

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("outlines: rectangle, triangle, either way round, moved along") {
    const ViewRead box = read_view("0,0 0,1.5 6,1.5 6,0");
    CHECK(box.message.empty());
    CHECK(box.outline);
    CHECK(box.silhouette.area_m2 == rel(9.0, 1e-12));
    CHECK(box.silhouette.centre_m == rel(3.0, 1e-12));
    CHECK(box.silhouette.extent_m == rel(6.0, 1e-12));
    const ViewRead back = read_view("6,0 6,1.5 0,1.5 0,0");
    CHECK(back.silhouette.area_m2 == rel(9.0, 1e-12));
    CHECK(back.silhouette.centre_m == rel(3.0, 1e-12));
    const ViewRead wedge = read_view("0,0 6,0 6,2");  // centroid two thirds along
    CHECK(wedge.silhouette.area_m2 == rel(6.0, 1e-12));
    CHECK(wedge.silhouette.centre_m == rel(4.0, 1e-12));
    const ViewRead moved = read_view("-1,0 5,0 5,2");
    CHECK(moved.silhouette.centre_m == rel(3.0, 1e-12));
    const ViewRead step = read_view("0,0 0,1 2,1 2,2 4,2 4,1 6,1 6,0; 0,0");  // house of 2 x 1 amid
    CHECK(step.silhouette.area_m2 == rel(8.0, 1e-12));
    CHECK(step.silhouette.centre_m == rel(3.0, 1e-12));
  }

  TEST_CASE("parts: sums, fill and place") {
    const ViewRead parts = read_view("6.5x0.8@3.0 1.8x1.0*0.25@2.0");
    CHECK(parts.message.empty());
    CHECK_FALSE(parts.outline);
    CHECK(parts.silhouette.area_m2 == rel(5.2 + 0.45, 1e-12));
    CHECK(parts.silhouette.centre_m == rel((5.2 * 3.0 + 0.45 * 2.0) / 5.65, 1e-12));
    CHECK(read_view("2x1").silhouette.area_m2 == rel(2.0, 1e-12));
    CHECK(read_view(" 2x1@-0.5 ;\t3x1@1 ").silhouette.centre_m == rel(0.4, 1e-12));
  }

  // The same boat, drawn and listed.
  TEST_CASE("an outline and its parts agree") {
    const Silhouette drawn = read_view("0,0 0,0.8 2,0.8 2,2 4,2 4,0.8 6,0.8 6,0").silhouette;
    const Silhouette listed = read_view("6x0.8@3 2x1.2@3").silhouette;
    CHECK(drawn.area_m2 == rel(listed.area_m2, 1e-12));
    CHECK(drawn.centre_m == rel(listed.centre_m, 1e-12));
  }

  TEST_CASE("what cannot be meant is told, in a sentence") {
    for (const char* text : {"",
                             "   ",
                             "abc",
                             "1,2",
                             "0,0 1,1",
                             "0,0 1,1 2,2",
                             "0,0 6,0 6,-1",
                             "0,0 2,2 2,0 0,2",
                             "6.5x",
                             "x1",
                             "6.5x0.8*2",
                             "6.5x0.8*0",
                             "-2x1",
                             "6.5x0.8@",
                             "6.5x0.8@x",
                             "0,0,0 1,1 2,0",
                             "1e9,0 0,1 1,0",
                             "nan,0 0,1 1,0",
                             "0,0 0,1 6.5x0.8",
                             "6.5x0.8 0,1",
                             "99x99"}) {
      CAPTURE(text);
      const ViewRead read = read_view(text);
      const bool sentence = !read.message.empty() && read.message.back() == '.';
      const bool trailing_at = std::string_view(text) == "6.5x0.8@";  // no place named: at 0
      CHECK((sentence || trailing_at));
    }
    std::string many;
    for (int i = 0; i < 100; ++i) many += "1x1 ";
    CHECK_FALSE(read_view(many).message.empty());
  }

  TEST_CASE("a drawing gives the windage unless it was measured; both show their arithmetic") {
    const Completed drawn = complete(with_side("0,0 0,1.5 6,1.5 6,0"), default_catalogue());
    CHECK(drawn.issues.empty());
    CHECK(drawn.job.boat.lateral_area_m2.value == rel(9.0, 1e-12));
    CHECK(drawn.job.boat.lateral_area_m2.origin == Origin::estimated);
    CHECK(near(drawn.job.boat.lateral_centroid_m.value, -0.3, 1e-12));  // 3.0 less half of 6.6
    test::check_formulas(drawn.trace);
    Job measured = with_side("0,0 0,1.5 6,1.5 6,0");
    measured.boat.lateral_area_m2 = {12.0, Origin::given};
    measured.boat.front_view = {"2.4x1.1 1.2x0.9*0.25", Origin::given};
    const Completed both = complete(measured, default_catalogue());
    CHECK(both.job.boat.lateral_area_m2.value == 12.0);
    CHECK(both.job.boat.frontal_area_m2.value == rel(2.64 + 0.27, 1e-12));
    test::check_formulas(both.trace);
  }

  TEST_CASE("a drawing that cannot be read is named, and the layout stands in for it") {
    const Completed read = complete(with_side("0,0 2,2 2,0 0,2"), default_catalogue());
    REQUIRE(read.issues.size() == 1);
    CHECK(read.issues.front().field == "boat.side_view");
    CHECK(read.issues.front().message == "The outline crosses itself.");
    CHECK_FALSE(read.job.boat.side_view.known());
    CHECK(read.job.boat.lateral_area_m2.value > 3.0);
  }

  TEST_CASE("canvas up never shows less than folded away, for any layout") {
    const Field& layouts = *find_field("boat.layout");
    bool any = false;
    for (std::size_t i = 0; i < layouts.options.size(); ++i) {
      CAPTURE(layouts.options[i].key);
      const auto windage = [&](Canvas canvas) {
        Job job;
        job.boat.length_m = {8.0, Origin::given};
        layouts.access.set(job, static_cast<double>(i));
        layouts.access.set_origin(job, Origin::given);
        job.boat.canvas = {canvas, Origin::given};
        return complete(job, default_catalogue()).job.boat;
      };
      const Boat folded = windage(Canvas::folded);
      const Boat usual = windage(Canvas::usual);
      const Boat up = windage(Canvas::up);
      CHECK(folded.frontal_area_m2.value <= usual.frontal_area_m2.value);
      CHECK(usual.frontal_area_m2.value <= up.frontal_area_m2.value);
      CHECK(folded.lateral_area_m2.value <= usual.lateral_area_m2.value);
      CHECK(usual.lateral_area_m2.value <= up.lateral_area_m2.value);
      any = any || folded.lateral_area_m2.value < up.lateral_area_m2.value;
    }
    CHECK(any);
  }
}
