#include "calc/plate/plate.h"

#include <Eigen/Core>
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>

#include "base/order.h"
#include "calc/plate/banded.h"
#include "calc/plate/contact.h"
#include "calc/plate/dkt.h"
#include "calc/plate/unknowns.h"

namespace thole {
namespace {

constexpr double kDeckInBase_frac = 0.3;  // of a deck's or prop's stiffness: about what acts in most cases
constexpr int kFootPoints = 6;            // across a foot, each way
constexpr std::size_t kModes = 3;
constexpr std::size_t kModeRounds = 12;
constexpr double kConverged_frac = 1e-6;  // of a frequency
constexpr double kSteady_rate = 0.1;      // of the steps that lead to it

Eigen::Index deflection(int node) { return 3 * static_cast<Eigen::Index>(node); }

std::size_t in_sixes(std::size_t count) { return (count + kAbreast - 1) / kAbreast; }

// One of six columns abreast.
struct Column {
  const double* from = nullptr;
  double operator[](Eigen::Index row) const { return from[static_cast<Eigen::Index>(kAbreast) * row]; }
};

// A part of the answer that a load or a mass acts on: weights of the nodes' deflections.
struct Weight {
  int node = 0;
  double share = 0.0;
};
using Weights = std::vector<Weight>;

std::optional<Weights> weights_at(const PlateMesh& mesh, double near_m2, PlatePoint p) {
  double best = -1e300;
  std::array<Weight, 3> found{};
  for (const std::array<int, 3>& corners : mesh.triangles) {
    const PlatePoint& a = mesh.nodes[static_cast<std::size_t>(corners[0])];
    const PlatePoint& b = mesh.nodes[static_cast<std::size_t>(corners[1])];
    const PlatePoint& c = mesh.nodes[static_cast<std::size_t>(corners[2])];
    if (square_m2(a, p) > near_m2) continue;
    const double twice = (b.x_m - a.x_m) * (c.y_m - a.y_m) - (b.y_m - a.y_m) * (c.x_m - a.x_m);
    const double twice_b = (p.x_m - a.x_m) * (c.y_m - a.y_m) - (p.y_m - a.y_m) * (c.x_m - a.x_m);
    const double twice_c = (b.x_m - a.x_m) * (p.y_m - a.y_m) - (b.y_m - a.y_m) * (p.x_m - a.x_m);
    const double least = std::min({twice - twice_b - twice_c, twice_b, twice_c});
    if (least <= best * twice) continue;
    const double of_b = twice_b / twice, of_c = twice_c / twice;
    best = least / twice;
    found = {Weight{corners[0], 1.0 - of_b - of_c}, Weight{corners[1], of_b}, Weight{corners[2], of_c}};
    if (best > -1e-9) break;
  }
  if (best < -1e-6) return std::nullopt;
  return Weights(found.begin(), found.end());
}

// Mean deflection under a foot, and its mean turn forward and sideways, as weights of deflections.
struct FootWeights {
  Weights mean{};
  Weights pitch{};  // times deflection: the turn; times moment: forces
  Weights roll{};
};

std::optional<FootWeights> foot_weights(const PlateMesh& mesh, const PlateFoot& foot) {
  double near_m2 = 0.0;  // no point is farther from a corner of its triangle
  for (const auto& [a, b, c] : mesh.triangles)
    for (const auto& [from, to] : {std::pair(a, b), std::pair(b, c), std::pair(c, a)})
      near_m2 = std::max(near_m2, square_m2(mesh.nodes[static_cast<std::size_t>(from)], mesh.nodes[static_cast<std::size_t>(to)]));
  const auto offset = [](int k, double length_m) { return length_m * ((k + 0.5) / kFootPoints - 0.5); };
  double x_square = 0.0, y_square = 0.0;
  for (int k = 0; k < kFootPoints; ++k) {
    x_square += kFootPoints * offset(k, foot.length_m) * offset(k, foot.length_m);
    y_square += kFootPoints * offset(k, foot.width_m) * offset(k, foot.width_m);
  }
  FootWeights weights;
  for (int i = 0; i < kFootPoints; ++i) {
    for (int j = 0; j < kFootPoints; ++j) {
      const double x_m = offset(i, foot.length_m);
      const double y_m = offset(j, foot.width_m);
      const std::optional<Weights> here = weights_at(mesh, near_m2, {foot.middle.x_m + x_m, foot.middle.y_m + y_m});
      if (!here) return std::nullopt;
      for (const Weight& weight : *here) {
        weights.mean.push_back({weight.node, weight.share / (kFootPoints * kFootPoints)});
        if (x_square > 0.0) weights.pitch.push_back({weight.node, weight.share * x_m / x_square});
        if (y_square > 0.0) weights.roll.push_back({weight.node, weight.share * y_m / y_square});
      }
      if (foot.length_m <= 0.0 && foot.width_m <= 0.0) {
        weights.mean.clear();
        for (const Weight& weight : *here) weights.mean.push_back(weight);
        return weights;
      }
    }
  }
  return weights;
}

constexpr double kSame_frac = 1e-9;
constexpr double kEven_frac = 1e-12;  // odd forces are rounding
constexpr double kBarStep_m = 0.015;  // of the nodes along a bar

// Bar and plate's strip as one section.
struct BarSection {
  double bending_Nm2 = 0.0;
  double twist_Nm2 = 0.0;
  double edge_m = 0.0;  // free edge from the common axis
};
BarSection section_of(const PlateBar& bar, double plate_thickness_m, const PlateMaterial& material) {
  const double bar_m2 = bar.height_m * bar.thickness_m;
  const double strip_m2 = bar.effective_width_m * plate_thickness_m;
  const double apart_m = 0.5 * (bar.height_m + plate_thickness_m);
  const double own_m4 = bar.thickness_m * std::pow(bar.height_m, 3) / 12.0;
  const double share = strip_m2 / (bar_m2 + strip_m2);
  const double shear_Pa = 0.5 * material.modulus_Pa / (1.0 + material.poisson_ratio);
  return {material.modulus_Pa * (own_m4 + apart_m * apart_m * bar_m2 * share),
          shear_Pa * bar.height_m * std::pow(bar.thickness_m, 3) / 3.0, apart_m * share + 0.5 * bar.height_m};
}

// The first kModes of a symmetric matrix, by Jacobi's rotations.
std::vector<double> largest_eigenvalues(std::vector<double> m, std::size_t size) {
  double most = 0.0;
  for (const double each : m) most = std::max(most, std::abs(each));
  constexpr int kMostSweeps = 40;
  bool turned = true;
  for (int sweep = 0; turned && sweep < kMostSweeps; ++sweep) {
    turned = false;
    for (std::size_t p = 0; p < size; ++p) {
      for (std::size_t q = p + 1; q < size; ++q) {
        const double off = m[p * size + q];
        if (!(std::abs(off) > 1e-15 * most)) continue;
        turned = true;
        const double half = 0.5 * (m[q * size + q] - m[p * size + p]) / off;
        const double tangent = std::copysign(1.0, half) / (std::abs(half) + std::sqrt(half * half + 1.0));
        const double cosine = 1.0 / std::sqrt(tangent * tangent + 1.0);
        const auto turn = [&](double& a, double& b) {
          const double was = a;
          a = cosine * (was - tangent * b);
          b = cosine * (b + tangent * was);
        };
        for (std::size_t k = 0; k < size; ++k) turn(m[p * size + k], m[q * size + k]);
        for (std::size_t k = 0; k < size; ++k) turn(m[k * size + p], m[k * size + q]);
        m[p * size + q] = m[q * size + p] = 0.0;
      }
    }
  }
  std::vector<double> found;
  for (std::size_t k = 0; k < size; ++k) found.push_back(m[k * size + k]);
  return sorted(std::move(found), [](double a, double b) { return a > b; });
}

class PlateSystem {
 public:
  explicit PlateSystem(const PlateModel& model, PlateSolution& out) : model_(model), out_(out) {}

  bool prepare() {
    std::optional<PlateMesh> mesh = mesh_plate(model_.shape, wish(), out_.problem);
    if (!mesh || !acceptable()) return false;
    out_.mesh = std::move(*mesh);
    unknown_count_ = deflection(static_cast<int>(out_.mesh.nodes.size()));
    find_bar_parts();
    find_clear_nodes();
    number();
    assemble();
    return place_springs();
  }

  bool solve_cases() {
    const std::size_t cases = model_.cases.size();
    std::vector<Abreast> loads(in_sixes(cases), Abreast(kAbreast * unknowns_.rows()));
    for (std::size_t i = 0; i < cases; ++i)
      if (!add_loads(model_.cases[i], loads[i / kAbreast].data(), i % kAbreast)) return false;
    // Those that bend the plate evenly need the even rows alone.
    Share even = even_share();
    Share rest{.rows = unknowns_.rows(), .springs = springs_};
    for (std::size_t s = 0; s < springs_.size(); ++s) rest.spring.push_back(s);
    for (std::size_t i = 0; i < cases; ++i)
      (unknowns_.in_halves() && is_even(loads[i / kAbreast], i % kAbreast) ? even : rest).cases.push_back(i);
    out_.cases.resize(cases);
    // All cases are told from one structure: the bolts, and some deck everywhere.
    Banded base = stiffness_;
    for (const OneWaySpring& spring : springs_)
      unknowns_.add(base, spring.deflection, spring.deflection, spring.base_frac * spring.stiffness_N_per_m);
    if (!base.factor()) return refuse("The plate can move freely on its bolts.");
    return solve_share(even, base.head(even.rows / kAbreast), loads) && solve_share(rest, base, loads);
  }

  void solve_modes() {
    out_.frequencies_Hz.assign(kModes, 0.0);
    Banded rest = stiffness_;
    for (std::size_t s = 0; s < springs_.size(); ++s)
      if (rest_.empty() ? springs_[s].pulls : rest_[s] != 0)
        unknowns_.add(rest, springs_[s].deflection, springs_[s].deflection, springs_[s].stiffness_N_per_m);
    if (!rest.factor()) return;  // at rest it can move
    weigh();
    Abreast next(kAbreast * rest.rows());
    for (std::size_t node = 0; node < out_.mesh.nodes.size(); ++node) {
      const auto [x_m, y_m] = out_.mesh.nodes[node];
      const double trial[kAbreast] = {1.0, x_m, y_m, x_m * x_m, x_m * y_m, y_m * y_m};
      const bool even[kAbreast] = {true, true, false, true, false, true};
      const Places& at = unknowns_.of(static_cast<int>(node), 0);
      for (std::size_t c = 0; c < kAbreast; ++c)
        if (const auto& [row, sign] = at[unknowns_.in_halves() && !even[c] ? 1 : 0]; sign != 0.0)
          next[kAbreast * row + c] = sign * trial[c];
    }
    // Rayleigh and Ritz in Krylov's space of flexibility times mass, six shapes more each round.
    std::vector<Abreast> shapes, forces;
    std::vector<double> projected;
    std::array<double, kModes> steps_Hz{};
    for (std::size_t round = 1; round <= kModeRounds; ++round) {
      Abreast force = times_mass(next);
      for (std::size_t j = 0; j < shapes.size(); ++j) {
        std::vector<double> common(kAbreast * kAbreast);
        take_product(common.data(), forces[j].data(), next.data(), rest.rows());
        for (double& each : common) each = -each;
        take_mixture(next.data(), shapes[j].data(), common.data(), rest.rows());
        take_mixture(force.data(), forces[j].data(), common.data(), rest.rows());
      }
      make_square(next, force);
      shapes.push_back(next);
      forces.push_back(force);
      next = std::move(force);
      rest.solve(next.data());
      const std::size_t size = kAbreast * round;
      std::vector<double> grown(size * size);
      for (std::size_t k = 0; k < projected.size(); ++k)
        grown[k / (size - kAbreast) * size + k % (size - kAbreast)] = projected[k];
      for (std::size_t j = 0; j < round; ++j) {
        double block[kAbreast * kAbreast] = {};
        take_product(block, forces[j].data(), next.data(), rest.rows());
        for (std::size_t k = 0; k < kAbreast * kAbreast; ++k) {
          const std::size_t row = kAbreast * j + k / kAbreast, column = size - kAbreast + k % kAbreast;
          grown[row * size + column] = grown[column * size + row] = -block[k];
        }
      }
      projected = grown;
      const std::vector<double> flexibility = largest_eigenvalues(std::move(grown), size);
      // Each round leaves a like share of what was left: the last two steps tell what is to come.
      bool still = true;
      for (std::size_t k = 0; k < kModes; ++k) {
        const double now_Hz = flexibility[k] > 0.0 ? 0.5 / (std::numbers::pi * std::sqrt(flexibility[k])) : 0.0;
        const double step_Hz = std::abs(now_Hz - out_.frequencies_Hz[k]);
        const double rate = step_Hz / std::exchange(steps_Hz[k], step_Hz);
        const double left_Hz = rate < kSteady_rate ? step_Hz * rate / (1.0 - rate) : step_Hz;
        still = still && left_Hz <= kConverged_frac * now_Hz;
        out_.frequencies_Hz[k] = now_Hz;
      }
      if (still) break;
    }
  }

 private:
  MeshWish wish() const {
    MeshWish wish = model_.wish;
    wish.deck_edge_m = model_.support.deck_N_per_m3 > 0.0 ? model_.support.deck_edge_m : -1e300;
    for (const PlateProp& prop : model_.support.props) wish.fixed.push_back(prop.at);
    for (const PlatePatch& patch : model_.patches) {
      const auto& [middle, length_m, width_m] = patch.foot;
      for (const double along : {-0.5, 0.0, 0.5})
        for (const double across : {-0.5, 0.0, 0.5})
          wish.fixed.push_back({middle.x_m + along * length_m, middle.y_m + across * width_m});
    }
    for (const PlateBar& bar : model_.bars) {
      const int parts = std::max(2, static_cast<int>(std::lround((bar.to_x_m - bar.from_x_m) / kBarStep_m)));
      for (int k = 0; k <= parts; ++k) {
        const PlatePoint p{bar.from_x_m + (bar.to_x_m - bar.from_x_m) * k / parts, bar.y_m};
        const auto near = [&](PlatePoint other) {
          return distance_m(other, p) < 0.4 * kBarStep_m;
        };
        const std::vector<PlateHole>& bolts = model_.shape.bolts;
        if (std::none_of(wish.fixed.begin(), wish.fixed.end(), near) &&
            std::none_of(bolts.begin(), bolts.end(), [&](const PlateHole& bolt) { return near(bolt.at); }))
          wish.fixed.push_back(p);
      }
    }
    for (const PlateLoadCase& load_case : model_.cases)
      for (const PlateLoad& load : load_case.loads) {
        if (!(load.foot.length_m > 0.0) && !(load.foot.width_m > 0.0)) wish.fixed.push_back(load.foot.middle);
      }
    return wish;
  }

  // Cases that are solved together.
  struct Share {
    std::size_t rows = 0;  // the first of all
    std::vector<OneWaySpring> springs{};
    std::vector<std::size_t> spring{};  // of these, for each of the plate
    std::vector<std::size_t> cases{};
  };

  bool is_even(const Abreast& forces, std::size_t column) const {
    double even = 0.0, odd = 0.0;
    for (std::size_t row = 0; row < unknowns_.rows(); ++row) {
      double& most = row < unknowns_.even_rows() ? even : odd;
      most = std::max(most, std::abs(forces[kAbreast * row + column]));
    }
    return odd <= kEven_frac * even;
  }
  // On the even rows, a spring and its image as one.
  Share even_share() const {
    Share even;
    if (!unknowns_.in_halves()) return even;
    even.rows = unknowns_.even_rows();
    constexpr std::size_t kNone = SIZE_MAX;
    std::vector<std::array<std::size_t, 2>> known(unknowns_.even_rows(), {kNone, kNone});  // pushing, pulling
    for (const OneWaySpring& spring : springs_) {
      std::size_t& at = known[spring.deflection[0].row][spring.pulls ? 1 : 0];
      if (at == kNone) {
        at = even.springs.size();
        even.springs.push_back(spring);
        even.springs.back().deflection[1] = {};
      } else {
        even.springs[at].stiffness_N_per_m += spring.stiffness_N_per_m;
      }
      even.spring.push_back(at);
    }
    return even;
  }

  bool solve_share(const Share& share, const Banded& base, const std::vector<Abreast>& all_loads) {
    const std::vector<std::size_t>& cases = share.cases;
    if (cases.empty()) return true;
    std::vector<Abreast> loads(in_sixes(cases.size()), Abreast(kAbreast * share.rows));
    for (std::size_t i = 0; i < cases.size(); ++i)
      for (std::size_t row = 0; row < share.rows; ++row)
        loads[i / kAbreast][kAbreast * row + i % kAbreast] =
            all_loads[cases[i] / kAbreast][kAbreast * row + cases[i] % kAbreast];
    std::vector<Abreast> moves = loads;
    for (Abreast& columns : moves) base.solve(columns.data());
    Contact contact(base, share.springs);
    if (const int lost = contact.settle(moves, cases.size()); lost >= 0) {
      out_.problem = "Bolts and deck find no balance in the case " +
                     model_.cases[cases[static_cast<std::size_t>(lost)]].label +
                     ": more bolts, or a deck under more of the plate, would hold it.";
      return false;
    }
    // What rounding left out of balance.
    std::vector<Abreast> more = loads;
    for (std::size_t k = 0; k < more.size(); ++k)
      stiffness_.take_product_with(moves[k].data(), more[k].data(), share.rows / kAbreast);
    for (std::size_t i = 0; i < cases.size(); ++i)
      for (std::size_t s = 0; s < share.springs.size(); ++s) {
        const OneWaySpring& spring = share.springs[s];
        if (contact.acting(i)[s] == 0) continue;
        const double pull_N = spring.stiffness_N_per_m * spring.move_m(moves[i / kAbreast].data(), i % kAbreast);
        spring.push(more[i / kAbreast].data(), i % kAbreast, -pull_N);
      }
    for (Abreast& columns : more) base.solve(columns.data());
    contact.correct(more);
    for (std::size_t k = 0; k < moves.size(); ++k)
      for (std::size_t at = 0; at < moves[k].size(); ++at) moves[k][at] += more[k][at];
    for (std::size_t first = 0; first < cases.size(); first += kAbreast) {
      const Abreast u = unknowns_of(moves[first / kAbreast]);
      const Abreast stresses_Pa = stresses_of(u);
      for (std::size_t i = first; i < std::min(first + kAbreast, cases.size()); ++i) {
        out_.cases[cases[i]] = read(model_.cases[cases[i]], {u.data() + i % kAbreast}, {stresses_Pa.data() + i % kAbreast});
        out_.cases[cases[i]].rounds = contact.rounds(i);
        if (static_cast<int>(cases[i]) != model_.rest_case) continue;
        for (const std::size_t s : share.spring) rest_.push_back(contact.acting(i)[s]);
      }
    }
    return true;
  }

  // By node, of columns that may lack the odd rows.
  Abreast unknowns_of(const Abreast& columns) const {
    Abreast u(kAbreast * static_cast<std::size_t>(unknown_count_));
    std::size_t k = 0;
    for (int node = 0; k < u.size(); ++node)
      for (std::size_t which = 0; which < 3; ++which, k += kAbreast)
        for (const auto& [row, sign] : unknowns_.of(node, which)) {
          const std::size_t at = kAbreast * row;
          if (sign == 0.0 || at >= columns.size()) continue;
          for (std::size_t c = 0; c < kAbreast; ++c) u[k + c] += sign * columns[at + c];
        }
    return u;
  }

  bool refuse(const char* sentence) {
    out_.problem = sentence;
    return false;
  }

  bool acceptable() {
    const auto& [modulus_Pa, poisson_ratio, density_kg_per_m3] = model_.material;
    if (!(modulus_Pa > 0.0)) return refuse("The alloy's modulus must be more than 0.");
    if (!(poisson_ratio >= 0.0 && poisson_ratio < 0.5)) return refuse("Poisson's ratio must be from 0 to below 0.5.");
    if (!(density_kg_per_m3 >= 0.0)) return refuse("The alloy's density must not be negative.");
    for (const PlateBar& bar : model_.bars) {
      if (!(bar.height_m > 0.0) || !(bar.thickness_m > 0.0) || !(bar.effective_width_m > 0.0))
        return refuse("A stiffener's height and thickness must be more than 0.");
      if (!(bar.to_x_m > bar.from_x_m)) return refuse("A stiffener must have a length.");
    }
    if (!(model_.support.bolt_N_per_m > 0.0)) return refuse("The bolts' stiffness must be more than 0.");
    if (!(model_.support.deck_N_per_m3 >= 0.0)) return refuse("The deck's stiffness must not be negative.");
    const std::vector<PlateHole>& bolts = model_.shape.bolts;
    if (bolts.empty()) return refuse("No bolts: place at least three, not all on one line.");
    if (static_cast<int>(bolts.size()) > kMostPlateBolts)
      return refuse(
          "More than 60 bolts: a plate of this size holds fewer; take away those that stand "
          "twice.");
    double farthest_m = 0.0;
    PlatePoint far = bolts.front().at;
    for (const PlateHole& bolt : bolts) {
      const double away_m = distance_m(bolt.at, bolts.front().at);
      if (away_m > farthest_m) farthest_m = away_m, far = bolt.at;
    }
    double off_m = 0.0;
    for (const PlateHole& bolt : bolts) {
      const PlatePoint from = bolts.front().at;
      const double twice_m2 =
          (far.x_m - from.x_m) * (bolt.at.y_m - from.y_m) - (far.y_m - from.y_m) * (bolt.at.x_m - from.x_m);
      off_m = std::max(off_m, farthest_m > 0.0 ? std::abs(twice_m2) / farthest_m : 0.0);
    }
    if (off_m < 1e-3) return refuse("All bolts lie on one line: the plate would tip about it. Set one beside it.");
    return true;
  }

  void assemble() {
    const double t_m = model_.shape.thickness_m;
    const double nu = model_.material.poisson_ratio;
    const double bending_Nm = model_.material.modulus_Pa * t_m * t_m * t_m / (12.0 * (1.0 - nu * nu));
    const Eigen::Matrix3d rigidity = bending_Nm * plate_rigidity(nu);
    const Eigen::Matrix3d per_curvature_Pa = 6.0 / (t_m * t_m) * rigidity;
    std::vector<double> bending_area_m2(out_.mesh.nodes.size());
    node_area_m2_.assign(out_.mesh.nodes.size(), 0.0);
    deck_area_m2_.assign(out_.mesh.nodes.size(), 0.0);
    for (std::size_t k = 0; k < out_.mesh.triangles.size(); ++k) {
      const std::size_t image = images_ ? images_->triangle[k] : k;
      if (image < k) continue;
      // In halves a triangle and its image add the same.
      const double sides = image > k ? 2.0 : 1.0;
      Bending bending{.corners = out_.mesh.triangles[k]};
      if (image > k) bending.image = corners_of_image(bending.corners);
      const DktTriangle element = triangle(bending.corners);
      const double area_m2 = element.area_m2();
      const double ratio = patch_ratio(bending.corners);
      const std::array<DktCurvature, 3> curvature = element.at_corners();
      const DktMatrix stiffness = sides * ratio * element.stiffness(rigidity, curvature);
      std::array<const Places*, 9> at{};
      for (std::size_t a = 0; a < 9; ++a) at[a] = &unknowns_.of(bending.corners[a / 3], a % 3);
      for (std::size_t a = 0; a < 9; ++a)
        for (std::size_t b = 0; b <= a; ++b)
          unknowns_.add(stiffness_, *at[a], *at[b],
                        stiffness(static_cast<Eigen::Index>(a), static_cast<Eigen::Index>(b)));
      double middle_x_m = 0.0;
      for (const int corner : bending.corners)
        middle_x_m += out_.mesh.nodes[static_cast<std::size_t>(corner)].x_m / 3.0;
      for_sides(bending, [&](const std::array<int, 3>& corners) {
        for (const int corner : corners) {
          const auto node = static_cast<std::size_t>(corner);
          node_area_m2_[node] += area_m2 / 3.0;
          if (middle_x_m < model_.support.deck_edge_m) deck_area_m2_[node] += area_m2 / 3.0;
          if (!(ratio > 1.0)) bending_area_m2[node] += area_m2;
        }
      });
      out_.area_m2 += sides * area_m2;
      if (ratio > 1.0) continue;
      for (std::size_t a = 0; a < 3; ++a) bending.stress_Pa[a] = area_m2 * per_curvature_Pa.lazyProduct(curvature[a]);
      bendings_.push_back(bending);
    }
    for (Bending& bending : bendings_)
      for (std::size_t a = 0; a < 3; ++a)
        bending.stress_Pa[a] *= 1.0 / bending_area_m2[static_cast<std::size_t>(bending.corners[a])];
    out_.mass_kg = out_.area_m2 * t_m * model_.material.density_kg_per_m3;
    add_bars();
    for (std::size_t node = 0; node < deck_area_m2_.size(); ++node)
      if (model_.support.deck_both_ways && deck_area_m2_[node] > 0.0)
        add(deflection(static_cast<int>(node)), deflection(static_cast<int>(node)), model_.support.deck_N_per_m3 * deck_area_m2_[node]);
    for (const int node : out_.mesh.bolt_nodes)
      if (model_.support.bolts_both_ways) add(deflection(node), deflection(node), model_.support.bolt_N_per_m);
    unknowns_.close(stiffness_);
  }
  void add(Eigen::Index a, Eigen::Index b, double value) { unknowns_.add(stiffness_, places(a), places(b), value); }

  // In halves if all that stiffens the plate, and how it rests, is its own mirror image.
  void number() {
    std::optional<MeshImages> images = mesh_images(out_.mesh);
    if (images && !is_mirrored(*images)) images.reset();
    std::vector<std::array<int, 2>> ties;
    for (const BarPart& part : bar_parts_) ties.push_back({part.aft, part.fore});
    unknowns_ = Unknowns(out_.mesh, images, ties);
    stiffness_ = unknowns_.matrix();
    images_ = std::move(images);
  }
  bool is_mirrored(const MeshImages& images) const {
    const auto same = [](double a, double b) {
      return std::abs(a - b) <= kSame_frac * std::max(std::abs(a), std::abs(b));
    };
    const auto has_image = [&](const auto& parts, const auto& is_image) {
      return std::all_of(parts.begin(), parts.end(), [&](const auto& part) {
        return std::any_of(parts.begin(), parts.end(), [&](const auto& other) { return is_image(part, other); });
      });
    };
    for (std::size_t k = 0; k < images.triangle.size(); ++k)
      if (patch_ratio(out_.mesh.triangles[k]) != patch_ratio(out_.mesh.triangles[images.triangle[k]])) return false;
    if (model_.rest_case >= 0 && static_cast<std::size_t>(model_.rest_case) < model_.cases.size())
      for (const PlateLoad& load : model_.cases[static_cast<std::size_t>(model_.rest_case)].loads)
        if (load.foot.middle.y_m != 0.0 || load.roll_Nm != 0.0) return false;
    return has_image(
               out_.mesh.bolt_nodes,
               [&](int a, int b) { return images.node[static_cast<std::size_t>(a)] == static_cast<std::size_t>(b); }) &&
           has_image(model_.support.props,
                     [&](const PlateProp& a, const PlateProp& b) {
                       return same(a.at.x_m, b.at.x_m) && same(a.at.y_m, -b.at.y_m) &&
                              same(a.stiffness_N_per_m, b.stiffness_N_per_m);
                     }) &&
           has_image(model_.bars, [&](const PlateBar& a, const PlateBar& b) {
             return same(a.y_m, -b.y_m) && same(a.from_x_m, b.from_x_m) && same(a.to_x_m, b.to_x_m) &&
                    same(a.height_m, b.height_m) && same(a.thickness_m, b.thickness_m) &&
                    same(a.effective_width_m, b.effective_width_m);
           });
  }
  const Places& places(Eigen::Index unknown) const {
    return unknowns_.of(static_cast<int>(unknown / 3), static_cast<std::size_t>(unknown % 3));
  }

  void find_bar_parts() {
    for (const PlateBar& bar : model_.bars) {
      std::vector<int> along;
      for (std::size_t node = 0; node < out_.mesh.nodes.size(); ++node) {
        const PlatePoint& p = out_.mesh.nodes[node];
        if (std::abs(p.y_m - bar.y_m) < 1e-6 && p.x_m > bar.from_x_m - 1e-6 && p.x_m < bar.to_x_m + 1e-6)
          along.push_back(static_cast<int>(node));
      }
      along = sorted(std::move(along), [&](int a, int b) {
        return out_.mesh.nodes[static_cast<std::size_t>(a)].x_m < out_.mesh.nodes[static_cast<std::size_t>(b)].x_m;
      });
      for (std::size_t k = 0; k + 1 < along.size(); ++k)
        bar_parts_.push_back({along[k], along[k + 1],
                              out_.mesh.nodes[static_cast<std::size_t>(along[k + 1])].x_m -
                                  out_.mesh.nodes[static_cast<std::size_t>(along[k])].x_m,
                              bar, section_of(bar, model_.shape.thickness_m, model_.material)});
    }
  }
  void add_bars() {
    for (const BarPart& part : bar_parts_) {
      add_bar_part(part);
      const double metal_m3 = part.length_m * part.bar.height_m * part.bar.thickness_m;
      out_.mass_kg += metal_m3 * model_.material.density_kg_per_m3;
      for (const int node : {part.aft, part.fore})  // as so much more plate
        node_area_m2_[static_cast<std::size_t>(node)] += 0.5 * metal_m3 / model_.shape.thickness_m;
    }
  }

  struct BarPart {
    int aft = 0;
    int fore = 0;
    double length_m = 0.0;
    const PlateBar& bar;
    BarSection section{};
  };
  // Unknowns of a part that bends: w and -w_x at either end.
  static std::array<Eigen::Index, 4> bending_unknowns(const BarPart& part) {
    return {deflection(part.aft), deflection(part.aft) + 2, deflection(part.fore), deflection(part.fore) + 2};
  }
  void add_bar_part(const BarPart& part) {
    const double l = part.length_m;
    const double k = part.section.bending_Nm2 / (l * l * l);
    Eigen::Matrix4d bending;
    bending << 12.0, -6.0 * l, -12.0, -6.0 * l,       //
        -6.0 * l, 4.0 * l * l, 6.0 * l, 2.0 * l * l,  //
        -12.0, 6.0 * l, 12.0, 6.0 * l,                //
        -6.0 * l, 2.0 * l * l, 6.0 * l, 4.0 * l * l;
    const std::array<Eigen::Index, 4> at = bending_unknowns(part);
    for (std::size_t a = 0; a < 4; ++a)
      for (std::size_t b = 0; b <= a; ++b)
        add(at[a], at[b], k * bending(static_cast<Eigen::Index>(a), static_cast<Eigen::Index>(b)));
    const Eigen::Index aft = deflection(part.aft) + 1;
    const Eigen::Index fore = deflection(part.fore) + 1;
    const double twist = part.section.twist_Nm2 / l;
    add(aft, aft, twist);
    add(fore, fore, twist);
    add(aft, fore, -twist);
  }

  // Curvature of each part at its ends, the mean of those that meet in a node.
  double bar_stress_Pa(const Column& u) const {
    double most_Pa = 0.0;
    double before = 0.0;  // curvature at the fore end of the part before
    for (std::size_t k = 0; k < bar_parts_.size(); ++k) {
      const BarPart& part = bar_parts_[k];
      const double l = part.length_m;
      const std::array<Eigen::Index, 4> at = bending_unknowns(part);
      const double rise = 6.0 * (u[at[2]] - u[at[0]]) / (l * l);
      const double aft = rise + (4.0 * u[at[1]] + 2.0 * u[at[3]]) / l;
      const double fore = -rise - (2.0 * u[at[1]] + 4.0 * u[at[3]]) / l;
      const bool joined = k > 0 && bar_parts_[k - 1].fore == part.aft;
      const double curvature = joined ? 0.5 * (before + aft) : aft;
      most_Pa = std::max(most_Pa, model_.material.modulus_Pa * part.section.edge_m * std::abs(curvature));
      before = fore;
    }
    return most_Pa;
  }

  DktTriangle triangle(const std::array<int, 3>& corners) const {
    return DktTriangle(
        {out_.mesh.nodes[static_cast<std::size_t>(corners[0])], out_.mesh.nodes[static_cast<std::size_t>(corners[1])],
         out_.mesh.nodes[static_cast<std::size_t>(corners[2])]},
        model_.thin ? 0.0 : shear_length_m(model_.shape.thickness_m, model_.material.poisson_ratio));
  }

  double patch_ratio(const std::array<int, 3>& corners) const {
    PlatePoint middle{};
    for (const int corner : corners) {
      middle.x_m += out_.mesh.nodes[static_cast<std::size_t>(corner)].x_m / 3.0;
      middle.y_m += out_.mesh.nodes[static_cast<std::size_t>(corner)].y_m / 3.0;
    }
    double ratio = 1.0;
    for (const PlatePatch& patch : model_.patches) {
      if (std::abs(middle.x_m - patch.foot.middle.x_m) < 0.5 * patch.foot.length_m &&
          std::abs(middle.y_m - patch.foot.middle.y_m) < 0.5 * patch.foot.width_m)
        ratio = std::max(ratio, patch.rigidity_ratio);
    }
    return ratio;
  }

  // At the edge of a patch the model has a step, the real part a fillet.
  bool clear_of_patches(PlatePoint p) const {
    const double clear_m = model_.shape.thickness_m;
    return std::none_of(model_.patches.begin(), model_.patches.end(), [&](const PlatePatch& patch) {
      return std::abs(p.x_m - patch.foot.middle.x_m) < 0.5 * patch.foot.length_m + clear_m &&
             std::abs(p.y_m - patch.foot.middle.y_m) < 0.5 * patch.foot.width_m + clear_m;
    });
  }

  int node_at(PlatePoint p) const {
    for (std::size_t i = 0; i < out_.mesh.nodes.size(); ++i)
      if (distance_m(out_.mesh.nodes[i], p) < 1e-6) return static_cast<int>(i);
    return -1;
  }

  bool place_springs() {
    if (!model_.support.bolts_both_ways)
      for (const int node : out_.mesh.bolt_nodes) add_spring(node, model_.support.bolt_N_per_m, true);
    if (model_.support.deck_N_per_m3 > 0.0 && !model_.support.deck_both_ways) {
      for (std::size_t node = 0; node < deck_area_m2_.size(); ++node)
        if (deck_area_m2_[node] > 0.0)
          add_spring(static_cast<int>(node), model_.support.deck_N_per_m3 * deck_area_m2_[node], false);
    }
    for (const PlateProp& prop : model_.support.props) {
      const int node = node_at(prop.at);
      if (node < 0) return refuse("A prop stands off the plate.");
      if (!(prop.stiffness_N_per_m > 0.0)) return refuse("A prop's stiffness must be more than 0.");
      prop_springs_.push_back(springs_.size());
      add_spring(node, prop.stiffness_N_per_m, false);
    }
    return true;
  }
  void add_spring(int node, double stiffness_N_per_m, bool pulls) {
    springs_.push_back({node, unknowns_.of(node, 0), stiffness_N_per_m, pulls, pulls ? 1.0 : kDeckInBase_frac});
  }

  bool add_loads(const PlateLoadCase& load_case, double* forces, std::size_t column) {
    for (const PlateLoad& load : load_case.loads) {
      const FootWeights* feet = weights_of(load.foot);
      if (feet == nullptr) {
        out_.problem = "A load of the case " + load_case.label + " stands off the plate.";
        return false;
      }
      const auto add = [&](const Weights& weights, double amount) {
        for (const Weight& weight : weights)
          for (const auto& [row, sign] : unknowns_.of(weight.node, 0))
            forces[kAbreast * row + column] += sign * amount * weight.share;
      };
      add(feet->mean, load.force_N);
      add(feet->pitch, load.pitch_Nm);
      add(feet->roll, load.roll_Nm);
    }
    return true;
  }

  const FootWeights* weights_of(const PlateFoot& foot) {
    for (const auto& [known, weights] : feet_)
      if (known.middle.x_m == foot.middle.x_m && known.middle.y_m == foot.middle.y_m &&
          known.length_m == foot.length_m && known.width_m == foot.width_m)
        return &weights;
    std::optional<FootWeights> weights = foot_weights(out_.mesh, foot);
    if (!weights) return nullptr;
    feet_.reserve(64);
    feet_.emplace_back(foot, std::move(*weights));
    return &feet_.back().second;
  }

  // What moves with the plate: plate by node, and heavy things on their feet.
  void weigh() {
    const double t_m = model_.shape.thickness_m;
    inertia_.assign(stiffness_.rows(), 0.0);
    for (std::size_t node = 0; node < node_area_m2_.size(); ++node) {
      const double mass_kg = node_area_m2_[node] * t_m * model_.material.density_kg_per_m3;
      // A slice of the plate has inertia against turning, too.
      for (std::size_t which = 0; which < 3; ++which)
        for (const auto& [row, sign] : unknowns_.of(static_cast<int>(node), which))
          inertia_[row] += sign * sign * mass_kg * (which == 0 ? 1.0 : t_m * t_m / 12.0);
    }
    for (const PlateMass& mass : model_.masses) {
      const FootWeights* feet = weights_of(mass.foot);
      if (feet == nullptr) continue;
      Weights centre = feet->mean;
      for (const Weight& weight : feet->pitch) centre.push_back({weight.node, mass.lead_m * weight.share});
      const double turning_kgm2 = mass.mass_kg * mass.height_m * mass.height_m;
      const auto add = [&](const Weights& weights, double inertia) {
        heavy_.push_back({{}, inertia});
        for (const auto& [node, share] : weights)
          for (const auto& [row, sign] : unknowns_.of(node, 0)) heavy_.back().rows.push_back({row, sign * share});
      };
      add(centre, mass.mass_kg);
      add(feet->pitch, turning_kgm2);
      add(feet->roll, turning_kgm2);
    }
  }
  Abreast times_mass(const Abreast& shapes) const {
    Abreast result = shapes;
    for (std::size_t row = 0; row < inertia_.size(); ++row)
      for (std::size_t c = 0; c < kAbreast; ++c) result[kAbreast * row + c] *= inertia_[row];
    for (const auto& [rows, inertia] : heavy_) {
      double force[kAbreast] = {};
      for (const auto& [row, share] : rows)
        for (std::size_t c = 0; c < kAbreast; ++c) force[c] += share * shapes[kAbreast * row + c];
      for (double& each : force) each *= inertia;
      for (const auto& [row, share] : rows)
        for (std::size_t c = 0; c < kAbreast; ++c) result[kAbreast * row + c] += share * force[c];
    }
    return result;
  }

  PlateCaseSolution read(const PlateLoadCase& load_case, const Column& u, const Column& stresses_Pa) {
    PlateCaseSolution result;
    const std::size_t count = out_.mesh.nodes.size();
    result.sag_m.resize(count);
    result.slope_x.resize(count);
    result.slope_y.resize(count);
    result.deck_Pa.assign(count, 0.0);
    for (std::size_t node = 0; node < count; ++node) {
      const Eigen::Index at = deflection(static_cast<int>(node));
      result.sag_m[node] = u[at];
      result.slope_y[node] = u[at + 1];
      result.slope_x[node] = -u[at + 2];
      if (deck_area_m2_[node] > 0.0 && model_.support.deck_N_per_m3 > 0.0 && (u[at] < 0.0 || model_.support.deck_both_ways)) {
        result.deck_Pa[node] = -u[at] * model_.support.deck_N_per_m3;
        result.deck_N += result.deck_Pa[node] * deck_area_m2_[node];
        result.deck_pull_N += std::max(-result.deck_Pa[node], 0.0) * deck_area_m2_[node];
      }
    }
    for (const int node : out_.mesh.bolt_nodes) {
      const double pull_N = model_.support.bolt_N_per_m * u[deflection(node)];
      result.bolt_N.push_back(model_.support.bolts_both_ways ? pull_N : std::max(pull_N, 0.0));
    }
    for (const std::size_t spring : prop_springs_)
      result.prop_N.push_back(
          std::max(0.0, -springs_[spring].stiffness_N_per_m * u[deflection(springs_[spring].node)]));
    if (!load_case.loads.empty()) {
      const FootWeights* feet = weights_of(load_case.loads.front().foot);
      for (const Weight& weight : feet->mean) result.foot_sag_m += weight.share * u[deflection(weight.node)];
      for (const Weight& weight : feet->pitch) result.foot_pitch_rad += weight.share * u[deflection(weight.node)];
    }
    read_stress(load_case, stresses_Pa, result);
    result.bar_stress_Pa = bar_stress_Pa(u);
    return result;
  }

  // By node s_xx, s_yy, s_xy on the surface: the mean of the triangles there, each as its area.
  Abreast stresses_of(const Abreast& u) const {
    using Six = Eigen::Array<double, kAbreast, 1>;
    Abreast stresses_Pa(kAbreast * 3 * out_.mesh.nodes.size());
    for (const Bending& bending : bendings_) {
      double sign = 1.0;  // of what a mirror turns
      for_sides(bending, [&](const std::array<int, 3>& corners) {
        Six local[9];
        for (std::size_t k = 0; k < 9; ++k)
          local[k] = (k % 3 == 1 ? sign : 1.0) *
                     Eigen::Map<const Six>(u.data() + kAbreast * (3 * static_cast<std::size_t>(corners[k / 3]) + k % 3));
        for (std::size_t a = 0; a < 3; ++a)
          for (Eigen::Index row = 0; row < 3; ++row) {
            Six sum = Six::Zero();
            for (std::size_t k = 0; k < 9; ++k) sum += bending.stress_Pa[a](row, static_cast<Eigen::Index>(k)) * local[k];
            Eigen::Map<Six>(stresses_Pa.data() + kAbreast * static_cast<std::size_t>(3 * corners[a] + row)) +=
                (row == 2 ? sign : 1.0) * sum;
          }
        sign = -1.0;
      });
    }
    return stresses_Pa;
  }

  void read_stress(const PlateLoadCase& load_case, const Column& stresses_Pa, PlateCaseSolution& result) const {
    std::vector<PlatePoint> points;
    for (const PlateLoad& load : load_case.loads)
      if (!(load.foot.length_m > 0.0) && !(load.foot.width_m > 0.0)) points.push_back(load.foot.middle);
    result.stress_Pa.resize(out_.mesh.nodes.size());
    for (std::size_t node = 0; node < result.stress_Pa.size(); ++node) {
      const Eigen::Index at = 3 * static_cast<Eigen::Index>(node);
      const double xx_Pa = stresses_Pa[at], yy_Pa = stresses_Pa[at + 1], xy_Pa = stresses_Pa[at + 2];
      result.stress_Pa[node] = std::sqrt(xx_Pa * xx_Pa - xx_Pa * yy_Pa + yy_Pa * yy_Pa + 3.0 * xy_Pa * xy_Pa);
      if (clear_[node] == 0 || !clear_of(points, node)) continue;
      if (beside_bolt_[node] != 0) result.bolt_side_stress_Pa = std::max(result.bolt_side_stress_Pa, result.stress_Pa[node]);
      if (result.stress_Pa[node] > result.worst_stress_Pa) {
        result.worst_stress_Pa = result.stress_Pa[node];
        result.worst_node = static_cast<int>(node);
      }
    }
  }
  bool clear_of(const std::vector<PlatePoint>& points, std::size_t node) const {
    return std::none_of(points.begin(), points.end(), [&](const PlatePoint& p) {
      return distance_m(p, out_.mesh.nodes[node]) < model_.stress_clear_m;
    });
  }
  // Of what all cases have in common.
  void find_clear_nodes() {
    std::vector<PlatePoint> points;
    for (const PlateHole& bolt : model_.shape.bolts) points.push_back(bolt.at);
    for (const PlateProp& prop : model_.support.props) points.push_back(prop.at);
    for (std::size_t node = 0; node < out_.mesh.nodes.size(); ++node) {
      clear_.push_back(clear_of(points, node) && clear_of_patches(out_.mesh.nodes[node]) ? 1 : 0);
      beside_bolt_.push_back(std::any_of(model_.shape.bolts.begin(), model_.shape.bolts.end(), [&](const PlateHole& bolt) {
        return distance_m(bolt.at, out_.mesh.nodes[node]) < 2.0 * model_.stress_clear_m;
      }) ? 1 : 0);
    }
  }

  // Where stress is read: triangles with nothing bolted on them. What their unknowns make of it at each
  // corner, as the triangle's share of the area there.
  struct Bending {
    std::array<int, 3> corners{};
    std::optional<std::array<int, 3>> image{};  // in halves: the same corners of the image
    std::array<DktCurvature, 3> stress_Pa{};
  };
  template <class Use>
  static void for_sides(const Bending& bending, Use&& use) {
    use(bending.corners);
    if (bending.image) use(*bending.image);
  }
  std::array<int, 3> corners_of_image(const std::array<int, 3>& corners) const {
    std::array<int, 3> there{};
    for (std::size_t k = 0; k < 3; ++k) there[k] = static_cast<int>(images_->node[static_cast<std::size_t>(corners[k])]);
    return there;
  }

  const PlateModel& model_;
  PlateSolution& out_;
  std::vector<Bending> bendings_{};
  std::vector<BarPart> bar_parts_{};
  std::vector<char> clear_{};
  std::vector<char> beside_bolt_{};
  Eigen::Index unknown_count_ = 0;
  Unknowns unknowns_{};
  std::optional<MeshImages> images_{};  // nothing: not in halves
  Banded stiffness_{};                  // without springs of one sense
  std::vector<double> node_area_m2_{};
  std::vector<double> deck_area_m2_{};
  std::vector<OneWaySpring> springs_{};
  std::vector<std::size_t> prop_springs_{};
  std::vector<char> rest_{};
  struct Heavy {
    std::vector<Place> rows{};  // their motion, each with its share
    double inertia = 0.0;       // kg, or kg m2 with the shares of a turn
  };
  std::vector<double> inertia_{};
  std::vector<Heavy> heavy_{};
  std::vector<std::pair<PlateFoot, FootWeights>> feet_{};
};

}  // namespace

PlateSolution solve_plate(const PlateModel& model) {
  PlateSolution out;
  PlateSystem system(model, out);
  if (!system.prepare() || !system.solve_cases()) return out;
  system.solve_modes();
  out.solved = true;
  return out;
}

}  // namespace thole
