// Values found by other means than the code's own formula: the handbook's worked tables, and
// equations integrated in small steps.

#include <cmath>

#include "calc/bank/capacity.h"
#include "calc/bank/kinetic.h"
#include "calc/charge/taper.h"
#include "calc/circuit.h"
#include "support.h"

using namespace thole;

TEST_SUITE("derived") {
  TEST_CASE("Peukert: hours of 100 Ah over 20 h, the handbook's worked table") {
    const double currents_A[] = {5.0, 10.0, 25.0, 50.0};
    struct Row {
      double exponent;
      double hours_h[4];
    };
    const Row rows[] = {{1.05, {20.00, 9.659, 3.691, 1.783}},
                        {1.15, {20.00, 9.013, 3.142, 1.416}},
                        {1.20, {20.00, 8.706, 2.899, 1.262}},
                        {1.25, {20.00, 8.409, 2.675, 1.125}},
                        {1.30, {20.00, 8.123, 2.468, 1.002}}};
    for (const Row& row : rows) {
      for (int i = 0; i < 4; ++i) {
        CAPTURE(row.exponent);
        CAPTURE(currents_A[i]);
        CHECK(near(peukert_hours_h({100.0, 20.0}, row.exponent, currents_A[i]), row.hours_h[i],
                   0.0006));
      }
    }
  }

  TEST_CASE("Peukert: amp-hours delivered, 56.2 at 50 A and k 1.25, never more than the label") {
    CHECK(near(capacity_at_Ah({100.0, 20.0}, 1.25, 50.0), 56.2, 0.05));
    CHECK(near(capacity_at_Ah({100.0, 20.0}, 1.20, 25.0), 72.5, 0.05));
    CHECK(near(capacity_at_Ah({100.0, 20.0}, 1.25, 1.0), 100.0, 1e-9));
  }

  TEST_CASE("kinetic model: capacity by rate, the handbook's worked row for open AGM data") {
    const KineticModel model = fit({100.0, 20.0}, {93.2, 10.0}, {58.12, 1.0});
    const double rows[][2] = {{0.5, 53.36}, {1.0, 58.12},  {2.0, 66.45},  {3.0, 73.13},
                              {5.0, 82.42}, {10.0, 93.20}, {20.0, 100.00}};
    for (const auto& row : rows) {
      CAPTURE(row[0]);
      CHECK(near(capacity_over_Ah(model, row[0]), row[1], 0.006));
    }
  }

  TEST_CASE("kinetic model: the two differential equations, integrated in small steps") {
    // Wells of cross-sections c and 1 - c joined by a valve: dq1/dt = -I + w, dq2/dt = -w,
    // w = k c (1 - c) (q2 / (1 - c) - q1 / c).
    const KineticModel model = kinetic_model(Chemistry::agm, {100.0, 20.0}, 0.0);
    const double c = model.available_frac;
    const double k = model.rate_frac_per_h;
    KineticState state = full_state(model);
    const int step_count = 200000;
    const double step_h = 1.5 / step_count;
    for (int i = 0; i < step_count; ++i) {
      const double flow_A =
          k * c * (1.0 - c) * (state.bound_Ah / (1.0 - c) - state.available_Ah / c);
      state.available_Ah += step_h * (flow_A - 20.0);
      state.bound_Ah -= step_h * flow_A;
    }
    const KineticState closed = after(model, full_state(model), 20.0, 1.5);
    CHECK(closed.available_Ah == rel(state.available_Ah, 1e-4));
    CHECK(closed.bound_Ah == rel(state.bound_Ah, 1e-4));
  }

  TEST_CASE("constant power: current found by halving gives the power") {
    const double open_V = 37.2;
    const double resistance_ohm = 0.023;
    const double power_W = 1400.0;
    double low_A = 0.0;
    double high_A = open_V / (2.0 * resistance_ohm);
    for (int i = 0; i < 80; ++i) {
      const double middle_A = 0.5 * (low_A + high_A);
      ((open_V - resistance_ohm * middle_A) * middle_A < power_W ? low_A : high_A) = middle_A;
    }
    CHECK(constant_power(open_V, resistance_ohm, power_W).current_A == rel(low_A, 1e-9));
  }

  TEST_CASE("taper: a current that dies away exponentially to its tail carries the charge") {
    const TaperResult result = taper({.capacity_Ah = 100.0,
                                      .depth_frac = 0.6,
                                      .bulk_A = 18.0,
                                      .tail_A = 2.0,
                                      .switch_frac = 0.8});
    const int step_count = 100000;
    const double step_h = result.absorption_h / step_count;
    double charge_Ah = 0.0;
    for (int i = 0; i < step_count; ++i) {
      const double share_frac = (i + 0.5) / step_count;
      charge_Ah += step_h * 18.0 * std::pow(2.0 / 18.0, share_frac);
    }
    CHECK(charge_Ah == rel(20.0 / 0.75, 1e-6));  // a fifth of 100 Ah, at 0.75
    CHECK(result.bulk_h == rel(40.0 / (0.95 * 18.0), 1e-9));
  }
}
