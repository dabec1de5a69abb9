// What must be true of any plate: equilibrium, reciprocity, mirror images, thicker is stiffer.

#include "calc/plate/plate.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numeric>
#include <random>

#include "calc/plate/unknowns.h"
#include "plate_cases.h"
#include "support.h"

using namespace thole;
using namespace thole::test;

namespace {

// A trapezoid with rounded corners and a cut-out, bolts set at random on a grid.
PlateModel random_plate(std::mt19937& dice) {
  std::uniform_real_distribution<double> share(0.0, 1.0);
  const double length_m = 0.35 + 0.4 * share(dice);
  const double aft_m = 0.16 + 0.1 * share(dice);
  const double fore_m = aft_m * (0.5 + 0.5 * share(dice));
  PlateModel model{.wish = {.size_m = 0.022}, .material = kHandbookAlloy};
  model.shape = {.outline = {{{0.0, -0.5 * aft_m}, 0.02},
                             {{length_m, -0.5 * fore_m}, 0.03},
                             {{length_m, 0.5 * fore_m}, 0.03},
                             {{0.0, 0.5 * aft_m}, 0.02}},
                 .thickness_m = 0.005 + 0.008 * share(dice)};
  if (share(dice) < 0.5) {
    const double x_m = 0.48 * length_m;
    model.shape.cut_outs = {{{{x_m - 0.03, -0.02}, 0.008}, {{x_m + 0.03, -0.02}, 0.008},
                             {{x_m + 0.03, 0.02}, 0.008}, {{x_m - 0.03, 0.02}, 0.008}}};
  }
  for (const double along : {0.1, 0.35, 0.6})
    for (const double side : {1.0, -1.0})
      model.shape.bolts.push_back({.at = {along * length_m, side * 0.35 * fore_m}});
  model.support = {.bolt_N_per_m = 10e6 + 60e6 * share(dice),
                   .deck_N_per_m3 = 1e9 + 9e9 * share(dice),
                   .deck_edge_m = (0.66 + 0.1 * share(dice)) * length_m};
  model.cases = {{"stowed", {{.foot = {{0.88 * length_m, 0.0}, 0.05, 0.06}, .force_N = -200.0 - 600.0 * share(dice)}}},
                 {"thrust", {{.foot = {{0.2 * length_m, 0.0}, 0.1, 0.05},
                              .force_N = 100.0 * (share(dice) - 0.5),
                              .pitch_Nm = 300.0 * (share(dice) - 0.5),
                              .roll_Nm = 200.0 * (share(dice) - 0.5)}}}};
  return model;
}

}  // namespace

TEST_CASE("what the bolts and the deck carry is what stands on the plate, forces and moments") {
  std::mt19937 dice(11);
  for (int trial = 0; trial < 24; ++trial) {
    const PlateModel model = random_plate(dice);
    const PlateSolution plate = solve_plate(model);
    CAPTURE(trial);
    REQUIRE_MESSAGE(plate.solved, plate.problem);
    for (std::size_t c = 0; c < 2; ++c) {
      const PlateLoad& load = model.cases[c].loads[0];
      double force_N = load.force_N, about_y_Nm = load.force_N * load.foot.middle.x_m + load.pitch_Nm;
      double about_x_Nm = load.force_N * load.foot.middle.y_m + load.roll_Nm;
      double scale_N = std::abs(force_N);
      const auto add = [&](double up_N, PlatePoint at) {
        force_N += up_N;
        about_y_Nm += up_N * at.x_m;
        about_x_Nm += up_N * at.y_m;
        scale_N = std::max(scale_N, std::abs(up_N));
      };
      for (std::size_t i = 0; i < model.shape.bolts.size(); ++i)
        add(-plate.cases[c].bolt_N[i], model.shape.bolts[i].at);
      // The deck's push, node by node: pressure on the node's share of the area under it.
      std::vector<double> share_m2(plate.mesh.nodes.size(), 0.0);
      for (const auto& t : plate.mesh.triangles) {
        const auto& a = plate.mesh.nodes[static_cast<std::size_t>(t[0])];
        const auto& b = plate.mesh.nodes[static_cast<std::size_t>(t[1])];
        const auto& d = plate.mesh.nodes[static_cast<std::size_t>(t[2])];
        if ((a.x_m + b.x_m + d.x_m) / 3.0 >= model.support.deck_edge_m) continue;
        const double area_m2 = 0.5 * ((b.x_m - a.x_m) * (d.y_m - a.y_m) - (b.y_m - a.y_m) * (d.x_m - a.x_m));
        for (const int node : t) share_m2[static_cast<std::size_t>(node)] += area_m2 / 3.0;
      }
      for (std::size_t i = 0; i < share_m2.size(); ++i)
        add(plate.cases[c].deck_Pa[i] * share_m2[i], plate.mesh.nodes[i]);
      CHECK(std::abs(force_N) < 1e-9 * scale_N);
      CHECK(std::abs(about_y_Nm) < 1e-9 * scale_N);
      CHECK(std::abs(about_x_Nm) < 1e-9 * scale_N);
      for (const double pull_N : plate.cases[c].bolt_N) CHECK(pull_N >= 0.0);
    }
  }
}

TEST_CASE("reciprocity: the sag at B for a load at A is the sag at A for a load at B") {
  PlateModel model = overhang_six(0.008, 0.012);
  model.support = {.bolt_N_per_m = 20e6, .bolts_both_ways = true};
  const PlatePoint a{0.58, 0.06}, b{0.12, -0.03};
  model.cases = {{"at A", {{.foot = {.middle = a}, .force_N = 1.0}}},
                 {"at B", {{.foot = {.middle = b}, .force_N = 1.0}}}};
  const PlateSolution plate = solve_plate(model);
  REQUIRE(plate.solved);
  CHECK(sag_at_m(plate, b, 0) == rel(sag_at_m(plate, a, 1), 1e-9));
}

// A hair under one bolt, and the plate is no longer its own mirror image.
TEST_CASE("a mirrored plate answers in halves as it does in one") {
  PlateModel model = overhang_six(0.008, 0.02);
  const double bolt_y_m = std::abs(model.shape.bolts.front().at.y_m);
  REQUIRE(bolt_y_m > 0.01);
  model.support = {.bolt_N_per_m = 20e6, .deck_N_per_m3 = 5e9, .deck_edge_m = 0.4};
  const PlateFoot fore{.middle = {0.5, 0.0}, .length_m = 0.1, .width_m = 0.06};
  model.cases = {{"pressed", {{.foot = fore, .force_N = -800.0}}},
                 {"turned", {{.foot = fore, .roll_Nm = 150.0}}},
                 {"pulled aft and aside", {{.foot = fore, .force_N = 100.0, .pitch_Nm = -120.0, .roll_Nm = 90.0}}},
                 {"on one side", {{.foot = {.middle = {0.45, 0.03}, .length_m = 0.05, .width_m = 0.04}, .force_N = -500.0}}}};
  model.masses = {{.foot = fore, .mass_kg = 20.0, .lead_m = 0.1, .height_m = 0.05}};
  model.rest_case = 0;
  PlateModel askew = model;
  askew.support.props = {{.at = model.shape.bolts.front().at, .stiffness_N_per_m = 1e-6}};
  const PlateSolution halves = solve_plate(model), one = solve_plate(askew);
  REQUIRE(halves.solved);
  REQUIRE(one.solved);
  REQUIRE(halves.mesh.nodes.size() == one.mesh.nodes.size());
  REQUIRE(mesh_images(halves.mesh));
  for (std::size_t c = 0; c < model.cases.size(); ++c) {
    INFO(model.cases[c].label);
    const PlateCaseSolution &a = halves.cases[c], &b = one.cases[c];
    double most_m = 0.0, apart_m = 0.0;
    for (std::size_t i = 0; i < a.sag_m.size(); ++i) {
      most_m = std::max(most_m, std::abs(b.sag_m[i]));
      apart_m = std::max(apart_m, std::abs(a.sag_m[i] - b.sag_m[i]));
    }
    CHECK(apart_m < 1e-7 * most_m);
    CHECK(a.worst_stress_Pa == rel(b.worst_stress_Pa, 1e-7));
    CHECK(a.deck_N == rel(b.deck_N, 1e-7));
  }
  for (std::size_t k = 0; k < 3; ++k) CHECK(halves.frequencies_Hz[k] == rel(one.frequencies_Hz[k], 1e-6));
}

TEST_CASE("a thicker plate never sags more, and vibrates faster") {
  double before_m = 1e9;
  for (const double thickness_m : {0.004, 0.006, 0.008, 0.010, 0.0127, 0.02}) {
    PlateModel model = overhang_six(thickness_m, 0.012);
    model.support = {.bolt_N_per_m = 20e6, .deck_N_per_m3 = 5e9, .deck_edge_m = 0.4};
    const PlateSolution plate = solve_plate(model);
    REQUIRE(plate.solved);
    const double sag_m = -sag_at_m(plate, {0.58, 0.0});
    CHECK(sag_m < before_m);
    before_m = sag_m;
  }
}

TEST_CASE("a plate that is its own mirror image answers a straight load alike on both sides") {
  std::mt19937 dice(5);
  for (int trial = 0; trial < 12; ++trial) {
    const PlateModel model = random_plate(dice);
    const PlateSolution plate = solve_plate(model);
    REQUIRE(plate.solved);
    double most_N = 0.0;
    for (const double pull_N : plate.cases[0].bolt_N) most_N = std::max(most_N, pull_N);
    for (std::size_t row = 0; row < 3; ++row)
      CHECK(std::abs(plate.cases[0].bolt_N[2 * row] - plate.cases[0].bolt_N[2 * row + 1]) < 1e-4 * most_N);
  }
}

TEST_CASE("a mirrored load gives the mirrored answer") {
  PlateModel model = overhang_six(0.008, 0.01);
  model.support = {.bolt_N_per_m = 20e6, .deck_N_per_m3 = 5e9, .deck_edge_m = 0.4};
  const PlateFoot foot{{0.3, 0.0}, 0.12, 0.05};
  model.cases = {{"port", {{.foot = foot, .roll_Nm = 120.0}}}, {"starboard", {{.foot = foot, .roll_Nm = -120.0}}}};
  const PlateSolution plate = solve_plate(model);
  REQUIRE(plate.solved);
  double most_N = 0.0;
  for (const double pull_N : plate.cases[0].bolt_N) most_N = std::max(most_N, pull_N);
  for (std::size_t row = 0; row < 3; ++row)
    for (std::size_t side = 0; side < 2; ++side)
      CHECK(std::abs(plate.cases[0].bolt_N[2 * row + side] - plate.cases[1].bolt_N[2 * row + 1 - side]) < 1e-3 * most_N);
}
