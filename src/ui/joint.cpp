// Metal on metal at the mount: which pairs there are, what keeps them apart, what the joint is bedded in.

#include "data/sources_mount.h"
#include "io/joint_text.h"
#include "ui/studies.h"

namespace thole::ui {
void draw_joint_metals(Context& ui) {
  const JointMetals joint = joint_metals(ui.document.design());
  heading(ui, 3, "Metals that meet");
  if (joint.pairs.empty()) note(ui, "No plate of a known alloy, or no bolt of a known grade: there is no pair to look up.");
  {
    const Within list(ui.sheet, Role::list, "Metals that meet");
    for (const MetalPair& pair : joint.pairs) {
      const Within item(ui.sheet, Role::listitem);
      result_row(ui, "joint." + std::string(pair.id), pair_name(pair), {pair_said(pair, ui.state.system), ""}, "");
    }
  }
  std::string_view said;
  for (const MetalPair& pair : joint.pairs) {
    if (pair.harmless() || pair.by == said) continue;
    said = pair.by;
    note(ui, (pair.kept_apart ? "Kept apart by " : "To be kept apart by ") + std::string(pair.by) + ".");
  }
  if (disclosure(ui, "joint.potentials", "All metals in flowing sea water")) {
    const Within list(ui.sheet, Role::list, "Metals in flowing sea water, noblest first");
    for (const MetalPotential& metal : metal_potentials()) {
      const Within item(ui.sheet, Role::listitem);
      result_row(ui, "joint.metal." + std::string(metal.name), std::string(metal.name), {potential_said(metal), ""}, "");
    }
    note(ui, "Volts against saturated calomel, from the noblest reading to the basest. Stainless steel that air does not reach is active: under wet "
             "sealant, in a crevice.");
  }
  if (!joint.pairs.empty()) {
    note(ui, "Potentials at their farthest, in flowing sea water: " + cited(kGalvanicTable));
    note(ui, "Limit: " + cited(kGalvanicLimit));
  }
  ui.sheet.space(kUnit);
  heading(ui, 3, "Bedding");
  {
    const Within list(ui.sheet, Role::list, "Bedding");
    for (const Bedding& bedding : joint.beddings) {
      const Within item(ui.sheet, Role::listitem);
      result_row(ui, "joint.bed." + std::string(bedding.id), bedding.task, {std::string(bedding.kind), ""}, "");
      note(ui, bedding.care);
    }
  }
  note(ui, "Bedding by common practice; no document stands behind it.");
  for (const Caution& each : joint.cautions) caution(ui, each);
}

}  // namespace thole::ui
