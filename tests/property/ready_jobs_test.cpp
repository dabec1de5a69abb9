// The ready-made jobs and the built-in catalogue, run through the engine.

#include <cmath>
#include <set>
#include <string>

#include "calc/design.h"
#include "data/alloys.h"
#include "data/bolts.h"
#include "data/conductors.h"
#include "io/design_json.h"
#include "io/presets.h"
#include "support.h"

using namespace thole;

TEST_SUITE("property") {
  TEST_CASE("the catalogue names rows that the tables have") {
    const Catalogue& catalogue = default_catalogue();
    for (const CableOffer& cable : catalogue.cables) {
      CAPTURE(cable.conductor);
      CHECK(find_conductor(cable.conductor) != nullptr);
      CHECK(ampacity_A(cable.conductor, cable.insulation_C) > 0.0);
    }
    for (const PlateStock& plate : catalogue.plates) {
      CAPTURE(plate.alloy);
      CHECK(find_alloy(plate.alloy) != nullptr);
    }
    for (const BoltOffer& bolt : catalogue.bolts) {
      CAPTURE(bolt.size);
      CHECK(find_bolt_size(bolt.size) != nullptr);
      CHECK(find_bolt_grade(bolt.grade) != nullptr);
    }
  }

  // holding-loads: a claimed static thrust above (2 rho A P^2)^(1/3) breaks momentum theory, one
  // with more than 0.55 of that power's ideal is doubtful.
  TEST_CASE("motor classes are physically possible") {
    for (const MotorClass& motor : default_catalogue().motors) {
      CAPTURE(motor.id);
      const double disc_m2 = 0.25 * 3.141592653589793 * std::pow(motor.propeller_diameter_m, 2);
      const double ideal_W = std::pow(motor.thrust_N, 1.5) / std::sqrt(2.0 * 1025.0 * disc_m2);
      CHECK(ideal_W / motor.power_full_W < 0.55);
      CHECK(ideal_W / motor.power_full_W > 0.40);
    }
  }

  TEST_CASE("there is a ready-made job for every verdict") {
    std::set<Fit> verdicts;
    for (const ReadyJob& ready : ready_jobs()) {
      CAPTURE(ready.id);
      const Design design = evaluate(ready.job, default_catalogue());
      CHECK(design.issues.empty());
      CHECK(design.outcome.fit != Fit::not_evaluated);
      verdicts.insert(design.outcome.fit);
      const std::string text = write_design(design);
      CHECK(text.find("\"verdict\": \"" + std::string(word(design.outcome.fit)) + "\"") !=
            text.npos);
      CHECK(text == write_design(evaluate(ready.job, default_catalogue())));
    }
    CHECK(verdicts.size() == 3);
  }
}
