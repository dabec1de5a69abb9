// Processor time of the plate under all its loads, of the default job, of the ready-made ones, and over mesh
// sizes: the median. Memory once had is kept, as by a page whose slider moves.
//
// usage: thole_plate_bench [LIMIT_MS]   0: no limit

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <vector>
#ifdef __GLIBC__
#include <malloc.h>
#endif

#include "calc/plate_study.h"
#include "io/presets.h"

using namespace thole;

namespace {

#ifdef __EMSCRIPTEN__
constexpr const char* kAsked = " (asked: 20)";
#else
constexpr const char* kAsked = " (asked: 8)";
#endif
constexpr int kWarmRounds = 15;  // not counted: a machine that compiles as it runs is at it meanwhile
constexpr int kRounds = 25;

double median_ms(const PlateModel& model) {
  std::vector<double> took_ms;
  for (int round = 0; round < kWarmRounds + kRounds; ++round) {
    const std::clock_t from = std::clock();
    const PlateSolution solution = solve_plate(model);
    if (!solution.solved) std::exit(1);
    if (round >= kWarmRounds) took_ms.push_back(1e3 * static_cast<double>(std::clock() - from) / CLOCKS_PER_SEC);
  }
  std::sort(took_ms.begin(), took_ms.end());
  return took_ms[took_ms.size() / 2];
}

}  // namespace

int main(int count, char** words) {
#ifdef __GLIBC__
  constexpr int kKept_bytes = 100'000'000;
  mallopt(M_TRIM_THRESHOLD, kKept_bytes);
  mallopt(M_MMAP_THRESHOLD, kKept_bytes);
#endif
  const double limit_ms = count > 1 ? std::atof(words[1]) : 0.0;
  double slowest_ms = 0.0;
  PlateModel last{};
  std::vector<ReadyJob> jobs{{.id = "the default job", .job = {}}};
  for (const ReadyJob& ready : ready_jobs()) jobs.push_back(ready);
  for (const ReadyJob& ready : jobs) {
    const Design design = evaluate(ready.job, default_catalogue());
    if (!design.hold.motor_found || design.mount.bolt.id.empty()) continue;
    const PlateStudy study = plate_study(design);
    if (!study.solution.solved) continue;
    const double took_ms = median_ms(study.model);
    std::printf("%-34s %5zu unknowns, %zu cases %7.1f ms%s\n", ready.id.c_str(), 3 * study.solution.mesh.nodes.size(),
                study.model.cases.size(), took_ms, &ready == &jobs.front() ? kAsked : "");
    slowest_ms = std::max(slowest_ms, took_ms);
    last = study.model;
  }
  for (const double size_m : {0.030, 0.020, 0.015, 0.012}) {
    last.wish.size_m = size_m;
    const PlateSolution solution = solve_plate(last);
    std::printf("triangles of %2.0f mm: %6zu unknowns %8.1f ms\n", 1000.0 * size_m, 3 * solution.mesh.nodes.size(), median_ms(last));
  }
  std::printf("plate under load: slowest %.1f ms", slowest_ms);
  if (limit_ms > 0.0) std::printf(", limit %.0f ms", limit_ms);
  std::printf("\n");
  return limit_ms > 0.0 && slowest_ms > limit_ms ? 1 : 0;
}
