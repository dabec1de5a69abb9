// Time of the control stage's compass, of the study and its plan, on the ready-made jobs.

#include <algorithm>
#include <chrono>
#include <cstdio>

#include "calc/compass_study.h"
#include "calc/control/control.h"
#include "draw/compass_plan.h"
#include "io/presets.h"

using namespace thole;

namespace {

// Fastest of several, as other work on the machine only slows down.
template <class Work>
double best_us(Work work) {
  double best = 1e12;
  for (int round = 0; round < 12; ++round) {
    const auto from = std::chrono::steady_clock::now();
    work();
    best = std::min(best, std::chrono::duration<double, std::micro>(std::chrono::steady_clock::now() - from).count());
  }
  return best;
}

void report(const char* name, Design design) {
  volatile double sink = 0.0;
  const double field_us = best_us([&] {
    const EarthHere earth = earth_here(design.job.control);
    const CompassInput in = compass_input(design.job, design.feeder.current_A, earth);
    sink = level_field_at_sensor_T(in) + sensor_gap_m(in) +
           static_cast<double>(heading_changes(design.job, in).size());
  });
  const double stage_us = best_us([&] { sink = control({}).heading_error_deg; });
  const double study_us = best_us([&] { sink = compass_study(design).result.error_deg; });
  const CompassStudy study = compass_study(design);
  const double plan_us = best_us([&] {
    sink = compass_plan_picture(study.input, study.result, study.boat_length_m, System::metric).high.x;
  });
  std::printf("%-40s field %7.1f us  stage %6.1f us  study %8.1f us  plan %9.1f us\n", name, field_us, stage_us,
              study_us, plan_us);
}

}  // namespace

int main() {
  for (const ReadyJob& ready : ready_jobs()) {
    Job job = ready.job;
    report(ready.id.c_str(), evaluate(job, default_catalogue()));
    job.control.latitude_deg = {54.0, Origin::given};
    job.control.longitude_deg = {10.0, Origin::given};
    job.control.feeder_lay = {FeederLay::twisted, Origin::given};
    report("  twisted, place given", evaluate(job, default_catalogue()));
  }
}
