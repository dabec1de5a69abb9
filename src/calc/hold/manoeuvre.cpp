#include "calc/hold/manoeuvre.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace thole {
namespace {

using std::numbers::pi;

// Linear drag, as the time in which it alone takes a speed to a third. Project decision.
constexpr double kSurgeDamping_s = 60.0;
constexpr double kSwayDamping_s = 40.0;
constexpr double kYawDamping_s = 15.0;

// A cubic in x, and four more.
struct Polynomial {
  double x1 = 0.0;  // what its integral from 0 has as factor of x
  double x2 = 0.0;
  double x3 = 0.0;
  double x4 = 0.0;

  double at(double x) const { return x * (x1 + x * (x2 + x * (x3 + x * x4))); }
  // Of x times the same.
  double moment_at(double x) const {
    return x * x * (x1 / 2.0 + x * (x2 * 2.0 / 3.0 + x * (x3 * 0.75 + x * (x4 * 0.8))));
  }
};

Motion moved(const Motion& from, const Motion& change, double time_s) {
  return {.x_m = from.x_m + time_s * change.x_m,
          .y_m = from.y_m + time_s * change.y_m,
          .heading_rad = from.heading_rad + time_s * change.heading_rad,
          .surge_mps = from.surge_mps + time_s * change.surge_mps,
          .sway_mps = from.sway_mps + time_s * change.sway_mps,
          .yaw_rad_per_s = from.yaw_rad_per_s + time_s * change.yaw_rad_per_s};
}

double power_W(const Load& load, const Motion& motion) {
  return load.surge_N * motion.surge_mps + load.sway_N * motion.sway_mps +
         load.yaw_Nm * motion.yaw_rad_per_s;
}

Load times(const DragAreas& areas, double surge_Pa, double sway_Pa) {
  return {.surge_N = surge_Pa * areas.surge_m2,
          .sway_N = sway_Pa * areas.side.sway_m2,
          .yaw_Nm = sway_Pa * areas.side.yaw_m3};
}

}  // namespace

Inertia inertia(const InertiaInput& in) {
  const double volume_m3 = in.displacement_kg / in.water_density_kg_per_m3;
  const double surge_added_kg = 2.7 * in.water_density_kg_per_m3 * std::pow(volume_m3, 5.0 / 3.0) /
                                (in.waterline_length_m * in.waterline_length_m);
  const double gyration_m = kGyration_ratio * in.length_m;
  return {.surge_kg = in.displacement_kg + surge_added_kg,
          .sway_kg = kSwayMass_ratio * in.displacement_kg,
          .yaw_kg_m2 = kYawMass_ratio * in.displacement_kg * gyration_m * gyration_m};
}

double bow_mass_kg(const Inertia& mass, double forward_m) {
  return 1.0 / (1.0 / mass.sway_kg + forward_m * forward_m / mass.yaw_kg_m2);
}

Load cross_flow(const CrossFlowShape& shape, double sway_mps, double yaw_rad_per_s) {
  const double half_m = 0.5 * shape.length_m;
  // depth(x) = a + b x
  const double a = shape.area_m2 / shape.length_m;
  const double centroid_m =
      std::clamp(shape.centroid_m, -shape.length_m / 6.0, shape.length_m / 6.0);
  const double b =
      12.0 * shape.area_m2 * centroid_m / (shape.length_m * shape.length_m * shape.length_m);
  const double v = sway_mps;
  const double r = yaw_rad_per_s;
  // (v + x r)^2 (a + b x), integrated.
  const Polynomial p{.x1 = a * v * v,
                     .x2 = (2.0 * a * v * r + b * v * v) / 2.0,
                     .x3 = (a * r * r + 2.0 * b * v * r) / 3.0,
                     .x4 = b * r * r / 4.0};
  // Where the water stands still: forward of it the sign is that of r.
  const bool within = std::abs(v) < std::abs(r) * half_m;
  const double still_m = within ? -v / r : -half_m;
  const double ahead = within ? (r > 0.0 ? 1.0 : -1.0) : (v + r * half_m >= 0.0 ? 1.0 : -1.0);
  const double astern = within ? -ahead : 0.0;
  const double sway =
      ahead * (p.at(half_m) - p.at(still_m)) + astern * (p.at(still_m) - p.at(-half_m));
  const double yaw = ahead * (p.moment_at(half_m) - p.moment_at(still_m)) +
                     astern * (p.moment_at(still_m) - p.moment_at(-half_m));
  const double pressure = 0.5 * shape.water_density_kg_per_m3 * shape.drag_factor;
  return {.sway_N = -pressure * sway, .yaw_Nm = -pressure * yaw};
}

double DirectionTable::row_rad(int row) {
  const double place = 4.0 * row / kCount;  // along the edge, a quarter turn being 1
  const double ahead = std::abs(place - 2.0) - 1.0;
  const double starboard = place <= 2.0 ? 1.0 - std::abs(place - 1.0) : std::abs(place - 3.0) - 1.0;
  return std::atan2(starboard, ahead);
}

DragAreas DirectionTable::at(double ahead, double starboard) const {
  const double edge = std::abs(ahead) + std::abs(starboard);
  const double share = edge > 0.0 ? starboard / edge : 0.0;
  const double quarters = ahead < 0.0 ? 2.0 - share : share < 0.0 ? 4.0 + share : share;
  const double place = quarters * (kCount / 4.0);
  const int row = std::min(static_cast<int>(place), kCount - 1);
  const double part = place - row;
  const DragAreas& a = rows_[static_cast<std::size_t>(row)];
  const DragAreas& b = rows_[static_cast<std::size_t>(row) + 1];
  return {.surge_m2 = a.surge_m2 + part * (b.surge_m2 - a.surge_m2),
          .side = {.sway_m2 = a.side.sway_m2 + part * (b.side.sway_m2 - a.side.sway_m2),
                   .yaw_m3 = a.side.yaw_m3 + part * (b.side.yaw_m3 - a.side.yaw_m3)}};
}

Manoeuvre::Manoeuvre(const Craft& craft, const Sea& sea)
    : craft_(craft),
      side_{.length_m = craft.hull.current.waterline_length_m,
            .area_m2 = craft.hull.current.underwater_area_m2,
            .centroid_m = craft.hull.current.underwater_centroid_m,
            .drag_factor = craft.hull.current.sway_factor,
            .water_density_kg_per_m3 = craft.hull.water_density_kg_per_m3},
      wind_([&](double from_rad) { return wind_areas(craft.hull.wind, from_rad); }),
      wave_([&](double from_rad) { return wave_areas(craft.hull.wave, from_rad); }) {
  const double wave_Pa = wave_pressure_Pa(craft.hull.water_density_kg_per_m3, sea.height_m);
  const WaveShape& wave = craft.hull.wave;
  wave_surge_Pa_ =
      wave_Pa * wave_period_factor(surge_period_ratio(sea.period_s, wave.waterline_length_m));
  wave_sway_Pa_ =
      wave_Pa * wave_period_factor(sway_period_ratio(sea.period_s, wave.waterline_beam_m));
}

MotionRate Manoeuvre::rate(const Motion& motion, const Surroundings& now) const {
  const HeldHull& hull = craft_.hull;
  const Inertia& m = craft_.mass;
  const double cosine = std::cos(motion.heading_rad);
  const double sine = std::sin(motion.heading_rad);
  const double u = motion.surge_mps;
  const double v = motion.sway_mps;
  const double r = motion.yaw_rad_per_s;
  const double x_mps = cosine * u - sine * v + now.current_x_mps;
  const double y_mps = sine * u + cosine * v + now.current_y_mps;

  // Wind as the boat feels it; where it comes from, clockwise from the bow.
  const double wind_x_mps = -now.wind_mps - x_mps;
  const double wind_y_mps = now.wind_across_mps - y_mps;
  const double forward_mps = cosine * wind_x_mps + sine * wind_y_mps;
  const double port_mps = cosine * wind_y_mps - sine * wind_x_mps;
  const double wind_Pa =
      0.5 * hull.air_density_kg_per_m3 * (forward_mps * forward_mps + port_mps * port_mps);
  const Load wind = times(wind_.at(-forward_mps, port_mps), wind_Pa, wind_Pa);

  const Load wave = times(wave_.at(cosine, sine), now.wave_push_ratio * wave_surge_Pa_,
                          now.wave_push_ratio * wave_sway_Pa_);

  const double ahead_kg_per_m = 0.5 * hull.water_density_kg_per_m3 * hull.current.surge_area_m2;
  const Load across = cross_flow(side_, v, r);
  const Load water{.surge_N = -ahead_kg_per_m * std::abs(u) * u - m.surge_kg / kSurgeDamping_s * u,
                   .sway_N = across.sway_N - m.sway_kg / kSwayDamping_s * v,
                   .yaw_Nm = across.yaw_Nm - m.yaw_kg_m2 / kYawDamping_s * r};

  const Load thruster{.surge_N = now.thrust_ahead_N,
                      .sway_N = now.thrust_port_N,
                      .yaw_Nm = hull.thruster_forward_m * now.thrust_port_N};

  const double surge_N = wind.surge_N + wave.surge_N + water.surge_N + thruster.surge_N;
  const double sway_N = wind.sway_N + wave.sway_N + water.sway_N + thruster.sway_N;
  const double yaw_Nm = wind.yaw_Nm + wave.yaw_Nm + water.yaw_Nm + thruster.yaw_Nm;
  return {.change = {.x_m = x_mps,
                     .y_m = y_mps,
                     .heading_rad = r,
                     .surge_mps = (surge_N + m.sway_kg * v * r) / m.surge_kg,
                     .sway_mps = (sway_N - m.surge_kg * u * r) / m.sway_kg,
                     .yaw_rad_per_s = (yaw_Nm - (m.sway_kg - m.surge_kg) * u * v) / m.yaw_kg_m2},
          .power = {.wind_W = power_W(wind, motion),
                    .wave_W = power_W(wave, motion),
                    .water_W = power_W(water, motion),
                    .thruster_W = power_W(thruster, motion)}};
}

Motion Manoeuvre::step(const Motion& motion, const Surroundings& start, const Surroundings& middle,
                       const Surroundings& end, double step_s, Work& work) const {
  const double half_s = 0.5 * step_s;
  const MotionRate a = rate(motion, start);
  const MotionRate b = rate(moved(motion, a.change, half_s), middle);
  const MotionRate c = rate(moved(motion, b.change, half_s), middle);
  const MotionRate d = rate(moved(motion, c.change, step_s), end);
  const double sixth_s = step_s / 6.0;
  const auto sum = [](double first, double second, double third, double fourth) {
    return first + 2.0 * (second + third) + fourth;
  };
  const auto of_power = [&](double LoadPower::*load_W) {
    return sixth_s * sum(a.power.*load_W, b.power.*load_W, c.power.*load_W, d.power.*load_W);
  };
  const auto of_motion = [&](double Motion::*part) {
    return motion.*part +
           sixth_s * sum(a.change.*part, b.change.*part, c.change.*part, d.change.*part);
  };
  work.wind_J += of_power(&LoadPower::wind_W);
  work.wave_J += of_power(&LoadPower::wave_W);
  work.water_J += of_power(&LoadPower::water_W);
  work.thruster_J += of_power(&LoadPower::thruster_W);
  return {.x_m = of_motion(&Motion::x_m),
          .y_m = of_motion(&Motion::y_m),
          .heading_rad = of_motion(&Motion::heading_rad),
          .surge_mps = of_motion(&Motion::surge_mps),
          .sway_mps = of_motion(&Motion::sway_mps),
          .yaw_rad_per_s = of_motion(&Motion::yaw_rad_per_s)};
}

double Manoeuvre::energy_J(const Motion& motion) const {
  const Inertia& m = craft_.mass;
  return 0.5 * (m.surge_kg * motion.surge_mps * motion.surge_mps +
                m.sway_kg * motion.sway_mps * motion.sway_mps +
                m.yaw_kg_m2 * motion.yaw_rad_per_s * motion.yaw_rad_per_s);
}

double Manoeuvre::stiffness_Hz(double speed_mps, double yaw_rad_per_s) const {
  const Inertia& m = craft_.mass;
  const double density = craft_.hull.water_density_kg_per_m3;
  const double side_m2 = side_.drag_factor * side_.area_m2;
  const double end_mps = speed_mps + 0.5 * side_.length_m * yaw_rad_per_s;
  const double surge = density * craft_.hull.current.surge_area_m2 * speed_mps / m.surge_kg;
  const double sway = density * side_m2 * end_mps / m.sway_kg;
  // A side turning about its middle: a quarter of the length is far enough out for all of it.
  const double yaw =
      density * side_m2 * end_mps * 0.125 * side_.length_m * side_.length_m / m.yaw_kg_m2;
  return std::max({surge, sway, yaw}) + 1.0 / kYawDamping_s;
}

}  // namespace thole
