// Plates that cannot be: each a sentence that names the part.

#include "calc/plate/plate.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <random>

#include "plate_cases.h"

using namespace thole;
using namespace thole::test;

namespace {

PlateModel sound() {
  PlateModel model = overhang_six(0.008, 0.0);
  model.support = {.bolt_N_per_m = 20e6, .deck_N_per_m3 = 5e9, .deck_edge_m = 0.4};
  return model;
}

std::string problem_of(const PlateModel& model) {
  const PlateSolution plate = solve_plate(model);
  CHECK_FALSE(plate.solved);
  CHECK(plate.cases.empty());
  return plate.problem;
}

bool says(const std::string& sentence, const char* part) { return sentence.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("plates that cannot be are refused with the reason") {
  PlateModel none = sound();
  none.shape.bolts.clear();
  CHECK(says(problem_of(none), "No bolts"));
  PlateModel line = sound();
  for (PlateHole& bolt : line.shape.bolts) bolt.at.y_m = 0.05;
  CHECK(says(problem_of(line), "one line"));
  PlateModel off = sound();
  off.shape.bolts[3].at.x_m = 0.9;
  CHECK(says(problem_of(off), "Bolt 4"));
  PlateModel crossed = sound();
  std::swap(crossed.shape.outline[1], crossed.shape.outline[2]);
  CHECK(says(problem_of(crossed), "crosses itself"));
  PlateModel flat = sound();
  flat.shape.thickness_m = 0.0;
  CHECK(says(problem_of(flat), "thickness"));
  PlateModel many = sound();
  for (int i = 0; i < 500; ++i) many.shape.bolts.push_back({.at = {0.1 + 1e-4 * i, 0.0}});
  CHECK(says(problem_of(many), "60 bolts"));
  PlateModel hung = sound();
  hung.cases[0].loads[0].foot.middle.x_m = 0.7;
  CHECK(says(problem_of(hung), "stowed"));
  PlateModel nan = sound();
  nan.shape.outline[0].at.x_m = std::numeric_limits<double>::quiet_NaN();
  CHECK_FALSE(problem_of(nan).empty());
  PlateModel hole = sound();
  hole.shape.cut_outs = {{{{0.5, 0.0}, 0}, {{0.7, 0.0}, 0}, {{0.6, 0.05}, 0}}};
  CHECK(says(problem_of(hole), "Cut-out 1"));
}

TEST_CASE("no outline makes it crash or give a number that is none") {
  std::mt19937 dice(3);
  std::uniform_real_distribution<double> place(-0.3, 0.6);
  int solved = 0;
  for (int trial = 0; trial < 150; ++trial) {
    PlateModel model{.wish = {.size_m = 0.04}, .material = kHandbookAlloy};
    const int corners = 3 + static_cast<int>(dice() % 6);
    const bool star = dice() % 2 == 0;  // corners round a middle: seldom crossed
    for (int i = 0; i < corners && star; ++i) {
      const double angle_rad = 2.0 * std::numbers::pi * i / corners;
      const double reach_m = 0.15 + std::abs(place(dice));
      model.shape.outline.push_back({{reach_m * std::cos(angle_rad), reach_m * std::sin(angle_rad)},
                                     dice() % 2 == 0 ? 0.0 : std::abs(place(dice))});
    }
    for (int i = 0; i < corners && !star; ++i)
      model.shape.outline.push_back({{place(dice), place(dice)}, dice() % 2 == 0 ? 0.0 : std::abs(place(dice))});
    model.shape.thickness_m = 0.008;
    for (int i = 0; i < 4; ++i) model.shape.bolts.push_back({.at = {0.2 * place(dice), 0.2 * place(dice)}});
    model.support = {.bolt_N_per_m = 1e7, .deck_N_per_m3 = 1e9, .deck_edge_m = place(dice)};
    model.cases = {{"one", {{.foot = {.middle = model.shape.bolts[0].at}, .force_N = -100.0}}}};
    const PlateSolution plate = solve_plate(model);
    if (plate.solved) {
      ++solved;
      for (const double sag_m : plate.cases[0].sag_m) REQUIRE(std::isfinite(sag_m));
      for (const double f_Hz : plate.frequencies_Hz) REQUIRE(std::isfinite(f_Hz));
    } else {
      REQUIRE_FALSE(plate.problem.empty());
    }
  }
  CHECK(solved > 0);
}
