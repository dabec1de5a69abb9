#pragma once

// The strokes that several pictures share.

#include <string>
#include <string_view>

#include "calc/design.h"
#include "draw/drawing.h"
#include "io/measure.h"

namespace thole {

// Outline for what was given, dotted for what was estimated.
Line line_for(Origin origin);

// Water from the surface y = 0 (or the given profile) down to the bottom of the sheet.
void add_water(Drawing& drawing, double surface_m = 0.0);

// Hull in side view, transom at x = 0, waterline at y = `lift_m` above its drawn keel line, with
// what stands on deck and a person for scale.
void add_hull(Drawing& drawing, const Boat& boat, double bow_down_m = 0.0,
              double stern_down_m = 0.0, Line line = Line::outline, bool filled = true);

void add_polyline(Drawing& drawing, std::vector<Point> points, Line line);
void add_box(Drawing& drawing, Point low, Point high, Line line, Fill fill, bool hatched = false);
void add_label(Drawing& drawing, Point at, std::string text, Align align = Align::centre,
               TextRole role = TextRole::note);
void add_dimension(Drawing& drawing, Point a, Point b, std::string text);

// "1.35 m" or "4′ 5 1/8″".
std::string length_text(double length_m, System system);

}  // namespace thole
