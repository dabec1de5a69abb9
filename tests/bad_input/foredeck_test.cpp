#include <cmath>
#include <limits>
#include <string>

#include "calc/foredeck_study.h"
#include "calc/length_study.h"
#include "calc/snag_study.h"
#include "data/deck_items.h"
#include "draw/bow_elevation.h"
#include "draw/foredeck_plan.h"
#include "io/foredeck_text.h"
#include "io/presets.h"
#include "support.h"

using namespace thole;

TEST_SUITE("bad input") {
  TEST_CASE("items of a foredeck: what is not understood is named in one sentence") {
    const char* const wrong[] = {"", "   ", "cleat", "cleat@", "cleat@0.8", "cleat@0.8,-0.4", "cleat@0.8,-0.4:", "cleat@0.8,-0.4:0.2x0.06",
                                 "cleat@0.8,-0.4:0.2x0.06x", "cleat@0.8,-0.4:0.2x0.06x0", "cleat@0.8,-0.4:0x0.06x0.08", "cleat@0.8,-0.4:-1x0.06x0.08",
                                 "cleat@0.8,-0.4:0.2x0.06x9", "cleat@9,0:0.2x0.06x0.08", "cleat@0.8,7:0.2x0.06x0.08", "boulder@0.8,0:0.2x0.06x0.08",
                                 "@0.8,0:0.2x0.06x0.08", "cleat@a,b:cxdxe", "cleat@0,8,0:0.2x0.06x0.08", "cleat@nan,0:1x1x1", "cleat@1e3,0:1x1x1",
                                 "cleat@0.8,-0.4:0.2x0.06x0.08x0.1", "cleat 0.8 0.4"};
    for (const char* text : wrong) {
      CAPTURE(text);
      const DeckItemsRead read = read_deck_items(text);
      CHECK_FALSE(read.message.empty());
      CHECK(read.items.empty());
      CHECK(read.message.back() == '.');
    }
    std::string many;
    for (int i = 0; i < 25; ++i) many += "cleat@0.8,0.4:0.2x0.06x0.08 ";
    CHECK(read_deck_items(many).message.find("24") != std::string::npos);
    const DeckItemsRead good = read_deck_items(" roller@-0.1,0:0.4x0.12x0.15;lid@0.6,-0.1:0.4x0.4x0.03\t");
    CHECK(good.message.empty());
    REQUIRE(good.items.size() == 2);
    CHECK(good.items[0].kind == DeckItemKind::roller);
    CHECK(near(good.items[0].aft_m, -0.1, 0.0));
    CHECK(near(good.items[1].starboard_m, -0.1, 0.0));
  }

  TEST_CASE("unreadable items of a job are named with their field and left out") {
    Job job;
    job.foredeck.items = {"cleat somewhere", Origin::given};
    const Design design = evaluate(job, default_catalogue());
    bool named = false;
    for (const Issue& issue : design.issues) named = named || issue.field == "foredeck.items";
    CHECK(named);
    CHECK(foredeck_study(design).room.stowed.empty());
  }

  TEST_CASE("no size, or a mount off the deck: a sentence, no numbers, and a drawing that says so") {
    RoomInput in{.motor = {.length_m = 1.8, .tube_m = 0.04, .propeller_diameter_m = 0.3, .collar_m = 0.15},
                 .stance = {},
                 .deck_length_m = 2.0,
                 .deck_width_m = 1.2};
    CHECK(foredeck_room(in).problem.empty());
    for (double* size : {&in.motor.length_m, &in.motor.tube_m, &in.motor.propeller_diameter_m, &in.deck_width_m}) {
      for (const double bad : {0.0, -1.0, std::numeric_limits<double>::quiet_NaN()}) {
        const double kept = *size;
        *size = bad;
        CHECK_FALSE(foredeck_room(in).problem.empty());
        *size = kept;
      }
    }
    for (const Stance off : {Stance{-0.95, 0.0, 0.0}, Stance{2.5, 0.0, 0.0}, Stance{0.2, 1.4, 0.0}, Stance{0.2, -1.4, 0.0}}) {
      in.stance = off;
      const RoomResult room = foredeck_room(in);
      CHECK(room.problem.find("mount") != std::string::npos);
      CHECK(room.stowed.empty());
    }
  }

  TEST_CASE("nothing to choose from: studies, texts and drawings still answer") {
    const Design design = evaluate({}, Catalogue{});
    CHECK_FALSE(length_study(design).problem.empty());
    CHECK_FALSE(snag_study(design).problem.empty());
    const ForedeckStudy study = foredeck_study(design);
    CHECK_FALSE(study.room.problem.empty());
    CHECK(foredeck_plan(study, System::metric).description == study.room.problem);
    CHECK_FALSE(foredeck_side(study, System::metric).description.empty());
    CHECK_FALSE(bow_elevation(design, System::us).description.empty());
    CHECK_FALSE(write_foredeck(study, length_study(design), snag_study(design)).empty());
    CHECK_FALSE(foredeck_text(study, System::metric).empty());
  }
}
