// What is typed for the plate's outline, bolts and cut-outs and cannot be: a sentence, nothing else.

#include "data/plate_lines.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "calc/plate_study.h"
#include "io/presets.h"
#include "job/complete.h"

using namespace thole;

namespace {

std::string many_bolts(int count) {
  std::string text;
  for (int i = 0; i < count; ++i) text += std::to_string(10 + 15 * (i / 2)) + (i % 2 == 0 ? ",50 " : ",-50 ");
  return text;
}

}  // namespace

TEST_CASE("lines that make no plate are refused in a sentence") {
  for (const char* text : {"", "   ", "a", "0/110", "0/110 450", "0/110 0/60", "300/90 0/110", "0/-5 450/60", "0/0 450/60",
                           "0/5 450/6", "0/nan 450/60", "0/1e3 450/60", "0/110 9000/60"}) {
    CAPTURE(text);
    const auto read = read_outline(text);
    CHECK(read.items.empty());
    REQUIRE_FALSE(read.message.empty());
    CHECK(read.message.back() == '.');
  }
  for (const char* text : {"", "50", "50,70", "50,70 50,-70", "50,70 50,-70 50,0", "50,70 150,70 350,70", "50,70 50,-70 50,70",
                           "50,70 50,-70 -170,70", "50,70 50,-70 170,7000", "50;70 50,-70 170,70", "50,70,1 50,-70 170,70"}) {
    CAPTURE(text);
    const auto read = read_bolt_places(text);
    CHECK(read.items.empty());
    REQUIRE_FALSE(read.message.empty());
  }
  CHECK(read_bolt_places(many_bolts(500)).message.find("60") != std::string::npos);
  CHECK(read_bolt_places(many_bolts(60)).items.size() == 60);
  for (const char* text : {"", "60x40", "60x40@200", "x@1,1", "0x40@200,0", "60x1@200,0", "60x40@-5,0", "9000@200,0"}) {
    CAPTURE(text);
    CHECK(read_cut_outs(text).items.empty());
    CHECK_FALSE(read_cut_outs(text).message.empty());
  }
}

TEST_CASE("what is read is what was written, and reads back") {
  const auto bolts = read_bolt_places("50,70 50,-70 170.5,0");
  REQUIRE(bolts.items.size() == 3);
  CHECK(bolts.items[2].forward_mm == 170.5);
  CHECK(bolts.items[1].port_mm == -70.0);
  CHECK(bolt_places_text(bolts.items) == "50,70 50,-70 170.5,0");
  const auto cuts = read_cut_outs(" 60x40@200,-10  50@300,40 ");
  REQUIRE(cuts.items.size() == 2);
  CHECK_FALSE(cuts.items[0].round);
  CHECK(cuts.items[1].round);
  CHECK(cuts.items[1].width_mm == 50.0);
}

TEST_CASE("a job whose plate cannot be read says where, and is worked out without that line") {
  Job job = ready_jobs().front().job;
  job.mount.outline = {"0/110 300/90 100/60", Origin::given};
  job.mount.bolt_places = {"50,0 150,0 250,0", Origin::given};
  job.mount.cutouts = {"hatch", Origin::given};
  const Completed done = complete(job, default_catalogue());
  for (const char* field : {"mount.outline", "mount.bolt_places", "mount.cutouts"}) {
    CAPTURE(field);
    CHECK(std::any_of(done.issues.begin(), done.issues.end(), [&](const Issue& issue) { return issue.field == field; }));
  }
  CHECK(plate_study(evaluate(job, default_catalogue())).solution.solved);
}

TEST_CASE("bolts off the plate and cut-outs over its edge are named by the job's fields") {
  Job job = ready_jobs().front().job;
  job.mount.bolt_places = {"50,50 50,-50 1400,50", Origin::given};
  PlateStudy study = plate_study(evaluate(job, default_catalogue()));
  CHECK_FALSE(study.solution.solved);
  CHECK_FALSE(study.solution.problem.empty());
  REQUIRE(has_error(study.issues));
  CHECK(study.issues.front().field == "mount.bolt_places");
  job.mount.bolt_places = {};
  job.mount.cutouts = {"60x40@0,0", Origin::given};
  study = plate_study(evaluate(job, default_catalogue()));
  CHECK_FALSE(study.solution.solved);
  CHECK(std::any_of(study.issues.begin(), study.issues.end(), [](const Issue& issue) { return issue.field == "mount.cutouts"; }));
}
