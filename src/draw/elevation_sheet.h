#pragma once

// The bow from the side on one sheet, to scale, with its measures: for whoever drills the deck.

#include <string>

#include "draw/bow_elevation.h"
#include "draw/drill_template.h"

namespace thole {

struct ElevationSheet {
  std::string name{};  // of the job
  std::string date{};  // as it shall be printed
  Paper paper = Paper::a4;  // across
  System system = System::metric;  // millimetres; or feet and inches, to the eighth
};

// 1:5, 1:10, 1:20 ...; US: 1:4, 1:8, 1:12, 1:16, 1:24 ... The largest at which bow, motor and measures go
// on the paper.
int elevation_scale(const Design& design, const ElevationSheet& sheet);

// The units are millimetres of paper: for write_svg with .paper. Line conventions of ISO 128 and ISO 129-1.
// Precondition: a motor was found.
Drawing elevation_drawing(const Design& design, const ElevationSheet& sheet);

}  // namespace thole
