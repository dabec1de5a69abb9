// Blocks named one by one: read, refused, and put to the day.

#include <doctest/doctest.h>

#include <string>

#include "calc/bank/capacity.h"
#include "calc/bank_day_study.h"
#include "calc/fitted_bank.h"
#include "data/fitted_blocks.h"
#include "io/power_day_text.h"
#include "io/presets.h"
#include "support.h"

using namespace thole;

namespace {

Design with_blocks(const std::string& fitted, Chemistry chemistry = Chemistry::agm) {
  Job job;
  job.bank.chemistry = {chemistry, Origin::given};
  job.hold.thrust_N = {240.0, Origin::given};
  job.hold.nominal_V = {24.0, Origin::given};
  job.hold.day = {"2h@8kn 1h@10kn 0.5h@50%", Origin::given};
  if (!fitted.empty()) job.bank.fitted = {fitted, Origin::given};
  return evaluate(job, default_catalogue());
}

BankDay day_of(const Design& design) { return bank_day(design, bank_day_input(design)); }

bool warns(const Design& design, std::string_view id) {
  for (const Caution& caution : design.bank.trace.cautions) {
    if (caution.id == id) return true;
  }
  return false;
}

}  // namespace

TEST_SUITE("derived") {
  TEST_CASE("blocks are read in the order of wiring, with what is said of each") {
    const FittedRead read = read_fitted("100Ah 2y, 100 Ah 2 y AGM 12V,80ah 5yr 4.5mohm 90%");
    REQUIRE(read.message.empty());
    REQUIRE(read.strings.size() == 1);
    const std::vector<SaidBlock>& blocks = read.strings.front();
    REQUIRE(blocks.size() == 3);
    CHECK(blocks[0].capacity_Ah == 100.0);
    CHECK(blocks[0].age_years_count == 2.0);
    CHECK_FALSE(blocks[0].chemistry.has_value());
    CHECK(blocks[1].chemistry == Chemistry::agm);
    CHECK(blocks[1].nominal_V == 12.0);
    CHECK(blocks[2].age_years_count == 5.0);
    CHECK(*blocks[2].resistance_ohm == rel(0.0045, 1e-12));
    CHECK(*blocks[2].charge_frac == rel(0.9, 1e-12));
    CHECK(read_fitted("100Ah lifepo4 / 50Ah lfp").strings.size() == 2);
  }

  TEST_CASE("what cannot be is refused with a sentence, and the design goes on without it") {
    std::string many = "100Ah";
    for (int i = 0; i < 199; ++i) many += ", 100Ah";
    std::string long_string = "6Ah";
    for (int i = 0; i < 8; ++i) long_string += ", 6Ah";
    long_string += " / 6Ah";
    for (const std::string& text :
         {std::string(), std::string(" "), std::string("100"), std::string("-100Ah"), std::string("0Ah"),
          std::string("9000Ah"), std::string("nanAh"), std::string("2y"), std::string("100Ah -1y"),
          std::string("100Ah 40y"), std::string("100Ah 120%"), std::string("100Ah 900V"),
          std::string("100Ah,"), std::string(",100Ah"), std::string("100Ah//100Ah"),
          std::string("100Ah lead"), std::string("100Ah 12,8V"), std::string("100Ah 1e3mohm"),
          std::string("1.2.3Ah"), many, long_string}) {
      CAPTURE(text);
      const FittedRead read = read_fitted(text);
      CHECK(read.message.ends_with("."));
      CHECK(read.strings.empty());
    }
    const Design design = with_blocks("100Ah, 80Bh");
    bool named = false;
    for (const Issue& issue : design.issues) named = named || issue.field == "bank.fitted";
    CHECK(named);
    CHECK(design.bank.capacity_Ah == with_blocks("").bank.capacity_Ah);
  }

  TEST_CASE("a string goes on until its volts are the motor's; a stroke or a count says otherwise") {
    const FittedRead four = read_fitted("100Ah, 100Ah, 80Ah, 80Ah");
    CHECK(strings_of(four, 0, 24.0, 12.0).size() == 2);
    CHECK(strings_of(four, 0, 48.0, 12.0).size() == 1);
    CHECK(strings_of(four, 1, 24.0, 12.0).size() == 4);
    CHECK(strings_of(four, 0, 24.0, 6.0).size() == 1);
    CHECK(strings_of(read_fitted("100Ah / 100Ah, 100Ah"), 0, 24.0, 12.0)[1].size() == 2);
    // Mixed volts: 12 + 6 + 6 V make the first 24 V string.
    CHECK(strings_of(read_fitted("100Ah 12V, 100Ah 6V, 100Ah 6V, 100Ah 12V"), 0, 24.0, 12.0)
              .front().size() == 3);
  }

  TEST_CASE("a block at the end of its years is down to IEEE 485's 80 %, 1/1.25 [common practice, years]") {
    CHECK(age_factor_after(Chemistry::agm, 8.0) == rel(1.25, 1e-12));
    CHECK(age_factor_after(Chemistry::flooded, 6.0) == rel(1.25, 1e-12));
    CHECK(age_factor_after(Chemistry::lifepo4, 12.0) == rel(1.25, 1e-12));
    CHECK(age_factor_after(Chemistry::agm, 0.0) == 1.0);
    CHECK(age_factor_after(Chemistry::agm, 1000.0) == rel(5.0, 1e-12));  // never below a fifth
    for (double years = 0.0; years < 40.0; years += 1.0) {
      CHECK(age_factor_after(Chemistry::gel, years + 1.0) >= age_factor_after(Chemistry::gel, years));
    }
  }

  TEST_CASE("the page's figures take the weakest block, the weight all of them") {
    const Design design = with_blocks("100Ah 2y, 80Ah 5y");
    CHECK(design.bank.capacity_Ah == 80.0);
    CHECK(design.bank.block_count == 2);
    CHECK(design.bank.series_count == 2);
    CHECK(design.bank.strings.front().blocks[0].block.capacity_Ah == 100.0);
    CHECK(design.bank.mass_kg == rel(with_blocks("90Ah 2y, 90Ah 2y").bank.mass_kg, 0.15));
    CHECK(warns(design, "bank.mixed_capacity"));
    CHECK(warns(design, "bank.mixed_age"));
    CHECK_FALSE(warns(with_blocks("100Ah 2y, 100Ah 2y"), "bank.mixed_age"));
    CHECK(warns(with_blocks("100Ah, 100Ah lifepo4"), "bank.mixed_chemistry"));
    CHECK(warns(with_blocks("100Ah 12V, 100Ah 6V, 100Ah 6V"), "bank.mixed_volts"));
  }

  TEST_CASE("the day says which block ends it and what the weak one costs") {
    const Design weak = with_blocks("100Ah 2y, 60Ah 7y");
    const BankDay day = day_of(weak);
    REQUIRE(day.possible);
    CHECK(day.unlike);
    CHECK(day.weakest.block == 1);
    CHECK(day.day.after.cut_off_block.block == 1);
    CHECK(day.other_h > day.hours_h);
    CHECK(weak_cost_h(day) == rel(day.other_h - day.hours_h, 1e-12));
    const BankDay alike = day_of(with_blocks("100Ah 2y, 100Ah 2y"));
    CHECK(alike.hours_h > day.hours_h);
    CHECK(weak_cost_h(alike) == 0.0);
    const std::string text = power_day_text(day, weak, System::metric);
    CHECK(text.find("block 2") != std::string::npos);
    CHECK(text.find("Years until") != std::string::npos);
    CHECK(text.find("60 Ah") != std::string::npos);
  }

  TEST_CASE("without named blocks the study says what one weak block would cost") {
    const BankDay day = day_of(with_blocks(""));
    REQUIRE(day.possible);
    CHECK_FALSE(day.unlike);
    CHECK(day.other_h < day.hours_h);
    CHECK(weak_cost_h(day) > 0.0);
    REQUIRE(day.winds.size() == kRuntimeWinds);
    for (std::size_t i = 1; i < day.winds.size(); ++i) {
      CHECK(day.winds[i].time_h <= day.winds[i - 1].time_h);  // more wind, fewer hours
    }
    CHECK(day.day.run.rest_Wh == rel(day.day.run.load_Wh + day.day.run.feeder_loss_Wh +
                                         day.day.run.block_loss_Wh, 1e-9));
  }

  TEST_CASE("a study in slices is the study at once; nothing to run is said") {
    const Design design = with_blocks("100Ah 2y, 80Ah 5y");
    const BankDay whole = day_of(design);
    BankDayStudy study(design, bank_day_input(design));
    int slices = 0;
    double done_frac = 0.0;
    while (study.step()) {
      ++slices;
      CHECK(study.done_frac() >= done_frac);
      done_frac = study.done_frac();
    }
    CHECK(slices > 5);
    CHECK(study.result().hours_h == whole.hours_h);
    Design nothing = design;
    nothing.bank.strings.clear();
    CHECK_FALSE(day_of(nothing).possible);
  }

  TEST_CASE("days out bound the years, the calendar too [calendar: common practice]") {
    Job job;
    const auto years = [&](int days) {
      job.bank.days_out_count = {days, Origin::given};
      return evaluate(job, default_catalogue()).bank.years_count;
    };
    CHECK(years(1) == rel(8.0, 1e-12));
    CHECK(years(365) < years(40) + 1e-12);
    const Design design = evaluate(Job{}, default_catalogue());
    CHECK(design.job.bank.days_out_count.value == 40);
    const Step* step = design.find_step("bank.years");
    REQUIRE(step != nullptr);
    CHECK(step->value == design.bank.years_count);
    CHECK_FALSE(step->source->confirmed);
  }

  TEST_CASE("lithium's disconnect is checked, lead-acid has none; a cold one is warned of") {
    const Design lithium = with_blocks("", Chemistry::lifepo4);
    REQUIRE(lithium.find_check("bank.disconnect") != nullptr);
    CHECK(lithium.find_check("bank.disconnect")->limit >= 10.0 - 1e-9);
    CHECK(with_blocks("").find_check("bank.disconnect") == nullptr);
    Job job = lithium.job;
    job.locker.coldest_C = {-5.0, Origin::given};
    const Design cold = evaluate(job, default_catalogue());
    bool said = false;
    for (const Caution& caution : day_of(cold).trace.cautions) said = said || caution.id == "bank_day.too_cold";
    CHECK(said);
  }
}
