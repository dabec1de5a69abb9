// The cut file against what the format and the trade say of it.

#include "io/dxf.h"

#include <doctest/doctest.h>

#include <clocale>
#include <cmath>
#include <numbers>
#include <string>

#include "calc/plate/outline.h"
#include "plate_shapes.h"
#include "support.h"

using namespace thole;
using namespace thole::test;

namespace {

bool has(const std::string& text, const std::string& part) { return text.find(part) != text.npos; }

PlateFile file_of(PlateShape shape) {
  return {.shape = std::move(shape),
          .name = "P-1",
          .material = "5083-H116",
          .density_kg_per_m3 = 2660.0};
}

}  // namespace

TEST_SUITE("published") {
  // Format: bulge is the tangent of a quarter of the angle. Check values DX1 of the handbook.
  TEST_CASE("bulge of a quarter circle and radius from chord and bulge [dxf-format]") {
    const PlateContour square = rounded(rectangle_outline(0.1, 0.1, 0.012));
    for (const PlateEdge& edge : square) {
      if (edge.is_arc()) CHECK(bulge(edge) == rel(0.414214, 1e-5));
    }
    CHECK(radius_from_bulge_m(16.9706, 0.414214) == rel(12.000, 1e-5));
    // Half a circle has bulge 1; clockwise it is negative.
    CHECK(bulge({.radius_m = 1.0, .turn_rad = std::numbers::pi}) == rel(1.0, 1e-12));
    CHECK(bulge({.radius_m = 1.0, .turn_rad = -std::numbers::pi}) == rel(-1.0, 1e-12));
  }

  // DX2 of the handbook. LWPOLYLINE came with release 14.
  TEST_CASE(
      "an R12 file has no LWPOLYLINE, ends with EOF, and its contours are closed [dxf-format]") {
    for (const auto& plate : plates_to_cut()) {
      CAPTURE(plate.first);
      const PlateShape& shape = plate.second;
      const DxfFile file = write_dxf(file_of(shape), DxfVersion::r12);
      CHECK_FALSE(has_error(file.issues));
      REQUIRE_FALSE(file.text.empty());
      CHECK(has(file.text, "AC1009"));
      CHECK_FALSE(has(file.text, "LWPOLYLINE"));
      CHECK_FALSE(has(file.text, "AcDb"));
      CHECK_FALSE(has(file.text, "$INSUNITS"));
      CHECK(file.text.ends_with("  0\r\nEOF\r\n"));
      const DxfContent content = read_dxf(file.text);
      CHECK(content.complete);
      CHECK(content.contours.size() == 1 + shape.cut_outs.size());
      for (const DxfContour& each : content.contours) CHECK(each.closed);
    }
  }

  TEST_CASE("an R2000 file states millimetres and draws with LWPOLYLINE [dxf-format]") {
    const DxfFile file = write_dxf(file_of(slotted_plate()), DxfVersion::r2000);
    CHECK(has(file.text, "AC1015"));
    CHECK(has(file.text, "$INSUNITS\r\n 70\r\n4\r\n"));
    CHECK(has(file.text, "LWPOLYLINE"));
    CHECK_FALSE(has(file.text, "VERTEX"));
    CHECK(read_dxf(file.text).complete);
  }

  // The rectangle by hand: 500 x 200 less what four corners of 12 mm lose; the slot has straight
  // sides of 60 mm between two half circles of 20 mm. Common practice: origin at the lower left.
  TEST_CASE("areas and holes read back as drawn, from the lower left [common practice]") {
    for (const DxfVersion version : {DxfVersion::r12, DxfVersion::r2000}) {
      const DxfContent content = read_dxf(write_dxf(file_of(slotted_plate()), version).text);
      REQUIRE(content.contours.size() == 2);
      CHECK(content.contours[0].layer == "CUT_OUTER");
      CHECK(content.contours[1].layer == "CUT_INNER");
      CHECK(area_mm2(content.contours[0]) ==
            rel(500.0 * 200.0 - (4.0 - std::numbers::pi) * 144.0, 1e-9));
      CHECK(area_mm2(content.contours[1]) == rel(60.0 * 40.0 + std::numbers::pi * 400.0, 1e-9));
      REQUIRE(content.circles.size() == 4);
      CHECK(content.circles[0].layer == "DRILL");
      CHECK(content.circles[0].x_mm == rel(50.0, 1e-9));
      CHECK(content.circles[0].y_mm == rel(170.0, 1e-9));  // 70 mm to port of the centre line
      CHECK(content.circles[3].x_mm == rel(250.0, 1e-9));
      CHECK(content.circles[3].y_mm == rel(30.0, 1e-9));
      CHECK(content.circles[3].radius_mm == rel(4.5, 1e-9));
    }
  }

  TEST_CASE(
      "a countersink is no second cut, and its angle is written beside it [common practice]") {
    PlateFile plate = file_of(countersunk_trapezoid());
    plate.countersink_deg = 82.0;
    const DxfFile file = write_dxf(plate, DxfVersion::r12);
    std::size_t drilled = 0;
    std::size_t noted = 0;
    for (const DxfCircle& each : read_dxf(file.text).circles) {
      if (each.layer == "DRILL") ++drilled;
      if (each.layer == "TEXT") ++noted;
    }
    CHECK(drilled == 6);
    CHECK(noted == 6);
    CHECK(has(file.text, "1 %%c9.00 CSK 82 %%c17.92"));
  }

  TEST_CASE("where stiffeners stand is engraved on a layer of its own, and is no cut [common practice]") {
    PlateFile plate = file_of(slotted_plate());
    const std::size_t contours = read_dxf(write_dxf(plate, DxfVersion::r12).text).contours.size();
    plate.bars = {{.y_m = 0.0, .from_x_m = 0.01, .to_x_m = 0.49, .height_m = 0.06, .thickness_m = 0.010}};
    const DxfFile file = write_dxf(plate, DxfVersion::r12);
    CHECK_FALSE(has_error(file.issues));
    CHECK(read_dxf(file.text).contours.size() == contours);
    CHECK(has(file.text, "ETCH_BARS: 1 FLAT BARS 60.0 X 10.0, 480.0 LONG, ON EDGE ON THE MOTOR SIDE"));
  }

  TEST_CASE("the printed mass is area times thickness times density [common practice]") {
    const PlateFile plate = file_of(slotted_plate());
    const double area_mm2_by_hand = 500.0 * 200.0 - (4.0 - std::numbers::pi) * 144.0 -
                                    (60.0 * 40.0 + std::numbers::pi * 400.0) -
                                    4.0 * std::numbers::pi * 4.5 * 4.5;
    CHECK(mass_kg(plate.shape, 2660.0) == rel(area_mm2_by_hand * 1e-6 * 0.010 * 2660.0, 1e-9));
    CHECK(has(write_dxf(plate, DxfVersion::r12).text, "MASS 2.553 KG"));
  }

  TEST_CASE("a file that says another plate is not passed [common practice]") {
    const PlateShape shape = slotted_plate();
    const std::string text = write_dxf(file_of(shape), DxfVersion::r2000).text;
    CHECK(compare_dxf(text, shape).empty());
    PlateShape moved = shape;
    moved.bolts[2].at.x_m += 2e-6;
    CHECK(has_error(compare_dxf(text, moved)));
    moved = shape;
    moved.outline[1].radius_m = 0.013;
    CHECK(has_error(compare_dxf(text, moved)));
    moved = shape;
    moved.bolts.pop_back();
    CHECK(has_error(compare_dxf(text, moved)));
    moved = shape;
    for (PlateCorner& each : moved.cut_outs[0]) each.at.x_m += 2e-6;  // of the same area
    CHECK(has_error(compare_dxf(text, moved)));
    moved = shape;
    moved.cut_outs.clear();
    CHECK(has_error(compare_dxf(text, moved)));
    CHECK(has_error(compare_dxf(text.substr(0, text.size() - 3), shape)));
    std::string open = text;
    open.replace(open.find(" 70\r\n1\r\n 43"), 8, " 70\r\n0\r\n");
    CHECK(has_error(compare_dxf(open, shape)));
    CHECK(has_error(compare_dxf("", shape)));
    CHECK(has_error(compare_dxf("  0\r\nSECTION\r\n99999999999\r\nENTITIES\r\n", shape)));
    for (std::size_t cut = 0; cut < text.size(); cut += 7) {
      CHECK(has_error(compare_dxf(text.substr(0, cut), shape)));
    }
  }

  TEST_CASE("a plate that cannot be cut gives no file") {
    PlateShape shape = slotted_plate();
    shape.bolts[0].at.x_m = 0.6;
    const DxfFile file = write_dxf(file_of(shape), DxfVersion::r12);
    CHECK(file.text.empty());
    CHECK(has_error(file.issues));
  }

  TEST_CASE("what is typed as a name cannot add lines, and letters stay ASCII") {
    PlateFile plate = file_of(slotted_plate());
    plate.name = "A\r\n  0\r\nLINE\nB é ^J %%c";
    for (const DxfVersion version : {DxfVersion::r12, DxfVersion::r2000}) {
      const DxfFile file = write_dxf(plate, version);
      CHECK(has(file.text, "A    0  LINE B ? ^ J % %c"));
      CHECK(read_dxf(file.text).complete);
      for (const char c : file.text) CHECK(static_cast<unsigned char>(c) < 0x80);
      for (std::size_t at = file.text.find('\n'); at != file.text.npos;
           at = file.text.find('\n', at + 1)) {
        CHECK(file.text[at - 1] == '\r');
      }
    }
  }

  TEST_CASE("the decimal point is a point wherever the program runs [common practice]") {
    const std::string before = std::setlocale(LC_NUMERIC, nullptr);
    const std::string plain = write_dxf(file_of(bow_shaped()), DxfVersion::r2000).text;
    bool other = false;
    for (const char* name : {"de_DE.UTF-8", "fr_FR.UTF-8"})
      other = other || std::setlocale(LC_NUMERIC, name);
    if (other) CHECK(write_dxf(file_of(bow_shaped()), DxfVersion::r2000).text == plain);
    std::setlocale(LC_NUMERIC, before.c_str());
    CHECK_FALSE(has(plain,
                    ","
                    "0"));
  }

  TEST_CASE("file names say millimetres") {
    CHECK(dxf_file_name("P-103 / rev B", DxfVersion::r12) == "p-103-rev-b_mm.dxf");
    CHECK(dxf_file_name("../x", DxfVersion::r2000) == "x_mm_r2000.dxf");
    CHECK(dxf_file_name("", DxfVersion::r12) == "plate_mm.dxf");
  }
}
