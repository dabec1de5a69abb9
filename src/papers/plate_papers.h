#pragma once

// The plate on paper and as a file, of a design that chose one: what a maker cuts and drills by.

#include <string>
#include <vector>

#include "draw/drill_template.h"
#include "io/dxf.h"
#include "papers/job_sheet.h"

namespace thole {

// The design's title; "Bow plate" without one.
std::string plate_name(const Design& design);

// The dimensioned drawing and the pages of the drill template as SVG in millimetres of paper, each
// standing alone. Empty when the design has no plate (kNoPlate says so), or no pages hold it.
std::string plate_drawing_svg(const Design& design, const SheetOptions& options);
std::vector<std::string> drill_template_svgs(const Design& design, Paper paper);

// The same as a document of pages at true size, made as the job sheet is: <main class="sheet">, and
// a style that speaks of nothing else. Empty likewise.
std::string plate_drawing_html(const Design& design, const SheetOptions& options);
std::string drill_template_html(const Design& design, Paper paper);

// The bow from the side with motor stowed and down, with its measures, on one sheet across: as SVG, and as
// a document. Empty when no motor was found (kNoElevation says so).
std::string elevation_svg(const Design& design, const SheetOptions& options, Paper paper);
std::string elevation_html(const Design& design, const SheetOptions& options, Paper paper);
inline constexpr const char* kNoElevation = "No motor was found for this boat, so there is no shaft to draw.";

// The cut file. Bolt holes are drilled: what lies too near an edge is refused with the bolt.
DxfFile plate_dxf(const Design& design, DxfVersion version);

}  // namespace thole
