// The plate by finite elements: under each load its stress, its bolts, its bend.

#include <algorithm>

#include "draw/plate_load.h"
#include "io/figures.h"
#include "ui/studies.h"

namespace thole::ui {
namespace {

constexpr std::size_t kSlam = 1;
constexpr std::size_t kRebound = 2;
constexpr std::size_t kPerson = 4;
constexpr std::size_t kFirstThrust = 5;

// The most stressed of the thrusts from every side.
std::size_t worst_thrust(const PlateStudy& study) {
  std::size_t worst = kFirstThrust;
  for (std::size_t i = kFirstThrust; i < study.findings.size(); ++i)
    if (study.findings[i].stress_MPa > study.findings[worst].stress_MPa) worst = i;
  return worst;
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
  if (!study.solution.solved) {
    note(ui, study.solution.problem);
    return;
  }
  LoadedPlate& plate = studies_of(ui.state).plate;
  const std::vector<SemOption> kinds{{"thrust", "Thrust"}, {"slam", "Slam"}, {"rebound", "Rebound"}, {"person", "Person"}};
  const int picked = segments(ui, "plate.load", "Load", kinds, static_cast<int>(plate.shown));
  if (picked >= 0) plate.shown = static_cast<std::size_t>(picked);
  ui.sheet.space(kUnit);
  const std::size_t shown[] = {worst_thrust(study), kSlam, kRebound, kPerson};
  const Drawing drawing = plate_load_picture(study, shown[plate.shown], ui.state.system);
  const double shape = (drawing.high.y - drawing.low.y) / (drawing.high.x - drawing.low.x);
  figure(ui, "plate-load", drawing, std::min(ui.sheet.width, ui.sheet.scaled(620.0f)) * static_cast<float>(shape) + 24.0f);
  note(ui, "Lines of equal stress at a quarter, half and all of what may be; the dot is where it is highest. Bolts are as large "
           "as they pull, the worst filled.");
  draw_findings(ui, study);
  const System system = ui.state.system;
  ui.sheet.space(kUnit);
  note(ui, "Lowest natural frequency with the motor stowed: " + show(study.frequency_Hz, "Hz", system).text() +
               ". The checks on this page use a strip of beam, which gives " + show(study.strip_frequency_Hz, "Hz", system).text() +
               ", " + show(study.strip_stress_MPa, "MPa", system).text() + " and " + show(study.strip_bolt_N, "N", system).text() +
               " at a front bolt in a slam, and an elastic bolt group, which knows no prying: " +
               show(study.group_bolt_N, "N", system).text() + " at full thrust.");
  for (const Step& step : study.trace.steps) step_note(ui, step);
  for (const std::string& assumption : study.assumptions) note(ui, assumption);
  note(ui, "Triangles by Batoz, Bathe and Ho (1980), shear by Katili (1993, not confirmed). How much stress may be, and how stiff bedding and foot are, is "
           "this project's own judgement.");
}

}  // namespace thole::ui
