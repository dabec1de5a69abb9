// The plate of a job by finite elements, beside the strip of beam that chose it, and drawn.

#include "calc/plate_study.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "draw/plate_load.h"
#include "io/plate_text.h"
#include "io/presets.h"
#include "support.h"
#include "trace_support.h"

using namespace thole;

TEST_CASE("every ready-made job's plate is worked out, each load case standing still") {
  for (const ReadyJob& ready : ready_jobs()) {
    CAPTURE(ready.id);
    const Design design = evaluate(ready.job, default_catalogue());
    if (!design.hold.motor_found || design.mount.bolt.id.empty()) continue;
    const PlateStudy study = plate_study(design);
    REQUIRE_MESSAGE(study.solution.solved, study.solution.problem);
    CHECK(3 * study.solution.mesh.nodes.size() >= 1500);
    REQUIRE(study.findings.size() == 12);
    for (const PlateFinding& at : study.findings) {
      CHECK(std::isfinite(at.stress_MPa));
      CHECK(at.stress_MPa > 0.0);
      CHECK(at.bolt_N <= at.bolts_N + 1e-9);
    }
    // A slam is the weight at rest, times 1 + n_bow D.
    const double factor = 1.0 + design.mount.bow_acceleration_factor * study.amplification_factor;
    CHECK(study.findings[1].stress_MPa == rel(factor * study.findings[0].stress_MPa, 1e-9));
    // Thrust from ahead and from astern are mirror images about a pattern that is symmetric fore and aft
    // but for the deck's edge: within a quarter.
    CHECK(study.findings.back().bolt_N == rel(study.findings[5].bolt_N, 0.25));
    thole::test::check_formulas(study.trace);
    CHECK(study.trace.steps.size() == 4);
    // The elastic bolt group leaves prying out: more pulls, but not three times as much.
    const Step* group = design.find_step("mount.bolt_tension_thrust");
    REQUIRE(group != nullptr);
    double most_N = 0.0;
    for (std::size_t i = 5; i < study.findings.size(); ++i) most_N = std::max(most_N, study.findings[i].bolt_N);
    CHECK(most_N > 0.8 * group->value);
    CHECK(most_N < 3.0 * group->value);
    const Drawing drawing = plate_load_picture(study, 6, System::metric);
    CHECK(drawing.circles.size() == study.model.shape.bolts.size() + 1);
    CHECK(drawing.description.find("MPa") != std::string::npos);
    const std::string text = plate_text(study, System::us);
    CHECK(text.find("Not a strong point") != std::string::npos);
    CHECK(text.find("ksi") != std::string::npos);
  }
}

TEST_CASE("a thicker plate pries less and bends less under the same thrust") {
  Job job;
  for (const ReadyJob& ready : ready_jobs())
    if (ready.id == "walkaround-in-sheltered-water") job = ready.job;
  double before_N = 1e12;
  double before_MPa = 1e12;
  for (const char* plate : {"5083-6mm", "5083-8mm", "5083-10mm", "5083-12mm"}) {
    job.mount.plate = {plate, Origin::given};
    const PlateStudy study = plate_study(evaluate(job, default_catalogue()));
    REQUIRE_MESSAGE(study.solution.solved, study.solution.problem);
    CHECK(study.findings[8].bolt_N < before_N);
    CHECK(study.findings[8].stress_MPa < before_MPa);
    before_N = study.findings[8].bolt_N;
    before_MPa = study.findings[8].stress_MPa;
  }
}
