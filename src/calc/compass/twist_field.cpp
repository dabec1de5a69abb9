#include "calc/compass/twist_field.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <span>
#include <utility>
#include <vector>

namespace thole {
namespace {

constexpr double kQuarter_T_m_per_A = 1e-7;  // mu0 / (4 pi), kBiotSavartSegment
constexpr double kBeyond_ratio = 1.5;        // of a stretch's length
constexpr double kSpacings_count = 32.0;
constexpr std::size_t kNodes = 8;  // of a stretch
constexpr double kSamePlace_m = 1e-9;

// Gauss and Legendre, -1 .. 1.
constexpr std::array kPoints8{-0.9602898564975363, -0.7966664774136267, -0.5255324099163290, -0.1834346424956498,
                              0.1834346424956498,  0.5255324099163290,  0.7966664774136267,  0.9602898564975363};
constexpr std::array kPoints5{-0.9061798459386640, -0.5384693101056831, 0.0, 0.5384693101056831, 0.9061798459386640};
constexpr std::array kWeights5{0.2369268850561891, 0.4786286704993665, 0.5688888888888889, 0.4786286704993665,
                               0.2369268850561891};

// The polynomial that is 1 at one of the eight points and 0 at the others.
double lagrange(std::size_t own, double x) {
  double value = 1.0;
  for (std::size_t i = 0; i < kPoints8.size(); ++i) {
    if (i != own) value *= (x - kPoints8[i]) / (kPoints8[own] - kPoints8[i]);
  }
  return value;
}

// Its slope.
double lagrange_slope(std::size_t own, double x) {
  double sum = 0.0;
  for (std::size_t left_out = 0; left_out < kPoints8.size(); ++left_out) {
    if (left_out == own) continue;
    double value = 1.0 / (kPoints8[own] - kPoints8[left_out]);
    for (std::size_t i = 0; i < kPoints8.size(); ++i) {
      if (i != own && i != left_out) value *= (x - kPoints8[i]) / (kPoints8[own] - kPoints8[i]);
    }
    sum += value;
  }
  return sum;
}

void add_loop(const Wire& loop, Place at, FieldVector& sum) {
  const FieldVector field = wire_field(std::span(&loop, 1), at);
  sum.x_T += field.x_T;
  sum.y_T += field.y_T;
  sum.z_T += field.z_T;
}

}  // namespace

struct TwistField::Parts {
  explicit Parts(const Circuit& circuit);
  Disturbance at(Place place) const;

  struct Vector {
    double x = 0.0;
    double y = 0.0;
    double z = 0.0;
  };
  struct Dipoles {  // in A m2: of the twist, and of the one that is turned by a quarter
    Vector at{};
    Vector straight{};
    Vector turned{};
  };
  struct Span {
    Vector middle{};
    double beyond2_m2 = 0.0;  // farther than the root of it, the dipoles serve
    int left = -1;            // its halves; -1: one turn
    int right = -1;
    std::array<Dipoles, kNodes> dipoles{};
    std::array<Wire, 2> loops{};  // of one turn
  };
  struct Corner {  // the loop between two legs: two triangles of opposite turn
    std::array<Dipoles, 2> dipoles{};
    std::array<Wire, 2> loops{};
    double beyond2_m2 = 0.0;
  };
  struct Ladder;
  struct Bases {
    std::array<double, kNodes> value{};
    std::array<double, kNodes> slope{};
  };

  const std::vector<Bases>& bases_of(std::size_t step_count);
  int build(const Ladder& ladder, std::size_t first, std::size_t last, std::size_t leaf_count);
  void add(int span, Vector here, Disturbance& sum) const;
  // B = mu0 / (4 pi) (3 (m r) r / r^5 - m / r^3), of each.
  static void add_dipoles(std::span<const Dipoles> dipoles, Vector here, Disturbance& sum);

  std::vector<Span> spans_{};
  std::vector<int> legs_{};
  std::vector<Corner> corners_{};
  std::vector<Bases> bases_{};
};

// Both wires of a leg's two twists, rung by rung; straight along the leg.
struct TwistField::Parts::Ladder {
  std::array<std::span<const Place>, 2> out{};
  std::array<std::span<const Place>, 2> back{};  // in the order of `out`
  double current_A = 0.0;
  double spacing_m = 0.0;
  Vector along{};  // unit
  double step_m = 0.0;

  Vector middle(std::size_t i) const {
    return {0.5 * (out[0][i].x_m + back[0][i].x_m), 0.5 * (out[0][i].y_m + back[0][i].y_m),
            0.5 * (out[0][i].z_m + back[0][i].z_m)};
  }
  // Dipole density between rungs, A m, `share` of the way from i to i + 1: I (w x t), w from wire to wire. The strip
  // is twisted itself: at eta w off its middle it also has the axial density -I eta (w' x w), of which the first
  // moment across is left. That pulls on a field F as -I/12 (w' x w)t d(F w)/ds does: a density of slopes, A m2.
  struct Density {
    Vector dipoles{};
    Vector slopes{};
  };
  Density density(std::size_t which, std::size_t i, double share) const {
    const auto rung = [&](std::size_t k) {
      const Place& a = out[which][k];
      const Place& b = back[which][k];
      return Vector{a.x_m - b.x_m, a.y_m - b.y_m, a.z_m - b.z_m};
    };
    const Vector from = rung(i);
    const Vector to = rung(i + 1);
    const Vector w{from.x + share * (to.x - from.x), from.y + share * (to.y - from.y),
                   from.z + share * (to.z - from.z)};
    const auto cross = [](const Vector& a, const Vector& b) {
      return Vector{a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
    };
    const Vector across = cross(w, along);
    const Vector turn = cross(to, from);  // of w' x w: along the way, the same all along
    const double by = -current_A / 12.0 * (turn.x * along.x + turn.y * along.y + turn.z * along.z) / step_m;
    return {{current_A * across.x, current_A * across.y, current_A * across.z}, {by * w.x, by * w.y, by * w.z}};
  }
  // From rung to rung, closed.
  Wire loop(std::size_t which, std::size_t first, std::size_t last) const {
    Wire wire{.current_A = current_A};
    for (std::size_t i = first; i <= last; ++i) wire.places.push_back(out[which][i]);
    for (std::size_t i = last + 1; i-- > first;) wire.places.push_back(back[which][i]);
    wire.places.push_back(wire.places.front());
    return wire;
  }
};

// The polynomials where a turn of so many steps is summed; turns are alike.
const std::vector<TwistField::Parts::Bases>& TwistField::Parts::bases_of(std::size_t step_count) {
  if (bases_.size() == step_count * kPoints5.size()) return bases_;
  bases_.clear();
  for (std::size_t i = 0; i < step_count; ++i) {
    for (const double point : kPoints5) {
      const double x = 2.0 * (static_cast<double>(i) + 0.5 * (point + 1.0)) / static_cast<double>(step_count) - 1.0;
      Bases& base = bases_.emplace_back();
      for (std::size_t j = 0; j < kNodes; ++j) {
        base.value[j] = lagrange(j, x);
        base.slope[j] = lagrange_slope(j, x);
      }
    }
  }
  return bases_;
}

TwistField::Parts::Parts(const Circuit& circuit) {
  if (circuit.wires.size() != 1 || circuit.turned.size() != 1) return;
  const std::array<const std::vector<Place>*, 2> wires{&circuit.wires[0].places, &circuit.turned[0].places};
  if (wires[0]->size() != wires[1]->size() || wires[0]->size() < 5) return;
  const std::size_t rungs = (wires[0]->size() - 1) / 2;
  std::array<std::vector<Place>, 2> back;
  Ladder all{.current_A = circuit.wires[0].current_A};
  for (std::size_t k = 0; k < 2; ++k) {
    back[k].assign(wires[k]->rbegin() + 1, wires[k]->rbegin() + 1 + static_cast<std::ptrdiff_t>(rungs));
    all.out[k] = std::span(*wires[k]).first(rungs);
    all.back[k] = back[k];
  }
  const auto apart_m = [](Vector a, Vector b) { return std::hypot(a.x - b.x, a.y - b.y, a.z - b.z); };
  all.spacing_m = std::hypot(all.out[0][0].x_m - back[0][0].x_m, all.out[0][0].y_m - back[0][0].y_m,
                             all.out[0][0].z_m - back[0][0].z_m);
  for (std::size_t first = 0; first + 1 < rungs;) {
    if (apart_m(all.middle(first), all.middle(first + 1)) < kSamePlace_m) {  // a corner
      Corner corner{.beyond2_m2 = std::pow(kSpacings_count * all.spacing_m, 2.0)};
      const Vector middle = all.middle(first);
      for (std::size_t k = 0; k < 2; ++k) {
        corner.loops[k] = all.loop(k, first, first + 1);
        const Vector a{all.out[k][first].x_m - middle.x, all.out[k][first].y_m - middle.y,
                       all.out[k][first].z_m - middle.z};
        const Vector b{all.out[k][first + 1].x_m - middle.x, all.out[k][first + 1].y_m - middle.y,
                       all.out[k][first + 1].z_m - middle.z};
        const Vector moment{0.5 * all.current_A * (a.y * b.z - a.z * b.y),
                            0.5 * all.current_A * (a.z * b.x - a.x * b.z),
                            0.5 * all.current_A * (a.x * b.y - a.y * b.x)};
        for (const double side : {1.0, -1.0}) {
          Dipoles& one = corner.dipoles[side > 0.0 ? 0 : 1];
          // Both twists' triangles stand nearly alike; each has its own middle only within the spacing.
          if (k == 0)
            one.at = {middle.x + side * (a.x + b.x) / 3.0, middle.y + side * (a.y + b.y) / 3.0,
                      middle.z + side * (a.z + b.z) / 3.0};
          (k == 0 ? one.straight : one.turned) = {side * moment.x, side * moment.y, side * moment.z};
        }
      }
      corners_.push_back(std::move(corner));
      ++first;
      continue;
    }
    std::size_t last = first + 1;
    while (last + 1 < rungs && apart_m(all.middle(last), all.middle(last + 1)) >= kSamePlace_m) ++last;
    Ladder leg = all;
    const Vector from = all.middle(first);
    const Vector to = all.middle(last);
    const double run_m = apart_m(from, to);
    leg.along = {(to.x - from.x) / run_m, (to.y - from.y) / run_m, (to.z - from.z) / run_m};
    leg.step_m = run_m / static_cast<double>(last - first);
    const std::size_t leaves = std::max<std::size_t>(1, (last - first) / static_cast<std::size_t>(kPieces_count));
    legs_.push_back(build(leg, first, last, leaves));
    first = last;
  }
}

int TwistField::Parts::build(const Ladder& ladder, std::size_t first, std::size_t last, std::size_t leaf_count) {
  Span span;
  const Vector from = ladder.middle(first);
  const double length_m = ladder.step_m * static_cast<double>(last - first);
  const auto place_at = [&](double x) {
    const double gone_m = 0.5 * (x + 1.0) * length_m;
    return Vector{from.x + gone_m * ladder.along.x, from.y + gone_m * ladder.along.y, from.z + gone_m * ladder.along.z};
  };
  span.middle = place_at(0.0);
  const double beyond_m = std::max(kBeyond_ratio * length_m, kSpacings_count * ladder.spacing_m);
  span.beyond2_m2 = beyond_m * beyond_m;
  for (std::size_t j = 0; j < kNodes; ++j) span.dipoles[j].at = place_at(kPoints8[j]);
  const auto take = [&](std::size_t j, double by, const Vector& straight, const Vector& turned) {
    const auto more = [by](Vector& sum, const Vector& one) {
      sum.x += by * one.x;
      sum.y += by * one.y;
      sum.z += by * one.z;
    };
    more(span.dipoles[j].straight, straight);
    more(span.dipoles[j].turned, turned);
  };
  if (leaf_count > 1) {
    const std::size_t left_leaves = leaf_count / 2;
    const std::size_t split = first + (last - first) * left_leaves / leaf_count;
    span.left = build(ladder, first, split, left_leaves);
    span.right = build(ladder, split, last, leaf_count - left_leaves);
    const double share = static_cast<double>(split - first) / static_cast<double>(last - first);
    const auto pass_on = [&](int half, double low, double high) {
      for (std::size_t i = 0; i < kNodes; ++i) {
        const Dipoles& one = spans_[static_cast<std::size_t>(half)].dipoles[i];
        const double x = low + 0.5 * (kPoints8[i] + 1.0) * (high - low);
        for (std::size_t j = 0; j < kNodes; ++j) take(j, lagrange(j, x), one.straight, one.turned);
      }
    };
    pass_on(span.left, -1.0, 2.0 * share - 1.0);
    pass_on(span.right, 2.0 * share - 1.0, 1.0);
  } else {
    const std::size_t count = last - first;
    const std::vector<Bases>& bases = bases_of(count);
    for (std::size_t i = 0; i < count; ++i) {
      for (std::size_t g = 0; g < kPoints5.size(); ++g) {
        const double in_step = 0.5 * (kPoints5[g] + 1.0);
        const double part_m = 0.5 * kWeights5[g] * ladder.step_m;
        const Bases& base = bases[i * kPoints5.size() + g];
        const Ladder::Density straight = ladder.density(0, first + i, in_step);
        const Ladder::Density turned = ladder.density(1, first + i, in_step);
        for (std::size_t j = 0; j < kNodes; ++j) {
          take(j, part_m * base.value[j], straight.dipoles, turned.dipoles);
          take(j, part_m * base.slope[j] * 2.0 / length_m, straight.slopes, turned.slopes);
        }
      }
    }
    for (std::size_t k = 0; k < 2; ++k) span.loops[k] = ladder.loop(k, first, last);
  }
  spans_.push_back(std::move(span));
  return static_cast<int>(spans_.size()) - 1;
}

void TwistField::Parts::add_dipoles(std::span<const Dipoles> dipoles, Vector here, Disturbance& sum) {
  for (const Dipoles& one : dipoles) {
    const Vector r{here.x - one.at.x, here.y - one.at.y, here.z - one.at.z};
    const double away2 = 1.0 / (r.x * r.x + r.y * r.y + r.z * r.z);
    const double by = kQuarter_T_m_per_A * away2 * std::sqrt(away2);
    const auto add_one = [&](const Vector& m, FieldVector& field) {
      const double along = 3.0 * away2 * (m.x * r.x + m.y * r.y + m.z * r.z);
      field.x_T += by * (along * r.x - m.x);
      field.y_T += by * (along * r.y - m.y);
      field.z_T += by * (along * r.z - m.z);
    };
    add_one(one.straight, sum.straight);
    add_one(one.turned, sum.turned);
  }
}

Disturbance TwistField::Parts::at(Place place) const {
  Disturbance sum;
  const Vector here{place.x_m, place.y_m, place.z_m};
  for (const int leg : legs_) add(leg, here, sum);
  for (const Corner& corner : corners_) {
    const Vector& middle = corner.dipoles[0].at;
    const Vector r{here.x - middle.x, here.y - middle.y, here.z - middle.z};
    if (r.x * r.x + r.y * r.y + r.z * r.z > corner.beyond2_m2) {
      add_dipoles(corner.dipoles, here, sum);
    } else {
      add_loop(corner.loops[0], place, sum.straight);
      add_loop(corner.loops[1], place, sum.turned);
    }
  }
  return sum;
}

void TwistField::Parts::add(int index, Vector here, Disturbance& sum) const {
  const Span& span = spans_[static_cast<std::size_t>(index)];
  const Vector r{here.x - span.middle.x, here.y - span.middle.y, here.z - span.middle.z};
  if (r.x * r.x + r.y * r.y + r.z * r.z > span.beyond2_m2) {
    add_dipoles(span.dipoles, here, sum);
  } else if (span.left >= 0) {
    add(span.left, here, sum);
    add(span.right, here, sum);
  } else {
    add_loop(span.loops[0], {here.x, here.y, here.z}, sum.straight);
    add_loop(span.loops[1], {here.x, here.y, here.z}, sum.turned);
  }
}

TwistField::TwistField(const Circuit& circuit) : parts_(std::make_unique<Parts>(circuit)) {}
TwistField::~TwistField() = default;
bool TwistField::empty() const { return parts_->spans_.empty(); }
Disturbance TwistField::at(Place place) const { return parts_->at(place); }

}  // namespace thole
