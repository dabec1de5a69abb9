#include "calc/joint_metals.h"

#include "data/galvanic.h"
#include "data/sources.h"
#include "data/sources_mount.h"

namespace thole {
namespace {

constexpr std::string_view kAtBolts =
    "a plastic or glass sleeve in the hole or a larger hole filled with sealant, a plastic washer under the steel one, "
    "inhibiting paste without zinc chromate on the thread";
constexpr std::string_view kUnderPlate = "a gasket, or half a millimetre of sealant left under the plate";

}  // namespace

JointMetals joint_metals(const Design& design) {
  JointMetals joint;
  const MountInput in = mount_input(design);
  const Alloy* alloy = find_alloy(design.mount.plate.alloy);
  const BoltGrade* grade = find_bolt_grade(design.mount.bolt.grade);
  const MetalPotential* plate = alloy != nullptr ? metal_of(*alloy) : nullptr;
  const MetalPotential* bolts = grade != nullptr ? metal_of(*grade) : nullptr;
  const MetalPotential* deck = in.deck == DeckKind::aluminium ? find_metal(kAluminium) : nullptr;
  const auto meet = [&](std::string_view id, std::string_view parts, const MetalPotential* a, const MetalPotential* b, std::string_view by) {
    if (a == nullptr || b == nullptr) return;
    joint.pairs.push_back({.id = id, .parts = parts, .a = a->name, .b = b->name, .gap_V = a == b ? 0.0 : potential_gap_V(*a, *b),
                           .limit_V = kGapSpray_V, .kept_apart = in.isolated, .by = by});
  };
  meet("bolts-plate", "Bolts and washers on the plate", bolts, plate, kAtBolts);
  meet("bolts-deck", "Bolts through the deck", bolts, deck, kAtBolts);
  meet("bolts-backing", "Nuts and washers on the backing", bolts, deck, kAtBolts);
  meet("plate-deck", "Plate on the deck", plate, deck, kUnderPlate);

  joint.beddings = {
      {"deck", "Plate on the deck, above the water", "butyl or polysulfide",
       "Countersink the deck's holes 1 to 2 mm: the sealant makes its own ring there. Draw up snug, let it skin, then the last turn on "
       "the nut with the head held, or the seal tears."},
      {"for-good", "What shall never come off again", "polyurethane",
       "Nowhere else: it glues. Taken off later it brings the deck's skin along."},
      {"core", "Edges of a cored deck, and backing on rough glass", "thickened epoxy",
       "No sealant does this: it neither carries nor keeps the core dry."},
  };
  if (in.deck == DeckKind::single_skin) joint.beddings.back().task = "Backing on rough glass";
  if (deck != nullptr) joint.beddings.pop_back();
  joint.cautions.push_back(
      {"joint.crevice",
       "Stainless under wet sealant gets no air and turns active: rust that weeps from a bolt's head means a wet crevice. Take that bolt "
       "out and bed it anew.",
       kGalvanicTable});
  return joint;
}

}  // namespace thole
