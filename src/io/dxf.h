#pragma once

// The plate as a cut file: DXF in millimetres, origin at the lower left, seen from above with
// forward to the right, CRLF lines, decimal points in every locale. Two dialects: R12 (AC1009),
// which every cutter reads and which carries no units, and R2000 (AC1015), which states them.
//
// Layers: CUT_OUTER and CUT_INNER, closed contours of lines and true arcs; DRILL, a circle for each
// bolt hole; ETCH, forward arrow, name and centre line ticks; ETCH_BARS, where stiffeners stand; TEXT, notes that nobody cuts: size to
// confirm, thickness, material, mass, and each countersink's outer circle.

#include <string>
#include <string_view>
#include <vector>

#include "base/issue.h"
#include "calc/plate/plate.h"

namespace thole {

enum class DxfVersion { r12, r2000 };

struct PlateFile {
  PlateShape shape{};
  std::vector<PlateBar> bars{};  // stiffeners on the motor's side; all of one size
  std::string name{};      // engraved: "P-103 rev B"
  std::string material{};  // as it is ordered: "5083-H116"
  double density_kg_per_m3 = 0.0;
  double countersink_deg = 90.0;  // whole angle of the cone: 90 metric, 82 inch heads
};

// Nothing in `text` when an issue is an error: plate_issues() of the shape, or what was written
// does not read back as the same plate.
struct DxfFile {
  std::string text{};
  Issues issues{};
};
DxfFile write_dxf(const PlateFile& plate, DxfVersion version);

// "p-103_mm.dxf": R12 has no other place than the name to state its units.
std::string dxf_file_name(std::string_view name, DxfVersion version);

// --- reading back
// -----------------------------------------------------------------------------------

struct DxfVertex {
  double x_mm = 0.0;
  double y_mm = 0.0;
  double bulge_ratio = 0.0;  // tan(turn / 4) from here to the next
};
struct DxfContour {
  std::string layer{};
  bool closed = false;
  std::vector<DxfVertex> vertices{};
};
struct DxfCircle {
  std::string layer{};
  double x_mm = 0.0;
  double y_mm = 0.0;
  double radius_mm = 0.0;
};
struct DxfContent {
  std::vector<DxfContour> contours{};
  std::vector<DxfCircle> circles{};
  bool complete = false;  // ends with EOF, and every pair of lines can be read
};
// What write_dxf writes, of either version; not of other programs' files.
DxfContent read_dxf(std::string_view text);
double area_mm2(const DxfContour& contour);  // with its arcs; positive counter-clockwise

// What the file says otherwise than the plate: contours open, missing, of another area, corners or
// holes moved by more than 0.001 mm. Empty: the same.
Issues compare_dxf(std::string_view text, const PlateShape& shape);

}  // namespace thole
