#include "calc/mount/mount.h"

#include <optional>

#include "calc/mount/mount_parts.h"
#include "data/sources.h"

namespace thole {
namespace {

using namespace mounting;

// Fills the part of `out` that the plate decides, and returns what the bolts must hold in a slam.
Slam take_plate(const MountInput& in, const Layout& layout, MountResult& out) {
  const std::optional<PlateCase> plate =
      choose_plate(in, layout, out.motor_acceleration_factor, out.thrust_moment_Nm);
  if (!plate) {
    add_none_check("mount.plate", "Plate to choose from",
                   "Offer plate stock of an alloy that Thole knows.",
                   {clear_field("mount.plate", "Let Thole choose the plate")}, out.trace);
    return slam_on_plate(in, layout, out.motor_acceleration_factor, kWorstAmplification_factor,
                         out.trace);
  }
  append(plate->trace, out.trace);
  out.plate_found = serves(plate->trace);
  out.plate = plate->stock;
  out.plate_thickness_mm = plate->stock.thickness_mm;
  out.plate_mass_kg = plate->mass_kg;
  out.plate_stress_MPa = plate->stress_MPa;
  out.sag_mm = plate->sag_mm;
  out.frequency_Hz = plate->frequency_Hz;
  out.amplification_factor = plate->amplification_factor;
  out.working_stress_MPa = plate->working_stress_MPa;
  return plate->slam;
}

}  // namespace

BoltPattern pattern_of(const MountInput& in) {
  if (!in.bolt_places.empty()) return bolt_pattern(in.bolt_places);
  std::vector<BoltPoint> places = bolt_rectangle(in.bolt_rows, in.bolt_pitch_mm, in.bolt_gauge_mm);
  const double middle_mm = aft_margin_mm(in.plate_length_mm) + 0.5 * in.bolt_pitch_mm * (in.bolt_rows - 1);
  for (BoltPoint& at : places) at.x_mm += middle_mm;
  return bolt_pattern(places);
}

bool has_core(const MountInput& in) { return is_cored(in.deck) && in.core_thickness_mm > 0.0; }

bool has_plugs(const MountInput& in) { return in.core_plugged && has_core(in); }

double bolt_grip_mm(const MountInput& in, double plate_mm) {
  return plate_mm + kNutAndBedding_mm + (is_cored(in.deck) ? 2.0 : 1.0) * in.deck_thickness_mm + in.core_thickness_mm +
         in.backing_thickness_mm;
}

MountResult mount(const MountInput& in) {
  MountResult out;
  const PlaningHull hull = hull_of(in);
  const double cg_g = cg_acceleration_g(hull, out.trace);
  out.cg_acceleration_factor = cg_g;
  out.bow_acceleration_factor = bow_acceleration_g(hull, cg_g, out.trace);
  out.motor_acceleration_factor = motor_acceleration_g(in, cg_g, out.bow_acceleration_factor, out.trace);
  out.speed_limit_mps = speed_limit_mps(in, cg_g, out.trace);

  out.thrust_moment_Nm = in.thrust_N * in.thrust_lever_m;
  tell([&] {
    out.trace.steps.push_back(
        {.id = "mount.thrust_moment",
         .label = "Moment of full thrust at the plate",
         .symbol = "M_T",
         .formula = "T * h",
         .terms = {{"T", in.thrust_N, "N", "full thrust"},
                   {"h", in.thrust_lever_m, "m", "propeller axis below the plate"}},
         .value = out.thrust_moment_Nm,
         .unit = "Nm",
         .source = kDefinition});
  });

  add_assumptions(in, out.trace);
  const Layout layout = layout_of(in, out.trace);
  out.bolt_count = static_cast<int>(layout.pattern.bolts.size());
  out.deck_ahead_mm = layout.deck_ahead_mm;
  const Slam slam = take_plate(in, layout, out);
  out.slam_N = slam.force_N;
  out.slam_moment_Nm = slam.moment_Nm;
  const BoltLoads loads = bolt_loads(in, layout, slam, out.trace);
  out.bolt_tension_N = loads.tension_N();
  out.slam_tension_N = loads.slam_tension_N;
  out.thrust_tension_N = loads.thrust_tension_N;
  out.bolt_shear_N = loads.shear_N;
  take_bolts(in, layout, loads, out);
  add_cautions(in, out.speed_limit_mps, out.trace);
  return out;
}

}  // namespace thole
