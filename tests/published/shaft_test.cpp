#include "calc/shaft/shaft.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "base/units.h"
#include "calc/shaft/immersion.h"
#include "calc/shaft/motion.h"
#include "calc/shaft/tube.h"
#include "support.h"

using namespace thole;

namespace {

// The three boats that the handbook's figures are for (invented).
constexpr FloatingHull kR18{.waterline_length_m = 4.9, .waterline_beam_m = 1.95, .draft_m = 0.35};
constexpr FloatingHull kR25{.waterline_length_m = 6.6, .waterline_beam_m = 2.3, .draft_m = 0.45};
constexpr FloatingHull kR36{.waterline_length_m = 9.6, .waterline_beam_m = 3.1, .draft_m = 0.6};

}  // namespace

TEST_SUITE("published") {
  // Jensen, Mansour and Olsen 2004, zero speed, head sea; figures recomputed from the paper's
  // formulas in the handbook (its HL-39 and HL-40, printed to four decimals).
  TEST_CASE("closed-form bow motion [jensen-mansour-olsen-2004]") {
    const BowResponse steep = bow_response(kR25, 3.8, 3.5);
    CHECK(near(steep.heave_ratio, 0.7999, 0.002));
    CHECK(near(steep.pitch_rad_per_m, 0.2860, 0.002));
    CHECK(near(steep.relative_ratio, 0.5024, 0.002));
    CHECK(near(steep.absolute_ratio, 1.3494, 0.002));
    const BowResponse swell = bow_response(kR25, 3.8, 10.0);
    CHECK(near(swell.heave_ratio, 0.9974, 0.001));
    CHECK(near(swell.pitch_rad_per_m, 0.04019, 0.001));
    CHECK(near(swell.relative_ratio, 0.0091, 0.001));
  }

  // Handbook, holding loads 3.4: JONSWAP, peak enhancement 3.3, three decimals printed, the bounds
  // of its sum not stated. Its first two rows sit 2 % below this sum; the others agree within 1 %.
  TEST_CASE("relative motion in a JONSWAP sea [handbook 3.4, computed there]") {
    struct Row {
      FloatingHull hull{};
      double x_m = 0.0;
      double height_m = 0.0;
      double period_s = 0.0;
      double sigma_m = 0.0;
    };
    const Row rows[] = {{kR18, 3.0, 0.3, 2.2, 0.105}, {kR18, 3.0, 0.5, 2.8, 0.130},
                        {kR25, 3.8, 0.3, 2.2, 0.107}, {kR25, 3.8, 0.5, 2.8, 0.146},
                        {kR25, 3.8, 0.8, 3.5, 0.169}, {kR36, 5.4, 0.5, 2.8, 0.169},
                        {kR36, 5.4, 0.8, 3.5, 0.214}, {kR36, 5.4, 1.2, 4.5, 0.220}};
    for (const Row& row : rows) {
      CAPTURE(row.sigma_m);
      CHECK(near(relative_motion_sigma_m(row.hull, row.x_m, row.height_m, row.period_s),
                 row.sigma_m, 0.0025));
    }
  }

  // Handbook, mount 6.4 (SH4 and its table): a box on a head wave, recomputed; three decimals.
  TEST_CASE("box on a regular wave [handbook 6.4, recomputed]") {
    struct Row {
      double wavelength_ratio, heave, half_pitch, at_50, at_55, at_60;
    };
    const Row rows[] = {
        {0.5, 0.000, -0.477, 1.108, 1.376, 1.555}, {0.75, -0.207, 0.210, 1.115, 1.230, 1.309},
        {1.0, 0.000, 0.955, 1.383, 1.659, 1.913},  {1.25, 0.234, 1.245, 1.233, 1.535, 1.837},
        {1.5, 0.413, 1.308, 1.015, 1.287, 1.568},  {2.0, 0.637, 1.216, 0.672, 0.867, 1.073},
        {3.0, 0.827, 0.937, 0.335, 0.436, 0.546},  {4.0, 0.900, 0.738, 0.196, 0.256, 0.322}};
    for (const Row& row : rows) {
      CAPTURE(row.wavelength_ratio);
      const BoxResponse box = box_response(row.wavelength_ratio, 0.55);
      CHECK(near(box.heave_ratio, row.heave, 6e-4));
      CHECK(near(0.5 * box.pitch_ratio, row.half_pitch, 6e-4));
      CHECK(near(box.relative_ratio, row.at_55, 1e-3));
      CHECK(near(box_response(row.wavelength_ratio, 0.50).relative_ratio, row.at_50, 1e-3));
      CHECK(near(box_response(row.wavelength_ratio, 0.60).relative_ratio, row.at_60, 1e-3));
    }
  }

  // Linear theory; one decimal printed.
  TEST_CASE("wavelength of a 2.15 s wave [airy-wave]") {
    CHECK(near(deep_wavelength_m(2.15), 7.2, 0.05));
  }

  // Minsaas, Faltinsen and Persson 1983, curve from memory: HL-50, SH3 and the table in mount 6.3.
  TEST_CASE("thrust left near the surface [minsaas-1983, from memory]") {
    struct Row {
      double depth_ratio, factor, tolerance;
    };
    const Row rows[] = {{0.0, 0.3250, 5e-4}, {0.25, 0.484, 6e-4}, {0.5, 0.6334, 5e-4},
                        {0.75, 0.771, 6e-4}, {1.0, 0.8932, 5e-4}, {1.25, 0.989, 6e-4},
                        {1.3, 1.0, 5e-4}};
    for (const Row& row : rows) {
      CAPTURE(row.depth_ratio);
      CHECK(near(immersion_factor(0.15 * row.depth_ratio, 0.15), row.factor, row.tolerance));
    }
  }

  // Handbook, holding loads 4.4 and HL-51: mean over a normal distribution, radius 0.15 m.
  TEST_CASE("mean thrust left in waves [minsaas-1983, from memory; recomputed]") {
    const double sigmas_m[] = {0.05, 0.10, 0.15, 0.20, 0.30};
    struct Row {
      double depth_m;
      double factors[5];
    };
    const Row rows[] = {{0.30, {0.999, 0.979, 0.935, 0.883, 0.794}},
                        {0.40, {1.000, 0.998, 0.983, 0.951, 0.874}},
                        {0.50, {1.000, 1.000, 0.997, 0.983, 0.929}},
                        {0.60, {1.000, 1.000, 1.000, 0.995, 0.963}}};
    for (const Row& row : rows) {
      for (int i = 0; i < 5; ++i) {
        CAPTURE(row.depth_m);
        CAPTURE(sigmas_m[i]);
        CHECK(near(mean_immersion_factor(row.depth_m, 0.15, sigmas_m[i]), row.factors[i], 1e-3));
      }
    }
  }

  // Handbook, holding loads 4.4: share of time with the upper tip out, printed as 19 %, 4 %, 0.4 %.
  TEST_CASE("emergence of the blade tip [handbook 4.4, recomputed]") {
    CHECK(near(emergence_frac(0.30, 0.15, 0.17), 0.19, 0.005));
    CHECK(near(emergence_frac(0.45, 0.15, 0.17), 0.04, 0.005));
    CHECK(near(emergence_frac(0.60, 0.15, 0.17), 0.004, 0.0005));
    CHECK(near(emergence_frac(0.15 + 2.0 * 0.2, 0.15, 0.2), 0.023, 0.0005));  // R + 2 sigma: 2.3 %
  }

  // SH1: 38 x 3 tube, geometry.
  TEST_CASE("section of a 38 x 3 tube [tube-bending, recomputed]") {
    const TubeSection tube = tube_section(38.0, 3.0);
    CHECK(tube.inertia_mm4 == rel(50882.0, 1e-3));
    CHECK(tube.modulus_mm3 == rel(2678.0, 1e-3));
    CHECK(tube.plastic_modulus_mm3 == rel(3684.0, 1e-3));
  }

  // Handbook, mount 6.1: 400 N on an arm of 1.5 m.
  TEST_CASE("tubes under full thrust [tube-bending, recomputed]") {
    struct Row {
      double outer_mm, wall_mm, modulus_GPa, inertia_mm4, stress_MPa, deflection_mm;
    };
    const Row rows[] = {{38.0, 3.0, 193.0, 50882.0, 224.0, 45.8},
                        {35.0, 4.0, 193.0, 47575.0, 221.0, 49.0},
                        {38.0, 6.0, 25.0, 79922.0, 143.0, 225.0}};
    for (const Row& row : rows) {
      const TubeSection section = tube_section(row.outer_mm, row.wall_mm);
      const Cantilever beam = bend(section, row.modulus_GPa, 1.5, 400.0);
      CHECK(section.inertia_mm4 == rel(row.inertia_mm4, 1e-4));
      CHECK(near(beam.stress_MPa, row.stress_MPa, 0.5));
      CHECK(beam.deflection_mm == rel(row.deflection_mm, 2.3e-3));
    }
    const Cantilever steel = bend(tube_section(38.0, 3.0), 193.0, 1.5, 400.0);
    CHECK(near(deg_from_rad(steel.slope_rad), 2.6, 0.05));
    // One step of 150 mm on 1500 mm: a tenth more stress, a third more deflection.
    const Cantilever longer = bend(tube_section(38.0, 3.0), 193.0, 1.65, 400.0);
    CHECK(near(longer.stress_MPa / steel.stress_MPa, 1.10, 0.005));
    CHECK(near(longer.deflection_mm / steel.deflection_mm, 1.33, 0.005));
    // Mount 1.5: k = 8729 N/m and with 8 kg 5.26 Hz.
    CHECK(steel.stiffness_N_per_m == rel(8729.0, 1e-3));
    CHECK(near(std::sqrt(steel.stiffness_N_per_m / 8.0) / (2.0 * std::numbers::pi), 5.26, 0.005));
  }

  // LD9, LD10: Morison, drag alone and with inertia; with 1 m/s of current.
  TEST_CASE("push of waves and current on the stem [journee-massie-2001, recomputed]") {
    const StemPush waves = stem_push(0.038, 0.9, 0.6, 3.5, 0.0);
    CHECK(waves.drag_N == rel(4.605, 1e-3));
    CHECK(waves.peak_N() == rel(4.77, 1e-3));
    CHECK(stem_push(0.038, 0.9, 0.6, 3.5, 1.0).peak_N() == rel(45.30, 1e-3));
    CHECK(waves.moment_Nm() == rel(1.94, 1e-2));
    CHECK(stem_push(0.038, 0.9, 0.6, 3.5, 1.0).moment_Nm() == rel(19.75, 1e-2));
    // In still water current alone: 0.5 rho Cd d z U^2.
    CHECK(stem_push(0.038, 0.9, 0.0, 3.5, 1.0).peak_N() == rel(0.5 * 1025.0 * 1.2 * 0.038 * 0.9, 1e-12));
  }

  // The closed form against Morison's sum itself, over depth and phase.
  TEST_CASE("push of waves and current is the peak of Morison's sum [journee-massie-2001]") {
    for (const double current_mps : {0.0, 0.1, 0.3, 0.6, 1.5})
      for (const double height_m : {0.15, 0.4, 0.9})
        for (const double period_s : {2.2, 3.5, 6.0}) {
          const double stem_m = 0.04, immersed_m = 0.8, w = 2.0 * std::numbers::pi / period_s, k = w * w / 9.80665;
          double most_N = 0.0;
          for (int phase = -360; phase <= 0; ++phase) {
            const double angle_rad = phase * std::numbers::pi / 720.0;
            constexpr int kSlices = 200;
            double sum_N = 0.0;
            for (int slice = 0; slice < kSlices; ++slice) {
              const double size = 0.5 * height_m * w * std::exp(-k * immersed_m * (slice + 0.5) / kSlices);
              const double speed_mps = current_mps + size * std::cos(angle_rad);
              sum_N += (0.5 * 1025.0 * 1.2 * stem_m * speed_mps * std::abs(speed_mps) -
                        1025.0 * 2.0 * 0.25 * std::numbers::pi * stem_m * stem_m * w * size * std::sin(angle_rad)) *
                       immersed_m / kSlices;
            }
            most_N = std::max(most_N, sum_N);
          }
          CAPTURE(current_mps);
          CAPTURE(height_m);
          CAPTURE(period_s);
          const double told_N = stem_push(stem_m, immersed_m, height_m, period_s, current_mps).peak_N();
          CHECK(told_N > most_N * 0.9999);
          CHECK(told_N < most_N * 1.006);
        }
  }

  // LD11: a sea of 4 s met at 15 knots.
  TEST_CASE("frequency at which waves are met [airy-wave, recomputed]") {
    const double met_rad_per_s = encounter_rad_per_s(4.0, mps_from_kn(15.0));
    CHECK(met_rad_per_s == rel(3.5123, 1e-4));
    CHECK(met_rad_per_s / (2.0 * std::numbers::pi) == rel(0.559, 1e-3));
    CHECK(encounter_rad_per_s(4.0, 0.0) == rel(0.5 * std::numbers::pi, 1e-12));
  }

  // SH6 and mount 1.5: stem 38 mm by 0.9 m and pod. The speed for 400 N is printed there as 8.2 kn,
  // but the same page has 389 N at 8 kn, from which 8.11 kn follows; hence the wider tolerance
  // below.
  TEST_CASE("drag with the motor down [journee-massie-2001, recomputed]") {
    struct Row {
      double speed_kn, stem_N, pod_N;
    };
    const Row rows[] = {
        {3.0, 50.0, 5.0}, {5.0, 139.0, 13.0}, {8.0, 356.0, 33.0}, {10.0, 557.0, 52.0}};
    for (const Row& row : rows) {
      CAPTURE(row.speed_kn);
      const double speed_mps = mps_from_kn(row.speed_kn);
      const double drag_N = drag_per_speed_squared(0.038, 0.9) * speed_mps * speed_mps;
      CHECK(near(drag_N, row.stem_N + row.pod_N, 1.0));
    }
    const double limit_mps = std::sqrt(400.0 / drag_per_speed_squared(0.038, 0.9));
    CHECK(near(kn_from_mps(limit_mps), 8.2, 0.1));
    CHECK(near(kn_from_mps(limit_mps), 8.11, 0.01));
  }

  // Handbook, mount 6.2: 0.75 + 0.45 + 0.26 + 0.05 + 0.25 = 1.76 m (69 in), next stock length 1.83
  // m. The wave is two waterline lengths, where a box at 0.55 L has 0.867; the closed form may ask
  // for a little more, which is taken off before comparing.
  TEST_CASE("shaft length from the geometry [handbook 6.2, recomputed]") {
    const double length_m = 0.5 * deep_wavelength_m(3.0);
    const ShaftResult result = shaft({.bow_height_m = 0.75,
                                      .collar_m = 0.25,
                                      .propeller_diameter_m = 0.30,
                                      .immersion_ratio = 1.5,
                                      .wave_height_m = 0.6,
                                      .wave_period_s = 3.0,
                                      .waterline_length_m = length_m,
                                      .waterline_beam_m = 2.3,
                                      .draft_m = 0.45,
                                      .thruster_forward_m = 0.55 * length_m,
                                      .trim_allowance_m = 0.05,
                                      .stock_lengths_m = {1.22, 1.52, 1.83, 2.13},
                                      .thrust_N = 400.0});
    CHECK(result.relative_motion_m >= 0.26 - 0.0005);
    CHECK(near(result.length_required_m - result.relative_motion_m + 0.26, 1.76, 0.0005));
    CHECK(result.length_m == 1.83);
    CHECK(result.length_found);
  }

  // Common practice of the trade, no published source.
  TEST_CASE(
      "a propeller two to three feet down does not ventilate in sheltered water "
      "[common practice]") {
    for (const FloatingHull& hull : {kR18, kR25, kR36}) {
      const double sigma_m =
          relative_motion_sigma_m(hull, 0.56 * hull.waterline_length_m, 0.2, 1.8);
      for (const double depth_ft : {2.0, 3.0}) {
        CHECK(mean_immersion_factor(m_from_ft(depth_ft), 0.15, sigma_m) > 0.99);
        CHECK(emergence_frac(m_from_ft(depth_ft), 0.15, sigma_m) < 0.001);
      }
    }
  }

  TEST_CASE("about 2.2 m of shaft suits the bow of a 9.8 m walkaround [common practice]") {
    const ShaftResult result = shaft({.bow_height_m = 1.35,
                                      .collar_m = 0.15,
                                      .propeller_diameter_m = 0.30,
                                      .immersion_ratio = 1.5,
                                      .wave_height_m = 0.2,
                                      .wave_period_s = 1.6,
                                      .waterline_length_m = 8.5,
                                      .waterline_beam_m = 2.8,
                                      .draft_m = 0.55,
                                      .thruster_forward_m = 4.76,
                                      .trim_allowance_m = 0.06,
                                      .stock_lengths_m = {1.2, 1.5, 1.8, 2.2, 2.5},
                                      .thrust_N = 500.0});
    CHECK(near(result.length_required_m, 2.2, 0.1));
    CHECK(result.length_m == 2.2);
  }
}
