#pragma once

// Drawings and QR codes as SVG: for the job sheet, for the page without WebGL, and as files.
// There is no id, script or style attribute in it, so that it may stand in any page any number of
// times. A style sheet paints it by the classes of its elements; svg_style() is one.

#include <string>
#include <string_view>

#include "draw/drawing.h"
#include "io/qr.h"

namespace thole {

struct SvgStyle {
  double width_px = 480.0;  // the text in it is 14 px high
  double height_px = 0.0;   // 0: as the drawing asks for
  bool file = false;  // stands alone: brings its style, black on white, and states its size in mm
  // A file whose drawing's units are millimetres of paper: from low to high at true size, nothing
  // round it, whatever the width and height say.
  bool paper = false;
};

// <svg class="drawing"> with the drawing's title and description. Shapes bear "line-outline",
// "fill-water" and so on by their roles; the rest is "hatch", "tip-accent" (of an arrow),
// "dimension", "tick", and text "figure" (of a dimension), "note" or "strong".
std::string write_svg(const Drawing& drawing, const SvgStyle& style = {});

// <svg class="qr">, dark on light whatever the page's colours; `name` is read aloud in its place.
// Empty when there is no code.
std::string write_svg(const Qr& qr, std::string_view name, double width_px = 160.0);

// The rules for those classes. Colours are custom properties (--ink, --muted, --line, --accent,
// --water, --hull, --paper, --fails) that a page may set; without them it is black on white.
std::string_view svg_style();

}  // namespace thole
