// The bow's elevation on paper: true to its scale, on the sheet, in either system.

#include "draw/elevation_sheet.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <string>

#include "draw/bow_elevation.h"
#include "draw/svg.h"
#include "io/presets.h"
#include "papers/plate_papers.h"
#include "support.h"

using namespace thole;

namespace {

bool has(const std::string& text, const std::string& part) { return text.find(part) != text.npos; }

double long_mm(const Dimension& each) { return std::hypot(each.b.x - each.a.x, each.b.y - each.a.y); }

// The dimension of this figure; there is one.
const Dimension& measured(const Drawing& drawing, const std::string& text) {
  const auto found = std::find_if(drawing.dimensions.begin(), drawing.dimensions.end(),
                                  [&](const Dimension& each) { return each.text == text; });
  REQUIRE(found != drawing.dimensions.end());
  return *found;
}

Design design_of(const std::string& name) {
  for (const ReadyJob& ready : ready_jobs()) {
    if (ready.id == name) return evaluate(ready.job, default_catalogue());
  }
  FAIL("no such job");
  return {};
}

// Inside of the frame: 20 mm to the left and 10 mm round A4 (ISO 5457), half an inch round Letter.
void inside_the_frame(const Drawing& drawing, Paper paper) {
  const bool a4 = paper == Paper::a4;
  CHECK(drawing.high.x == rel(a4 ? 297.0 : 279.4, 1e-12));
  CHECK(drawing.high.y == rel(a4 ? 210.0 : 215.9, 1e-12));
  const double left_mm = a4 ? 20.0 : 12.7;
  const double round_mm = a4 ? 10.0 : 12.7;
  const auto inside = [&](Point p, double more_mm = 0.0) {
    CHECK(p.x - more_mm >= left_mm - 1e-9);
    CHECK(p.x + more_mm <= drawing.high.x - round_mm + 1e-9);
    CHECK(p.y - more_mm >= round_mm - 1e-9);
    CHECK(p.y + more_mm <= drawing.high.y - round_mm + 1e-9);
  };
  for (const Shape& shape : drawing.shapes)
    for (const Point& p : shape.points) inside(p);
  for (const Circle& circle : drawing.circles) inside(circle.centre, circle.radius);
  for (const Dimension& each : drawing.dimensions) inside(each.a), inside(each.b);
  for (const Label& each : drawing.labels) inside(each.at);
}

}  // namespace

TEST_SUITE("derived") {
  // A figure in millimetres over the scale is the length of its line.
  TEST_CASE("every measure of every ready-made job's elevation is true to scale, on the sheet") {
    for (const ReadyJob& ready : ready_jobs()) {
      CAPTURE(ready.id);
      const Design design = evaluate(ready.job, default_catalogue());
      REQUIRE(design.hold.motor_found);
      for (const Paper paper : {Paper::a4, Paper::letter}) {
        for (const System system : {System::metric, System::us}) {
          const ElevationSheet sheet{.name = "A job", .paper = paper, .system = system};
          const Drawing drawing = elevation_drawing(design, sheet);
          inside_the_frame(drawing, paper);
          CHECK(drawing.dimensions.size() >= 5);
          if (system == System::us) continue;
          const int scale = elevation_scale(design, sheet);
          for (const Dimension& each : drawing.dimensions) {
            // Printed to the millimetre.
            CHECK(std::abs(long_mm(each) - std::atof(each.text.c_str()) / scale) <= 0.501 / scale);
          }
        }
      }
    }
  }

  // 740 mm of bow, 310 mm of overhang, a shaft of 1600 mm; at 1:20 37, 15.5 and 80 mm.
  TEST_CASE("bow height, overhang, shaft and depth stand at the lengths that the scale gives them") {
    const Design design = design_of("bay-boat-in-the-estuary");
    const Drawing drawing = elevation_drawing(design, {.name = "Bay boat"});
    CHECK(elevation_scale(design, {}) == 20);
    CHECK(long_mm(measured(drawing, "740")) == rel(37.0, 1e-9));
    CHECK(long_mm(measured(drawing, "310")) == rel(15.5, 1e-9));
    CHECK(long_mm(measured(drawing, "1600")) == rel(80.0, 1e-9));
    const Dimension& bow = measured(drawing, "740");
    const std::string depth = std::to_string(std::lround(1000.0 * design.shaft.propeller_depth_m));
    CHECK(measured(drawing, depth).b.y == rel(bow.a.y, 1e-12));  // both from the calm water
    const auto says = [&](const std::string& text) {
      return std::any_of(drawing.labels.begin(), drawing.labels.end(), [&](const Label& each) { return has(each.text, text); });
    };
    CHECK(says("Scale 1:20"));
    CHECK(says("A4, 1 of 1"));
    CHECK(says("Bay boat"));
    CHECK(says("Shaft: 1600"));
    CHECK(says("plate t 7.94 mm"));
    // Nothing of the hull shows aft of where the sheet ends it, and no line is drawn there.
    const Drawing us = elevation_drawing(design, {.name = "Bay boat", .paper = Paper::letter, .system = System::us});
    CHECK(elevation_scale(design, {.paper = Paper::letter, .system = System::us}) == 24);
    CHECK(long_mm(measured(us, "5′ 3″")) == rel(1600.0 / 24.0, 1e-9));
    CHECK(long_mm(measured(us, "2′ 5 1/8″")) == rel(740.0 / 24.0, 1e-9));
  }

  // Aft edge at 0: bolts at 50, 170, 230 and 290 of 450 mm; then a measured outline 500 mm long.
  TEST_CASE("the plate stands there as it is made: its own length, each place of its bolts once") {
    Job job = design_of("bay-boat-in-the-estuary").job;
    const BowElevation rows = measure_bow(evaluate(job, default_catalogue()));
    CHECK(rows.bolts_m.size() == 3);
    job.mount.plate_length_mm = {450.0, Origin::given};
    job.mount.bolt_places = {"50,70 50,-70 170,70 170,-70 290,60 290,-60 230,0", Origin::given};
    const BowElevation placed = measure_bow(evaluate(job, default_catalogue()));
    CHECK(placed.plate_length_m == rel(0.45, 1e-9));
    REQUIRE(placed.bolts_m.size() == 4);
    const double aft_m[] = {0.06, 0.12, 0.24};
    CHECK(placed.bolts_m.front() == 0.0);
    for (std::size_t i = 0; i < 3; ++i) CHECK(placed.bolts_m[i + 1] == rel(aft_m[i], 1e-9));
    CHECK(placed.plate_front_m - placed.front_bolts_m == rel(0.16, 1e-9));
    job.mount.outline = {"0/110 250/105 400/85 500/70", Origin::given};
    const Design outlined = evaluate(job, default_catalogue());
    const BowElevation longer = measure_bow(outlined);
    CHECK(longer.plate_length_m == rel(0.5, 1e-9));
    CHECK(longer.plate_front_m - longer.front_bolts_m == rel(0.21, 1e-9));
    // As drawn: the plate's box, and a bolt down through it at each of the four places.
    const Drawing drawing = bow_elevation(outlined, System::metric);
    const double aft_edge_m = longer.plate_front_m - 0.5;
    const auto box = std::find_if(drawing.shapes.begin(), drawing.shapes.end(), [&](const Shape& shape) {
      return shape.closed && shape.points.size() == 4 && std::abs(shape.points[0].x - aft_edge_m) < 1e-9;
    });
    REQUIRE(box != drawing.shapes.end());
    const auto wide = std::minmax_element(box->points.begin(), box->points.end(), [](Point a, Point b) { return a.x < b.x; });
    CHECK(wide.second->x - wide.first->x == rel(0.5, 1e-9));
    for (const double place_m : {0.05, 0.17, 0.23, 0.29}) {
      const double x = aft_edge_m + place_m;
      CHECK(std::count_if(drawing.shapes.begin(), drawing.shapes.end(), [&](const Shape& shape) {
              return shape.points.size() == 2 && std::abs(shape.points[0].x - x) < 1e-9 && std::abs(shape.points[1].x - x) < 1e-9;
            }) == 1);
    }
  }

  // Front bolts 60 mm behind the stem and no farther from the plate's front edge than they are drilled.
  TEST_CASE("a plate whose bolts would miss the deck moves aft as a whole") {
    Job job = design_of("bay-boat-in-the-estuary").job;
    job.mount.bolt_places = {"50,70 50,-70 400,60 400,-60", Origin::given};
    job.mount.plate_length_mm = {450.0, Origin::given};
    const BowElevation close = measure_bow(evaluate(job, default_catalogue()));
    CHECK(close.front_bolts_m == rel(-0.06, 1e-9));
    CHECK(close.plate_front_m == rel(-0.01, 1e-9));
  }

  TEST_CASE("a plate whose measured outline is no shape stands there by its fields") {
    Job job = design_of("bay-boat-in-the-estuary").job;
    job.mount.plate_length_mm = {450.0, Origin::given};
    for (const char* outline : {"0/110 450/-110", "0/0 450/0", "0/1 1/1", "0/110 450/0"}) {
      CAPTURE(outline);
      job.mount.outline = {outline, Origin::given};
      const BowElevation bow = measure_bow(evaluate(job, default_catalogue()));
      CHECK(std::isfinite(bow.plate_front_m));
      CHECK(bow.plate_length_m > 0.0);
      CHECK(bow.plate_length_m < 0.46);
    }
  }

  TEST_CASE("as SVG it has the paper's size; without a motor there is none") {
    Design design = design_of("bay-boat-in-the-estuary");
    CHECK(has(elevation_svg(design, {}, Paper::a4), "width=\"297mm\" height=\"210mm\""));
    CHECK(has(elevation_svg(design, {}, Paper::letter), "width=\"279.4mm\" height=\"215.9mm\""));
    CHECK(has(elevation_html(design, {}, Paper::letter), "size:279.4mm 215.9mm"));
    design.hold.motor_found = false;
    CHECK(elevation_svg(design, {}, Paper::a4).empty());
    CHECK(elevation_html(design, {}, Paper::a4).empty());
  }
}

// Heads by ISO 10642 and ASME B18.3, recalled (handbook 4.3): M8 17.92 mm at 90 degrees, 3/8 in 0.781 in
// at 82.
TEST_CASE("countersunk heads reach drawing, template and cut file") {
  struct Row {
    std::string bolt, drawn, cut;
  };
  for (const Row& row : {Row{"m8-a4-70", "CSK 90\u00b0 \u00d7 \u00d817.9", "CSK 90 %%c17.92"},
                         Row{"3-8-f593g", "CSK 82\u00b0 \u00d7 \u00d819.8", "CSK 82 %%c19.84"}}) {
    CAPTURE(row.bolt);
    Job job;
    job.mount.bolt = {row.bolt, Origin::given};
    job.mount.head = {Head::countersunk, Origin::given};
    const Design sunk = evaluate(job, default_catalogue());
    REQUIRE(sunk.mount.bolt.id == row.bolt);
    CHECK(plate_drawing_svg(sunk, {}).find(row.drawn) != std::string::npos);
    CHECK(plate_dxf(sunk, DxfVersion::r12).text.find(row.cut) != std::string::npos);
    const std::vector<std::string> pages = drill_template_svgs(sunk, Paper::a4);
    CHECK(std::any_of(pages.begin(), pages.end(), [](const std::string& page) { return page.find("CSK") != std::string::npos; }));
    job.mount.head = {Head::hexagon, Origin::given};
    CHECK(plate_drawing_svg(evaluate(job, default_catalogue()), {}).find("CSK") == std::string::npos);
  }
}
