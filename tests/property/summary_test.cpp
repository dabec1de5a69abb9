// What a page around the wizard is told is what the design says.

#include <limits>
#include <nlohmann/json.hpp>

#include "base/edition.h"
#include "calc/outputs.h"
#include "io/presets.h"
#include "io/summary_json.h"
#include "support.h"

using namespace thole;
using Json = nlohmann::json;

namespace {

const Json* find_output_in(const Json& summary, std::string_view path) {
  for (const Json& output : summary.at("outputs")) {
    if (output.at("path") == path) return &output;
  }
  return nullptr;
}

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("the summary says what the design says, for every ready-made job") {
    const Catalogue& catalogue = default_catalogue();
    for (const ReadyJob& ready : ready_jobs()) {
      CAPTURE(ready.id);
      const Design design = evaluate(ready.job, catalogue);
      const Json summary = Json::parse(write_summary(design, catalogue));
      CHECK(summary.at("verdict") == word(design.outcome.fit));
      CHECK(summary.at("governing").at("id") == design.outcome.governing);
      const Check* governing = design.find_check(design.outcome.governing);
      CHECK(summary.at("governing").at("label") == (governing == nullptr ? "" : governing->label));
      CHECK(summary.at("price").get<double>() == rel(design.parts.total_price, 1e-12));
      CHECK(summary.at("currency") == catalogue.shop.currency);
      CHECK(summary.at("edition") == kEngineEdition);
      CHECK(summary.at("outputs").size() == 17);
      for (const Json& output : summary.at("outputs")) {
        CAPTURE(output.dump());
        const Output* known = find_output(output.at("path").get<std::string>());
        REQUIRE(known != nullptr);
        CHECK(output.at("label") == std::string(label_of(*known)));
        CHECK(!output.at("text").get<std::string>().empty());
        if (known->number != nullptr) {
          CHECK(near(output.at("value").get<double>(), known->number(design), 0.0));
        }
      }
    }
  }

  TEST_CASE("units change what is said, not the values") {
    const Catalogue& catalogue = default_catalogue();
    const Design design = evaluate(ready_jobs().front().job, catalogue);
    const Json metric = Json::parse(write_summary(design, catalogue, System::metric));
    const Json us = Json::parse(write_summary(design, catalogue, System::us));
    const Json* here = find_output_in(metric, "shaft.length_m");
    const Json* there = find_output_in(us, "shaft.length_m");
    REQUIRE(here != nullptr);
    REQUIRE(there != nullptr);
    CHECK(here->at("value") == there->at("value"));
    CHECK(here->at("unit") == "m");
    CHECK(here->at("text").get<std::string>().ends_with(" m"));
    CHECK(there->at("text").get<std::string>().find("′") != std::string::npos);
  }

  TEST_CASE("the quote holds every part, every task and every caution") {
    for (const ReadyJob& ready : ready_jobs()) {
      CAPTURE(ready.id);
      const Design design = evaluate(ready.job, default_catalogue());
      const Json quote = Json::parse(write_quote(design));
      REQUIRE(quote.at("parts").size() == design.parts.lines.size());
      double price = 0.0;
      for (const Json& part : quote.at("parts")) price += part.at("price").get<double>();
      CHECK(price == rel(design.parts.parts_price, 1e-9));
      double labour_h = 0.0;
      for (const Json& task : quote.at("tasks")) labour_h += task.at("labour_h").get<double>();
      CHECK(labour_h == rel(design.parts.labour_h, 1e-9));
      std::size_t cautions = 0;
      for (const Trace* trace : design.traces()) cautions += trace->cautions.size();
      CHECK(quote.at("cautions").size() == cautions);
      CHECK(cautions > 0);
    }
  }

  TEST_CASE("a number that does not exist is null, not a broken document") {
    Design design = evaluate(ready_jobs().front().job, default_catalogue());
    design.parts.total_price = std::numeric_limits<double>::quiet_NaN();
    design.shaft.length_m = std::numeric_limits<double>::infinity();
    const Json summary = Json::parse(write_summary(design, default_catalogue()));
    CHECK(summary.at("price").is_null());
    CHECK(find_output_in(summary, "shaft.length_m")->at("value").is_null());
  }

  TEST_CASE("without a check that governs the words are empty") {
    Design design = evaluate(ready_jobs().front().job, default_catalogue());
    design.outcome.governing.clear();
    const Json summary = Json::parse(write_summary(design, default_catalogue()));
    CHECK(summary.at("governing").at("label") == "");
    CHECK(summary.at("governing").at("text") == "");
  }
}
