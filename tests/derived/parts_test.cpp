#include "calc/parts/parts.h"

#include <algorithm>
#include <optional>
#include <string_view>

#include "calc/design.h"
#include "io/presets.h"
#include "support.h"
#include "trace_support.h"

using namespace thole;

namespace {

// A small quote that can be added up by hand.
PartsInput quote() {
  const CableOffer cable{
      .id = "cable-25", .conductor = "25 mm2", .mass_kg_per_m = 0.30, .price_per_m = 8.0};
  return {
      .motor = {.id = "motor-24",
                .label = "Bow motor, 24 V",
                .mass_kg = 22.0,
                .shaft_lengths_m = {1.2, 1.5, 1.8},
                .price = 1500.0,
                .price_per_shaft_step = 60.0,
                .lead_days = 10},
      .shaft_length_m = 1.8,
      .block = {.id = "block-100",
                .label = "Block",
                .nominal_V = 12.0,
                .capacity_Ah = 100.0,
                .mass_kg = 30.0,
                .price = 250.0,
                .lead_days = 3},
      .block_count = 2,
      .feeder = {.cables = {{cable, 9.0}, {cable, 1.2}, {cable, 0.3}},
                 .devices = {{{.id = "breaker-60", .label = "Breaker 60 A", .price = 45.0}, 1}},
                 .way_m = 4.5,
                 .joint_count = 8},
      .chargers = {{{.id = "charger-2", .label = "Charger", .mass_kg = 4.0, .price = 320.0}, 1}},
      .plate = {.id = "plate-10",
                .label = "Plate 10 mm",
                .alloy = "5083-H116",
                .thickness_mm = 10.0,
                .price_per_m2 = 200.0},
      .plate_area_m2 = 0.1,
      .plate_mass_kg = 2.66,
      .bolt = {.id = "bolt-m8", .size = "M8", .grade = "A4-70", .price_each = 3.0},
      .bolt_count = 6,
      .bolt_mass_kg = 0.1,
      .sundries =
          {{.id = "lug",
            .label = "Lug",
            .per = Per::joint,
            .count = 1.0,
            .mass_kg = 0.02,
            .price = 2.0},
           {.id = "sleeve", .label = "Sleeve", .per = Per::metre, .count = 1.0, .price = 1.0},
           {.id = "box",
            .label = "Battery box",
            .per = Per::block,
            .count = 1.0,
            .mass_kg = 1.0,
            .price = 20.0}},
      .tasks = {{.id = "mount", .label = "Fit the plate", .per = Per::job, .labour_h = 3.0},
                {.id = "bolts", .label = "Drill and seal", .per = Per::bolt, .labour_h = 0.25},
                {.id = "run", .label = "Run the cable", .per = Per::metre, .labour_h = 0.4}},
      .shop = {.labour_per_h = 80.0, .scrap_frac = 0.10}};
}

const PartLine& line_of(const PartsResult& result, std::string_view id) {
  const auto found = std::find_if(result.lines.begin(), result.lines.end(),
                                  [&](const PartLine& line) { return line.id == id; });
  REQUIRE(found != result.lines.end());
  return *found;
}

}  // namespace

TEST_SUITE("derived") {
  TEST_CASE("a quote added up by hand") {
    const PartsResult result = parts(quote());
    // 1620 + 500 + 12 x 8 + 45 + 320 + 0.11 x 200 + 18 + 8 x 2 + 5 x 1 + 2 x 20
    CHECK(result.parts_price == rel(2682.0, 1e-12));
    CHECK(result.labour_h == rel(6.3, 1e-12));  // 3 + 6 x 0.25 + 4.5 x 0.4
    CHECK(result.labour_price == rel(504.0, 1e-12));
    CHECK(result.total_price == rel(3186.0, 1e-12));
    // 22 + 60 + 10.5 x 0.3 + 4 + 2.66 + 0.6 + 0.16 + 2
    CHECK(result.mass_kg == rel(94.57, 1e-12));
    CHECK(result.lead_days == 10);
    CHECK(result.complete);
    thole::test::check_formulas(result.trace);
  }

  // The blank 0.11 m2 at 200; 0.09 m2 of it weigh 2.394 kg, so a kilogram costs 200 x 0.09 / 2.394, and
  // 2 x 0.5 kg with a tenth of scrap 8.271.
  TEST_CASE("the plate is bought as its blank and weighed as cut; stiffeners are priced by weight") {
    PartsInput in = quote();
    const PartsResult before = parts(in);
    in.plate_net_m2 = 0.09;
    in.plate_mass_kg = 2.394;
    in.stiffeners = {.count = 2, .length_m = 0.48, .height_mm = 40.0, .thickness_mm = 10.0, .mass_kg = 0.5};
    const PartsResult result = parts(in);
    const PartLine& plate = line_of(result, "plate-10");
    CHECK(plate.quantity == rel(0.11, 1e-12));
    CHECK(plate.mass_kg == rel(2.394, 1e-12));
    CHECK(plate.detail == "5083-H116, 10.0 mm, 0.0900 m2 as cut");
    const PartLine& bars = line_of(result, "plate-10.stiffener");
    CHECK(bars.group == "mount");
    CHECK(bars.quantity == 2.0);
    CHECK(bars.detail == "5083-H116, 40.0 x 10.0 mm, 480 mm each");
    CHECK(bars.mass_kg == rel(1.0, 1e-12));
    CHECK(bars.price == rel(8.271, 1e-4));
    CHECK(result.parts_price - before.parts_price == rel(bars.price, 1e-9));
    CHECK(result.mass_kg - before.mass_kg == rel(1.0 + 2.394 - 2.66, 1e-9));
    thole::test::check_formulas(result.trace);
  }

  TEST_CASE("cable of one kind is bought together, in whole metres after scrap") {
    const PartsResult result = parts(quote());
    const PartLine& cable = line_of(result, "cable-25");
    CHECK(cable.quantity == 12.0);  // 10.5 m and a tenth: 11.55 m
    CHECK(cable.mass_kg == rel(3.15, 1e-12));
    CHECK(cable.unit == "m");
    PartsInput in = quote();
    in.shop.scrap_frac = 0.0;
    in.feeder.cables = {{in.feeder.cables[0].cable, 12.0}};
    CHECK(line_of(parts(in), "cable-25").quantity == 12.0);
    in.feeder.cables[0].length_m = 12.01;
    CHECK(line_of(parts(in), "cable-25").quantity == 13.0);
  }

  TEST_CASE("the shaft's price steps up with each length above the shortest") {
    PartsInput in = quote();
    const double prices[] = {1500.0, 1560.0, 1620.0};
    for (int i = 0; i < 3; ++i) {
      in.shaft_length_m = in.motor.shaft_lengths_m[static_cast<std::size_t>(i)];
      CHECK(line_of(parts(in), "motor-24").price == prices[i]);
    }
  }

  TEST_CASE("what was not found is named and left out; an empty job costs nothing") {
    const PartsResult nothing = parts({});
    CHECK(nothing.lines.empty());
    CHECK(nothing.total_price == 0.0);
    CHECK_FALSE(nothing.complete);
    CHECK(nothing.trace.assumptions.size() == 7);
    thole::test::check_formulas(nothing.trace);
    PartsInput in = quote();
    in.motor = {};
    const PartsResult without = parts(in);
    CHECK_FALSE(without.complete);
    CHECK(without.parts_price == rel(1062.0, 1e-12));
  }

  TEST_CASE("each price is quantity times price, and the lines add up") {
    const PartsResult result = parts(quote());
    double sum = 0.0;
    for (const PartLine& line : result.lines) {
      CAPTURE(line.id);
      CHECK(line.price == rel(line.quantity * line.unit_price, 1e-12));
      sum += line.price;
    }
    CHECK(sum == rel(result.parts_price, 1e-12));
  }

  TEST_CASE("a remote that runs on cells has a spare set of them in the list") {
    const auto spare_of = [](std::optional<RemotePower> power) {
      Job job = ready_jobs().front().job;
      job.control.remote = {};
      if (power) job.control.remote = {*power, Origin::given};
      const Design design = evaluate(job, default_catalogue());
      return std::count_if(design.parts.lines.begin(), design.parts.lines.end(),
                           [](const PartLine& line) { return line.id == "remote-cells" && line.quantity == 1.0; });
    };
    CHECK(spare_of(RemotePower::cells) == 1);
    CHECK(spare_of(RemotePower::wired) == 0);
    CHECK(spare_of(std::nullopt) == 0);
  }
}
