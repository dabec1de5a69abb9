#pragma once

// Springs that act in one sense only, on a structure that answers in proportion. All load cases
// share what was learnt: how the structure answers forces at its springs. In the space of these
// answers each case finds the springs that act (semismooth Newton, Galerkin's projection); the
// forces that this leaves out of balance are answered next, until there are none. Own work.

#include <vector>

#include "calc/plate/banded.h"
#include "calc/plate/unknowns.h"

namespace thole {

struct OneWaySpring {
  int node = 0;
  Places deflection{};
  double stiffness_N_per_m = 0.0;
  bool pulls = false;      // a bolt: acts when the plate is above it; a deck or prop: when below
  double base_frac = 0.0;  // of it stands in the base

  // How a column of deflections moves it; and what it adds to a column of forces.
  double move_m(const double* columns, std::size_t column) const {
    double sum_m = 0.0;
    for (const auto& [row, sign] : deflection) sum_m += sign * columns[kAbreast * row + column];
    return sum_m;
  }
  void push(double* columns, std::size_t column, double force_N) const {
    for (const auto& [row, sign] : deflection) columns[kAbreast * row + column] += sign * force_N;
  }
};

class Contact {
 public:
  // `base`: factored, with its fraction of each spring.
  Contact(const Banded& base, const std::vector<OneWaySpring>& springs) : base_(base), springs_(springs) {}

  // Deflections on the base become those on the springs that act. The case that finds no balance;
  // -1: all do.
  int settle(std::vector<Abreast>& columns, std::size_t cases);
  // The same for small deflections besides, the springs that act being known; nearly.
  void correct(std::vector<Abreast>& columns);

  const std::vector<char>& acting(std::size_t load_case) const { return cases_[load_case].acting; }  // by spring
  int rounds(std::size_t load_case) const { return cases_[load_case].rounds; }

 private:
  struct Case {
    std::vector<char> acting{};
    std::vector<char> summed{};  // those that act in this:
    Banded on_springs{};         // what they add to the projected stiffness,
    Banded factored{};           // and all of it
    double loose_frac = 1.0;     // forces out of balance, of all at the springs
    int rounds = 0;
    bool agrees = false;
    bool stalls = false;  // hardly nearer to balance than a step before
    bool lost = false;    // nothing holds it
    bool settled() const;
  };
  // Six cases abreast, by spring.
  struct Group {
    Abreast bare_m{};  // on the base
    Abreast now_m{};
    Abreast wanted{};  // by the known answers, of the forces that the base lacks
    Abreast shares{};  // of the known answers, to be taken off
    Abreast loose_N{};
  };

  void begin(const std::vector<Abreast>& columns);
  void search(std::size_t group);
  void project(std::size_t group, const std::vector<std::size_t>& asked);
  bool extend(Case& of);
  bool turn(std::size_t load_case);
  void weigh(std::size_t group);
  void learn();
  void take_answers(std::vector<Abreast>& columns) const;
  double added_N_per_m(std::size_t load_case, std::size_t spring) const {
    return springs_[spring].stiffness_N_per_m * (cases_[load_case].acting[spring] - springs_[spring].base_frac);
  }
  std::vector<std::size_t> cases_of(std::size_t group) const;
  void push(const Abreast& forces_N, Abreast& answer) const;
  Abreast moves_of(const Abreast& columns) const;  // of the springs

  const Banded& base_;
  const std::vector<OneWaySpring>& springs_;
  std::vector<Case> cases_{};
  std::vector<Group> groups_{};
  std::vector<Abreast> forces_N_{};  // at the springs, six to an item
  std::vector<Abreast> moves_m_{};   // of the springs, that these make
  Abreast compact_{};                // of some springs: kept for its room
  std::vector<double> wrong_m_{};    // by spring: as this
  Banded off_springs_{};             // the projected stiffness with no spring
};

}  // namespace thole
