// The bolted joint through the whole engine: metals, finish, backing, fatigue, the road.

#include <cmath>
#include <string>

#include "calc/design.h"
#include "calc/joint_metals.h"
#include "calc/load_cases_study.h"
#include "io/joint_text.h"
#include "io/loads_text.h"
#include "io/presets.h"
#include "job/fields.h"
#include "support.h"
#include "trace_support.h"

using namespace thole;

namespace {

Job bay_boat() {
  for (const ReadyJob& ready : ready_jobs()) {
    if (ready.id == "bay-boat-in-the-estuary") return ready.job;
  }
  FAIL("no such job");
  return {};
}

Design with(const Job& job) { return evaluate(job, default_catalogue()); }
void set(Job& job, std::string_view path, double value) { apply(Change{.field = std::string(path), .value = value}, job); }

}  // namespace

TEST_SUITE("derived") {
  TEST_CASE("stainless left on aluminium fails and is answered by isolating it") {
    Job job = bay_boat();
    CHECK(with(job).find_check("mount.isolation")->verdict() == Verdict::pass);
    set(job, "mount.isolated", 0.0);
    const Design touching = with(job);
    const Check& check = *touching.find_check("mount.isolation");
    CHECK(check.verdict() == Verdict::fail);
    REQUIRE_FALSE(check.changes.empty());
    apply(check.changes.front(), job);
    CHECK(with(job).find_check("mount.isolation")->verdict() == Verdict::pass);
  }

  // Widest readings of the table: 316 passive 0.00 against aluminium -1.00 V.
  TEST_CASE("the metals that meet are listed, with what keeps them apart") {
    Job job = bay_boat();
    job.mount.bolt = {"m8-a4-70", Origin::given};
    const JointMetals glass = joint_metals(with(job));
    REQUIRE(glass.pairs.size() == 1);
    CHECK(glass.pairs[0].id == "bolts-plate");
    CHECK(glass.pairs[0].gap_V == rel(1.0, 1e-9));
    CHECK(glass.pairs[0].limit_V == rel(0.15, 1e-12));
    CHECK(pair_said(glass.pairs[0], System::metric) == "1 V, limit 0.15 V: kept apart");
    set(job, "mount.isolated", 0.0);
    CHECK(pair_said(joint_metals(with(job)).pairs[0], System::metric) == "1 V, limit 0.15 V: touching");
    CHECK(glass.beddings.size() == 3);
    CHECK(glass.beddings[0].kind == "butyl or polysulfide");

    set(job, "boat.deck", static_cast<double>(DeckKind::aluminium));
    const JointMetals metal = joint_metals(with(job));
    REQUIRE(metal.pairs.size() == 4);
    CHECK(metal.pairs[3].id == "plate-deck");
    CHECK(metal.pairs[3].harmless());
    CHECK(pair_said(metal.pairs[3], System::metric) == "one kind of metal");
    CHECK(metal.beddings.size() == 2);
  }

  TEST_CASE("a thicker finish never leaves more clamp; bare metal loses none") {
    Job job = bay_boat();
    const Design bare = with(job);
    CHECK(bare.mount.clamp_left_N == bare.mount.preload_N);
    CHECK(bare.find_check("mount.clamp_left") == nullptr);
    double last_N = bare.mount.preload_N;
    for (const double finish_mm : {0.02, 0.05, 0.1, 0.2, 0.5, 2.0}) {
      CAPTURE(finish_mm);
      set(job, "mount.finish_mm", finish_mm);
      const Design painted = with(job);
      CHECK(painted.mount.clamp_left_N <= last_N);
      CHECK(painted.mount.clamp_left_N >= 0.0);
      last_N = painted.mount.clamp_left_N;
      thole::test::check_formulas(painted.mount.trace);
    }
    CHECK(with(job).find_check("mount.clamp_left")->verdict() == Verdict::fail);
  }

  // Two thirds of the bolt in glass (published pull tests, handbook 4.6).
  TEST_CASE("backing as thick as it must be passes, a tenth less fails") {
    Job job = bay_boat();
    const double needed_mm = with(job).find_check("mount.backing_thickness")->limit;
    set(job, "mount.backing_thickness_mm", needed_mm);
    CHECK(with(job).find_check("mount.backing_thickness")->verdict() != Verdict::fail);
    set(job, "mount.backing_thickness_mm", needed_mm - 0.1);
    CHECK(with(job).find_check("mount.backing_thickness")->verdict() == Verdict::fail);
  }

  TEST_CASE("the road is judged when she goes by trailer, and only then") {
    Job job = bay_boat();
    set(job, "mount.trailered", 1.0);
    CHECK(with(job).find_check("mount.plate_road") != nullptr);
    set(job, "mount.trailered", 0.0);
    CHECK(with(job).find_check("mount.plate_road") == nullptr);
  }

  TEST_CASE("load cases of every ready-made job: finite, told, the same twice") {
    for (const ReadyJob& ready : ready_jobs()) {
      CAPTURE(ready.id);
      const LoadsStudy study = load_cases_study(with(ready.job));
      REQUIRE(study.known);
      CHECK(study.stowed_limit_mps > 0.0);
      CHECK(study.deployed_limit_mps > 0.0);
      CHECK(worst_case(study.loads, LoadGrade::working) != nullptr);
      const std::string text = loads_text(study, System::metric);
      CHECK(text.find("Never faster with the motor stowed") != std::string::npos);
      CHECK(text.find("nan") == std::string::npos);
      CHECK(write_loads(study) == write_loads(load_cases_study(with(ready.job))));
    }
  }

  // The bolts' share in a slam by the case is what the mount's own steps give: moment about the front row.
  TEST_CASE("the slam case and the mount stage tell of one load") {
    const Design design = with(bay_boat());
    const LoadsStudy study = load_cases_study(design);
    for (const LoadCase& at : study.loads.cases) {
      if (at.id != "slam") continue;
      const double front_mm = study.input.pattern.front_mm();
      const double about_front_Nm = -at.force.force_z_N * (at.at.x_mm - front_mm) / 1000.0;
      const double ahead_m = design.find_step("mount.deck_ahead")->value / 1000.0;
      CHECK(about_front_Nm + at.force.force_z_N * ahead_m == rel(design.mount.slam_moment_Nm, 1e-9));
    }
  }
}
