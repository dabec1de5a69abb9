#include "calc/plate/plate.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "calc/plate/dkt.h"
#include "calc/plate/factored.h"

namespace thole {
namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr int kMostRounds = 60;
constexpr int kBaseRounds = 2;
constexpr int kFootPoints = 6;  // across a foot, each way
constexpr int kModes = 3;
constexpr int kModeRounds = 14;

Eigen::Index deflection(int node) { return 3 * static_cast<Eigen::Index>(node); }

// A part of the answer that a load or a mass acts on: weights of the nodes' deflections.
struct Weight {
  int node = 0;
  double share = 0.0;
};
using Weights = std::vector<Weight>;

std::optional<Weights> weights_at(const PlateMesh& mesh, PlatePoint p) {
  double best = -1e300;
  std::array<Weight, 3> found{};
  for (const std::array<int, 3>& corners : mesh.triangles) {
    const PlatePoint& a = mesh.nodes[static_cast<std::size_t>(corners[0])];
    const PlatePoint& b = mesh.nodes[static_cast<std::size_t>(corners[1])];
    const PlatePoint& c = mesh.nodes[static_cast<std::size_t>(corners[2])];
    const double twice = (b.x_m - a.x_m) * (c.y_m - a.y_m) - (b.y_m - a.y_m) * (c.x_m - a.x_m);
    const double of_b = ((p.x_m - a.x_m) * (c.y_m - a.y_m) - (p.y_m - a.y_m) * (c.x_m - a.x_m)) / twice;
    const double of_c = ((b.x_m - a.x_m) * (p.y_m - a.y_m) - (b.y_m - a.y_m) * (p.x_m - a.x_m)) / twice;
    const double least = std::min({1.0 - of_b - of_c, of_b, of_c});
    if (least <= best) continue;
    best = least;
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
      const std::optional<Weights> here = weights_at(mesh, {foot.middle.x_m + x_m, foot.middle.y_m + y_m});
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

// One-sided: pushes or pulls on one node's deflection.
struct Spring {
  int node = 0;
  double stiffness_N_per_m = 0.0;
  bool pulls = false;  // a bolt: acts when the plate is above it; a deck or prop: when below
};

class PlateSystem {
 public:
  explicit PlateSystem(const PlateModel& model, PlateSolution& out) : model_(model), out_(out) {}

  bool prepare() {
    std::optional<PlateMesh> mesh = mesh_plate(model_.shape, wish(), out_.problem);
    if (!mesh || !acceptable()) return false;
    out_.mesh = std::move(*mesh);
    unknowns_ = deflection(static_cast<int>(out_.mesh.nodes.size()));
    assemble();
    return place_springs();
  }

  bool solve_cases() {
    MatrixXd bare(unknowns_, static_cast<Eigen::Index>(model_.cases.size()));
    for (std::size_t i = 0; i < model_.cases.size(); ++i) {
      if (!load_vector(model_.cases[i], bare.col(static_cast<Eigen::Index>(i)))) return false;
    }
    const MatrixXd loads = bare;
    if (!choose_base(bare)) return refuse("The plate can move freely on its bolts.");
    MatrixXd forced = loads;
    std::vector<char> acting;
    std::vector<int> rounds;
    for (std::size_t i = 0; i < model_.cases.size(); ++i) {
      const auto column = static_cast<Eigen::Index>(i);
      acting = acting_in(bare.col(column));
      const int taken = settle(bare.col(column), acting);
      if (taken < 0) {
        out_.problem = "Bolts and deck find no balance in the case " + model_.cases[i].label +
                       ": more bolts, or a deck under more of the plate, would hold it.";
        return false;
      }
      rounds.push_back(taken);
      for (std::size_t k = 0; k < changed_.size(); ++k)
        forced(deflection(springs_[changed_[k]].node), column) -= pushes_[static_cast<Eigen::Index>(k)];
      if (static_cast<int>(i) == model_.rest_case) rest_ = acting;
    }
    base_.solve(forced);
    for (std::size_t i = 0; i < model_.cases.size(); ++i) {
      out_.cases.push_back(read(model_.cases[i], forced.col(static_cast<Eigen::Index>(i))));
      out_.cases.back().rounds = rounds[i];
    }
    return true;
  }

  void solve_modes() {
    VectorXd lumped = VectorXd::Zero(unknowns_);
    const double t_m = model_.shape.thickness_m;
    for (std::size_t node = 0; node < node_area_m2_.size(); ++node) {
      const Eigen::Index at = deflection(static_cast<int>(node));
      lumped[at] = node_area_m2_[node] * t_m * model_.material.density_kg_per_m3;
      // A slice of the plate has inertia against turning, too.
      lumped[at + 1] = lumped[at + 2] = lumped[at] * t_m * t_m / 12.0;
    }
    struct Part {
      Weights weights{};
      double inertia = 0.0;  // kg, or kg m2 with the weights of a turn
    };
    std::vector<Part> parts;
    for (const PlateMass& mass : model_.masses) {
      const std::optional<FootWeights> feet = foot_weights(out_.mesh, mass.foot);
      if (!feet) continue;
      Weights centre = feet->mean;
      for (const Weight& weight : feet->pitch) centre.push_back({weight.node, mass.lead_m * weight.share});
      parts.push_back({std::move(centre), mass.mass_kg});
      parts.push_back({feet->pitch, mass.mass_kg * mass.height_m * mass.height_m});
      parts.push_back({feet->roll, mass.mass_kg * mass.height_m * mass.height_m});
    }
    const auto times_mass = [&](const MatrixXd& shapes) {
      MatrixXd result = lumped.asDiagonal() * shapes;
      for (const Part& part : parts) {
        for (Eigen::Index c = 0; c < shapes.cols(); ++c) {
          double motion = 0.0;
          for (const Weight& weight : part.weights) motion += weight.share * shapes(deflection(weight.node), c);
          for (const Weight& weight : part.weights)
            result(deflection(weight.node), c) += part.inertia * motion * weight.share;
        }
      }
      return result;
    };
    constexpr int kTrials = kModes + 3;
    MatrixXd shapes = MatrixXd::Zero(unknowns_, kTrials);
    for (std::size_t node = 0; node < out_.mesh.nodes.size(); ++node) {
      const auto [x_m, y_m] = out_.mesh.nodes[node];
      const double trial[] = {1.0, x_m, y_m, x_m * x_m, x_m * y_m, y_m * y_m};
      for (int c = 0; c < kTrials; ++c) shapes(deflection(static_cast<int>(node)), c) = trial[c];
    }
    VectorXd squares = VectorXd::Zero(kTrials);
    for (int round = 0; round < kModeRounds; ++round) {
      const MatrixXd forces = times_mass(shapes);
      shapes = forces;
      solve_at_rest(shapes);
      const MatrixXd stiffness = shapes.transpose() * forces;
      const MatrixXd inertia = shapes.transpose() * times_mass(shapes);
      const Eigen::GeneralizedSelfAdjointEigenSolver<MatrixXd> small(
          0.5 * (stiffness + stiffness.transpose()), 0.5 * (inertia + inertia.transpose()));
      shapes = (shapes * small.eigenvectors()).eval();
      const VectorXd now = small.eigenvalues();
      const bool still = ((now - squares).head(kModes).cwiseAbs().array() < 1e-9 * now.head(kModes).cwiseAbs().array()).all();
      squares = now;
      if (still) break;
    }
    for (int k = 0; k < kModes; ++k)
      out_.frequencies_Hz.push_back(std::sqrt(std::max(squares[k], 0.0)) / (2.0 * std::numbers::pi));
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
          return std::hypot(other.x_m - p.x_m, other.y_m - p.y_m) < 0.4 * kBarStep_m;
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

  bool refuse(const char* sentence) {
    out_.problem = sentence;
    return false;
  }

  bool acceptable() {
    const auto& [modulus_Pa, poisson_ratio, density_kg_per_m3] = model_.material;
    if (!(modulus_Pa > 0.0)) return refuse("The alloy's modulus must be more than 0.");
    if (!(poisson_ratio >= 0.0 && poisson_ratio < 0.5))
      return refuse("Poisson's ratio must be from 0 to below 0.5.");
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
      return refuse("More than 60 bolts: a plate of this size holds fewer; take away those that stand twice.");
    double farthest_m = 0.0;
    PlatePoint far = bolts.front().at;
    for (const PlateHole& bolt : bolts) {
      const double away_m = std::hypot(bolt.at.x_m - bolts.front().at.x_m, bolt.at.y_m - bolts.front().at.y_m);
      if (away_m > farthest_m) farthest_m = away_m, far = bolt.at;
    }
    double off_m = 0.0;
    for (const PlateHole& bolt : bolts) {
      const PlatePoint from = bolts.front().at;
      const double twice_m2 = (far.x_m - from.x_m) * (bolt.at.y_m - from.y_m) -
                              (far.y_m - from.y_m) * (bolt.at.x_m - from.x_m);
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
    std::vector<Eigen::Triplet<double>> entries;
    entries.reserve(out_.mesh.triangles.size() * 45 + 64);
    node_area_m2_.assign(out_.mesh.nodes.size(), 0.0);
    deck_area_m2_.assign(out_.mesh.nodes.size(), 0.0);
    for (const std::array<int, 3>& corners : out_.mesh.triangles) {
      const DktTriangle element = triangle(corners);
      const double ratio = patch_ratio(corners);
      if (!(ratio > 1.0)) {
        bendings_.push_back({corners, element.area_m2(),
                             {element.curvature(0.0, 0.0), element.curvature(1.0, 0.0), element.curvature(0.0, 1.0)}});
      }
      const DktMatrix stiffness = ratio * element.stiffness(rigidity);
      for (int a = 0; a < 9; ++a) {
        const Eigen::Index row = deflection(corners[static_cast<std::size_t>(a / 3)]) + a % 3;
        for (int b = 0; b < 9; ++b) {
          const Eigen::Index column = deflection(corners[static_cast<std::size_t>(b / 3)]) + b % 3;
          if (row >= column) entries.emplace_back(row, column, stiffness(a, b));
        }
      }
      double middle_x_m = 0.0;
      for (const int corner : corners) middle_x_m += out_.mesh.nodes[static_cast<std::size_t>(corner)].x_m / 3.0;
      for (const int corner : corners) {
        node_area_m2_[static_cast<std::size_t>(corner)] += element.area_m2() / 3.0;
        if (middle_x_m < model_.support.deck_edge_m)
          deck_area_m2_[static_cast<std::size_t>(corner)] += element.area_m2() / 3.0;
      }
      out_.area_m2 += element.area_m2();
    }
    out_.mass_kg = out_.area_m2 * t_m * model_.material.density_kg_per_m3;
    add_bars(entries);
    for (const int node : out_.mesh.bolt_nodes)
      entries.emplace_back(deflection(node), deflection(node), model_.support.bolt_N_per_m);
    stiffness_.resize(unknowns_, unknowns_);
    stiffness_.setFromTriplets(entries.begin(), entries.end());
  }

  void add_bars(std::vector<Eigen::Triplet<double>>& entries) {
    for (const PlateBar& bar : model_.bars) {
      std::vector<int> along;
      for (std::size_t node = 0; node < out_.mesh.nodes.size(); ++node) {
        const PlatePoint& p = out_.mesh.nodes[node];
        if (std::abs(p.y_m - bar.y_m) < 1e-6 && p.x_m > bar.from_x_m - 1e-6 && p.x_m < bar.to_x_m + 1e-6)
          along.push_back(static_cast<int>(node));
      }
      std::sort(along.begin(), along.end(), [&](int a, int b) {
        return out_.mesh.nodes[static_cast<std::size_t>(a)].x_m < out_.mesh.nodes[static_cast<std::size_t>(b)].x_m;
      });
      const BarSection section = section_of(bar, model_.shape.thickness_m, model_.material);
      for (std::size_t k = 0; k + 1 < along.size(); ++k) {
        const BarPart part{along[k], along[k + 1],
                           out_.mesh.nodes[static_cast<std::size_t>(along[k + 1])].x_m -
                               out_.mesh.nodes[static_cast<std::size_t>(along[k])].x_m,
                           section.edge_m};
        bar_parts_.push_back(part);
        add_bar_part(part, section, entries);
        const double metal_m3 = part.length_m * bar.height_m * bar.thickness_m;
        out_.mass_kg += metal_m3 * model_.material.density_kg_per_m3;
        for (const int node : {part.aft, part.fore})  // as so much more plate
          node_area_m2_[static_cast<std::size_t>(node)] += 0.5 * metal_m3 / model_.shape.thickness_m;
      }
    }
  }

  struct BarPart {
    int aft = 0;
    int fore = 0;
    double length_m = 0.0;
    double edge_m = 0.0;
  };
  // Unknowns of a part that bends: w and -w_x at either end.
  static std::array<Eigen::Index, 4> bending_unknowns(const BarPart& part) {
    return {deflection(part.aft), deflection(part.aft) + 2, deflection(part.fore), deflection(part.fore) + 2};
  }
  static void add_bar_part(const BarPart& part, const BarSection& section,
                           std::vector<Eigen::Triplet<double>>& entries) {
    const double l = part.length_m;
    const double k = section.bending_Nm2 / (l * l * l);
    Eigen::Matrix4d bending;
    bending << 12.0, -6.0 * l, -12.0, -6.0 * l,      //
        -6.0 * l, 4.0 * l * l, 6.0 * l, 2.0 * l * l,  //
        -12.0, 6.0 * l, 12.0, 6.0 * l,                //
        -6.0 * l, 2.0 * l * l, 6.0 * l, 4.0 * l * l;
    const std::array<Eigen::Index, 4> at = bending_unknowns(part);
    const auto add = [&](Eigen::Index row, Eigen::Index column, double value) {
      if (row >= column) entries.emplace_back(row, column, value);
    };
    for (std::size_t a = 0; a < 4; ++a)
      for (std::size_t b = 0; b < 4; ++b)
        add(at[a], at[b], k * bending(static_cast<Eigen::Index>(a), static_cast<Eigen::Index>(b)));
    const Eigen::Index aft = deflection(part.aft) + 1;
    const Eigen::Index fore = deflection(part.fore) + 1;
    const double twist = section.twist_Nm2 / l;
    add(aft, aft, twist);
    add(fore, fore, twist);
    add(aft, fore, -twist);
    add(fore, aft, -twist);
  }

  // Curvature of each part at its ends, the mean of those that meet in a node.
  double bar_stress_Pa(const Eigen::Ref<const VectorXd>& u) const {
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
      most_Pa = std::max(most_Pa, model_.material.modulus_Pa * part.edge_m * std::abs(curvature));
      before = fore;
    }
    return most_Pa;
  }

  DktTriangle triangle(const std::array<int, 3>& corners) const {
    return DktTriangle({out_.mesh.nodes[static_cast<std::size_t>(corners[0])],
                        out_.mesh.nodes[static_cast<std::size_t>(corners[1])],
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
      if (std::hypot(out_.mesh.nodes[i].x_m - p.x_m, out_.mesh.nodes[i].y_m - p.y_m) < 1e-6)
        return static_cast<int>(i);
    return -1;
  }

  bool place_springs() {
    if (!model_.support.bolts_both_ways)
      for (const int node : out_.mesh.bolt_nodes) springs_.push_back({node, model_.support.bolt_N_per_m, true});
    if (model_.support.deck_N_per_m3 > 0.0) {
      for (std::size_t node = 0; node < deck_area_m2_.size(); ++node)
        if (deck_area_m2_[node] > 0.0)
          springs_.push_back({static_cast<int>(node), model_.support.deck_N_per_m3 * deck_area_m2_[node], false});
    }
    for (const PlateProp& prop : model_.support.props) {
      const int node = node_at(prop.at);
      if (node < 0) return refuse("A prop stands off the plate.");
      if (!(prop.stiffness_N_per_m > 0.0)) return refuse("A prop's stiffness must be more than 0.");
      prop_springs_.push_back(springs_.size());
      springs_.push_back({node, prop.stiffness_N_per_m, false});
    }
    answer_of_.assign(springs_.size(), -1);
    return true;
  }

  // Springs that should act at these deflections.
  std::vector<char> acting_in(const Eigen::Ref<const VectorXd>& deflections) const {
    std::vector<char> acting(springs_.size(), 0);
    for (std::size_t s = 0; s < springs_.size(); ++s) {
      const double above_m = deflections[deflection(springs_[s].node)];
      acting[s] = (springs_[s].pulls ? above_m > 0.0 : above_m < 0.0) ? 1 : 0;
    }
    return acting;
  }

  // The structure that all cases are told from: every bolt, and the deck where it carries in most of
  // the cases, so that few springs differ in any of them. `columns`: loads, then deflections on it.
  bool choose_base(MatrixXd& columns) {
    const MatrixXd loads = columns;
    base_acting_.assign(springs_.size(), 1);
    for (int round = 0;; ++round) {
      Eigen::SparseMatrix<double> matrix = stiffness_;
      for (std::size_t s = 0; s < springs_.size(); ++s) {
        const Eigen::Index at = deflection(springs_[s].node);
        if (base_acting_[s] != 0 && !springs_[s].pulls) matrix.coeffRef(at, at) += springs_[s].stiffness_N_per_m;
      }
      if (!base_.factor(matrix)) return false;
      columns = loads;
      base_.solve(columns);
      if (round == kBaseRounds || springs_.empty()) return true;
      std::vector<Eigen::Index> votes(springs_.size(), 0);
      for (Eigen::Index c = 0; c < columns.cols(); ++c) {
        const std::vector<char> acting = acting_in(columns.col(c));
        for (std::size_t s = 0; s < votes.size(); ++s) votes[s] += acting[s];
      }
      for (std::size_t s = 0; s < votes.size(); ++s)
        base_acting_[s] = springs_[s].pulls || 2 * votes[s] > columns.cols() ? 1 : 0;
    }
  }

  bool load_vector(const PlateLoadCase& load_case, Eigen::Ref<VectorXd> forces) {
    forces.setZero();
    for (const PlateLoad& load : load_case.loads) {
      const FootWeights* feet = weights_of(load.foot);
      if (feet == nullptr) {
        out_.problem = "A load of the case " + load_case.label + " stands off the plate.";
        return false;
      }
      const auto add = [&](const Weights& weights, double amount) {
        for (const Weight& weight : weights) forces[deflection(weight.node)] += amount * weight.share;
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

  // Deflections at all springs for one newton up at each of the asked springs, made once.
  void answer(const std::vector<std::size_t>& asked) {
    std::vector<std::size_t> fresh;
    for (const std::size_t s : asked)
      if (answer_of_[s] < 0) fresh.push_back(s);
    if (fresh.empty()) return;
    MatrixXd columns = MatrixXd::Zero(unknowns_, static_cast<Eigen::Index>(fresh.size()));
    for (std::size_t k = 0; k < fresh.size(); ++k)
      columns(deflection(springs_[fresh[k]].node), static_cast<Eigen::Index>(k)) = 1.0;
    base_.solve(columns);
    for (std::size_t k = 0; k < fresh.size(); ++k) {
      answer_of_[fresh[k]] = static_cast<int>(answers_.size());
      VectorXd at_springs(static_cast<Eigen::Index>(springs_.size()));
      for (std::size_t s = 0; s < springs_.size(); ++s)
        at_springs[static_cast<Eigen::Index>(s)] =
            columns(deflection(springs_[s].node), static_cast<Eigen::Index>(k));
      answers_.push_back(std::move(at_springs));
    }
  }
  const VectorXd& answer_at(std::size_t spring) const {
    return answers_[static_cast<std::size_t>(answer_of_[spring])];
  }

  // Springs whose state differs from the base: added stiffness.
  double added(std::size_t spring) const {
    return base_acting_[spring] != 0 ? -springs_[spring].stiffness_N_per_m : springs_[spring].stiffness_N_per_m;
  }
  void list_changed(const std::vector<char>& acting) {
    changed_.clear();
    for (std::size_t s = 0; s < springs_.size(); ++s)
      if (acting[s] != base_acting_[s]) changed_.push_back(s);
  }
  // Forces of the changed springs on the plate, downwards, for deflections `bare` without them. Springs that
  // came go first, then those that left: two positive definite blocks, unless nothing holds the plate.
  // Source: Woodbury's identity.
  void push(const VectorXd& bare) {
    const auto middle = std::stable_partition(changed_.begin(), changed_.end(), [&](std::size_t s) { return base_acting_[s] == 0; });
    const auto came = static_cast<Eigen::Index>(middle - changed_.begin());
    const auto count = static_cast<Eigen::Index>(changed_.size());
    const Eigen::Index left = count - came;
    MatrixXd small(count, count);
    VectorXd right(count);
    for (Eigen::Index a = 0; a < count; ++a) {
      const std::size_t row = changed_[static_cast<std::size_t>(a)];
      right[a] = bare[static_cast<Eigen::Index>(row)];
      const VectorXd& column = answer_at(row);
      for (Eigen::Index b = a; b < count; ++b)
        small(b, a) = column[static_cast<Eigen::Index>(changed_[static_cast<std::size_t>(b)])];
      small(a, a) += 1.0 / added(row);
    }
    pushes_ = right;
    if (count == 0) return;
    const Eigen::LLT<MatrixXd> first(small.topLeftCorner(came, came));
    MatrixXd across = small.bottomLeftCorner(left, came).transpose();
    MatrixXd rest = -small.bottomRightCorner(left, left);
    if (came > 0 && left > 0) {  // Eigen divides by the count of columns
      first.matrixL().solveInPlace(across);
      rest.selfadjointView<Eigen::Lower>().rankUpdate(across.transpose());
    }
    const Eigen::LLT<MatrixXd> second(rest);
    if (first.info() != Eigen::Success || second.info() != Eigen::Success) {
      const MatrixXd whole = small.selfadjointView<Eigen::Lower>();
      pushes_ = whole.partialPivLu().solve(right);
      return;
    }
    VectorXd top = right.head(came);
    if (came > 0) first.matrixL().solveInPlace(top);
    if (left > 0) {
      pushes_.tail(left) = second.solve(VectorXd(across.transpose() * top - right.tail(left)));
      top -= across * pushes_.tail(left);
    }
    if (came > 0) first.matrixU().solveInPlace(top);
    pushes_.head(came) = top;
  }

  // Turns springs on and off until those that act are those that should. Rounds taken; -1: never.
  int settle(const Eigen::Ref<const VectorXd>& deflections, std::vector<char>& acting) {
    if (springs_.empty()) {
      changed_.clear();
      return 0;
    }
    VectorXd bare(static_cast<Eigen::Index>(springs_.size()));
    for (std::size_t s = 0; s < springs_.size(); ++s)
      bare[static_cast<Eigen::Index>(s)] = deflections[deflection(springs_[s].node)];
    for (int round = 1; round <= kMostRounds; ++round) {
      list_changed(acting);
      answer(changed_);
      push(bare);
      VectorXd now = bare;
      for (std::size_t k = 0; k < changed_.size(); ++k)
        now -= pushes_[static_cast<Eigen::Index>(k)] * answer_at(changed_[k]);
      if (!now.allFinite()) return -1;
      if (!turn(now, acting, round)) return round;
    }
    return -1;
  }

  // True when a spring was turned.
  bool turn(const VectorXd& now, std::vector<char>& acting, int round) const {
    const double still_m = 1e-12 * std::max(now.cwiseAbs().maxCoeff(), 1e-9);
    const auto wrong_m = [&](std::size_t s) {  // > 0: its state is wrong by this much
      const double above_m = now[static_cast<Eigen::Index>(s)];
      const double acts_m = springs_[s].pulls ? above_m : -above_m;
      return (acting[s] != 0 ? -acts_m : acts_m) - still_m;
    };
    double worst_on_m = 0.0, worst_off_m = 0.0;
    for (std::size_t s = 0; s < springs_.size(); ++s)
      (acting[s] != 0 ? worst_off_m : worst_on_m) = std::max(acting[s] != 0 ? worst_off_m : worst_on_m, wrong_m(s));
    if (!(worst_on_m > 0.0) && !(worst_off_m > 0.0)) return false;
    // All whose state is wrong; late in the search only the very worst, so that it cannot go in circles.
    const double share = round < 20 ? 0.0 : 0.9;
    for (std::size_t s = 0; s < springs_.size(); ++s) {
      const double by_m = wrong_m(s);
      if (!(by_m > 0.0)) continue;
      if (by_m >= share * (acting[s] != 0 ? worst_off_m : worst_on_m))
        acting[s] = acting[s] != 0 ? 0 : 1;
    }
    return true;
  }

  void solve_at_rest(MatrixXd& columns) {
    base_.solve(columns);
    if (rest_.empty()) return;
    list_changed(rest_);
    answer(changed_);
    if (changed_.empty()) return;
    MatrixXd forces = MatrixXd::Zero(unknowns_, columns.cols());
    for (Eigen::Index c = 0; c < columns.cols(); ++c) {
      VectorXd bare(static_cast<Eigen::Index>(springs_.size()));
      for (std::size_t s = 0; s < springs_.size(); ++s)
        bare[static_cast<Eigen::Index>(s)] = columns(deflection(springs_[s].node), c);
      push(bare);
      for (std::size_t k = 0; k < changed_.size(); ++k)
        forces(deflection(springs_[changed_[k]].node), c) += pushes_[static_cast<Eigen::Index>(k)];
    }
    base_.solve(forces);
    columns -= forces;
  }

  PlateCaseSolution read(const PlateLoadCase& load_case, const Eigen::Ref<const VectorXd>& u) {
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
      if (deck_area_m2_[node] > 0.0 && model_.support.deck_N_per_m3 > 0.0 && u[at] < 0.0) {
        result.deck_Pa[node] = -u[at] * model_.support.deck_N_per_m3;
        result.deck_N += result.deck_Pa[node] * deck_area_m2_[node];
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
    read_stress(load_case, u, result);
    result.bar_stress_Pa = bar_stress_Pa(u);
    return result;
  }

  void read_stress(const PlateLoadCase& load_case, const Eigen::Ref<const VectorXd>& u,
                   PlateCaseSolution& result) const {
    const double t_m = model_.shape.thickness_m;
    const double nu = model_.material.poisson_ratio;
    const double per_curvature_Pa = model_.material.modulus_Pa * t_m / (2.0 * (1.0 - nu * nu));
    const Eigen::Matrix3d rigidity = per_curvature_Pa * plate_rigidity(nu);
    std::vector<Eigen::Vector3d> sums(out_.mesh.nodes.size(), Eigen::Vector3d::Zero());
    std::vector<double> areas(out_.mesh.nodes.size(), 0.0);
    for (const Bending& bending : bendings_) {
      Eigen::Matrix<double, 9, 1> local;
      for (std::size_t a = 0; a < 3; ++a)
        local.segment<3>(3 * static_cast<Eigen::Index>(a)) = u.segment<3>(deflection(bending.corners[a]));
      for (std::size_t a = 0; a < 3; ++a) {
        const Eigen::Vector3d stress = rigidity * (bending.curvature[a] * local);
        sums[static_cast<std::size_t>(bending.corners[a])] += bending.area_m2 * stress;
        areas[static_cast<std::size_t>(bending.corners[a])] += bending.area_m2;
      }
    }
    std::vector<PlatePoint> points;
    for (const PlateHole& bolt : model_.shape.bolts) points.push_back(bolt.at);
    for (const PlateProp& prop : model_.support.props) points.push_back(prop.at);
    for (const PlateLoad& load : load_case.loads)
      if (!(load.foot.length_m > 0.0) && !(load.foot.width_m > 0.0)) points.push_back(load.foot.middle);
    result.stress_Pa.resize(sums.size());
    for (std::size_t node = 0; node < sums.size(); ++node) {
      const Eigen::Vector3d s = areas[node] > 0.0 ? Eigen::Vector3d(sums[node] / areas[node]) : Eigen::Vector3d::Zero();
      result.stress_Pa[node] = std::sqrt(s[0] * s[0] - s[0] * s[1] + s[1] * s[1] + 3.0 * s[2] * s[2]);
      const bool clear =
          std::none_of(points.begin(), points.end(),
                       [&](const PlatePoint& p) {
                         return std::hypot(p.x_m - out_.mesh.nodes[node].x_m,
                                           p.y_m - out_.mesh.nodes[node].y_m) < model_.stress_clear_m;
                       }) &&
          clear_of_patches(out_.mesh.nodes[node]);
      if (clear && result.stress_Pa[node] > result.worst_stress_Pa) {
        result.worst_stress_Pa = result.stress_Pa[node];
        result.worst_node = static_cast<int>(node);
      }
    }
  }

  // Where stress is read: triangles with nothing bolted on them, and their curvatures at the corners.
  struct Bending {
    std::array<int, 3> corners{};
    double area_m2 = 0.0;
    std::array<DktCurvature, 3> curvature{};
  };

  const PlateModel& model_;
  PlateSolution& out_;
  std::vector<Bending> bendings_{};
  std::vector<BarPart> bar_parts_{};
  Eigen::Index unknowns_ = 0;
  Eigen::SparseMatrix<double> stiffness_{};
  Factored base_{};
  std::vector<double> node_area_m2_{};
  std::vector<double> deck_area_m2_{};
  std::vector<Spring> springs_{};
  std::vector<std::size_t> prop_springs_{};
  std::vector<int> answer_of_{};
  std::vector<VectorXd> answers_{};
  std::vector<std::size_t> changed_{};
  VectorXd pushes_{};
  std::vector<char> base_acting_{};
  std::vector<char> rest_{};
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
