#pragma once

// The plate as a dimensioned drawing for whoever cuts and drills it, on one sheet.

#include <string>
#include <vector>

#include "calc/plate/plate.h"
#include "draw/drawing.h"

namespace thole {

// ISO 128 and ISO 129-1, first-angle, millimetres, A3; or ASME Y14.3 and Y14.5, third-angle,
// inches, B.
enum class Drafting { iso, asme };

struct PlateSheet {
  PlateShape shape{};
  std::vector<PlateBar> bars{};  // stiffeners, on edge on the motor's side; all of one size
  std::string part{};      // "Bow plate"
  std::string number{};    // "P-103"
  std::string revision{};  // "B"
  std::string date{};      // as it shall be printed
  std::string material{};  // with temper and specification: "5083-H116, EN 485 / ASTM B928"
  std::string finish{};
  double density_kg_per_m3 = 0.0;  // 0: no mass is printed
  double countersink_deg = 90.0;
  std::vector<std::string> notes{};  // after those that every plate has
  Drafting drafting = Drafting::iso;
};

// Where tables count from: the foremost bolt row, or the aft edge when there are no bolts; and the
// centre line.
double datum_x_m(const PlateShape& shape);

// Plan from above with forward to the right, side view, tables of holes and corners, notes, title
// block. The units are millimetres of paper: for write_svg with .paper. A plate with errors in
// plate_issues() is drawn as far as it goes, and the sheet says that it must not be cut.
Drawing plate_drawing(const PlateSheet& sheet);

}  // namespace thole
