// The ready-made jobs' protection by curves, from the design's own bank, cables and devices.

#include "calc/protection_study.h"

#include <doctest/doctest.h>

#include "calc/outputs.h"
#include "draw/trip_curves.h"
#include "io/presets.h"
#include "io/protection_text.h"
#include "support.h"

using namespace thole;

TEST_CASE("every ready-made job's protection is held against its curves") {
  for (const ReadyJob& ready : ready_jobs()) {
    CAPTURE(ready.id);
    const Design design = evaluate(ready.job, default_catalogue());
    if (!design.bank.found || !design.feeder.found) continue;
    const ProtectionStudy study = protection_study(design);
    const FaultRanges& faults = study.result.faults;
    CHECK(faults.posts.least_A > faults.plug.least_A);
    CHECK(faults.posts.most_A > faults.plug.most_A);
    // The verdict and the curves say the same: one is told by the other.
    for (const Finding& finding : study.result.findings) {
      CHECK((design.find_check(finding.check.id) != nullptr) == (finding.kind != FindingKind::device));
    }
    CHECK(find_output("feeder.fault_near_A")->number(design) == faults.posts.most_A);
    const ProtectionResult again = protection(study.input);
    CHECK(again.verdict == study.result.verdict);
    CHECK(again.faults.plug.least_A == faults.plug.least_A);
    CHECK(study.result.findings.size() >= 8);
    CHECK(study.result.verdict != Verdict::not_evaluated);
    CHECK(find(study.result, FindingKind::continuous)->check.actual == rel(design.feeder.current_A, 1e-12));
    const std::string text = protection_text(study, System::metric);
    for (const Finding& finding : study.result.findings) CHECK(text.find(finding.check.label) != std::string::npos);
    CHECK_FALSE(trip_curves_picture(study.input, study.result, System::metric).description.empty());
  }
}

TEST_CASE("a fuse of four times the rating lets the run overheat, and says so") {
  const Design design = evaluate(ready_jobs().front().job, default_catalogue());
  ProtectionStudy study = protection_study(design);
  REQUIRE_FALSE(study.input.devices.empty());
  study.input.devices.front().device_class = DeviceClass::bolt_fuse;
  study.input.devices.front().rating_A *= 8.0;
  const ProtectionResult coarse = protection(study.input);
  CHECK(find(coarse, FindingKind::overload)->check.utilisation() > 1.0);
}
