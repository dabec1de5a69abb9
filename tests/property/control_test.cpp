// What any installer knows of sensors and links.

#include "calc/control/control.h"

#include "calc/compass_study.h"
#include "calc/heading.h"
#include "io/presets.h"
#include "support.h"

using namespace thole;

namespace {

Design with(const Job& job) { return Evaluation(job, default_catalogue()).design(); }

double error_deg(const CompassInput& in) { return worst_error_deg(level_field_at_sensor_T(in), in.horizontal_T); }

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("a heading sensor farther from the feeder never errs more, twisting never makes it worse") {
    for (const ReadyJob& ready : ready_jobs()) {
      CAPTURE(ready.id);
      const Design design = with(ready.job);
      CompassInput in = compass_input(design.job, design.feeder.current_A, earth_here(design.job.control));
      double last_deg = 180.0;
      for (int i = 0; i < 12; ++i) {  // straight up from beside the run
        in.sensor = {0.5 * (in.pair.route[1].x_m + in.pair.route[2].x_m), in.pair.route[1].y_m,
                     in.pair.route[1].z_m + 0.3 + 0.2 * i};
        in.tilt_deg = 45.0;  // so that the direction of the field counts little
        const double here_deg = error_deg(in);
        CHECK(here_deg <= last_deg);
        last_deg = here_deg;
        CompassInput twisted = in;
        twisted.pair.lay = FeederLay::twisted;
        CHECK(error_deg(twisted) <= here_deg);
      }
    }
  }

  TEST_CASE("more load, more cable or a drop more never lose fewer volts; the middle never more than the end") {
    DataLinkInput in{.kind = DataLink::marine_network, .cable_m = 1.0, .device_count = 3, .load_units_count = 1};
    Trace trace;
    for (const double cable_m : {1.0, 10.0, 40.0, 100.0, 180.0}) {
      for (const double drop_m : {0.0, 2.0, 6.0}) {
        double last_A = 0.0;
        for (const int loads : {1, 4, 12, 40, 150}) {
          in.cable_m = cable_m;
          in.longest_drop_m = drop_m;
          in.load_units_count = loads;
          in.feed = NetworkFeed::end;
          const DataLinkResult end = data_link(in, trace);
          in.feed = NetworkFeed::middle;
          const DataLinkResult middle = data_link(in, trace);
          CHECK(end.current_A > last_A);
          last_A = end.current_A;
          CHECK(middle.leg_A <= end.leg_A);
          for (const NetworkCable& cable : network_cables()) {
            const double drop_V = network_drop_V(cable.ohm_per_m, cable_m + drop_m, loads);
            CHECK(network_drop_V(cable.ohm_per_m, cable_m + drop_m + 1.0, loads) > drop_V);
            CHECK(network_drop_V(cable.ohm_per_m, cable_m + drop_m, loads + 1) > drop_V);
          }
        }
      }
    }
  }

  TEST_CASE("a stricter limit never turns a failing heading into a passing one") {
    for (const double field_uT : {0.1, 0.5, 0.7, 2.0, 30.0}) {
      bool failed = false;
      for (const double limit_deg : {20.0, 5.0, 2.0, 1.0, 0.2}) {
        ControlInput in{.heading = {.field_T = 1e-6 * field_uT, .horizontal_T = 20e-6, .limit_deg = limit_deg}};
        const bool fails = control(in).trace.checks.front().verdict() == Verdict::fail;
        CHECK((fails || !failed));
        failed = fails;
      }
    }
  }
}
