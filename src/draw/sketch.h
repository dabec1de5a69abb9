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

// Hull in side view with what stands on deck, transom at x = 0, afloat at y = 0 but for the
// sinkages at bow and stern.
void add_hull(Drawing& drawing, const Boat& boat, double bow_down_m = 0.0,
              double stern_down_m = 0.0, Line line = Line::outline, bool filled = true);

// Plan about its middle, the bow turned clockwise from straight up.
void add_boat_from_above(Drawing& drawing, double length, double heading_deg, Point middle = {});

// Somebody standing, for scale.
void add_person(Drawing& drawing, Point feet, double height_m);

void add_polyline(Drawing& drawing, std::vector<Point> points, Line line);
void add_box(Drawing& drawing, Point low, Point high, Line line, Fill fill, bool hatched = false);
void add_label(Drawing& drawing, Point at, std::string text, Align align = Align::centre,
               TextRole role = TextRole::note);
void add_dimension(Drawing& drawing, Point a, Point b, std::string text);
void add_handle(Drawing& drawing, Point at, std::string field, double dx_factor, double dy_factor);

// "1.35 m" or "4′ 5 1/8″".
std::string length_text(double length_m, System system);
std::string speed_text(double speed_mps, System system);
std::string mass_text(double mass_kg, System system);

}  // namespace thole
