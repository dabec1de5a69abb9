// Bolted, overhanging plates, some with stiffeners: solved here, and written as solid meshes for CalculiX.
//
// usage: thole_plate_cases FOLDER   writes NAME.inp, NAME_modes.inp, NAME_level.inp, searched.inp and plates.json there

#include <array>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <string>

#include "calc/mount/bolt_group.h"
#include "calc/plate/plate.h"

using namespace thole;

namespace {

struct Named {
  std::string name{};
  PlateModel model{};
  PlateMass mass{};
};

PlateShape trapezoid(double length_m, double aft_m, double fore_m, double thickness_m, double radius_m) {
  return {.outline = {{{0.0, -0.5 * aft_m}, radius_m}, {{length_m, -0.5 * fore_m}, radius_m},
                      {{length_m, 0.5 * fore_m}, radius_m}, {{0.0, 0.5 * aft_m}, radius_m}},
          .thickness_m = thickness_m};
}

void bolt_pairs(PlateShape& shape, std::vector<double> along_m, double half_m) {
  for (const double x_m : along_m)
    for (const double side : {1.0, -1.0}) shape.bolts.push_back({.at = {x_m, side * half_m}});
}

// As the plate's own nodes along a bar.
int bar_parts(const PlateBar& bar) { return static_cast<int>(std::lround((bar.to_x_m - bar.from_x_m) / 0.015)); }
PlatePoint on_bar(const PlateBar& bar, int k, double aside_m) {
  return {bar.from_x_m + (bar.to_x_m - bar.from_x_m) * k / bar_parts(bar), bar.y_m + aside_m};
}

int node_at(const PlateMesh& mesh, PlatePoint p) {
  for (std::size_t i = 0; i < mesh.nodes.size(); ++i)
    if (std::hypot(mesh.nodes[i].x_m - p.x_m, mesh.nodes[i].y_m - p.y_m) < 1e-6) return static_cast<int>(i);
  return -1;
}

std::vector<Named> plates() {
  std::vector<Named> list;
  const auto add = [&](std::string name, PlateShape shape, double deck_edge_m, double deck_N_per_m3,
                       double bolt_N_per_m, double load_x_m, double load_y_m, double load_N,
                       double modulus_Pa = 70e9) {
    PlateModel model{.shape = std::move(shape),
                     .material = {.modulus_Pa = modulus_Pa, .poisson_ratio = 0.33, .density_kg_per_m3 = 2700.0}};
    model.wish.size_m = 0.014;
    model.support = {.bolt_N_per_m = bolt_N_per_m, .deck_N_per_m3 = deck_N_per_m3, .deck_edge_m = deck_edge_m};
    model.cases = {{"load", {{.foot = {.middle = {load_x_m, load_y_m}}, .force_N = load_N},
                             {.foot = {.middle = {load_x_m, -0.5 * load_y_m}}, .force_N = 0.6 * load_N}}}};
    model.stress_clear_m = 0.04;
    list.push_back({std::move(name), std::move(model), {.foot = {.middle = {load_x_m, load_y_m}}, .mass_kg = 18.0}});
  };
  for (const auto& [name, thickness_m] : {std::pair{"thin", 0.006}, {"middling", 0.008}, {"thick", 0.012}, {"heavy", 0.016}}) {
    PlateShape shape = trapezoid(0.60, 0.20, 0.20, thickness_m, 0.0);
    bolt_pairs(shape, {0.05, 0.20, 0.35}, 0.08);
    add(name, shape, 0.40, 5e9, 20e6, 0.57, 0.05, -300.0);
  }
  PlateShape bow = trapezoid(0.55, 0.24, 0.14, 0.010, 0.03);
  bolt_pairs(bow, {0.06, 0.30}, 0.055);
  add("bow", bow, 0.36, 3e9, 40e6, 0.50, 0.04, -400.0);
  add("bow-lifted", bow, 0.36, 3e9, 40e6, 0.50, 0.04, 300.0);
  PlateShape wide = trapezoid(0.40, 0.32, 0.32, 0.008, 0.02);
  bolt_pairs(wide, {0.05, 0.16, 0.27}, 0.13);
  add("wide", wide, 0.30, 8e9, 60e6, 0.36, 0.08, -350.0);
  PlateShape slotted = trapezoid(0.60, 0.20, 0.18, 0.010, 0.02);
  slotted.cut_outs = {{{{0.24, -0.025}, 0.012}, {{0.30, -0.025}, 0.012}, {{0.30, 0.025}, 0.012}, {{0.24, 0.025}, 0.012}}};
  bolt_pairs(slotted, {0.05, 0.20, 0.35}, 0.07);
  add("slotted", slotted, 0.40, 5e9, 20e6, 0.55, 0.04, -300.0);
  add("soft-deck", slotted, 0.40, 4e8, 5e6, 0.55, 0.04, -300.0);
  PlateShape few = trapezoid(0.50, 0.18, 0.18, 0.012, 0.015);
  few.bolts = {{.at = {0.06, 0.06}}, {.at = {0.06, -0.06}}, {.at = {0.28, 0.0}}};
  add("three-bolts", few, 0.34, 2e9, 30e6, 0.45, 0.0, -250.0);
  PlateShape skew = {.outline = {{{0.0, -0.12}, 0.01}, {{0.45, -0.07}, 0.02}, {{0.58, 0.03}, 0.02}, {{0.50, 0.10}, 0.02}, {{0.02, 0.13}, 0.01}},
                     .thickness_m = 0.009};
  skew.bolts = {{.at = {0.06, 0.08}}, {.at = {0.06, -0.07}}, {.at = {0.20, 0.08}}, {.at = {0.20, -0.06}}, {.at = {0.32, 0.07}}, {.at = {0.33, -0.04}}};
  add("skew", skew, 0.37, 5e9, 25e6, 0.50, 0.04, -320.0);
  PlateShape steel = trapezoid(0.48, 0.20, 0.16, 0.006, 0.02);
  bolt_pairs(steel, {0.05, 0.17, 0.29}, 0.065);
  add("steel", steel, 0.33, 6e9, 50e6, 0.43, 0.05, -400.0, 195e9);
  const auto stiffen = [&](PlateBar bar) {
    PlateModel& model = list.back().model;
    model.bars.push_back(bar);
    for (const double side : {1.0, 0.0, -1.0})  // nodes for its flanks and middle
      for (int k = 0; k <= bar_parts(bar); ++k) model.wish.fixed.push_back(on_bar(bar, k, side * 0.5 * bar.thickness_m));
  };
  PlateShape ribbed = trapezoid(0.60, 0.20, 0.20, 0.006, 0.0);
  bolt_pairs(ribbed, {0.05, 0.20, 0.35}, 0.08);
  add("two-bars", ribbed, 0.40, 5e9, 20e6, 0.57, 0.05, -300.0);
  for (const double y_m : {-0.04, 0.04})
    stiffen({.y_m = y_m, .from_x_m = 0.01, .to_x_m = 0.58, .height_m = 0.024, .thickness_m = 0.008, .effective_width_m = 0.08});
  PlateShape keeled = trapezoid(0.55, 0.24, 0.14, 0.008, 0.03);
  bolt_pairs(keeled, {0.06, 0.30}, 0.055);
  add("one-bar", keeled, 0.36, 3e9, 40e6, 0.50, 0.04, -400.0);
  stiffen({.y_m = 0.0, .from_x_m = 0.03, .to_x_m = 0.525, .height_m = 0.03, .thickness_m = 0.008, .effective_width_m = 0.12375});
  PlateShape low = trapezoid(0.55, 0.20, 0.20, 0.010, 0.0);
  bolt_pairs(low, {0.05, 0.18, 0.32}, 0.08);
  add("low-bars", low, 0.37, 5e9, 20e6, 0.50, 0.05, -300.0);
  for (const double y_m : {-0.04, 0.0, 0.04})
    stiffen({.y_m = y_m, .from_x_m = 0.01, .to_x_m = 0.535, .height_m = 0.015, .thickness_m = 0.010, .effective_width_m = 0.04});
  return list;
}

constexpr double kLoadScale = 1e-3;
constexpr double kLevel_N_per_m = 20e6;  // of a bolt in its hole
constexpr double kLevelX_N = 300.0;
constexpr double kLevelY_N = -400.0;
constexpr const char* kSearched = "thin";  // CalculiX finds the contact of this one by itself

// Wedges of fifteen nodes on the same triangles, springs on the middle plane.
class Solid {
 public:
  Solid(const Named& named, const PlateSolution& plate, const std::string& path)
      : named_(named), mesh_(plate.mesh), file_(std::fopen(path.c_str(), "w")) {}
  ~Solid() { std::fclose(file_); }
  Solid(const Solid&) = delete;
  Solid& operator=(const Solid&) = delete;

  int corner(int node, int level) const { return 1 + 3 * node + level; }  // level 0 bottom, 1 middle, 2 top

  // `in_plane`: free in its own plane and held out of it, the other way round than for bending.
  void write_body(bool in_plane = false) {
    const double t_m = named_.model.shape.thickness_m;
    std::fprintf(file_, "*NODE, NSET=ALL\n");
    const int count = static_cast<int>(mesh_.nodes.size());
    for (int i = 0; i < count; ++i) {
      const auto [x_m, y_m] = mesh_.nodes[static_cast<std::size_t>(i)];
      for (int level = 0; level < 3; ++level)
        std::fprintf(file_, "%d, %.12g, %.12g, %.12g\n", corner(i, level), x_m, y_m, 0.5 * (level - 1) * t_m);
    }
    int next = 1 + 3 * count;
    for (const auto& t : mesh_.triangles) {
      for (std::size_t k = 0; k < 3; ++k) {
        const auto side = std::minmax(t[k], t[(k + 1) % 3]);
        if (middles_.contains(side)) continue;
        const auto& a = mesh_.nodes[static_cast<std::size_t>(side.first)];
        const auto& b = mesh_.nodes[static_cast<std::size_t>(side.second)];
        for (int level : {0, 2})
          std::fprintf(file_, "%d, %.12g, %.12g, %.12g\n", next + level / 2, 0.5 * (a.x_m + b.x_m),
                       0.5 * (a.y_m + b.y_m), 0.5 * (level - 1) * t_m);
        middles_[side] = next;
        next += 2;
      }
    }
    next_node_ = next;
    std::fprintf(file_, "*ELEMENT, TYPE=C3D15, ELSET=PLATE\n");
    for (const auto& t : mesh_.triangles) {
      std::fprintf(file_, "%d, ", next_element_++);
      for (int level : {0, 2})
        for (const int node : t) std::fprintf(file_, "%d, ", corner(node, level));
      int middle[2][3];
      for (std::size_t k = 0; k < 3; ++k)
        for (int top = 0; top < 2; ++top) middle[top][k] = middles_[std::minmax(t[k], t[(k + 1) % 3])] + top;
      std::fprintf(file_, "%d, %d, %d, %d,\n%d, %d, ", middle[0][0], middle[0][1], middle[0][2], middle[1][0], middle[1][1], middle[1][2]);
      std::fprintf(file_, "%d, %d, %d\n", corner(t[0], 1), corner(t[1], 1), corner(t[2], 1));
    }
    std::fprintf(file_, "*MATERIAL, NAME=ALLOY\n*ELASTIC\n%.12g, %.12g\n*DENSITY\n%.12g\n*SOLID SECTION, ELSET=PLATE, MATERIAL=ALLOY\n",
                 named_.model.material.modulus_Pa, named_.model.material.poisson_ratio, named_.model.material.density_kg_per_m3);
    // Held in its own plane, so that nothing but bending is left; beside a bar the plate strains in its plane.
    std::fprintf(file_, "*BOUNDARY\n");
    if (in_plane) {
      for (int i = 0; i < count; ++i) std::fprintf(file_, "%d, 3, 3\n", corner(i, 1));
    } else if (named_.model.bars.empty()) {
      for (int i = 0; i < count; ++i) std::fprintf(file_, "%d, 1, 2\n", corner(i, 1));
    } else {
      std::fprintf(file_, "%d, 1, 2\n%d, 2, 2\n", corner(mesh_.bolt_nodes.front(), 1), corner(mesh_.bolt_nodes.back(), 1));
    }
    for (const PlateBar& bar : named_.model.bars) write_bar(bar);
  }

  // Bricks of twenty nodes below the plate, fast to it along both flanks and the middle.
  void write_bar(const PlateBar& bar) {
    constexpr int kHigh = 2;
    const int parts = bar_parts(bar);
    const double bottom_m = -0.5 * named_.model.shape.thickness_m;
    std::map<std::array<int, 3>, int> made;  // by half a part along, half a width across, half a brick down
    std::string nodes;
    const auto node = [&](int along, int across, int down) {
      const auto [at, fresh] = made.try_emplace({along, across, down}, 0);
      if (!fresh) return at->second;
      const auto of_plate = [&](int k) { return node_at(mesh_, on_bar(bar, k, 0.5 * across * bar.thickness_m)); };
      const int first = of_plate(along / 2);
      if (down == 0 && along % 2 == 0) return at->second = corner(first, 0);
      if (down == 0) {
        const auto side = middles_.find(std::minmax(first, of_plate(along / 2 + 1)));
        if (side == middles_.end()) {
          std::fprintf(stderr, "%s: a bar's flank is no side of triangles\n", named_.name.c_str());
          std::exit(1);
        }
        return at->second = side->second;
      }
      char line[120];
      std::snprintf(line, sizeof line, "%d, %.12g, %.12g, %.12g\n", next_node_,
                    bar.from_x_m + 0.5 * along * (bar.to_x_m - bar.from_x_m) / parts,
                    bar.y_m + 0.5 * across * bar.thickness_m, bottom_m - 0.5 * down * bar.height_m / kHigh);
      nodes += line;
      if (down == 2 * kHigh) bar_edge_.push_back(next_node_);
      return at->second = next_node_++;
    };
    const std::string set = "BAR" + std::to_string(next_element_);
    std::string bricks = "*ELEMENT, TYPE=C3D20, ELSET=" + set + "\n";
    // Corners of the low face, of the high one, sides of both, and upright sides, in turns about the vertical.
    constexpr int kRound[8][2] = {{0, -1}, {2, -1}, {2, 1}, {0, 1}, {1, -1}, {2, 0}, {1, 1}, {0, 0}};
    for (int part = 0; part < parts; ++part)
      for (int high = 0; high < kHigh; ++high) {
        bricks += std::to_string(next_element_++);
        int written = 0;
        const auto face = [&](int from, int down) {
          for (int k = from; k < from + 4; ++k) {
            if (++written == 11) bricks += ",\n" + std::to_string(node(2 * part + kRound[k][0], kRound[k][1], down));
            else bricks += ", " + std::to_string(node(2 * part + kRound[k][0], kRound[k][1], down));
          }
        };
        face(0, 2 * high + 2);
        face(0, 2 * high);
        face(4, 2 * high + 2);
        face(4, 2 * high);
        face(0, 2 * high + 1);
        bricks += "\n";
      }
    std::fprintf(file_, "*NODE, NSET=BARS\n%s%s*SOLID SECTION, ELSET=%s, MATERIAL=ALLOY\n", nodes.c_str(), bricks.c_str(), set.c_str());
  }
  // Nodes of the bars' free edges.
  const std::vector<int>& bar_edge() const { return bar_edge_; }

  // Two springs in the plate's plane.
  void write_level_springs(int node, double stiffness_N_per_m) {
    const auto [x_m, y_m] = mesh_.nodes[static_cast<std::size_t>(node)];
    for (const auto& [along_m, across_m] : {std::pair(10.0, 0.0), std::pair(0.0, 10.0)}) {
      const int ground = next_node_++;
      std::fprintf(file_, "*NODE, NSET=GROUND\n%d, %.12g, %.12g, 0.0\n", ground, x_m - along_m, y_m - across_m);
      std::fprintf(file_, "*ELEMENT, TYPE=SPRINGA, ELSET=S%d\n%d, %d, %d\n*SPRING, ELSET=S%d\n\n%#.12g\n", ground, next_element_++, ground,
                   corner(node, 1), ground, stiffness_N_per_m);
    }
  }
  void write_level_step(int node, double force_x_N, double force_y_N) {
    std::fprintf(file_, "*BOUNDARY\nGROUND, 1, 3\n*STEP\n*STATIC\n*CLOAD\n%d, 1, %.12g\n%d, 2, %.12g\n*NODE PRINT, NSET=ALL\nU\n*END STEP\n",
                 corner(node, 1), force_x_N, corner(node, 1), force_y_N);
  }

  // A long spring from the ground; `pulls` and `pushes`: in which sense it acts.
  void write_spring(int node, double stiffness_N_per_m, bool pulls, bool pushes) {
    const auto [x_m, y_m] = mesh_.nodes[static_cast<std::size_t>(node)];
    const int ground = next_node_++;
    std::fprintf(file_, "*NODE, NSET=GROUND\n%d, %.12g, %.12g, -10.0\n", ground, x_m, y_m);
    std::fprintf(file_, "*ELEMENT, TYPE=SPRINGA, ELSET=S%d\n%d, %d, %d\n", ground, next_element_++, ground, corner(node, 1));
    if (pulls && pushes)
      std::fprintf(file_, "*SPRING, ELSET=S%d\n\n%#.12g\n", ground, stiffness_N_per_m);
    else
      std::fprintf(file_, "*SPRING, NONLINEAR, ELSET=S%d\n%#.12g, -1.0\n0.0, 0.0\n%#.12g, 1.0\n", ground,
                   pushes ? -stiffness_N_per_m : 0.0, pulls ? stiffness_N_per_m : 0.0);
  }

  // One-sided springs need the iteration that NLGEOM brings; a load scaled down keeps the geometry linear,
  // and a plate without gaps or preload answers in proportion.
  void write_static(const std::vector<std::pair<int, double>>& loads, bool search) {
    std::fprintf(file_, "*BOUNDARY\nGROUND, 1, 3\n*STEP%s\n*STATIC\n1.0, 1.0\n*CLOAD\n", search ? ", NLGEOM, INC=200" : "");
    for (const auto& [node, force_N] : loads) std::fprintf(file_, "%d, 3, %.12g\n", corner(node, 1), kLoadScale * force_N);
    std::fprintf(file_, "*NODE PRINT, NSET=ALL\nU\n*EL FILE\nS\n*END STEP\n");
  }

  void write_modes(int node, double mass_kg) {
    std::fprintf(file_, "*ELEMENT, TYPE=MASS, ELSET=LUMP\n%d, %d\n*MASS, ELSET=LUMP\n%.12g\n", next_element_++, corner(node, 1), mass_kg);
    std::fprintf(file_, "*BOUNDARY\nGROUND, 1, 3\n*STEP\n*FREQUENCY\n3\n*END STEP\n");
  }

 private:
  const Named& named_;
  const PlateMesh& mesh_;
  std::FILE* file_;
  std::map<std::pair<int, int>, int> middles_{};
  std::vector<int> bar_edge_{};
  int next_node_ = 0;
  int next_element_ = 1;
};

// The deck under each node, as it stands in the model's own rule: a third of each triangle whose middle
// lies on the deck.
std::vector<double> deck_area_m2(const PlateMesh& mesh, double edge_m) {
  std::vector<double> area(mesh.nodes.size(), 0.0);
  for (const auto& t : mesh.triangles) {
    const auto& a = mesh.nodes[static_cast<std::size_t>(t[0])];
    const auto& b = mesh.nodes[static_cast<std::size_t>(t[1])];
    const auto& c = mesh.nodes[static_cast<std::size_t>(t[2])];
    if ((a.x_m + b.x_m + c.x_m) / 3.0 >= edge_m) continue;
    for (const int node : t)
      area[static_cast<std::size_t>(node)] += ((b.x_m - a.x_m) * (c.y_m - a.y_m) - (b.y_m - a.y_m) * (c.x_m - a.x_m)) / 6.0;
  }
  return area;
}

nlohmann::json run(const Named& named, const std::string& folder) {
  const PlateSolution plate = solve_plate(named.model);
  if (!plate.solved) {
    std::fprintf(stderr, "%s: %s\n", named.name.c_str(), plate.problem.c_str());
    std::exit(1);
  }
  constexpr int kRounds = 15;
  double best_ms = 1e9;
  for (int round = 0; round < kRounds; ++round) {
    const auto from = std::chrono::steady_clock::now();
    const PlateSolution again = solve_plate(named.model);
    best_ms = std::min(best_ms, std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - from).count());
    if (!again.solved) std::exit(1);
  }
  PlateModel swinging = named.model;
  swinging.support.bolts_both_ways = true;
  swinging.support.deck_N_per_m3 = 0.0;
  swinging.masses = {named.mass};
  const PlateSolution modes = solve_plate(swinging);

  std::vector<std::pair<int, double>> loads;
  for (const PlateLoad& load : named.model.cases[0].loads) loads.emplace_back(node_at(plate.mesh, load.foot.middle), load.force_N);
  const PlateCaseSolution& load_case = plate.cases[0];
  const std::vector<double> deck = deck_area_m2(plate.mesh, named.model.support.deck_edge_m);
  nlohmann::json touching = nlohmann::json::array();
  nlohmann::json lifted = nlohmann::json::array();
  std::vector<int> bar_edge;
  {
    // The springs that act here, in both senses; whether they are the right ones, CalculiX's own
    // deflections say.
    Solid solid(named, plate, folder + "/" + named.name + ".inp");
    solid.write_body();
    for (std::size_t i = 0; i < plate.mesh.bolt_nodes.size(); ++i)
      if (load_case.bolt_N[i] > 0.0) solid.write_spring(plate.mesh.bolt_nodes[i], named.model.support.bolt_N_per_m, true, true);
    for (std::size_t i = 0; i < deck.size(); ++i) {
      if (!(deck[i] > 0.0)) continue;
      (load_case.deck_Pa[i] > 0.0 ? touching : lifted).push_back(i);
      if (load_case.deck_Pa[i] > 0.0) solid.write_spring(static_cast<int>(i), named.model.support.deck_N_per_m3 * deck[i], true, true);
    }
    solid.write_static(loads, false);
    bar_edge = solid.bar_edge();
  }
  if (named.name == kSearched) {
    Solid solid(named, plate, folder + "/searched.inp");
    solid.write_body();
    for (const int node : plate.mesh.bolt_nodes) solid.write_spring(node, named.model.support.bolt_N_per_m, true, false);
    for (std::size_t i = 0; i < deck.size(); ++i)
      if (deck[i] > 0.0) solid.write_spring(static_cast<int>(i), named.model.support.deck_N_per_m3 * deck[i], false, true);
    solid.write_static(loads, true);
  }
  {
    Solid solid(named, modes, folder + "/" + named.name + "_modes.inp");
    solid.write_body();
    for (const int node : modes.mesh.bolt_nodes) solid.write_spring(node, named.model.support.bolt_N_per_m, true, true);
    solid.write_modes(node_at(modes.mesh, named.mass.foot.middle), named.mass.mass_kg);
  }
  // In its own plane: a push at the first load's place, bolts that give there as a hole in laminate does.
  std::vector<double> shears_N;
  {
    Solid solid(named, plate, folder + "/" + named.name + "_level.inp");
    solid.write_body(true);
    for (const int node : plate.mesh.bolt_nodes) solid.write_level_springs(node, kLevel_N_per_m);
    solid.write_level_step(loads[0].first, kLevelX_N, kLevelY_N);
    std::vector<BoltPoint> places;
    for (const PlateHole& bolt : named.model.shape.bolts) places.push_back({1000.0 * bolt.at.x_m, 1000.0 * bolt.at.y_m});
    const BoltPattern pattern = bolt_pattern(places);
    const PlatePoint at = named.model.cases[0].loads[0].foot.middle;
    const GroupLoad level = moved_to_centroid({.force_x_N = kLevelX_N, .force_y_N = kLevelY_N},
                                              {.x_mm = 1000.0 * at.x_m - pattern.middle.x_mm, .y_mm = 1000.0 * at.y_m - pattern.middle.y_mm});
    for (const BoltForce& force : elastic_forces(pattern.bolts, level)) shears_N.push_back(force.shear_N);
  }
  std::vector<char> clear(plate.mesh.nodes.size(), 1);
  for (std::size_t i = 0; i < clear.size(); ++i) {
    const auto far = [&](PlatePoint p) { return std::hypot(plate.mesh.nodes[i].x_m - p.x_m, plate.mesh.nodes[i].y_m - p.y_m) >= named.model.stress_clear_m; };
    for (const PlateHole& bolt : named.model.shape.bolts) clear[i] = clear[i] && far(bolt.at);
    for (const PlateLoad& load : named.model.cases[0].loads) clear[i] = clear[i] && far(load.foot.middle);
  }
  return {{"name", named.name}, {"load_scale", kLoadScale}, {"touching", touching}, {"lifted", lifted},
          {"bars", named.model.bars.size()}, {"bar_edge", bar_edge}, {"bar_stress_Pa", load_case.bar_stress_Pa}, {"nodes", plate.mesh.nodes.size()}, {"ms", best_ms},
          {"load_nodes", {loads[0].first, loads[1].first}}, {"sag_m", load_case.sag_m},
          {"bolt_nodes", plate.mesh.bolt_nodes}, {"bolt_N", load_case.bolt_N},
          {"level_N_per_m", kLevel_N_per_m}, {"shears_N", shears_N}, {"bolt_N_per_m", named.model.support.bolt_N_per_m}, {"stress_Pa", load_case.stress_Pa},
          {"clear", std::vector<int>(clear.begin(), clear.end())},
          {"worst_stress_Pa", load_case.worst_stress_Pa}, {"worst_node", load_case.worst_node},
          {"rounds", load_case.rounds}, {"frequencies_Hz", modes.frequencies_Hz}};
}

}  // namespace

int main(int count, char** words) {
  if (count != 2) {
    std::fprintf(stderr, "usage: thole_plate_cases FOLDER\n");
    return 2;
  }
  nlohmann::json all = nlohmann::json::array();
  for (const Named& named : plates()) all.push_back(run(named, words[1]));
  std::ofstream(std::string(words[1]) + "/plates.json") << all.dump();
  return 0;
}
