// The plate by finite elements against closed forms and the handbook's recomputed figures.

#include "calc/plate/plate.h"

#include <doctest/doctest.h>

#include <Eigen/Dense>
#include <Eigen/SparseCholesky>
#include <cmath>
#include <functional>
#include <numbers>

#include "calc/mount/deck_panel.h"
#include "calc/plate/dkt.h"
#include "plate_cases.h"
#include "support.h"

using namespace thole;
using namespace thole::test;

namespace {

// Rows of nodes, each square cut by the same diagonal, as the handbook's tables were made.
struct Grid {
  int across = 0;
  std::vector<PlatePoint> nodes{};
  std::vector<std::array<int, 3>> triangles{};

  Grid(int n, const std::function<PlatePoint(double, double)>& place, bool other_diagonal = false)
      : across(n) {
    for (int j = 0; j <= n; ++j)
      for (int i = 0; i <= n; ++i)
        nodes.push_back(place(static_cast<double>(i) / n, static_cast<double>(j) / n));
    for (int j = 0; j < n; ++j) {
      for (int i = 0; i < n; ++i) {
        const int a = at(i, j), b = at(i + 1, j), c = at(i + 1, j + 1), d = at(i, j + 1);
        if (other_diagonal) {
          triangles.push_back({a, b, d});
          triangles.push_back({b, c, d});
        } else {
          triangles.push_back({a, b, c});
          triangles.push_back({a, c, d});
        }
      }
    }
  }
  int at(int i, int j) const { return j * (across + 1) + i; }
};

// Deflections under loads, D = 1, with unknowns fixed and springs on deflections.
Eigen::VectorXd bend(const Grid& grid, double poisson_ratio, const Eigen::VectorXd& loads,
                     const std::vector<bool>& fixed, const std::vector<double>& springs = {},
                     double shear_length_m = 0.0) {
  const auto n = static_cast<Eigen::Index>(3 * grid.nodes.size());
  std::vector<Eigen::Triplet<double>> entries;
  for (const std::array<int, 3>& corners : grid.triangles) {
    const DktTriangle element({grid.nodes[static_cast<std::size_t>(corners[0])],
                               grid.nodes[static_cast<std::size_t>(corners[1])],
                               grid.nodes[static_cast<std::size_t>(corners[2])]},
                              shear_length_m);
    const DktMatrix k = element.stiffness(plate_rigidity(poisson_ratio));
    for (int a = 0; a < 9; ++a) {
      for (int b = 0; b < 9; ++b) {
        const int row = 3 * corners[static_cast<std::size_t>(a / 3)] + a % 3;
        const int column = 3 * corners[static_cast<std::size_t>(b / 3)] + b % 3;
        if (!fixed[static_cast<std::size_t>(row)] && !fixed[static_cast<std::size_t>(column)])
          entries.emplace_back(row, column, k(a, b));
      }
    }
  }
  for (Eigen::Index i = 0; i < n; ++i)
    if (fixed[static_cast<std::size_t>(i)]) entries.emplace_back(i, i, 1.0);
  for (std::size_t i = 0; i < springs.size(); ++i)
    entries.emplace_back(3 * static_cast<int>(i), 3 * static_cast<int>(i), springs[i]);
  Eigen::SparseMatrix<double> stiffness(n, n);
  stiffness.setFromTriplets(entries.begin(), entries.end());
  Eigen::VectorXd right = loads;
  for (Eigen::Index i = 0; i < n; ++i)
    if (fixed[static_cast<std::size_t>(i)]) right[i] = 0.0;
  return Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>>(stiffness).solve(right);
}

enum class Edge { clamped, simply_supported };

// Coefficients of a square of side 1 under q = 1 or P = 1 in its middle.
double square(int n, Edge edge, bool central) {
  const Grid grid(n, [](double x, double y) { return PlatePoint{x, y}; });
  std::vector<bool> fixed(3 * grid.nodes.size(), false);
  Eigen::VectorXd loads = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(fixed.size()));
  for (int j = 0; j <= n; ++j) {
    for (int i = 0; i <= n; ++i) {
      const auto at = static_cast<std::size_t>(3 * grid.at(i, j));
      const bool along_y = i == 0 || i == n;
      const bool along_x = j == 0 || j == n;
      if (along_x || along_y) fixed[at] = true;
      if (edge == Edge::clamped && (along_x || along_y)) fixed[at + 1] = fixed[at + 2] = true;
      if (edge == Edge::simply_supported && along_x) fixed[at + 2] = true;  // no slope along the edge
      if (edge == Edge::simply_supported && along_y) fixed[at + 1] = true;
    }
  }
  if (central) {
    loads[3 * grid.at(n / 2, n / 2)] = 1.0;
  } else {
    for (const auto& corners : grid.triangles)
      for (const int corner : corners) loads[3 * corner] += 0.5 / (n * n) / 3.0;
  }
  return bend(grid, 0.3, loads, fixed)[3 * grid.at(n / 2, n / 2)];
}

}  // namespace

namespace {

// A rectangle of sides 1 (along x) and `length` under q = 1 or P = 1 in its middle; or what `place` makes of it.
struct Bent {
  Grid grid;
  Eigen::VectorXd moved;
  double poisson_ratio;

  double deflection(int i, int j) const { return moved[3 * grid.at(i, j)]; }
  // M_x, M_y, M_xy at a node: the mean of its triangles.
  Eigen::Vector3d moment(int i, int j) const {
    Eigen::Vector3d sum = Eigen::Vector3d::Zero();
    int count = 0;
    for (const std::array<int, 3>& corners : grid.triangles) {
      for (std::size_t a = 0; a < 3; ++a) {
        if (corners[a] != grid.at(i, j)) continue;
        const DktTriangle element({grid.nodes[static_cast<std::size_t>(corners[0])], grid.nodes[static_cast<std::size_t>(corners[1])],
                                   grid.nodes[static_cast<std::size_t>(corners[2])]});
        Eigen::Matrix<double, 9, 1> local;
        for (std::size_t k = 0; k < 3; ++k) local.segment<3>(3 * static_cast<Eigen::Index>(k)) = moved.segment<3>(3 * corners[k]);
        sum += plate_rigidity(poisson_ratio) * element.at_corners()[a] * local;
        ++count;
      }
    }
    return sum / count;
  }
};

enum class Load { even, middle };

Bent bent(int n, Edge edge, Load load, const std::function<PlatePoint(double, double)>& place, bool slopes_along_edges = true,
          double poisson_ratio = 0.3) {
  const Grid grid(n, place);
  std::vector<bool> fixed(3 * grid.nodes.size(), false);
  Eigen::VectorXd loads = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(fixed.size()));
  for (int j = 0; j <= n; ++j)
    for (int i = 0; i <= n; ++i) {
      const auto at = static_cast<std::size_t>(3 * grid.at(i, j));
      const bool along_y = i == 0 || i == n, along_x = j == 0 || j == n;
      if (!along_x && !along_y) continue;
      fixed[at] = true;
      if (edge == Edge::clamped) fixed[at + 1] = fixed[at + 2] = true;
      if (edge == Edge::simply_supported && slopes_along_edges && along_x) fixed[at + 2] = true;
      if (edge == Edge::simply_supported && slopes_along_edges && along_y) fixed[at + 1] = true;
    }
  if (load == Load::middle) loads[3 * grid.at(n / 2, n / 2)] = 1.0;
  for (const auto& corners : grid.triangles) {
    if (load == Load::middle) break;
    const auto p = [&](std::size_t k) { return grid.nodes[static_cast<std::size_t>(corners[k])]; };
    const double twice = (p(1).x_m - p(0).x_m) * (p(2).y_m - p(0).y_m) - (p(2).x_m - p(0).x_m) * (p(1).y_m - p(0).y_m);
    for (const int corner : corners) loads[3 * corner] += 0.5 * twice / 3.0;
  }
  return {grid, bend(grid, poisson_ratio, loads, fixed), poisson_ratio};
}

PlatePoint in_square(double u, double v) { return {u, v}; }
PlatePoint in_disc(double u, double v) {  // of radius 1
  const double x = 2.0 * u - 1.0, y = 2.0 * v - 1.0;
  return {x * std::sqrt(1.0 - 0.5 * y * y), y * std::sqrt(1.0 - 0.5 * x * x)};
}

}  // namespace

TEST_CASE("PL12: the triangle's stiffness has the published element's invariants") {
  // Batoz, Bathe and Ho (1980); handbook mount-structure.md 2.7, recomputed there.
  const DktMatrix one =
      DktTriangle({PlatePoint{0, 0}, {1, 0}, {0, 1}}).stiffness(plate_rigidity(0.3));
  CHECK(one(0, 0) == rel(10.05, 1e-9));
  CHECK(one(0, 1) == rel(1.8125, 1e-9));
  CHECK(one(1, 1) == rel(1.3375, 1e-9));
  CHECK(one(3, 3) == rel(5.5125, 1e-9));
  CHECK(one(8, 8) == rel(0.559375, 1e-9));
  CHECK(one.trace() == rel(27.925, 1e-8));
  const Eigen::SelfAdjointEigenSolver<DktMatrix> modes(one);
  const double published[] = {0.328517, 0.376567, 0.592696, 1.468884, 8.068236, 17.090099};
  for (int k = 0; k < 3; ++k) CHECK(std::abs(modes.eigenvalues()[k]) < 1e-12);
  for (int k = 0; k < 6; ++k) CHECK(modes.eigenvalues()[k + 3] == rel(published[k], 2e-6));
  const DktMatrix other =
      DktTriangle({PlatePoint{0, 0}, {2, 0.3}, {0.5, 1.5}}).stiffness(plate_rigidity(0.3));
  CHECK(other.trace() == rel(14.51319239, 1e-8));
  CHECK(other(0, 0) == rel(2.83391133, 1e-8));
  CHECK(other(1, 1) == rel(1.40187388, 1e-8));
  CHECK(other(0, 8) == rel(-0.69826374, 1e-7));
}

TEST_CASE("PL13: constant bending passes through crooked triangles exactly") {
  // MacNeal and Harder's patch, handbook 2.6: w = 1e-3 (x^2 + x y + y^2) / 2.
  const std::vector<PlatePoint> nodes{{0, 0},       {0.24, 0},    {0.24, 0.12}, {0, 0.12},
                                      {0.04, 0.02}, {0.18, 0.03}, {0.16, 0.08}, {0.08, 0.08}};
  const std::vector<std::array<int, 4>> squares{{0, 1, 5, 4}, {1, 2, 6, 5}, {2, 3, 7, 6}, {3, 0, 4, 7}, {4, 5, 6, 7}};
  const double bending_Nm = 1e6 * 1e-9 / (12.0 * (1.0 - 0.0625));
  Eigen::MatrixXd stiffness = Eigen::MatrixXd::Zero(24, 24);
  std::vector<std::array<int, 3>> triangles;
  for (const auto& s : squares) {
    triangles.push_back({s[0], s[1], s[2]});
    triangles.push_back({s[0], s[2], s[3]});
  }
  const auto element = [&](const std::array<int, 3>& t) {
    return DktTriangle({nodes[static_cast<std::size_t>(t[0])], nodes[static_cast<std::size_t>(t[1])],
                        nodes[static_cast<std::size_t>(t[2])]});
  };
  for (const auto& t : triangles) {
    const DktMatrix k = element(t).stiffness(bending_Nm * plate_rigidity(0.25));
    for (int a = 0; a < 9; ++a)
      for (int b = 0; b < 9; ++b)
        stiffness(3 * t[static_cast<std::size_t>(a / 3)] + a % 3, 3 * t[static_cast<std::size_t>(b / 3)] + b % 3) += k(a, b);
  }
  Eigen::VectorXd exact(24);
  for (int i = 0; i < 8; ++i) {
    const auto [x, y] = nodes[static_cast<std::size_t>(i)];
    exact.segment<3>(3 * i) << 5e-4 * (x * x + x * y + y * y), 5e-4 * (x + 2 * y), -5e-4 * (2 * x + y);
  }
  const Eigen::VectorXd inner = stiffness.bottomRightCorner(12, 12).ldlt().solve(
      -stiffness.bottomLeftCorner(12, 12) * exact.head(12));
  CHECK((inner - exact.tail(12)).cwiseAbs().maxCoeff() < 1e-14);
  for (const auto& t : triangles) {
    Eigen::Matrix<double, 9, 1> local;
    for (int a = 0; a < 3; ++a) local.segment<3>(3 * a) = exact.segment<3>(3 * t[static_cast<std::size_t>(a)]);
    const Eigen::Vector3d moment = bending_Nm * plate_rigidity(0.25) * element(t).curvature(0.2, 0.3) * local;
    CHECK(std::abs(moment[0]) == rel(1.1111e-7, 1e-4));
    CHECK(std::abs(moment[1]) == rel(1.1111e-7, 1e-4));
    CHECK(std::abs(moment[2]) == rel(3.3333e-8, 1e-4));
  }
}

TEST_CASE("PL2, PL4, PL5, PL6, PL14: squares approach the series at the published pace") {
  // Timoshenko and Woinowsky-Krieger, Tables 8, 23, 35, 37; errors by mesh: handbook 2.7.
  struct Row {
    int n;
    double clamped_p, clamped_q, supported_p, supported_q;
  };
  for (const Row& row : {Row{4, 0.0815, 0.0961, 0.0518, -0.0461}, Row{8, 0.0331, 0.0297, 0.0175, -0.0105},
                         Row{16, 0.0106, 0.0077, 0.0055, -0.0025}, Row{32, 0.0032, 0.0020, 0.0016, -0.0006}}) {
    CAPTURE(row.n);
    CHECK(std::abs(square(row.n, Edge::clamped, true) / 0.00561202 - 1.0 - row.clamped_p) < 2e-4);
    CHECK(std::abs(square(row.n, Edge::clamped, false) / 0.00126532 - 1.0 - row.clamped_q) < 2e-4);
    CHECK(std::abs(square(row.n, Edge::simply_supported, true) / 0.011601 - 1.0 - row.supported_p) < 2e-4);
    CHECK(std::abs(square(row.n, Edge::simply_supported, false) / 0.0040624 - 1.0 - row.supported_q) < 2e-4);
  }
  // Order of convergence of the clamped plate: nearly two.
  const double coarse = square(16, Edge::clamped, false) / 0.00126532 - 1.0;
  const double fine = square(32, Edge::clamped, false) / 0.00126532 - 1.0;
  CHECK(std::log2(coarse / fine) > 1.7);
}

TEST_CASE("PL2, PL4, PL5, PL6: moments of squares, and rectangles") {
  // Timoshenko and Woinowsky-Krieger, Tables 8, 23, 35, 37, recomputed in handbook 2.2 and 2.3.
  const Bent supported = bent(32, Edge::simply_supported, Load::even, in_square);
  CHECK(supported.moment(16, 16)[0] == rel(0.04789, 5e-3));
  CHECK(supported.moment(16, 16)[1] == rel(0.04789, 5e-3));
  const Bent clamped = bent(32, Edge::clamped, Load::even, in_square);
  CHECK(clamped.moment(16, 16)[0] == rel(0.02291, 1e-2));
  CHECK(clamped.moment(0, 16)[0] == rel(-0.05133, 1e-2));
  CHECK(clamped.moment(16, 0)[1] == rel(-0.05133, 1e-2));
  CHECK(bent(32, Edge::clamped, Load::middle, in_square).moment(0, 16)[0] == rel(-0.12577, 1e-2));
  // Twice as long: M_x across the short span, M_y along.
  const auto twice = [](double u, double v) { return PlatePoint{u, 2.0 * v}; };
  CHECK(bent(32, Edge::simply_supported, Load::middle, twice).deflection(16, 16) == rel(0.01652, 5e-3));
  const Bent strip = bent(32, Edge::simply_supported, Load::even, twice);
  CHECK(strip.deflection(16, 16) == rel(0.01013, 3e-3));
  CHECK(strip.moment(16, 16)[0] == rel(0.1017, 5e-3));
  CHECK(strip.moment(16, 16)[1] == rel(0.0464, 1e-2));
  const Bent held = bent(32, Edge::clamped, Load::even, twice);
  CHECK(held.deflection(16, 16) == rel(0.002533, 1e-2));
  CHECK(held.moment(0, 16)[0] == rel(-0.0829, 1.5e-2));
}

TEST_CASE("PL8: circular plates, and the order at which they converge") {
  // Timoshenko and Woinowsky-Krieger chapter 3, exact: clamped and supported, radius 1.
  struct Row {
    Edge edge;
    Load load;
    double exact;
  };
  for (const Row& row : {Row{Edge::clamped, Load::middle, 0.019894}, Row{Edge::simply_supported, Load::middle, 0.050501},
                         Row{Edge::clamped, Load::even, 1.0 / 64.0}, Row{Edge::simply_supported, Load::even, 0.063702}}) {
    const auto off = [&](int n) { return bent(n, row.edge, row.load, in_disc, false).deflection(n / 2, n / 2) / row.exact - 1.0; };
    const double coarse = off(16), fine = off(32);
    CAPTURE(row.exact);
    CAPTURE(coarse);
    CAPTURE(fine);
    CHECK(std::abs(fine) < 1e-2);
    CHECK(std::log2(std::abs(coarse / fine)) > 1.5);
    CHECK(std::abs((4.0 * fine - coarse) / 3.0) < 1.5e-3);  // Richardson
  }
  const Bent clamped = bent(32, Edge::clamped, Load::even, in_disc);
  CHECK(clamped.moment(16, 16)[0] == rel(1.3 / 16.0, 1e-2));
  CHECK(clamped.moment(0, 16)[0] == rel(-1.0 / 8.0, 2e-2));
}

// From three meshes, each twice as fine as the one before: what a solution comes nearer by halving its triangles
// (Richardson); no exact value is needed.
double order_of(const std::function<double(int)>& solved) {
  const double coarse = solved(8), middle = solved(16), fine = solved(32);
  return std::log2(std::abs((coarse - middle) / (middle - fine)));
}

TEST_CASE("the order of convergence of each coefficient") {
  const double slant = std::numbers::pi / 6.0;
  const auto in_rhomb = [&](double u, double v) { return PlatePoint{u + v * std::cos(slant), v * std::sin(slant)}; };
  const auto twice = [](double u, double v) { return PlatePoint{u, 2.0 * v}; };
  const auto middle = [](Edge edge, Load load, const std::function<PlatePoint(double, double)>& place, bool along) {
    return [=](int n) { return bent(n, edge, load, place, along).deflection(n / 2, n / 2); };
  };
  const auto cantilever = [](bool corner) {
    return [=](int n) {
      const Grid grid(n, in_square);
      std::vector<bool> fixed(3 * grid.nodes.size(), false);
      for (int j = 0; j <= n; ++j)
        for (int k = 0; k < 3; ++k) fixed[static_cast<std::size_t>(3 * grid.at(0, j) + k)] = true;
      Eigen::VectorXd loads = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(fixed.size()));
      const int node = grid.at(n, corner ? n : n / 2);
      loads[3 * node] = 1.0;
      return bend(grid, 0.3, loads, fixed)[3 * node];
    };
  };
  // Squared in the triangle's side where the solution is smooth (Batoz 1980); less by the kink under a point load, and
  // slowest at Morley's sharp corners and a clamped edge's ends.
  struct Row {
    std::string name;
    std::function<double(int)> solved;
    double least;
  };
  for (const Row& row : {Row{"square, supported, even load", middle(Edge::simply_supported, Load::even, in_square, true), 1.8},
                         Row{"square, supported, load in the middle", middle(Edge::simply_supported, Load::middle, in_square, true), 1.5},
                         Row{"square, clamped, even load", middle(Edge::clamped, Load::even, in_square, true), 1.6},
                         Row{"square, clamped, load in the middle", middle(Edge::clamped, Load::middle, in_square, true), 1.5},
                         Row{"rectangle 2:1, supported, even load", middle(Edge::simply_supported, Load::even, twice, true), 1.5},
                         Row{"rectangle 2:1, clamped, even load", middle(Edge::clamped, Load::even, twice, true), 1.5},
                         Row{"circle, supported, even load", middle(Edge::simply_supported, Load::even, in_disc, false), 1.5},
                         Row{"circle, clamped, load in the middle", middle(Edge::clamped, Load::middle, in_disc, true), 1.5},
                         Row{"Morley's rhomb, supported, even load", middle(Edge::simply_supported, Load::even, in_rhomb, false), 0.5},
                         Row{"square cantilever, load at a corner", cantilever(true), 0.5}}) {
    const double order = order_of(row.solved);
    MESSAGE(row.name << ": order " << order);
    CAPTURE(row.name);
    CHECK(order > row.least);
  }
}

TEST_CASE("PL10: Morley's skew plate on a fine mesh, with its moments") {
  // Morley 1963; the sharp corners make a mesh of 64 still 2 per cent soft (handbook 2.7).
  const double slant = std::numbers::pi / 6.0;
  const Bent skew = bent(64, Edge::simply_supported, Load::even,
                         [&](double u, double v) { return PlatePoint{u + v * std::cos(slant), v * std::sin(slant)}; }, false);
  CHECK(skew.deflection(32, 32) == rel(4.0784e-4, 2e-2));
  const Eigen::Vector3d m = skew.moment(32, 32);
  const double mean = 0.5 * (m[0] + m[1]), half = std::hypot(0.5 * (m[0] - m[1]), m[2]);
  CHECK(mean + half == rel(1.906e-2, 2e-2));
  CHECK(mean - half == rel(1.0857e-2, 3e-2));
}

TEST_CASE("PL10: Morley's skew plate, in both directions of the diagonals") {
  for (const bool other : {false, true}) {
    const double slant = std::numbers::pi / 6.0;
    const Grid grid(16, [&](double u, double v) {
      return PlatePoint{u + v * std::cos(slant), v * std::sin(slant)};
    }, other);
    std::vector<bool> fixed(3 * grid.nodes.size(), false);
    Eigen::VectorXd loads = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(fixed.size()));
    for (int k = 0; k <= 16; ++k)
      for (const int node : {grid.at(k, 0), grid.at(k, 16), grid.at(0, k), grid.at(16, k)})
        fixed[static_cast<std::size_t>(3 * node)] = true;
    for (const auto& corners : grid.triangles)
      for (const int corner : corners) loads[3 * corner] += 0.5 * std::sin(slant) / 256.0 / 3.0;
    const double sag = bend(grid, 0.3, loads, fixed)[3 * grid.at(8, 8)];
    const double either = std::min(std::abs(sag / 4.38e-4 - 1.0), std::abs(sag / 4.19e-4 - 1.0));
    CAPTURE(sag);
    CHECK(either < 0.003);
  }
}

TEST_CASE("PL11: a point load on a wide plate on springs") {
  // Timoshenko art. 57: w = P / (8 sqrt(k D)); here D = 1, k = 1, l = 1, side 12.
  const auto middle = [](int n) {
  const Grid grid(n, [](double x, double y) { return PlatePoint{12.0 * x, 12.0 * y}; });
  std::vector<double> springs(grid.nodes.size(), 0.0);
  for (const auto& corners : grid.triangles)
    for (const int corner : corners) springs[static_cast<std::size_t>(corner)] += 0.5 * 144.0 / (n * n) / 3.0;
  Eigen::VectorXd loads = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(3 * grid.nodes.size()));
  loads[3 * grid.at(n / 2, n / 2)] = 1.0;
  const std::vector<bool> fixed(3 * grid.nodes.size(), false);
  return bend(grid, 0.33, loads, fixed, springs)[3 * grid.at(n / 2, n / 2)];
  };
  // Springs at the nodes approach from above: extrapolated from three meshes (Aitken).
  const double coarse = middle(20), finer = middle(40), finest = middle(80);
  CHECK(finest == rel(0.125, 3e-3));
  const double last = finest - finer, before = finer - coarse;
  CHECK(finest - last * last / (last - before) == rel(0.125, 1e-3));
}

TEST_CASE("cantilevers: the free edge's middle, its corner, an even load") {
  // Handbook 2.5 (Ritz), 2.7 (this element): square, nu 0.3.
  const int n = 16;
  const Grid grid(n, [](double x, double y) { return PlatePoint{x, y}; });
  std::vector<bool> fixed(3 * grid.nodes.size(), false);
  for (int j = 0; j <= n; ++j)
    for (int k = 0; k < 3; ++k) fixed[static_cast<std::size_t>(3 * grid.at(0, j) + k)] = true;
  const auto loaded = [&](int node) {
    Eigen::VectorXd loads = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(fixed.size()));
    loads[3 * node] = 1.0;
    return bend(grid, 0.3, loads, fixed)[3 * node];
  };
  CHECK(loaded(grid.at(n, n / 2)) == rel(0.3615, 2e-3));
  CHECK(loaded(grid.at(n, n)) == rel(0.4911, 2e-3));
  Eigen::VectorXd even = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(fixed.size()));
  for (const auto& corners : grid.triangles)
    for (const int corner : corners) even[3 * corner] += 0.5 / (n * n) / 3.0;
  const Eigen::VectorXd moved = bend(grid, 0.3, even, fixed);
  CHECK(moved[3 * grid.at(n, n / 2)] == rel(0.1291, 2e-3));
  CHECK(moved[3 * grid.at(n, n)] == rel(0.1272, 3e-3));
}

TEST_CASE("a thick cantilever strip gives by bending and by shear") {
  // Timoshenko's beam, nu 0: w = P L^3 / (3 E I) + P L / (kappa G A), here per width with D = 1.
  const double width_m = 0.25;
  for (const double soft_m : {0.05, 0.2, 0.5}) {
    const int n = 12;
    const Grid grid(n, [&](double x, double y) { return PlatePoint{x, width_m * y}; });
    std::vector<bool> fixed(3 * grid.nodes.size(), false);
    Eigen::VectorXd loads = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(fixed.size()));
    for (int j = 0; j <= n; ++j) {
      for (int k = 0; k < 3; ++k) fixed[static_cast<std::size_t>(3 * grid.at(0, j) + k)] = true;
      loads[3 * grid.at(n, j)] = (j == 0 || j == n ? 0.5 : 1.0) / n;
    }
    const double exact_m = (1.0 / 3.0 + soft_m * soft_m) / width_m;
    CAPTURE(soft_m);
    CHECK(bend(grid, 0.0, loads, fixed, {}, soft_m)[3 * grid.at(n, n / 2)] == rel(exact_m, 5e-3));
  }
  CHECK(shear_length_m(0.01, 0.0) == rel(0.01 / std::sqrt(5.0), 1e-12));
}

TEST_CASE("PL15: overhang-6 on rigid bolts") {
  PlateModel model = overhang_six(0.009525, 0.005);  // as fine as the handbook's middle mesh
  model.thin = true;  // as the handbook's figures are
  model.support = {.bolt_N_per_m = 1e12, .bolts_both_ways = true};
  const PlateSolution plate = solve_plate(model);
  REQUIRE_MESSAGE(plate.solved, plate.problem);
  CHECK(sag_at_m(plate, {0.58, 0.0}) == rel(-3.420e-3, 3e-3));
  CHECK(sag_at_m(plate, {0.60, 0.0}) == rel(-3.805e-3, 3e-3));
  const double published[] = {82.3, -547.9, 715.6};
  for (std::size_t row = 0; row < 3; ++row)
    for (std::size_t side = 0; side < 2; ++side)
      CHECK(-plate.cases[0].bolt_N[2 * row + side] == rel(published[row], 3e-3));
}

TEST_CASE("overhang-6 on springs, and on a deck that only pushes") {
  // Handbook 2.8, models B and C, mesh 240x80.
  PlateModel model = overhang_six(0.009525, 0.008);
  model.thin = true;  // as the handbook's figures are
  model.support = {.bolt_N_per_m = 20e6, .bolts_both_ways = true};
  const PlateSolution both_ways = solve_plate(model);
  REQUIRE(both_ways.solved);
  CHECK(sag_at_m(both_ways, {0.60, 0.0}) == rel(-3.972e-3, 3e-3));
  CHECK(-both_ways.cases[0].bolt_N[4] == rel(696.9, 5e-3));

  model.support = {.bolt_N_per_m = 20e6, .deck_N_per_m3 = 5e9, .deck_edge_m = 0.4};
  const PlateSolution plate = solve_plate(model);
  REQUIRE_MESSAGE(plate.solved, plate.problem);
  CHECK(sag_at_m(plate, {0.58, 0.0}) == rel(-1.978e-3, 1e-2));
  CHECK(sag_at_m(plate, {0.60, 0.0}) == rel(-2.239e-3, 1e-2));
  CHECK(plate.cases[0].bolt_N[0] < 1.0);
  CHECK(plate.cases[0].bolt_N[2] == rel(222.7, 0.03));
  CHECK(plate.cases[0].bolt_N[4] == rel(527.6, 0.03));
}

TEST_CASE("thin plates pry their front bolts") {
  // Handbook 2.8, second table: aft / mid / fwd tension each, tip.
  struct Row {
    double thickness_m, aft_N, mid_N, fwd_N, tip_m;
  };
  for (const Row& row : {Row{0.00635, 1, 141, 792, -6.25e-3}, Row{0.0127, 0, 267, 280, -1.11e-3},
                         Row{0.0254, 45, 214, 0, -0.21e-3}}) {
    PlateModel model = overhang_six(row.thickness_m, 0.009);
    model.thin = true;  // as the handbook's figures are
    model.support = {.bolt_N_per_m = 20e6, .deck_N_per_m3 = 5e9, .deck_edge_m = 0.4};
    const PlateSolution plate = solve_plate(model);
    REQUIRE_MESSAGE(plate.solved, plate.problem);
    CAPTURE(row.thickness_m);
    CHECK(std::abs(plate.cases[0].bolt_N[0] - row.aft_N) < 8.0);
    CHECK(std::abs(plate.cases[0].bolt_N[2] - row.mid_N) < 8.0);
    CHECK(std::abs(plate.cases[0].bolt_N[4] - row.fwd_N) < 24.0);
    CHECK(sag_at_m(plate, {0.60, 0.0}) == rel(row.tip_m, 0.02));
  }
}

TEST_CASE("PL17: a rigid pad under an eccentric load lifts off as statics says") {
  // Contact length 3 (L / 2 - e), p_max = 2 N / (3 b (L / 2 - e)): 0.300 m, 333.3 kPa.
  PlateModel model{.shape = rectangle_plate(0.4, 0.2, 0.2),
                   .wish = {.size_m = 0.010},
                   .material = {.modulus_Pa = 2e12, .poisson_ratio = 0.3}};
  model.shape.bolts = {{.at = {0.02, 0.08}}, {.at = {0.02, -0.08}}, {.at = {0.2, 0.0}}};
  model.support = {.bolt_N_per_m = 1e3, .deck_N_per_m3 = 1e9, .deck_edge_m = 1.0};
  model.cases = {{"eccentric", {{.foot = {.middle = {0.3, 0.0}}, .force_N = -10e3}}}};
  const PlateSolution plate = solve_plate(model);
  REQUIRE_MESSAGE(plate.solved, plate.problem);
  // A rigid pad presses along a straight line: where it comes to nothing, between the nodes, contact ends.
  double count = 0.0, x_sum = 0.0, p_sum = 0.0, xx_sum = 0.0, xp_sum = 0.0, farthest_m = 0.4, most_Pa = 0.0;
  for (std::size_t i = 0; i < plate.mesh.nodes.size(); ++i) {
    const double x_m = plate.mesh.nodes[i].x_m, pressed_Pa = plate.cases[0].deck_Pa[i];
    if (!(pressed_Pa > 0.0)) continue;
    count += 1.0, x_sum += x_m, p_sum += pressed_Pa, xx_sum += x_m * x_m, xp_sum += x_m * pressed_Pa;
    farthest_m = std::min(farthest_m, x_m);
    most_Pa = std::max(most_Pa, pressed_Pa);
  }
  const double slope_Pa_per_m = (count * xp_sum - x_sum * p_sum) / (count * xx_sum - x_sum * x_sum);
  const double ends_m = (x_sum - p_sum / slope_Pa_per_m) / count;
  CHECK(0.4 - ends_m == rel(0.300, 5e-3));
  CHECK(most_Pa == rel(333.3e3, 5e-3));
  CHECK(farthest_m >= ends_m - 1e-6);  // nothing beyond it is pressed
  CHECK(farthest_m < ends_m + 0.010);
}

TEST_CASE("a rigid pad that is clamped is pressed and pulled along one straight line") {
  // Statics, Winkler both ways: N / (b L) (1 +- 6 e / L) with N 10 kN, L 0.4, b 0.2, e 0.1: 312.5 and -62.5 kPa.
  PlateModel model{.shape = rectangle_plate(0.4, 0.2, 0.2), .wish = {.size_m = 0.010}, .material = {.modulus_Pa = 2e12, .poisson_ratio = 0.3}};
  model.shape.bolts = {{.at = {0.02, 0.08}}, {.at = {0.02, -0.08}}, {.at = {0.2, 0.0}}};
  model.support = {.bolt_N_per_m = 1e-3, .bolts_both_ways = true, .deck_N_per_m3 = 1e9, .deck_edge_m = 1.0, .deck_both_ways = true};
  const auto at = [](double x_m, double force_N) { return PlateLoad{.foot = {.middle = {x_m, 0.0}}, .force_N = force_N}; };
  model.cases = {{"eccentric", {at(0.3, -10e3)}}, {"lifted", {at(0.1, 4e3)}}, {"both", {at(0.3, -10e3), at(0.1, 4e3)}}};
  const PlateSolution plate = solve_plate(model);
  REQUIRE_MESSAGE(plate.solved, plate.problem);
  const auto [least, most] = std::minmax_element(plate.cases[0].deck_Pa.begin(), plate.cases[0].deck_Pa.end());
  CHECK(*most == rel(312.5e3, 5e-3));
  CHECK(*least == rel(-62.5e3, 5e-3));
  CHECK(plate.cases[0].deck_N == rel(10e3, 1e-6));
  // In proportion, so that two loads do together what they do one by one.
  double most_m = 0.0;
  for (const double sag_m : plate.cases[2].sag_m) most_m = std::max(most_m, std::abs(sag_m));
  for (std::size_t node = 0; node < plate.mesh.nodes.size(); ++node)
    CHECK(std::abs(plate.cases[0].sag_m[node] + plate.cases[1].sag_m[node] - plate.cases[2].sag_m[node]) < 1e-9 * most_m);
}

TEST_CASE("natural frequency of a mass on a cantilever strip") {
  // f = sqrt(k / m) / 2 pi with k = 3 D b / L^3 (Timoshenko): nu 0 makes plate and beam the same.
  PlateModel model{.shape = rectangle_plate(0.4, 0.04, 0.008),
                   .wish = {.size_m = 0.005},
                   .material = {.modulus_Pa = 70e9, .poisson_ratio = 0.0, .density_kg_per_m3 = 1e-3}};
  for (const double x_m : {0.002, 0.022})
    for (const double y_m : {0.016, 0.0, -0.016}) model.shape.bolts.push_back({.at = {x_m, y_m}});
  model.support = {.bolt_N_per_m = 1e13, .bolts_both_ways = true};
  model.masses = {{.foot = {.middle = {0.399, 0.0}, .width_m = 0.039}, .mass_kg = 10.0}};
  const PlateSolution plate = solve_plate(model);
  REQUIRE_MESSAGE(plate.solved, plate.problem);
  // Clamped between two rows 20 mm apart: the aft span gives a little, L (L + s) of the lever.
  const double stiff = 70e9 * 0.04 * std::pow(0.008, 3) / 12.0;
  const double reach_m = 0.377;
  const double give = reach_m * reach_m * (reach_m + 0.02) / (3.0 * stiff);
  CHECK(plate.frequencies_Hz[0] == rel(std::sqrt(1.0 / (give * 10.0)) / (2.0 * std::numbers::pi), 0.01));
}

// Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, Table 23 (centre loads on simply supported plates);
// the rest against triangles and against differences, which know nothing of sines.
TEST_CASE("a deck's panel: point loads as published, four loads as by triangles, a core's shear as by differences") {
  const DeckSection plain{.rigidity_Nm = 1.0};
  const auto middle = [&](double length_m, double width_m) {
    return 1.0 / panel_stiffness({.length_m = length_m, .width_m = width_m, .patch_m = 1e-3, .section = plain}, 1e-3, 0.0).sink_N_per_m;
  };
  CHECK(middle(1.0, 1.0) == rel(0.01160, 2e-3));
  CHECK(middle(1.0, 2.0) == rel(0.01652, 2e-3));
  CHECK(middle(2.0, 1.0) == rel(0.01652, 2e-3));

  const int n = 40;
  const Grid grid(n, in_square);
  std::vector<bool> fixed(3 * grid.nodes.size(), false);
  for (int j = 0; j <= n; ++j) {
    for (int i = 0; i <= n; ++i) {
      const auto at = static_cast<std::size_t>(3 * grid.at(i, j));
      const bool along_y = i == 0 || i == n, along_x = j == 0 || j == n;
      if (along_x || along_y) fixed[at] = true;
      if (along_x) fixed[at + 2] = true;
      if (along_y) fixed[at + 1] = true;
    }
  }
  for (const double turn : {1.0, -1.0}) {
    Eigen::VectorXd loads = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(fixed.size()));
    for (const int i : {12, 28})
      for (const int j : {14, 26}) loads[3 * grid.at(i, j)] = i == 28 ? 1.0 : turn;
    const double down = bend(grid, 0.3, loads, fixed)[3 * grid.at(28, 26)];
    const PanelStiffness panel = panel_stiffness({.length_m = 1.0, .width_m = 1.0, .patch_m = 1e-3, .section = plain}, 0.4, 0.3);
    if (turn > 0.0) CHECK(4.0 / panel.sink_N_per_m == rel(down, 0.01));
    if (turn < 0.0) CHECK(0.4 * 0.4 / panel.tilt_Nm_per_rad == rel(down, 0.01));
  }

  // Shear alone: a skin under tension, by differences on 80 x 80.
  const int cells = 80;
  const auto at = [&](int i, int j) { return j * (cells - 1) + i; };
  const int unknowns = (cells - 1) * (cells - 1);
  std::vector<Eigen::Triplet<double>> entries;
  Eigen::VectorXd push = Eigen::VectorXd::Zero(unknowns);
  const auto patch_share = [&](int i, int j) {  // of a patch of 0.1 by 0.1 in the middle, its edges half
    const int di = std::abs(i + 1 - cells / 2), dj = std::abs(j + 1 - cells / 2);
    if (di > 4 || dj > 4) return 0.0;
    return (di == 4 ? 0.5 : 1.0) * (dj == 4 ? 0.5 : 1.0) / 64.0;
  };
  for (int j = 0; j < cells - 1; ++j) {
    for (int i = 0; i < cells - 1; ++i) {
      entries.emplace_back(at(i, j), at(i, j), 4.0);
      if (i > 0) entries.emplace_back(at(i, j), at(i - 1, j), -1.0);
      if (i < cells - 2) entries.emplace_back(at(i, j), at(i + 1, j), -1.0);
      if (j > 0) entries.emplace_back(at(i, j), at(i, j - 1), -1.0);
      if (j < cells - 2) entries.emplace_back(at(i, j), at(i, j + 1), -1.0);
      push[at(i, j)] = patch_share(i, j);
    }
  }
  Eigen::SparseMatrix<double> membrane(unknowns, unknowns);
  membrane.setFromTriplets(entries.begin(), entries.end());
  const Eigen::VectorXd sunk = Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>>(membrane).solve(push);
  double mean = 0.0;
  for (int j = 0; j < cells - 1; ++j)
    for (int i = 0; i < cells - 1; ++i) mean += patch_share(i, j) * sunk[at(i, j)];
  const DeckSection shears{.rigidity_Nm = 1e12, .shear_N_per_m = 1.0};
  const PanelStiffness by_series = panel_stiffness({.length_m = 1.0, .width_m = 1.0, .patch_m = 0.1, .section = shears}, 1e-6, 0.0);
  CHECK(1.0 / by_series.sink_N_per_m == rel(mean, 0.01));
}
