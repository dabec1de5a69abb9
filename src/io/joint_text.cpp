#include "io/joint_text.h"

#include "base/number.h"
#include "io/figures.h"

namespace thole {

std::string pair_name(const MetalPair& pair) {
  std::string text = std::string(pair.parts) + ": " + std::string(pair.a);
  return pair.a == pair.b ? text : text + ", " + std::string(pair.b);
}

std::string pair_said(const MetalPair& pair, System system) {
  if (pair.a == pair.b) return "one kind of metal";
  return show(pair.gap_V, "V", system).text() + ", limit " + show(pair.limit_V, "V", system).text() + ": " +
         (pair.harmless() ? "may touch" : pair.kept_apart ? "kept apart" : "touching");
}

std::string potential_said(const MetalPotential& metal) {
  return fixed(metal.noble_V, 2) + " to " + fixed(metal.base_V, 2) + " V";
}

}  // namespace thole
