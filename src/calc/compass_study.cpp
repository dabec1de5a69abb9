#include "calc/compass_study.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "base/number.h"
#include "calc/compass/earth_field.h"
#include "data/igrf.h"
#include "data/sources.h"

namespace thole {
namespace {

constexpr double kTouching_m = 0.012;  // handbook 6.6: centres of a pair twisted bare
constexpr double kSleeved_mm = 20.0;   // as the estimate has it
constexpr double kSteps_m = 0.1;       // a sensor is moved by tenths
constexpr double kLeastLevel_T = 1e-12;

double error_deg(const CompassInput& in) {
  return worst_error_deg(level_field_at_sensor_T(in), in.horizontal_T);
}

double distance_m(Place a, Place b, Place at) {
  const double run[] = {b.x_m - a.x_m, b.y_m - a.y_m, b.z_m - a.z_m};
  const double off[] = {at.x_m - a.x_m, at.y_m - a.y_m, at.z_m - a.z_m};
  const double run2 = run[0] * run[0] + run[1] * run[1] + run[2] * run[2];
  const double along = run[0] * off[0] + run[1] * off[1] + run[2] * off[2];
  const double share = run2 > 0.0 ? std::clamp(along / run2, 0.0, 1.0) : 0.0;
  return std::hypot(off[0] - share * run[0], off[1] - share * run[1], off[2] - share * run[2]);
}

Change with_value(const char* field, double value, std::string label) {
  return {.field = field, .value = value, .label = std::move(label)};
}

// The nearest place, by tenths of a metre along one axis, at which the limit is kept; 0: none.
template <class Moved>
double shift_m(const CompassInput& in, double most_m, const Moved& moved) {
  for (int i = 1; kSteps_m * i <= most_m + 1e-9; ++i) {
    CompassInput there = in;
    moved(there.sensor, kSteps_m * i);
    if (error_deg(there) <= in.limit_deg) return kSteps_m * i;
  }
  return 0.0;
}

// Away from the feeder, by whole centimetres of the field.
void offer_places(const Job& job, const CompassInput& in, std::vector<Change>& changes) {
  const Control& control = job.control;
  const double side = control.feeder_y_m.value > control.sensor_y_m.value ? -1.0 : 1.0;
  const double half_beam_m = 0.35 * job.boat.beam_m.value;
  const double room_m = std::max(half_beam_m - side * control.sensor_y_m.value, 0.0);
  const double aside_m = shift_m(in, room_m, [&](Place& sensor, double by_m) {
    sensor.y_m -= side * by_m;
  });
  if (aside_m > 0.0) {
    changes.push_back(with_value("control.sensor_y_m", control.sensor_y_m.value + side * aside_m,
                                 "Move the heading sensor " + fixed(100.0 * aside_m, 0) + " cm to " +
                                     (side > 0.0 ? "starboard" : "port")));
  }
  constexpr double kMast_m = 2.0;
  const double up_m = shift_m(in, kMast_m, [](Place& sensor, double by_m) { sensor.z_m += by_m; });
  if (up_m > 0.0) {
    changes.push_back(with_value("control.sensor_z_m", control.sensor_z_m.value + up_m,
                                 "Raise the heading sensor by " + fixed(100.0 * up_m, 0) + " cm"));
  }
}

}  // namespace

EarthHere earth_here(const Control& control) {
  EarthHere here{.horizontal_T = kMiddleLatitudes_T, .source = kProjectDecision};
  if (!control.latitude_deg.known() || !control.longitude_deg.known()) return here;
  const double year = control.year.value;
  here.year_outside = year < kIgrfFrom_year || year > kIgrfUntil_year;
  const EarthFieldResult earth =
      earth_field({.latitude_deg = control.latitude_deg.value,
                   .longitude_deg = control.longitude_deg.value,
                   .year = std::clamp(year, kIgrfFrom_year, kIgrfUntil_year)});
  if (!earth.field) return here;
  here.horizontal_T = std::max(earth.field->horizontal_T, kLeastLevel_T);
  here.declination_deg = earth.field->declination_deg;
  here.assumed = false;
  here.source = earth.source;
  return here;
}

std::vector<Place> feeder_route(const Job& job) {
  const Control& control = job.control;
  const Trim& trim = job.trim;
  const double way_y = -control.feeder_y_m.value;
  const double way_z = control.feeder_z_m.value;
  const double bank_z = trim.bank_z_m.known() ? trim.bank_z_m.value : way_z;
  return {{trim.bank_x_m.value, -trim.bank_y_m.value, bank_z},
          {trim.bank_x_m.value, way_y, way_z},
          {trim.motor_x_m.value, way_y, way_z},
          {trim.motor_x_m.value, -trim.motor_y_m.value, job.boat.bow_height_m.value}};
}

CompassInput compass_input(const Job& job, double current_A, const EarthHere& earth) {
  const Control& control = job.control;
  const double spacing_m = 1e-3 * control.spacing_mm.value;
  return {.pair = {.route = feeder_route(job),
                   .spacing_m = spacing_m,
                   .lay = control.feeder_lay.value,
                   .pitch_m = 1e-3 * control.pitch_mm.value,
                   .current_A = current_A},
          .sensor = {control.sensor_x_m.value, -control.sensor_y_m.value, control.sensor_z_m.value},
          .horizontal_T = earth.horizontal_T,
          .tilt_deg = control.tilt_deg.value,
          .limit_deg = control.heading_limit_deg.value,
          .touching_m = std::min(kTouching_m, spacing_m)};
}

double sensor_gap_m(const CompassInput& in) {
  double least_m = 1e9;
  for (std::size_t i = 0; i + 1 < in.pair.route.size(); ++i) {
    least_m = std::min(least_m, distance_m(in.pair.route[i], in.pair.route[i + 1], in.sensor));
  }
  return least_m;
}

double height_off_feeder_m(CompassInput in, double gap_m) {
  constexpr double kStep_m = 0.01;
  while (sensor_gap_m(in) < gap_m) in.sensor.z_m += kStep_m;  // above all of the feeder at the latest
  return in.sensor.z_m;
}

std::vector<Change> heading_changes(const Job& job, const CompassInput& in) {
  std::vector<Change> changes;
  if (error_deg(in) <= in.limit_deg) return changes;
  CompassInput closer = in;
  closer.pair.spacing_m = std::min(in.pair.spacing_m, 1e-3 * kSleeved_mm);
  if (closer.pair.spacing_m < in.pair.spacing_m && error_deg(closer) <= in.limit_deg) {
    changes.push_back(with_value("control.spacing_mm", kSleeved_mm,
                                 "Keep the two cables touching all the way"));
  }
  CompassInput twisted = in;
  twisted.pair.lay = FeederLay::twisted;
  if (in.pair.lay != FeederLay::twisted && error_deg(twisted) <= in.limit_deg) {
    changes.push_back(with_value("control.feeder_lay", static_cast<double>(FeederLay::twisted),
                                 "Twist the pair, a full turn in " +
                                     fixed(job.control.pitch_mm.value, 0) + " mm"));
  }
  offer_places(job, in, changes);
  return changes;
}

CompassStudy compass_study(const Design& design) {
  CompassStudy study{.earth = earth_here(design.job.control),
                     .boat_length_m = design.job.boat.length_m.value};
  study.input = compass_input(design.job, design.feeder.current_A, study.earth);
  study.gap_m = sensor_gap_m(study.input);
  study.result = compass(study.input);
  return study;
}

}  // namespace thole
