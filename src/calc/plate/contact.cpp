#include "calc/plate/contact.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <utility>

namespace thole {
namespace {

constexpr int kMostSteps = 80;
constexpr int kHastyRounds = 30;
constexpr double kBalanced_frac = 1e-8;  // of what the springs carry; `correct` does the rest
constexpr double kNearly_frac = 1e-6;    // enough where a stiff plate's round-off lets it get no nearer
constexpr double kRidge_frac = 1e-12;    // where two answers say the same

}  // namespace

bool Contact::Case::settled() const { return agrees && loose_frac < (stalls ? kNearly_frac : kBalanced_frac); }

int Contact::settle(std::vector<Abreast>& columns, std::size_t cases) {
  cases_.resize(cases);
  begin(columns);
  for (std::size_t i = 0; i < cases; ++i) {
    cases_[i].acting.assign(springs_.size(), 0);
    turn(i);
  }
  for (int step = 0; step < kMostSteps; ++step) {
    for (std::size_t group = 0; group < groups_.size(); ++group) search(group);
    if (std::any_of(cases_.begin(), cases_.end(), [](const Case& of) { return of.lost; })) break;
    if (std::all_of(cases_.begin(), cases_.end(), [](const Case& of) { return of.settled(); })) {
      take_answers(columns);
      return -1;
    }
    learn();
  }
  const auto first =
      std::find_if(cases_.begin(), cases_.end(), [](const Case& of) { return of.lost || !of.settled(); });
  return static_cast<int>(first - cases_.begin());
}

void Contact::correct(std::vector<Abreast>& columns) {
  begin(columns);
  for (std::size_t group = 0; group < groups_.size(); ++group) project(group, cases_of(group));
  take_answers(columns);
}

void Contact::begin(const std::vector<Abreast>& columns) {
  groups_.assign(columns.size(), Group());
  for (std::size_t group = 0; group < columns.size(); ++group) {
    Group& of = groups_[group];
    of.bare_m = moves_of(columns[group]);
    of.now_m = of.loose_N = of.bare_m;
  }
}

Abreast Contact::moves_of(const Abreast& columns) const {
  Abreast moves_m(kAbreast * springs_.size());
  for (std::size_t s = 0; s < springs_.size(); ++s)
    for (const auto& [row, sign] : springs_[s].deflection)
      if (sign != 0.0)
        for (std::size_t c = 0; c < kAbreast; ++c) moves_m[kAbreast * s + c] += sign * columns[kAbreast * row + c];
  return moves_m;
}

// What forces at the springs do to the whole structure.
void Contact::push(const Abreast& forces_N, Abreast& answer) const {
  for (std::size_t s = 0; s < springs_.size(); ++s)
    for (const auto& [row, sign] : springs_[s].deflection)
      if (sign != 0.0)
        for (std::size_t c = 0; c < kAbreast; ++c) answer[kAbreast * row + c] += sign * forces_N[kAbreast * s + c];
  base_.solve(answer.data());
}

std::vector<std::size_t> Contact::cases_of(std::size_t group) const {
  std::vector<std::size_t> found;
  for (std::size_t i = kAbreast * group; i < std::min(cases_.size(), kAbreast * (group + 1)); ++i) found.push_back(i);
  return found;
}

// Turns springs on and off as far as the known answers tell.
void Contact::search(std::size_t group) {
  groups_[group].shares.resize(kBlock * forces_N_.size());
  std::vector<std::size_t> searching = cases_of(group);
  std::erase_if(searching, [&](std::size_t i) { return cases_[i].settled(); });
  if (searching.empty()) return;
  project(group, searching);
  for (const std::size_t i : searching) {
    ++cases_[i].rounds;
    cases_[i].agrees = !turn(i);
  }
  weigh(group);
}

// Deflections of the asked cases on the springs that act, as nearly as the known answers make them.
void Contact::project(std::size_t group, const std::vector<std::size_t>& asked) {
  Group& of = groups_[group];
  of.shares.resize(kBlock * forces_N_.size());
  Abreast lacks_N = of.bare_m;
  const std::vector<std::size_t> of_group = cases_of(group);
  for (std::size_t s = 0; s < springs_.size(); ++s)
    for (const std::size_t i : of_group) lacks_N[kAbreast * s + i % kAbreast] *= -added_N_per_m(i, s);
  std::size_t j = of.wanted.size() / kBlock;
  of.wanted.resize(kBlock * forces_N_.size());
  for (; j < forces_N_.size(); ++j)
    take_product(&of.wanted[kBlock * j], moves_m_[j].data(), lacks_N.data(), springs_.size());
  for (const std::size_t i : asked) {
    Case& each = cases_[i];
    each.lost = !extend(each);
    Abreast shares = of.wanted;
    each.factored.solve(shares.data());
    for (std::size_t k = i % kAbreast; k < shares.size(); k += kAbreast) of.shares[k] = shares[k];
  }
  of.now_m = of.bare_m;
  for (j = 0; j < forces_N_.size(); ++j)
    take_mixture(of.now_m.data(), moves_m_[j].data(), &of.shares[kBlock * j], springs_.size());
}

// By the work of the springs that act: of those turned in answers already summed, of all in the
// later ones.
bool Contact::extend(Case& of) {
  std::vector<std::size_t> on, turned;
  of.summed.resize(springs_.size());
  for (std::size_t s = 0; s < springs_.size(); ++s) {
    if (of.acting[s] != 0) on.push_back(s);
    if (of.acting[s] != of.summed[s]) turned.push_back(s);
  }
  of.summed = of.acting;
  const std::size_t known = of.on_springs.rows() / kAbreast;
  const auto add_work = [&](const std::vector<std::size_t>& counted, std::size_t from, std::size_t until) {
    if (counted.empty()) return;
    const std::size_t length = kAbreast * counted.size();
    compact_.resize(std::max(compact_.size(), length * (until + 1)));
    const auto moves_m = [&](std::size_t j) { return compact_.data() + length * j; };
    double* const pushes_N = moves_m(until);
    for (std::size_t j = 0; j < until; ++j)
      for (std::size_t k = 0; k < counted.size(); ++k)
        std::memcpy(moves_m(j) + kAbreast * k, moves_m_[j].data() + kAbreast * counted[k], kAbreast * sizeof(double));
    for (std::size_t i = from; i < until; ++i) {
      for (std::size_t k = 0; k < counted.size(); ++k) {
        const double off_N_per_m = (of.acting[counted[k]] != 0 ? -1.0 : 1.0) * springs_[counted[k]].stiffness_N_per_m;
        for (std::size_t c = 0; c < kAbreast; ++c)
          pushes_N[kAbreast * k + c] = off_N_per_m * moves_m(i)[kAbreast * k + c];
      }
      for (std::size_t j = 0; j <= i; ++j)
        take_product(of.on_springs.band(i) + kBlock * j, moves_m(j), pushes_N, counted.size());
    }
  };
  add_work(turned, 0, known);
  while (of.on_springs.rows() < kAbreast * forces_N_.size()) of.on_springs.grow();
  add_work(on, known, forces_N_.size());
  if (!turned.empty()) of.factored = Banded();
  const std::size_t from = of.factored.rows() / kAbreast;
  for (std::size_t i = from; i < forces_N_.size(); ++i) {
    of.factored.grow();
    for (std::size_t k = 0; k < kBlock * (i + 1); ++k)
      of.factored.band(i)[k] = of.on_springs.band(i)[k] + off_springs_.band(i)[k];
  }
  return of.factored.factor(from);
}

// True when a spring was turned.
bool Contact::turn(std::size_t load_case) {
  if (springs_.empty()) return false;
  Case& of = cases_[load_case];
  const double* const now_m = groups_[load_case / kAbreast].now_m.data() + load_case % kAbreast;
  double most_m = 1e-9;
  wrong_m_.resize(springs_.size());  // > 0: a spring's state is wrong by this much
  for (std::size_t s = 0; s < springs_.size(); ++s) {
    wrong_m_[s] = springs_[s].pulls == (of.acting[s] != 0) ? -now_m[kAbreast * s] : now_m[kAbreast * s];
    most_m = std::max(most_m, std::abs(wrong_m_[s]));
  }
  double worst_off_m = 0.0, worst_on_m = 0.0;
  for (std::size_t s = 0; s < springs_.size(); ++s) {
    wrong_m_[s] -= 1e-12 * most_m;
    double& worst_m = of.acting[s] != 0 ? worst_on_m : worst_off_m;
    worst_m = std::max(worst_m, wrong_m_[s]);
  }
  if (!(worst_off_m > 0.0) && !(worst_on_m > 0.0)) return false;
  // All whose state is wrong; late in the search only the very worst, so that it cannot go in
  // circles.
  const double share = of.rounds < kHastyRounds ? 0.0 : 0.9;
  for (std::size_t s = 0; s < springs_.size(); ++s)
    if (wrong_m_[s] > 0.0 && wrong_m_[s] >= share * (of.acting[s] != 0 ? worst_on_m : worst_off_m))
      of.acting[s] = of.acting[s] == 0;
  groups_[load_case / kAbreast].wanted.clear();
  return true;
}

// The forces that the known answers leave out of balance.
void Contact::weigh(std::size_t group) {
  Group& of = groups_[group];
  const std::vector<std::size_t> of_group = cases_of(group);
  for (std::size_t s = 0; s < springs_.size(); ++s)
    for (const std::size_t i : of_group) {
      const std::size_t at = kAbreast * s + i % kAbreast;
      of.loose_N[at] = added_N_per_m(i, s) * of.now_m[at];
    }
  for (std::size_t j = 0; j < forces_N_.size(); ++j)
    take_mixture(of.loose_N.data(), forces_N_[j].data(), &of.shares[kBlock * j], springs_.size());
  double loose_N2[kAbreast] = {}, carried_N2[kAbreast] = {};
  for (std::size_t s = 0; s < springs_.size(); ++s)
    for (std::size_t c = 0; c < kAbreast; ++c) {
      const std::size_t at = kAbreast * s + c;
      const double carried_N = springs_[s].stiffness_N_per_m * of.now_m[at];
      loose_N2[c] += of.loose_N[at] * of.loose_N[at];
      carried_N2[c] += carried_N * carried_N;
    }
  for (const std::size_t i : of_group) {
    const std::size_t c = i % kAbreast;
    const double before_frac =
        std::exchange(cases_[i].loose_frac, loose_N2[c] > 0.0 ? std::sqrt(loose_N2[c] / carried_N2[c]) : 0.0);
    cases_[i].stalls = cases_[i].loose_frac > 0.5 * before_frac;
    cases_[i].lost = cases_[i].lost || !std::isfinite(loose_N2[c]);
  }
}

// Six answers more: for the cases that are farthest from balance; where these are few, each in
// parts.
void Contact::learn() {
  std::vector<std::size_t> asked;
  for (std::size_t i = 0; i < cases_.size(); ++i)
    if (!cases_[i].settled()) asked.push_back(i);
  while (asked.size() > kAbreast)
    asked.erase(std::min_element(asked.begin(), asked.end(), [&](std::size_t a, std::size_t b) {
      return cases_[a].loose_frac < cases_[b].loose_frac;
    }));
  const std::size_t parts = kAbreast / asked.size();
  Abreast forces_N(kAbreast * springs_.size()), moves_m = forces_N, answer(kAbreast * base_.rows());
  for (std::size_t s = 0; s < springs_.size(); ++s) {
    const std::size_t part = s * parts / springs_.size();
    for (std::size_t i = 0; i < asked.size(); ++i)
      forces_N[kAbreast * s + parts * i + part] =
          groups_[asked[i] / kAbreast].loose_N[kAbreast * s + asked[i] % kAbreast];
  }
  // Only what is new in them, square to the known ones by their work.
  for (std::size_t j = 0; j < forces_N_.size(); ++j) {
    double work[kBlock] = {};
    take_product(work, moves_m_[j].data(), forces_N.data(), springs_.size());
    for (double& each : work) each = -each;
    take_mixture(forces_N.data(), forces_N_[j].data(), work, springs_.size());
  }
  push(forces_N, answer);
  moves_m = moves_of(answer);
  make_square(moves_m, forces_N);
  Abreast without = moves_m;  // less what springs in the base bear of the forces
  double none[kAbreast] = {};
  for (std::size_t s = 0; s < springs_.size(); ++s) {
    const double base_N_per_m = springs_[s].base_frac * springs_[s].stiffness_N_per_m;
    for (std::size_t c = 0; c < kAbreast; ++c) {
      const std::size_t at = kAbreast * s + c;
      without[at] = base_N_per_m * moves_m[at] - forces_N[at];
      none[c] += std::abs(moves_m[at]);
    }
  }
  const std::size_t i = forces_N_.size();
  forces_N_.push_back(std::move(forces_N));
  moves_m_.push_back(std::move(moves_m));
  off_springs_.grow();
  for (std::size_t j = 0; j <= i; ++j)
    take_product(off_springs_.band(i) + kBlock * j, moves_m_[j].data(), without.data(), springs_.size());
  for (std::size_t c = 0; c < kAbreast; ++c)
    off_springs_.add(kAbreast * i + c, kAbreast * i + c, none[c] > 0.0 ? kRidge_frac : 1.0);
}

void Contact::take_answers(std::vector<Abreast>& columns) const {
  for (std::size_t group = 0; group < groups_.size(); ++group) {
    Abreast taken_N(kAbreast * springs_.size()), answer(columns[group].size());
    for (std::size_t j = 0; j < forces_N_.size(); ++j)
      take_mixture(taken_N.data(), forces_N_[j].data(), &groups_[group].shares[kBlock * j], springs_.size());
    push(taken_N, answer);
    for (std::size_t k = 0; k < answer.size(); ++k) columns[group][k] += answer[k];
  }
}

}  // namespace thole
