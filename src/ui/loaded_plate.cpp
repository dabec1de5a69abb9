// The plate by finite elements: under each load its stress, its bolts, its bend.

#include <algorithm>
#include <cmath>

#include "base/number.h"
#include "calc/plate/outline.h"
#include "data/plate_lines.h"
#include "draw/layout.h"
#include "draw/plate_load.h"
#include "draw/sketch.h"
#include "io/figures.h"
#include "ui/studies.h"

namespace thole::ui {
namespace {

// The most stressed of the findings of this id.
std::size_t worst_of(const PlateStudy& study, std::string_view id) {
  std::size_t worst = 0;
  double most_MPa = -1.0;
  for (std::size_t i = 0; i < study.findings.size(); ++i)
    if (study.findings[i].id == id && study.findings[i].stress_MPa > most_MPa) worst = i, most_MPa = study.findings[i].stress_MPa;
  return worst;
}

// The one nearest to its limit, in stress or at a bolt.
std::size_t worst_of_all(const PlateStudy& study) {
  std::size_t worst = 0;
  double most = -1.0;
  for (std::size_t i = 0; i < study.findings.size(); ++i) {
    const PlateFinding& at = study.findings[i];
    const double bolts_N = study.bolt_limit_N(at.grade);
    const double bolt_use = bolts_N > 0.0 ? at.bolt_N / bolts_N : 0.0;
    // In a snag the plate may bend for good; its bolts must hold.
    const double use = at.grade == LoadGrade::ultimate ? bolt_use : std::max(at.stress_MPa / at.limit_MPa, bolt_use);
    if (use > most) most = use, worst = i;
  }
  return worst;
}

constexpr double kGrid_mm = 5.0;   // bolts are moved on
constexpr double kRing_mm = 19.0;  // round the bolt that is picked, wider than any of them is drawn
constexpr float kReach = 44.0f;

PlatePoint on_grid(PlatePoint p) {
  const auto snapped = [](double value_m) { return kGrid_mm * std::round(1000.0 * value_m / kGrid_mm) / 1000.0; };
  return {snapped(p.x_m), snapped(p.y_m)};
}

void place_bolt(Context& ui, const PlateStudy& study, std::size_t bolt, PlatePoint at) {
  std::vector<BoltPlace> places;
  for (const PlateHole& hole : study.model.shape.bolts) places.push_back({1000.0 * hole.at.x_m, 1000.0 * hole.at.y_m});
  places[bolt] = {1000.0 * at.x_m, 1000.0 * at.y_m};
  ui.document.apply({.field = "mount.bolt_places", .text = bolt_places_text(places), .label = "Bolt moved"});
}

// Something on the picture that a finger moves on the grid: where it was let go, if it was. By keyboard a
// slider fore and aft.
std::optional<PlatePoint> movable(Context& ui, LoadedPlate& plate, const std::string& id, const std::string& name,
                                  PlatePoint at, double most_mm, const Frame& frame, const Rect& rect) {
  std::optional<PlatePoint> dropped;
  const Point origin = frame.at(Point{0.0, 0.0});
  const Point unit = frame.at(Point{1.0, 1.0});
  for (Event event = ui.sheet.take(id); !event.verb.empty(); event = ui.sheet.take(id)) {
    if (event.verb == "drag") {
      const std::size_t gap = event.text.find(' ');
      if (gap == event.text.npos) continue;
      const std::optional<double> right_px = plain_number(std::string_view(event.text).substr(0, gap));
      const std::optional<double> down_px = plain_number(std::string_view(event.text).substr(gap + 1));
      if (!right_px || !down_px) continue;
      if (plate.held != id) plate.held = id, plate.from = at;
      plate.to = on_grid({plate.from.x_m + *right_px / (unit.x - origin.x) / 1000.0,
                          plate.from.y_m + *down_px / (unit.y - origin.y) / 1000.0});
    } else if (event.verb == "drop" && plate.held == id) {
      dropped = plate.to;
      plate.held.clear();
    } else if (event.verb == "set") {
      if (const std::optional<double> forward_mm = plain_number(event.text)) dropped = on_grid({*forward_mm / 1000.0, at.y_m});
    }
  }
  const PlatePoint shown = plate.held == id ? plate.to : at;
  const Point middle = frame.at(Point{1000.0 * shown.x_m, 1000.0 * shown.y_m});
  const auto x = rect.x + static_cast<float>(middle.x) - 0.5f * kReach;
  const auto y = rect.y + static_cast<float>(middle.y) - 0.5f * kReach;
  ui.sheet.record({.id = id,
                   .role = Role::slider,
                   .name = name,
                   .value = trimmed(fixed(1000.0 * shown.x_m, 1)),
                   .unit = trimmed(fixed(1000.0 * shown.x_m, 1)) + " mm forward, " + trimmed(fixed(1000.0 * shown.y_m, 1)) + " mm to port",
                   .min = 0.0,
                   .max = most_mm,
                   .step = kGrid_mm,
                   .action = "drag"},
                  {std::clamp(x, rect.x, rect.x + rect.width - kReach), std::clamp(y, rect.y, rect.y + rect.height - kReach), kReach, kReach});
  return dropped;
}

std::size_t nearest_node(const PlateMesh& mesh, PlatePoint p) {
  std::size_t best = 0;
  for (std::size_t i = 1; i < mesh.nodes.size(); ++i)
    if (std::hypot(mesh.nodes[i].x_m - p.x_m, mesh.nodes[i].y_m - p.y_m) <
        std::hypot(mesh.nodes[best].x_m - p.x_m, mesh.nodes[best].y_m - p.y_m))
      best = i;
  return best;
}

void back_to_grid(Context& ui) {
  if (ui.document.given().mount.bolt_places.known() && button(ui, "plate.bolt.grid", "Back to the even grid"))
    ui.document.apply({.field = "mount.bolt_places", .clear = true, .label = "Back to the even grid"});
}

std::size_t picked_bolt(const LoadedPlate& plate, const PlateStudy& study, const PlateFinding& at) {
  const auto worst = static_cast<std::size_t>(std::max(at.bolt, 0));
  return std::min(plate.bolt.value_or(worst), study.model.shape.bolts.size() - 1);
}

void draw_reading(Context& ui, const PlateStudy& study, const PlateFinding& at, LoadedPlate& plate) {
  const System system = ui.state.system;
  const PlateCaseSolution& result = study.solution.cases[at.load_case];
  const std::size_t node = nearest_node(study.solution.mesh, plate.probe);
  note(ui, "At the cross: " + show(at.load_factor * result.stress_Pa[node] / 1e6, "MPa", system).text() + ", " +
               (result.sag_m[node] < 0.0 ? "down " : "up ") +
               show(1000.0 * std::abs(at.load_factor * result.sag_m[node]), "mm", system).text() + ".");
  const std::size_t bolt = picked_bolt(plate, study, at);
  const double pull_N = at.load_factor * result.bolt_N[bolt];
  const double share = at.bolts_N > 0.0 ? 100.0 * pull_N / at.bolts_N : 0.0;
  note(ui, "Ringed, bolt " + std::to_string(bolt + 1) + " of " + std::to_string(result.bolt_N.size()) + ": pulls " +
               show(pull_N, "N", system).text() + ", " + fixed(share, 0) + " % of all.");
  if (button(ui, "plate.bolt.next", "Next bolt")) plate.bolt = (bolt + 1) % result.bolt_N.size();
  const PlatePoint place = study.model.shape.bolts[bolt].at;
  const double step_m = kGrid_mm / 1000.0;
  const int along = pair_of_buttons(ui, {"plate.bolt.fore", "Bolt forward 5 mm"}, {"plate.bolt.aft", "Bolt aft 5 mm"});
  if (along >= 0) place_bolt(ui, study, bolt, {place.x_m + (along == 0 ? step_m : -step_m), place.y_m});
  const int across = pair_of_buttons(ui, {"plate.bolt.port", "To port 5 mm"}, {"plate.bolt.star", "To starboard 5 mm"});
  if (across >= 0) place_bolt(ui, study, bolt, {place.x_m, place.y_m + (across == 0 ? step_m : -step_m)});
  back_to_grid(ui);
}

std::size_t shown_load(const PlateStudy& study, const LoadedPlate& plate) {
  if (plate.picked) return std::min(*plate.picked, study.findings.size() - 1);
  const std::size_t worst[] = {worst_of(study, "thrust"), worst_of(study, "slam"), worst_of(study, "rebound"), worst_of(study, "person.step"), worst_of_all(study)};
  return worst[plate.shown];
}

constexpr double kSeen_mm = 0.005;  // less is not worth a word

// Any of the loads, one after the other, and how it stands.
void step_through_loads(Context& ui, const PlateStudy& study, std::size_t shown, LoadedPlate& plate) {
  const System system = ui.state.system;
  const PlateFinding& at = study.findings[shown];
  const double bolt_limit_N = study.bolt_limit_N(at.grade);
  heading(ui, 4, at.label);
  note(ui, "Plate " + show(at.stress_MPa, "MPa", system).text() + " of " + show(at.limit_MPa, "MPa", system).text() + "; worst bolt " +
               show(at.bolt_N, "N", system).text() + (bolt_limit_N > 0.0 ? " of " + show(bolt_limit_N, "N", system).text() : "") +
               "; the deck is pressed with up to " + show(at.deck_MPa, "MPa", system).text() +
               (std::abs(at.sag_mm) > kSeen_mm ? (at.sag_mm < 0.0 ? "; it rises " : "; sag ") + show(std::abs(at.sag_mm), "mm", system).text() : std::string()) +
               (std::abs(at.panel_mm) > kSeen_mm ? ", of it by the deck's panel " + show(std::abs(at.panel_mm), "mm", system).text() : std::string()) +
               "; shear and tension use " + fixed(100.0 * at.together_factor, 0) + " % of one bolt.");
  note(ui, cited(at.source));
  const std::size_t count = study.findings.size();
  const int step = pair_of_buttons(ui, {"plate.load.before", "Load before"}, {"plate.load.after", "Next load"});
  if (step >= 0) plate.picked = (shown + (step == 0 ? count - 1 : 1)) % count;
}

void draw_findings(Context& ui, const PlateStudy& study) {
  const System system = ui.state.system;
  const Within list(ui.sheet, Role::list, "Load cases");
  for (std::size_t i = 0; i < study.findings.size(); ++i) {
    const PlateFinding& at = study.findings[i];
    const Within item(ui.sheet, Role::listitem);
    result_row(ui, "plate.case." + std::to_string(i), at.label,
               {show(at.stress_MPa, "MPa", system).text() + " of " + show(at.limit_MPa, "MPa", system).text() + ", bolt " +
                    show(at.bolt_N, "N", system).text(),
                ""},
               "");
  }
}

}  // namespace

void draw_loaded_plate(Context& ui) {
  const PlateStudy& study = up_to_date(ui, studies_of(ui.state).plate.study, plate_study);
  for (const Issue& issue : study.issues) note(ui, issue.message);
  if (!study.solution.solved) {
    note(ui, study.solution.problem);
    back_to_grid(ui);
    return;
  }
  note(ui, "The plate as a whole, with its bolts and the deck. Its checks are among those of this page and count in the verdict.");
  LoadedPlate& plate = studies_of(ui.state).plate;
  const std::vector<SemOption> kinds{{"thrust", "Thrust"}, {"slam", "Slam"}, {"rebound", "Rebound"}, {"person", "Person"}, {"worst", "Worst"}};
  const int picked = segments(ui, "plate.load", "Load", kinds, plate.picked ? -1 : static_cast<int>(plate.shown));
  if (picked >= 0) plate.shown = static_cast<std::size_t>(picked), plate.picked.reset();
  ui.sheet.space(kUnit);
  const std::size_t shown = shown_load(study, plate);
  step_through_loads(ui, study, shown, plate);
  const PlateFinding& at = study.findings[shown];
  const std::vector<SemOption> bends{{"more", "Bent " + fixed(bent_factor(study, shown), 0) + " times"}, {"true", "To scale"}};
  const int bend = segments(ui, "plate.bend", "From the side", bends, plate.to_scale ? 1 : 0);
  if (bend >= 0) plate.to_scale = bend == 1;
  ui.sheet.space(kUnit);
  Drawing drawing = plate_load_picture(study, shown, ui.state.system, plate.to_scale);
  const double shape = (drawing.high.y - drawing.low.y) / (drawing.high.x - drawing.low.x);
  const float height = std::min(ui.sheet.width, ui.sheet.scaled(620.0f)) * static_cast<float>(shape) + 24.0f;
  if (!plate.probed) plate.probe = on_grid(at.stress_at), plate.probed = true;
  const Rect rect{ui.sheet.x, ui.sheet.y, ui.sheet.width, height};
  const Frame frame(drawing, {static_cast<double>(rect.width), static_cast<double>(rect.height)});
  const double length_mm = 1000.0 * bounds(rounded(study.model.shape.outline)).high.x_m;
  std::optional<PlatePoint> moved;
  std::size_t moved_bolt = 0;
  for (std::size_t bolt = 0; bolt < study.model.shape.bolts.size(); ++bolt) {
    const std::string id = "plate.hole." + std::to_string(bolt);
    if (const std::optional<PlatePoint> to = movable(ui, plate, id, "Bolt " + std::to_string(bolt + 1), study.model.shape.bolts[bolt].at, length_mm, frame, rect))
      moved = to, moved_bolt = bolt;
    if (plate.held == id) {
      plate.bolt = bolt;
      drawing.circles.push_back({.centre = {1000.0 * plate.to.x_m, 1000.0 * plate.to.y_m}, .radius = 8.0, .fill = Fill::strong});
    }
  }
  if (const std::optional<PlatePoint> to = movable(ui, plate, "plate.probe", "Where stress and sag are read", plate.probe, length_mm, frame, rect))
    plate.probe = *to;
  const PlatePoint ringed = study.model.shape.bolts[picked_bolt(plate, study, at)].at;
  drawing.circles.push_back({.centre = {1000.0 * ringed.x_m, 1000.0 * ringed.y_m}, .radius = kRing_mm});
  const PlatePoint cross = plate.held == "plate.probe" ? plate.to : plate.probe;
  const double x_mm = 1000.0 * cross.x_m;
  const double y_mm = 1000.0 * cross.y_m;
  add_polyline(drawing, {{x_mm - 12.0, y_mm}, {x_mm + 12.0, y_mm}}, Line::outline);
  add_polyline(drawing, {{x_mm, y_mm - 12.0}, {x_mm, y_mm + 12.0}}, Line::outline);
  figure(ui, "plate-load", std::move(drawing), height);
  draw_reading(ui, study, at, plate);
  if (moved) {  // the study belongs to the design before: nothing more of it in this frame
    place_bolt(ui, study, moved_bolt, *moved);
    return;
  }
  note(ui, "Lines of equal stress at a quarter, half and all of what may be; the dot is where it is highest. Bolts are as large "
           "as they pull, the worst filled.");
  draw_findings(ui, study);
  const System system = ui.state.system;
  ui.sheet.space(kUnit);
  note(ui, "Lowest natural frequency with the motor stowed: " + show(study.frequency_Hz, "Hz", system).text() +
               ". The checks by a strip of beam give " + show(study.strip_frequency_Hz, "Hz", system).text() +
               ", " + show(study.strip_stress_MPa, "MPa", system).text() + " and " + show(study.strip_bolt_N, "N", system).text() +
               " at a front bolt in a slam, and an elastic bolt group, which knows no prying: " +
               show(study.group_bolt_N, "N", system).text() + " at full thrust.");
  for (const std::string& assumption : study.assumptions) note(ui, assumption);
  note(ui, "Triangles by Batoz, Bathe and Ho (1980), shear by Katili (1993, not confirmed). How much stress may be, and how stiff bedding and foot are, is "
           "this project's own judgement.");
}

}  // namespace thole::ui
