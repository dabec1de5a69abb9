#include "calc/mount/mount_parts.h"

#include <algorithm>

#include "base/number.h"
#include "base/units.h"
#include "calc/mount/deck.h"
#include "data/bolts.h"
#include "data/sources.h"
#include "data/sources_mount.h"

namespace thole::mounting {

Change clear_field(std::string field, std::string label) {
  return {.field = std::move(field), .clear = true, .label = std::move(label)};
}

Change set_field(std::string field, double value, std::string label) {
  return {.field = std::move(field), .value = value, .label = std::move(label)};
}

void add_cautions(const MountInput& in, double speed_limit, Trace& trace) {
  const auto warn = [&](std::string id, std::string text, const Source& source) {
    trace.cautions.push_back({std::move(id), std::move(text), source});
  };
  warn(
      "mount.drilling",
      "Look under the deck before drilling: wiring, fuel lines, tanks, the hull-deck joint and the "
      "anchor locker's drain. Do not cut structure without the builder or a surveyor; local rules "
      "for the boat come first.",
      kCommonPractice);
  const double strong_kN =
      strong_point_N(StrongPoint::anchoring, in.waterline_length_m, 1.0) / 1000.0;
  warn("mount.not_a_strong_point",
       "Never tow, moor or anchor from this plate or the motor: a strong point for anchoring this "
       "boat is built for some " +
           fixed(strong_kN, 0) +
           " kN. Keep the plate clear of the anchor roller's and cleat's own backing.",
       kIso15084);
  warn("mount.isolation",
       "Keep stainless steel and aluminium apart with sleeves, washers and a gasket, and never let "
       "the "
       "plate carry the motor's return current. Prove more than 1 Mohm from plate to bolt, dry, "
       "before "
       "the motor is wired; leave the wiring to someone qualified for it.",
       kProjectDecision);
  warn("mount.lifting",
       "Lift the " + fixed(in.motor_mass_kg, 0) +
           " kg motor with two people or a hoist, the boat secured, and keep hands out of its "
           "folding "
           "joint.",
       kCommonPractice);
  warn("mount.speed",
       "Stow, lock and strap the motor before running, and support its outer end where you can. In "
       "a "
       "sea of " +
           fixed(in.run_wave_m, 1) + " m slow to " + fixed(kn_from_mps(speed_limit), 0) +
           " kn: beyond that slams exceed what this mount is designed for.",
       kDnvHslcSpeed);
  warn("mount.welding",
       "Do not weld or tightly bend the plate: welded 6061-T6 keeps half of its strength, and cold "
       "bending cracks it. A welded bracket needs its own design.",
       kIso12215Alloys);
  warn("mount.bolts",
       "Buy bolts with the grade marked on the head: an unmarked stainless bolt may be annealed, "
       "with "
       "less than half the yield. Let the sealant skin before the last turn, and tighten "
       "again "
       "after two days and after the first season.",
       kAstmF593);
  if (std::any_of(in.bolts.begin(), in.bolts.end(), [](const BoltOffer& bolt) {
        const BoltGrade* grade = find_bolt_grade(bolt.grade);
        return grade != nullptr && !grade->carbon_steel;
      }))
    warn("mount.galling",
         "Stainless on stainless galls and seizes: paste on threads and nut face, slowly, by hand, holding the head and "
         "turning the nut; no impact driver. A nut of another grade, or of bronze, galls less.",
         kCommonPractice);
  switch (in.finish) {
    case Finish::bare: break;
    case Finish::anodised:
      warn("mount.finish",
           "Drill and countersink before anodising, AA20 to AA25 for sea air (20 to 25 um); a thick hard film costs fatigue "
           "strength. Alloys of the 5000 kind come out dull.",
           kFinishes);
      break;
    case Finish::powder:
      warn("mount.finish",
           "Before powder coating round every edge by 1 to 2 mm, or it peels there; degrease, conversion coat, epoxy primer, 60 to "
           "100 um of polyester. Mask where it bonds, seal the washers: a chip under one starts rot beneath the film.",
           kFinishes);
      break;
    case Finish::paint:
      warn("mount.finish",
           "Abrade, then etch primer or epoxy at once, two coats of epoxy barrier of 75 to 100 um, topcoat. No copper antifouling on "
           "or beside aluminium.",
           kFinishes);
      break;
  }
  if (is_cored(in.deck)) {
    warn(
        "mount.core",
        "Seal every edge of the core: clear it back round each hole, fill with thickened epoxy and "
        "drill again. A wet core is the usual failure.",
        kCommonPractice);
  }
}

void add_assumptions(const MountInput& in, Trace& trace) {
  trace.assumptions.push_back(
      {.text = "A slam pulse at the bow lasts 0.15 s.", .source = kPulseLength});
  trace.assumptions.push_back(
      {.text = "Thick washers of three bolt diameters lie on the backing plates.",
       .source = kWasherSizes});
  if (in.countersunk) {
    trace.assumptions.push_back({.field = "mount.head",
                                 .text = "Countersunk heads have their full theoretical height.",
                                 .source = kHeadSizes});
  }
}

void add_none_check(std::string id, std::string label, std::string remedy,
                    std::vector<Change> changes, Trace& trace) {
  trace.checks.push_back({.id = std::move(id),
                          .label = std::move(label),
                          .actual = 0.0,
                          .limit = 1.0,
                          .unit = "",
                          .comparison = Comparison::at_least,
                          .source = kDefinition,
                          .remedy = std::move(remedy),
                          .changes = std::move(changes)});
}

void append(const Trace& part, Trace& trace) {
  trace.steps.insert(trace.steps.end(), part.steps.begin(), part.steps.end());
  trace.checks.insert(trace.checks.end(), part.checks.begin(), part.checks.end());
}

}  // namespace thole::mounting
