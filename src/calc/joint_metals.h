#pragma once

// Which metals touch where plate and deck are bolted together, what keeps them apart, and what the joint
// is bedded in.

#include <string_view>
#include <vector>

#include "calc/design.h"

namespace thole {

struct MetalPair {
  std::string_view id{};       // "bolts-plate"
  std::string_view parts{};    // "Bolts on the plate"
  std::string_view a{};        // names of metal_potentials()
  std::string_view b{};
  double gap_V = 0.0;          // at most, in flowing sea water; 0: one kind of metal
  double limit_V = 0.0;        // that may touch in salt spray
  bool kept_apart = false;
  std::string_view by{};       // what keeps, or would keep, them apart
  bool harmless() const { return gap_V <= limit_V; }
};

// What goes into the joint, task by task.
struct Bedding {
  std::string_view id{};
  std::string_view task{};
  std::string_view kind{};
  std::string_view care{};
};

struct JointMetals {
  std::vector<MetalPair> pairs{};    // empty: no two pieces of metal touch, or none is known
  std::vector<Bedding> beddings{};   // source: kCommonPractice
  std::vector<Caution> cautions{};
};

// Of the plate and the bolts that the mount stage chose. Backing is of glass, or of the deck's own aluminium.
// Potentials: kGalvanicTable; the limit: kGalvanicLimit.
JointMetals joint_metals(const Design& design);

}  // namespace thole
