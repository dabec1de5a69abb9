// The plate on paper: true size in the SVG, tables and dimensions worked out by hand, pages of the
// drill template that fall on one another.

#include "draw/plate_drawing.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <limits>
#include <string>
#include <vector>

#include "calc/plate_made.h"
#include "draw/drill_template.h"
#include "draw/svg.h"
#include "plate_shapes.h"
#include "support.h"

using namespace thole;
using namespace thole::test;

namespace {

bool has(const std::string& text, const std::string& part) { return text.find(part) != text.npos; }

bool says(const Drawing& drawing, const std::string& text) {
  return std::any_of(drawing.labels.begin(), drawing.labels.end(),
                     [&](const Label& each) { return has(each.text, text); });
}

const Label* label(const Drawing& drawing, const std::string& text) {
  for (const Label& each : drawing.labels) {
    if (each.text == text) return &each;
  }
  return nullptr;
}

bool measures(const Drawing& drawing, const std::string& text, double length_mm) {
  return std::any_of(
      drawing.dimensions.begin(), drawing.dimensions.end(), [&](const Dimension& each) {
        return each.text == text &&
               near(std::hypot(each.b.x - each.a.x, each.b.y - each.a.y), length_mm, 1e-9);
      });
}

PlateSheet sheet_of(PlateShape shape, Drafting drafting = Drafting::iso) {
  return {.shape = std::move(shape),
          .part = "Bow plate",
          .number = "P-103",
          .revision = "B",
          .date = "1 May",
          .material = "5083-H116",
          .density_kg_per_m3 = 2660.0,
          .drafting = drafting};
}

bool within(const Drawing& drawing, Point p) {
  return p.x >= drawing.low.x - 1e-9 && p.y >= drawing.low.y - 1e-9 &&
         p.x <= drawing.high.x + 1e-9 && p.y <= drawing.high.y + 1e-9;
}

void everything_on_the_sheet(const Drawing& drawing) {
  for (const Shape& shape : drawing.shapes) {
    for (const Point& p : shape.points) CHECK(within(drawing, p));
  }
  for (const Circle& circle : drawing.circles) {
    CHECK(within(drawing, {circle.centre.x - circle.radius, circle.centre.y - circle.radius}));
    CHECK(within(drawing, {circle.centre.x + circle.radius, circle.centre.y + circle.radius}));
  }
  for (const Dimension& each : drawing.dimensions) {
    CHECK(within(drawing, each.a));
    CHECK(within(drawing, each.b));
  }
  for (const Label& each : drawing.labels) CHECK(within(drawing, each.at));
}

// The marks of a page: the small circles of 2.5 mm.
std::vector<Point> marks(const Drawing& page) {
  std::vector<Point> out;
  for (const Circle& each : page.circles) {
    if (each.radius == 2.5) out.push_back(each.centre);
  }
  return out;
}

}  // namespace

TEST_SUITE("derived") {
  // One millimetre is 96 / 25.4 px: 100 mm are 377.9528, 50 mm 188.9764.
  TEST_CASE("on paper a millimetre of the drawing is a millimetre") {
    Drawing drawing{.title = "Bar", .high = {100.0, 50.0}};
    drawing.shapes.push_back({.points = {{0.0, 0.0}, {100.0, 0.0}}});
    drawing.circles.push_back({.centre = {25.4, 50.0 - 25.4}, .radius = 12.7});
    const std::string svg = write_svg(drawing, {.paper = true});
    CHECK(has(svg, "width=\"100mm\""));
    CHECK(has(svg, "height=\"50mm\""));
    CHECK(has(svg, "viewBox=\"0 0 377.9528 188.9764\""));
    CHECK(has(svg, "d=\"M0 188.9764L377.9528 188.9764\""));
    CHECK(has(svg, "cx=\"96\" cy=\"96\" r=\"48\""));
    CHECK(has(svg, "xmlns="));
    // Readers of cut shops know no custom properties.
    CHECK(has(svg, ".line-outline{stroke:#000;stroke-width:2}"));
    CHECK_FALSE(has(svg, "var("));
    CHECK(has(write_svg(drawing), "width=\"480\""));
  }

  TEST_CASE("sheets have their sizes") {
    const std::string iso = write_svg(plate_drawing(sheet_of(slotted_plate())), {.paper = true});
    CHECK(has(iso, "width=\"420mm\" height=\"297mm\""));
    const std::string asme =
        write_svg(plate_drawing(sheet_of(slotted_plate(), Drafting::asme)), {.paper = true});
    CHECK(has(asme, "width=\"431.8mm\" height=\"279.4mm\""));  // 17 by 11 in
  }

  // 500 x 200 x 10 mm, front bolt row 250 mm from the aft edge; at 1:2.
  TEST_CASE("dimensions are the plate's, their lines the scale's") {
    const Drawing drawing = plate_drawing(sheet_of(slotted_plate()));
    CHECK(says(drawing, "Scale 1:2"));
    CHECK(measures(drawing, "500", 250.0));
    CHECK(measures(drawing, "250", 125.0));
    CHECK(measures(drawing, "200", 100.0));
    CHECK(says(drawing, "t 10"));
    CHECK(says(drawing, "Thickness: 10 mm"));
    CHECK(says(drawing, "Mass: 2.55 kg"));
    CHECK(says(drawing, "Material: 5083-H116"));
    CHECK(says(drawing, "MOTOR SIDE UP"));
    CHECK(says(drawing, "FORWARD"));
    CHECK(says(drawing, "first angle"));
    REQUIRE(drawing.arrows.size() == 3);
    // The arrow forward points to the right, as x runs in the plan.
    CHECK(std::any_of(drawing.arrows.begin(), drawing.arrows.end(),
                      [](const Arrow& each) { return each.b.x > each.a.x + 20.0; }));

    const Drawing inches = plate_drawing(sheet_of(slotted_plate(), Drafting::asme));
    CHECK(measures(inches, "19.685", 250.0));
    CHECK(measures(inches, "9.843", 125.0));
    CHECK(says(inches, "T .394"));
    CHECK(says(inches, "MASS: 5.63 lb"));  // units are not raised
    CHECK(says(inches, "THIRD ANGLE"));
  }

  TEST_CASE("the hole table counts from the front bolt row and the centre line") {
    const Drawing drawing = plate_drawing(sheet_of(countersunk_trapezoid()));
    CHECK(datum_x_m(countersunk_trapezoid()) == rel(0.30, 1e-12));
    // Rows at 60, 180, 300 mm: 240 and 120 mm aft of the front one, 55 mm to either side.
    const auto row_of = [&](const std::string& number) {
      std::vector<std::string> cells;
      for (std::size_t i = 0; i < drawing.labels.size(); ++i) {
        if (drawing.labels[i].text != number || drawing.labels[i].role != TextRole::note) continue;
        for (std::size_t k = 1; k < 5; ++k) cells.push_back(drawing.labels[i + k].text);
        break;
      }
      return cells;
    };
    CHECK(row_of("1") == std::vector<std::string>{"-240", "55", "9", "CSK 90° × Ø17.92"});
    CHECK(row_of("4") == std::vector<std::string>{"-120", "-55", "9", "CSK 90° × Ø17.92"});
    CHECK(row_of("6") == std::vector<std::string>{"0", "-55", "9", "CSK 90° × Ø17.92"});
    CHECK(says(drawing, "Countersinks"));
    const Drawing plain = plate_drawing(sheet_of(slotted_plate()));
    CHECK(says(plain, "THRU"));
    CHECK_FALSE(says(plain, "Countersinks"));
  }

  TEST_CASE("a radius is printed as it is cut") {
    const Drawing drawing = plate_drawing(sheet_of(round_plate()));  // asks for 1000 mm, gets 150
    CHECK(says(drawing, "150"));
    CHECK(label(drawing, "1000") == nullptr);
  }

  // ISO 5456-2: in first angle the view from starboard lies over the plan; in third angle under it.
  TEST_CASE("the side view lies where the projection puts it") {
    for (const Drafting drafting : {Drafting::iso, Drafting::asme}) {
      const Drawing drawing = plate_drawing(sheet_of(slotted_plate(), drafting));
      double plan_mm = 0.0;
      double side_mm = 0.0;
      for (const Shape& each : drawing.shapes) {
        if (!each.closed || each.line != Line::outline || each.points.size() < 4) continue;
        double low_x = 1e9, high_x = -1e9, low_y = 1e9, high_y = -1e9;
        for (const Point& p : each.points) {
          low_x = std::min(low_x, p.x);
          high_x = std::max(high_x, p.x);
          low_y = std::min(low_y, p.y);
          high_y = std::max(high_y, p.y);
        }
        if (!near(high_x - low_x, 250.0, 1e-6)) continue;
        if (near(high_y - low_y, 100.0, 1e-6)) plan_mm = low_y;
        if (near(high_y - low_y, 5.0, 1e-6)) side_mm = low_y;
      }
      REQUIRE(plan_mm > 0.0);
      REQUIRE(side_mm > 0.0);
      CHECK((side_mm > plan_mm) == (drafting == Drafting::iso));
    }
  }

  TEST_CASE("everything stays on the sheet, whatever the plate") {
    for (const Drafting drafting : {Drafting::iso, Drafting::asme}) {
      for (const auto& plate : plates_to_cut()) {
        CAPTURE(plate.first);
        everything_on_the_sheet(plate_drawing(sheet_of(plate.second, drafting)));
      }
      PlateShape many = slotted_plate();
      many.bolts.clear();
      for (int i = 0; i < 200; ++i)
        many.bolts.push_back({.at = {0.02 + 0.002 * i, 0.06}, .diameter_m = 0.003});
      PlateSheet sheet = sheet_of(many, drafting);
      sheet.notes.assign(40, std::string(300, 'w'));
      sheet.material = std::string(500, 'm');
      everything_on_the_sheet(plate_drawing(sheet));
      PlateShape huge = slotted_plate();
      for (PlateCorner& each : huge.outline) each.at = {20.0 * each.at.x_m, 20.0 * each.at.y_m};
      everything_on_the_sheet(plate_drawing(sheet_of(huge, drafting)));
    }
  }

  // Two bars 60 x 10, 480 long, at 1:2: 240 x 5 mm of paper; 2 x 0.48 x 0.06 x 0.01 x 2660 = 1.532 kg
  // beside the plate's 2.5527.
  TEST_CASE("stiffeners stand in both views, in the notes and in the mass") {
    PlateSheet sheet = sheet_of(slotted_plate());
    for (const double y_m : {-0.04, 0.04}) {
      sheet.bars.push_back({.y_m = y_m, .from_x_m = 0.01, .to_x_m = 0.49, .height_m = 0.06, .thickness_m = 0.010});
    }
    const Drawing drawing = plate_drawing(sheet);
    const auto boxes = [&](double wide_mm, double high_mm) {
      return std::count_if(drawing.shapes.begin(), drawing.shapes.end(), [&](const Shape& each) {
        if (each.points.size() != 4 || !each.closed) return false;
        return near(std::abs(each.points[2].x - each.points[0].x), wide_mm, 1e-9) &&
               near(std::abs(each.points[2].y - each.points[0].y), high_mm, 1e-9);
      });
    };
    CHECK(says(drawing, "Scale 1:2"));
    CHECK(boxes(240.0, 5.0) == 2);
    CHECK(boxes(240.0, 30.0) == 1);
    CHECK(label(drawing, "S1") != nullptr);
    CHECK(label(drawing, "S2") != nullptr);
    CHECK(label(drawing, "h 60") != nullptr);
    CHECK(says(drawing, "S1 to S2: flat 60 × 10"));
    CHECK(says(drawing, "Mass: 4.08 kg with bars"));
    everything_on_the_sheet(drawing);
    // Over a hole, over the slot, over the edge.
    CHECK(bars_amiss(sheet.shape, sheet.bars).empty());
    sheet.bars[0].y_m = -0.07;
    sheet.bars[1].y_m = 0.0;
    const std::vector<std::string> amiss = bars_amiss(sheet.shape, sheet.bars);
    REQUIRE(amiss.size() == 3);
    CHECK(has(amiss[0], "Stiffener 1 covers hole 2"));
    CHECK(has(amiss[2], "Stiffener 2 is not wholly on the plate"));
    sheet.bars[1].y_m = 0.0951;
    CHECK(has(bars_amiss(sheet.shape, sheet.bars).back(), "Stiffener 2 is not wholly on the plate"));
  }

  TEST_CASE("a plate that cannot be cut says so on its sheet") {
    PlateShape shape = slotted_plate();
    CHECK_FALSE(says(plate_drawing(sheet_of(shape)), "NOT TO BE CUT"));
    shape.bolts[0].at.x_m = 0.002;
    CHECK(says(plate_drawing(sheet_of(shape)), "NOT TO BE CUT"));
    shape.outline.clear();
    CHECK(says(plate_drawing(sheet_of(shape)), "No outline to draw"));
    CHECK(drill_template({.shape = shape}).empty());
    shape = slotted_plate();
    shape.outline[2].at.x_m = std::numeric_limits<double>::infinity();
    CHECK(says(plate_drawing(sheet_of(shape)), "No outline to draw"));
    CHECK(drill_template({.shape = shape}).empty());
    shape.outline[2].at.x_m = 1e9;
    CHECK(drill_template({.shape = shape}).empty());
  }

  // 574 x 264 mm with the white round it: windows of 277 x 160 mm that share 15 mm, three by two.
  TEST_CASE("the drill template is cut into pages") {
    const TemplateTiling a4 = tile_template({.shape = countersunk_trapezoid()});
    CHECK(a4.columns == 3);
    CHECK(a4.rows == 2);
    CHECK(a4.page_width_mm == 297.0);
    const TemplateTiling letter =
        tile_template({.shape = countersunk_trapezoid(), .paper = Paper::letter});
    CHECK(letter.columns * letter.rows == 6);
    const TemplateTiling one =
        tile_template({.shape = {.outline = rectangle_outline(0.2, 0.1, 0.01)}});
    CHECK(one.columns * one.rows == 1);
  }

  TEST_CASE("bars of 100.0 mm and 4.000 in stand on every page at true size") {
    for (const Paper paper : {Paper::a4, Paper::letter}) {
      const auto pages =
          drill_template({.shape = countersunk_trapezoid(), .name = "P-103", .paper = paper});
      REQUIRE(pages.size() == 6);
      for (std::size_t i = 0; i < pages.size(); ++i) {
        const Drawing& page = pages[i];
        everything_on_the_sheet(page);
        CHECK(says(page, "Page " + std::to_string(i + 1) + " of 6, P-103"));
        CHECK(says(page, "MOTOR SIDE UP"));
        for (const auto& [text, length_mm] : {std::pair{"100.0 mm", 100.0}, {"4.000 in", 101.6}}) {
          const Label* words = label(page, text);
          REQUIRE(words != nullptr);
          bool found = false;
          for (const Shape& each : page.shapes) {
            if (each.points.size() != 2 || each.line != Line::outline) continue;
            const Point a = each.points[0];
            const Point b = each.points[1];
            found = found || (a.y == b.y && near(b.x - a.x, length_mm, 1e-9) &&
                              std::abs(words->at.y - a.y) < 8.0);
          }
          CHECK(found);
        }
        const std::string svg = write_svg(page, {.paper = true});
        CHECK(has(svg, paper == Paper::a4 ? "width=\"297mm\" height=\"210mm\""
                                          : "width=\"279.4mm\" height=\"215.9mm\""));
        // 100 mm and 101.6 mm from the margin of 10 mm, in px.
        CHECK(has(svg, "L415.748 "));
        CHECK(has(svg, "L421.7953 "));
      }
    }
  }

  TEST_CASE("pages laid mark on mark show one plate, and each hole at its place") {
    const PlateShape shape = countersunk_trapezoid();
    const DrillTemplate wanted{.shape = shape};
    const TemplateTiling tiling = tile_template(wanted);
    const auto pages = drill_template(wanted);
    // Lay each page against its neighbours by marks alone, then read the holes in the first page's
    // frame.
    std::vector<Point> shift(pages.size());
    const auto lay = [&](std::size_t from, std::size_t to, bool beside) {
      // Marks on the far side of one page and on the near side of the next.
      std::vector<Point> far = marks(pages[from]);
      std::vector<Point> near_marks = marks(pages[to]);
      const auto along = [&](const Point& a, const Point& b) {
        return beside ? a.x < b.x : a.y < b.y;
      };
      const Point last = *std::max_element(far.begin(), far.end(), along);
      const Point first = *std::min_element(near_marks.begin(), near_marks.end(), along);
      shift[to] = {shift[from].x + (beside ? last.x - first.x : 0.0),
                   shift[from].y + (beside ? 0.0 : last.y - first.y)};
    };
    for (int row = 0; row < tiling.rows; ++row) {
      for (int column = 0; column < tiling.columns; ++column) {
        const auto here = static_cast<std::size_t>(row * tiling.columns + column);
        if (column > 0) {
          lay(here - 1, here, true);
        } else if (row > 0) {
          lay(here - static_cast<std::size_t>(tiling.columns), here, false);
        }
      }
    }
    std::vector<std::vector<Point>> seen(shape.bolts.size());
    // The first hole that is seen whole fixes the frame; the others must then be where the plate
    // has them.
    bool fixed_frame = false;
    Point origin{};
    for (int pass = 0; pass < 2; ++pass) {
      for (std::size_t i = 0; i < pages.size(); ++i) {
        for (const Label& each : pages[i].labels) {
          if (!has(each.text, ": Ø9")) continue;
          const auto hole = static_cast<std::size_t>(std::atoi(each.text.c_str()) - 1);
          const Circle* nearest = nullptr;
          for (const Circle& circle : pages[i].circles) {
            if (circle.radius != rel(4.5, 1e-9)) continue;
            const auto off = [&](const Circle& c) {
              return std::hypot(c.centre.x - each.at.x, c.centre.y - each.at.y);
            };
            if (nearest == nullptr || off(circle) < off(*nearest)) nearest = &circle;
          }
          if (nearest == nullptr) continue;  // cut by the window's edge
          const Point at{nearest->centre.x + shift[i].x, nearest->centre.y + shift[i].y};
          const PlatePoint wanted_at = shape.bolts[hole].at;
          if (!fixed_frame) {
            origin = {at.x - 1000.0 * wanted_at.x_m, at.y - 1000.0 * wanted_at.y_m};
            fixed_frame = true;
          }
          if (pass == 0) continue;
          CHECK(near(at.x, origin.x + 1000.0 * wanted_at.x_m, 1e-6));
          CHECK(near(at.y, origin.y + 1000.0 * wanted_at.y_m, 1e-6));
          seen[hole].push_back(at);
        }
      }
    }
    for (const auto& each : seen) CHECK_FALSE(each.empty());
  }

  TEST_CASE("each mark has its fellow on the page beside it") {
    const DrillTemplate wanted{.shape = countersunk_trapezoid()};
    const TemplateTiling tiling = tile_template(wanted);
    const auto pages = drill_template(wanted);
    const double step_x_mm = tiling.window_width_mm - kTemplateOverlap_mm;
    const double step_y_mm = tiling.window_height_mm - kTemplateOverlap_mm;
    int fellows = 0;
    for (int row = 0; row < tiling.rows; ++row) {
      for (int column = 0; column < tiling.columns; ++column) {
        const auto here = marks(pages[static_cast<std::size_t>(row * tiling.columns + column)]);
        for (const Point& each : here) {
          bool found = false;
          for (const auto& [dc, dr] : {std::pair{1, 0}, {-1, 0}, {0, 1}, {0, -1}}) {
            if (column + dc < 0 || column + dc >= tiling.columns || row + dr < 0 ||
                row + dr >= tiling.rows)
              continue;
            for (const Point& other : marks(
                     pages[static_cast<std::size_t>((row + dr) * tiling.columns + column + dc)])) {
              found = found || (near(other.x, each.x - dc * step_x_mm, 1e-9) &&
                                near(other.y, each.y - dr * step_y_mm, 1e-9));
            }
          }
          CHECK(found);
          fellows += found ? 1 : 0;
        }
      }
    }
    CHECK(fellows == 2 * 2 * (2 * 2 + 3));  // two marks on both sides of seven joins
  }
}
