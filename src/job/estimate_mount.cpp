#include <algorithm>
#include <string>

#include "data/laminates.h"
#include "data/sources.h"
#include "data/sources_mount.h"
#include "job/estimate.h"

namespace thole {
namespace {

constexpr double kPlateLength_mm = 450.0;  // common practice, as all lengths of this page
constexpr double kPlateWidth_mm = 220.0;
constexpr int kBoltRows = 3;
constexpr double kBoltPitch_mm = 120.0;
constexpr double kBoltGauge_mm = 140.0;
constexpr double kBalsa_mm = 12.0;
constexpr double kFoam_mm = 15.0;
// Of glass and epoxy, thick enough to carry to its edges; a core crushes sooner than a solid skin.
constexpr double kBackingSide_mm = 100.0;
constexpr double kBackingThickness_mm = 20.0;
constexpr double kCoreBackingSide_mm = 120.0;
constexpr double kCoreBackingThickness_mm = 24.0;
constexpr double kDeckSpan_mm = 300.0;
constexpr double kRoadBeam_m = 2.55;  // widest on most roads without leave
constexpr double kSkinOverMinimum_factor = 1.5;  // project decision: builders exceed the least

double usual_core_mm(DeckKind kind) {
  if (kind == DeckKind::cored_balsa) return kBalsa_mm;
  return kind == DeckKind::cored_foam ? kFoam_mm : 0.0;
}

double usual_wave_m(Exposure exposure) {
  switch (exposure) {
    case Exposure::sheltered:
      return 0.3;
    case Exposure::bay:
      return 0.4;
    case Exposure::open:
      return 0.5;
  }
  return 0.5;
}

Step deck_skin_step(DeckKind kind, double length_m) {
  const bool metal = kind == DeckKind::aluminium;
  return {
      .label = "Deck skin",
      .symbol = "t",
      .formula = "k * (c + s * L)",
      .terms = {{"k", kSkinOverMinimum_factor, "", "builders exceed the least thickness"},
                {"c", metal ? 1.35 : 1.45, "mm", "least thickness, fixed part"},
                {"s", metal ? 0.06 : 0.14, "mm_per_m", "least thickness, part that grows"},
                {"L", length_m, "m", "waterline length"}},
      .value = kSkinOverMinimum_factor * minimum_deck_mm(kind, length_m),
      .unit = "mm",
      .source = kIso12215DeckMinimum,
      .assumptions = {"Half as much again as the standard's least thickness. Drill a trial hole, "
                      "or measure where a fitting goes through."}};
}

}  // namespace

// Plate and bolt stay blank: the mount stage chooses them.
void estimate_mount(Job& job, Trace& trace) {
  Mount& mount = job.mount;
  const DeckKind kind = job.boat.deck.value;
  assume(trace, mount.plate_length_mm, kPlateLength_mm, "mount.plate_length_mm",
         "A plate 450 mm long: room for the motor's foot and three rows of bolts.",
         kCommonPractice);
  assume(trace, mount.plate_width_mm, kPlateWidth_mm, "mount.plate_width_mm",
         "A plate 220 mm wide.", kCommonPractice);
  assume(trace, mount.bolt_rows, kBoltRows, "mount.bolt_rows", "Three rows of two bolts.",
         kCommonPractice);
  assume(trace, mount.bolt_pitch_mm, kBoltPitch_mm, "mount.bolt_pitch_mm",
         "Rows 120 mm apart: between 100 and 150 mm a bedded joint stays tight.", kCommonPractice);
  assume(trace, mount.bolt_gauge_mm, kBoltGauge_mm, "mount.bolt_gauge_mm",
         "Bolts of a row 140 mm apart.", kCommonPractice);
  assume(trace, mount.head, Head::hexagon, "mount.head", "Hexagon heads on washers.",
         kCommonPractice);
  estimate(trace, mount.deck_thickness_mm, "mount.deck_thickness_mm",
           [&] { return deck_skin_step(kind, job.boat.waterline_length_m.value); });
  assume(trace, mount.core_thickness_mm, usual_core_mm(kind), "mount.core_thickness_mm",
         "12 mm for balsa, 15 mm for foam, none in a single skin.", kCommonPractice);
  const bool cored = kind == DeckKind::cored_balsa || kind == DeckKind::cored_foam;
  assume(trace, mount.backing_side_mm, cored ? kCoreBackingSide_mm : kBackingSide_mm, "mount.backing_side_mm",
         "A square of 100 mm under each bolt, of 120 mm under a core.", kCommonPractice);
  assume(trace, mount.backing_thickness_mm, cored ? kCoreBackingThickness_mm : kBackingThickness_mm, "mount.backing_thickness_mm",
         "20 or 24 mm of glass and epoxy sheet, so that it carries to its edges.", kCommonPractice);
  assume(trace, mount.chocked, true, "mount.chocked",
         "A chock carries the outer end of the stowed motor: cheaper than the plate that does "
         "without.",
         kProjectDecision);
  assume(trace, mount.trailered, job.boat.beam_m.value <= kRoadBeam_m, "mount.trailered",
         "Boats up to 2.55 m wide go by trailer, with the motor on.", kCommonPractice);
  assume(trace, mount.isolated, true, "mount.isolated",
         "Sleeves, washers, gasket and paste keep stainless off the aluminium.", kCommonPractice);
  const bool filmed = mount.finish_mm.known() && mount.finish_mm.value > 0.0;
  assume(trace, mount.finish, filmed ? Finish::paint : Finish::bare, "mount.finish",
         filmed ? "A film that builds up is taken for paint." : "The plate is left bare: alloys for boats need no paint above water.",
         kCommonPractice);
  assume(trace, mount.finish_mm, usual_finish_mm(mount.finish.value), "mount.finish_mm",
         mount.finish.value == Finish::bare ? "No film under heads and washers."
                                            : "As such finishes usually build up, recalled; 0 where heads and washers are masked.",
         kCommonPractice);
  assume(trace, mount.core_plugged, false, "mount.core_plugged", "The core is not plugged round the bolts.", kProjectDecision);
  assume(trace, mount.deck_span_mm, kDeckSpan_mm, "mount.deck_span_mm",
         "A foredeck free for 300 mm between beam and bulkhead.", kProjectDecision);
  assume(trace, mount.deck_breadth_mm, std::max(mount.deck_span_mm.value, kDeckSpan_mm), "mount.deck_breadth_mm",
         "As far athwart, 300 mm at least.", kProjectDecision);
  assume(trace, mount.run_wave_m, usual_wave_m(job.water.exposure.value), "mount.run_wave_m",
         "0.3 m in sheltered water, 0.4 m in a bay, 0.5 m in the open.", kProjectDecision);
}

}  // namespace thole
