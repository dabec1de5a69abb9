// A feeder typed piece by piece decides the checks of a design: the same circuit gives the same checks, and
// what any installer knows of cables and banks holds.

#include <doctest/doctest.h>

#include <cmath>
#include <cstdio>
#include <string>
#include <vector>

#include "calc/feeder_circuit.h"
#include "calc/typed_feeder.h"
#include "data/circuit_line.h"
#include "io/presets.h"
#include "support.h"
#include "trace_support.h"

using namespace thole;

namespace {

Design with_circuit(const Job& job, const std::string& text) {
  Job typed = job;
  typed.feeder.network = {text, Origin::given};
  return evaluate(typed, default_catalogue());
}
Design with_circuit(const std::string& text) { return with_circuit(ready_jobs().front().job, text); }

FeederParts parts_seen;
void seen(FeederInput in, const Catalogue& catalogue, Design& design, FeederParts& parts) {
  take_typed_circuit(std::move(in), catalogue, design, parts);
  parts_seen = parts;
}
// What the circuit is made of, as the stages after it are told.
FeederParts made_of(const std::string& text) {
  Job typed = ready_jobs().front().job;
  typed.feeder.network = {text, Origin::given};
  const Evaluation stages(typed, default_catalogue(), {}, Telling::no_steps, {.typed_circuit = seen});
  return parts_seen;
}

Design ready_design() { return evaluate(ready_jobs().front().job, default_catalogue()); }

std::string size(std::string conductor) {
  std::erase(conductor, ' ');
  return conductor;
}

std::string metres(double length_m) {
  char text[40];
  std::snprintf(text, sizeof text, "%.12fm:", length_m);
  return text;
}

// What the fields of a design mean, piece by piece.
std::string typed_as(const Design& design) {
  const FeederResult& feeder = design.feeder;
  const Feeder& job = design.job.feeder;
  const std::string run = size(feeder.conductor);
  const std::string tail = size(feeder.tail_conductor);
  const double near_m = job.device_distance_m.value;
  const std::string whole = metres(job.run_m.value) + run;
  const std::string shorter = metres(job.run_m.value - near_m) + run;
  const bool floats = job.floating.value;
  std::string text = "lug " + metres(near_m) + run + " lug device lug " + shorter;
  text += tail.empty() ? " plug motor plug "
                       : " lug [stud] lug " + metres(job.tail_m.value) + tail + " plug motor plug " +
                             metres(job.tail_m.value) + tail + " lug [back] lug ";
  text += floats ? shorter + " lug device lug " + metres(near_m) + run + " lug" : whole + " lug";
  return text;
}

const Issue* issue_of(const Design& design) {
  for (const Issue& issue : design.issues) {
    if (issue.field == "feeder.network") return &issue;
  }
  return nullptr;
}

}  // namespace

TEST_SUITE("property") {
  // Two devices, the way out twice 5 m of 4 AWG, 5 m back, 2 m of 6 AWG; 2 lugs more than without.
  TEST_CASE("what is typed is bought: cable by size, each device, each lug") {
    const std::string text = "lug device lug [a] lug 5m:4AWG lug [bow] 1m:6AWG plug motor plug 1m:6AWG [back] 5m:4AWG lug device lug; [a] lug 5m:4AWG lug [bow]";
    const Design design = with_circuit(text);
    if (issue_of(design) != nullptr) FAIL(issue_of(design)->message);
    const FeederParts parts = made_of(text);
    double of_four_m = 0.0, of_six_m = 0.0;
    for (const CableUse& use : parts.cables) {
      if (use.cable.conductor == "4 AWG") of_four_m += use.length_m;
      if (use.cable.conductor == "6 AWG") of_six_m += use.length_m;
    }
    const double jumpers_m = jumper_count(design.bank.series_count, design.bank.parallel_count) * design.job.feeder.jumper_m.value;
    const std::string own = ready_design().feeder.conductor;
    CHECK(of_four_m == rel(15.0 + (own == "4 AWG" ? jumpers_m : 0.0), 1e-12));
    CHECK(of_six_m == rel(2.0 + (own == "6 AWG" ? jumpers_m : 0.0), 1e-12));
    REQUIRE(parts.devices.size() == 1);
    CHECK(parts.devices.front().count == 2);
    CHECK(parts.way_m == rel(8.5, 1e-12));
    // Typed are 8 lugs; bare are the thinner cable at the bow and both at the way back.
    CHECK(parts.joint_count == 11 + 2 * jumper_count(design.bank.series_count, design.bank.parallel_count));
    const std::string single = "lug device lug [a] lug 5m:4AWG lug [bow] 1m:6AWG plug motor plug 1m:6AWG [back] 5m:4AWG lug device lug";
    const Design once = with_circuit(single);
    const int once_joint_count = made_of(single).joint_count;
    CHECK(once_joint_count == parts.joint_count - 2);
    double four_kg_per_m = 0.0;
    for (const CableOffer& offer : default_catalogue().cables)
      if (offer.conductor == "4 AWG" && offer.insulation_C == 105.0) four_kg_per_m = offer.mass_kg_per_m;
    REQUIRE(four_kg_per_m > 0.0);
    double small_kg = 0.0;  // two lugs, and what goes with 2.5 m of way
    for (const Sundry& sundry : default_catalogue().sundries) {
      const auto more = [&](double now, double before) { return std::ceil(sundry.count * now) - std::ceil(sundry.count * before); };
      if (sundry.per == Per::joint) small_kg += sundry.mass_kg * more(parts.joint_count, once_joint_count);
      if (sundry.per == Per::metre) small_kg += sundry.mass_kg * more(8.5, 6.0);
    }
    CHECK(design.parts.mass_kg - once.parts.mass_kg == rel(5.0 * four_kg_per_m + small_kg, 1e-6));
  }

  // By hand, of a circuit without jumpers of its own: ends at the posts, the device, the motor, studs.
  TEST_CASE("an end of a cable has a lug, typed or not, unless a plug is there or the cable goes on") {
    const auto lugs = [](const std::string& text) {
      const Design design = with_circuit(text);
      if (issue_of(design) != nullptr) FAIL(issue_of(design)->message);
      return made_of(text).joint_count - 2 * jumper_count(design.bank.series_count, design.bank.parallel_count);
    };
    CHECK(lugs("4m:2AWG motor 4m:2AWG") == 4);
    CHECK(lugs("lug 4m:2AWG lug motor lug 4m:2AWG lug") == 4);
    CHECK(lugs("lug 4m:2AWG plug motor plug 4m:2AWG lug") == 2);
    CHECK(lugs("1m:2AWG:50C 3m:2AWG plug motor plug 4m:2AWG") == 2);      // one cable, part of it in the heat
    CHECK(lugs("3m:2AWG 1m:6AWG plug motor plug 4m:2AWG") == 4);          // two cables on one stud
    CHECK(lugs("3m:2AWG stud 1m:2AWG plug motor plug 4m:2AWG") == 4);     // likewise: a stud is no lug
    CHECK(lugs("3m:2AWG plug 1m:2AWG plug motor plug 4m:2AWG") == 2);     // a cable on either side of the plug
    CHECK(lugs("1m:2AWG device 3m:2AWG plug motor plug 4m:2AWG") == 4);
    CHECK(lugs("2x 4m:4AWG [bow]; [bow] motor 4m:2AWG") == 6);            // side by side
  }

  TEST_CASE("devices are bought by their poles, each kind by itself; a switch is none unless it names one") {
    const auto count = [](const std::string& text, const std::string& id) {
      const Design design = with_circuit(text);
      if (issue_of(design) != nullptr) FAIL(issue_of(design)->message);
      double found = 0.0;
      for (const PartLine& line : design.parts.lines)
        if (line.id == id) found += line.quantity;
      return found;
    };
    const std::string two = "lug device:thermal-48v-80 lug 4m:2AWG motor 4m:2AWG lug device:thermal-48v-80 lug";
    CHECK(count(two, "thermal-48v-80") == 2.0);
    const std::string poles = "lug device:magnetic-80v-80-2p 4m:2AWG motor 4m:2AWG device:magnetic-80v-80-2p";
    CHECK(count(poles, "magnetic-80v-80-2p") == 1.0);
    const std::string unlike = "device:thermal-48v-80 4m:2AWG motor 4m:2AWG device:thermal-48v-100 switch";
    CHECK(count(unlike, "thermal-48v-80") == 1.0);
    CHECK(count(unlike, "thermal-48v-100") == 1.0);
    CHECK(made_of(unlike).devices.size() == 2);
    // Of two poles each; a stud block and a battery switch are in every job.
    CHECK(count(unlike, "plug") == 0.0);
    CHECK(count(unlike, "disconnect") == 1.0);
    CHECK(count(unlike, "bow-studs") == 1.0);
    const std::string more = "switch 3m:2AWG stud 1m:2AWG plug 1m:2AWG plug motor plug 1m:2AWG plug 1m:2AWG stud 3m:2AWG stud switch switch";
    CHECK(count(more, "plug") == 2.0);
    CHECK(count(more, "disconnect") == 2.0);
    CHECK(count(more, "bow-studs") == 2.0);
  }

  TEST_CASE("the fields' own feeder typed as a circuit gives the same checks") {
    int compared = 0;
    for (const ReadyJob& ready : ready_jobs()) {
      CAPTURE(ready.id);
      // One string: the stage has all jumpers as hot as the whole current makes the run, the circuit each by
      // its own share.
      Job job = ready.job;
      job.feeder.lug_ohm = {1e-4, Origin::given};
      const Design plain = evaluate(job, default_catalogue());
      if (!plain.feeder.found || plain.bank.parallel_count != 1) continue;
      const std::string text = typed_as(plain);
      CAPTURE(text);
      const Design typed = with_circuit(job, text);
      REQUIRE(issue_of(typed) == nullptr);
      REQUIRE_FALSE(typed.typed.leads.empty());
      ++compared;
      CHECK(typed.feeder.motor_V == rel(plain.feeder.motor_V, 1e-9));
      CHECK(typed.feeder.motor_full_V == rel(plain.feeder.motor_full_V, 1e-9));
      CHECK(typed.feeder.current_A == rel(plain.feeder.current_A, 1e-9));
      CHECK(typed.feeder.loss_W == rel(plain.feeder.loss_W, 1e-9));
      REQUIRE(typed.parts.lines.size() == plain.parts.lines.size());
      for (std::size_t i = 0; i < plain.parts.lines.size(); ++i) {
        CAPTURE(plain.parts.lines[i].id);
        CHECK(typed.parts.lines[i].id == plain.parts.lines[i].id);
        CHECK(typed.parts.lines[i].quantity == rel(plain.parts.lines[i].quantity, 1e-9));
      }
      CHECK(typed.parts.mass_kg == rel(plain.parts.mass_kg, 1e-9));
      CHECK(typed.parts.labour_h == rel(plain.parts.labour_h, 1e-9));
      CHECK(typed.parts.total_price == rel(plain.parts.total_price, 1e-9));
      CHECK(typed.trim.added_kg == rel(plain.trim.added_kg, 1e-9));
      for (const Check& check : plain.feeder.trace.checks) {
        CAPTURE(check.id);
        const Check* same = typed.find_check(check.id);
        // Run and tail are one check, of the conductor that is nearer to its limit; a tail lies by itself and
        // not in a bundle or an engine space, which a typed cable says of itself where it matters.
        if (check.id == "feeder.tail_ampacity" || check.id == "protection.tail_stands") continue;
        REQUIRE(same != nullptr);
        if (check.id == "feeder.ampacity" || check.id == "protection.run_stands") {
          const Check* tail =
              plain.find_check(check.id == "feeder.ampacity" ? "feeder.tail_ampacity" : "protection.tail_stands");
          const bool of_tail = tail != nullptr && tail->utilisation() > check.utilisation();
          // A short circuit in a cable begins behind its lug here, before it there.
          const double tolerance = check.id == "protection.run_stands" ? 0.03 : 1e-9;
          CHECK(same->utilisation() == rel((of_tail ? tail : &check)->utilisation(), tolerance));
          continue;
        }
        if (check.utilisation() == 0.0) {
          CHECK(same->utilisation() == 0.0);
        } else {
          CHECK(same->utilisation() == rel(check.utilisation(), 1e-9));
        }
      }
    }
    CHECK(compared >= 3);
  }

  TEST_CASE("half of every length loses half of the volts in the cable") {
    // Without joints; the motor takes a fixed current through the least warming: the volts follow to a share.
    const auto lost = [](const char* length) {
      const std::string cable = std::string(length) + ":2/0AWG";
      const Design design = with_circuit(cable + " device:0.001mohm motor " + cable);
      REQUIRE(issue_of(design) == nullptr);
      return design.feeder.drop_V / design.feeder.current_A;
    };
    // As ohm, for a controller draws a little less through the shorter one.
    CHECK(lost("3m") == rel(0.5 * lost("6m"), 2e-3));
    CHECK(lost("1.5m") == rel(0.25 * lost("6m"), 4e-3));
  }

  TEST_CASE("a further string never takes volts from a node") {
    const std::string feeder =
        "lug device 4m:4AWG [bow] 1m:6AWG motor 1m:6AWG [back] 4m:4AWG device lug; [bow] load:30W [back]; ";
    std::vector<FeederNode> before;
    double motor_before_V = 0.0;
    for (int strings = 1; strings <= 5; ++strings) {
      const Design design = with_circuit(feeder + std::to_string(strings) + "x [-] block jumper block [+]");
      REQUIRE_FALSE(design.typed.leads.empty());
      CHECK(design.feeder.motor_V >= motor_before_V);
      motor_before_V = design.feeder.motor_V;
      for (const FeederNode& node : design.feeder.nodes) {
        for (const FeederNode& old : before) {
          // The way back lies above the bank's minus by what it loses, and a steadier bank sends less.
          if (old.label == node.label && node.positive) CHECK(node.voltage_V >= old.voltage_V);
        }
      }
      before = design.feeder.nodes;
    }
  }

  TEST_CASE("the worst piece is named") {
    const Design design =
        with_circuit("lug device 4m:2AWG [bow] 2m:14AWG lug:3mohm motor 2m:2AWG [back] 4m:2AWG device lug");
    REQUIRE(issue_of(design) != nullptr);  // of what is not sold, and of nothing else
    CHECK(issue_of(design)->message == "No cable of 14 AWG is in this catalogue: price and weight go without it.");
    CHECK(design.typed.leads.size() > 0);
    CHECK(design.find_check("feeder.ampacity")->label.find("14 AWG 2 m") != std::string::npos);
    CHECK(design.find_check("feeder.ampacity")->verdict() == Verdict::fail);
    CHECK(design.find_check("feeder.drop")->label.find("14 AWG 2 m") != std::string::npos);
    CHECK(design.find_check("feeder.joint_heat")->label.find("Lug") != std::string::npos);
    CHECK(design.find_check("protection.run_stands")->label.find("14 AWG 2 m") != std::string::npos);
    CHECK(design.feeder.conductor_C > 100.0);
    CHECK(design.outcome.fit != Fit::fits);
    CHECK(design.find_step("protection.fault_far")->value == design.protection.faults.plug.least_A);
    CHECK(design.find_step("feeder.motor_V")->value == design.feeder.motor_V);
  }

  TEST_CASE("a thinner piece in the tail lowers the least short circuit, a longer way too") {
    const auto least_A = [](const std::string& text) { return with_circuit(text).protection.faults.plug.least_A; };
    const double usual_A = least_A("lug device 4m:4AWG motor 4m:4AWG device lug");
    CHECK(least_A("lug device 3m:4AWG 1m:10AWG motor 4m:4AWG device lug") < usual_A);
    CHECK(least_A("lug device 8m:4AWG motor 4m:4AWG device lug") < usual_A);
    CHECK(least_A("2x lug device 4m:4AWG [a]; [a] motor 4m:4AWG device lug") > usual_A);
  }

  TEST_CASE("other loads behind the device count in what it must hold; strings' own devices count together") {
    const std::string feeder = "lug device 4m:4AWG [bow] 1m:6AWG motor 1m:6AWG [back] 4m:4AWG device lug";
    const Design alone = with_circuit(feeder);
    const Design with_heater = with_circuit(feeder + "; [bow] 2m:10AWG load:20A [back]");
    const Check* one = alone.find_check("feeder.device_load");
    const Check* two = with_heater.find_check("feeder.device_load");
    REQUIRE(one != nullptr);
    REQUIRE(two != nullptr);
    CHECK(one->actual == two->actual);  // the same device
    CHECK(two->limit > one->limit + 20.0);
    test::check_formulas(with_heater.feeder.trace);
    test::check_formulas(alone.feeder.trace);
    const Design strings =
        with_circuit("lug 4m:4AWG motor 4m:4AWG lug; 2x [-] device block jumper block device [+]");
    REQUIRE(strings.find_check("feeder.device_load") != nullptr);
    CHECK(strings.find_check("feeder.device_load")->actual == rel(2.0 * one->actual, 1e-6));
    CHECK(strings.find_check("protection.poles")->verdict() != Verdict::fail);
  }

  TEST_CASE("a device in one pole only of a floating bank, far from it, or none at all") {
    const auto fails = [](const Design& design, std::string_view id) {
      const Check* check = design.find_check(id);
      REQUIRE_MESSAGE(check != nullptr, id);
      return check->verdict() == Verdict::fail;
    };
    CHECK(fails(with_circuit("lug device 4m:4AWG motor 4m:4AWG lug"), "protection.poles"));
    CHECK_FALSE(fails(with_circuit("lug device 4m:4AWG motor 4m:4AWG device lug"), "protection.poles"));
    CHECK(fails(with_circuit("lug 3m:4AWG device 1m:4AWG motor 4m:4AWG device lug"), "feeder.placement"));
    CHECK_FALSE(fails(with_circuit("lug 0.2m:4AWG device 4m:4AWG motor 4m:4AWG device lug"), "feeder.placement"));
    CHECK(fails(with_circuit("lug 4m:4AWG motor 4m:4AWG lug"), "feeder.device"));
    CHECK(fails(with_circuit("lug switch 4m:4AWG motor 4m:4AWG lug"), "feeder.device"));
  }

  TEST_CASE("bad circuits through evaluate: a sentence, and the fields' feeder goes on") {
    const Design plain = evaluate(ready_jobs().front().job, default_catalogue());
    const struct {
      std::string text;
      std::string said;
    } rows[] = {
        {"lug 5m:4AWG [bow] plug motor plug [back] 5m:4AWG lug; [bow] load:30W [nowhere]", "[nowhere]"},  // open
        {"lug 5m:4AWG motor 5m:4AWG lug; [+] lug [-]", "shorted"},
        {"lug device [a] 5m:4AWG [a] motor 5m:4AWG lug", "shorted"},  // a segment
        {"lug device 0m:4AWG motor 5m:4AWG lug", "longer than 0 m"},
        {"lug device 10001m:4AWG motor 5m:4AWG lug", "10 km long at most"},
        {"lug device 5m:4AWG motor 5m:4AWG lug; [-] block:-80Ah jumper block [+]", "more than 0 Ah"},
        {"lug device 5m:4AWG motor 5m:4AWG lug; [-] block:x201 [+]", "x200"},
        {"lug device:none-such 5m:4AWG motor 5m:4AWG lug", "none-such"},
        {"lug device motor lug", "A cable is missing"},
        {"lug device 5m:4AWG motor 5m:4AWG lug; [+] block jumper block [-]", "changed over"},
    };
    for (const auto& row : rows) {
      CAPTURE(row.text);
      const Design design = with_circuit(row.text);
      const Issue* issue = issue_of(design);
      REQUIRE(issue != nullptr);
      CAPTURE(issue->message);
      CHECK(issue->message.find(row.said) != std::string::npos);
      CHECK(design.typed.leads.empty());
      CHECK(design.feeder.motor_V == plain.feeder.motor_V);
      CHECK(design.feeder.trace.checks.size() == plain.feeder.trace.checks.size());
    }
  }

  TEST_CASE("more than the bank gives, and ten kilometres: the check fails and names what limits") {
    const Design weak =
        with_circuit("lug device 5m:4AWG motor 5m:4AWG device lug; [-] block:12V:500mohm jumper block:12V:1mohm [+]");
    REQUIRE_FALSE(weak.typed.leads.empty());
    const Check* power = weak.find_check("feeder.power_limit");
    REQUIRE(power != nullptr);
    CHECK(power->verdict() == Verdict::fail);
    CHECK(power->label.find("Block 1") != std::string::npos);
    CHECK(power->limit < power->actual);
    CHECK(weak.feeder.motor_V == rel(12.0, 1e-4));  // half of what the bank has at rest
    const Design far = with_circuit("lug device 4999m:4AWG motor 5000m:4AWG device lug");
    REQUIRE(issue_of(far) == nullptr);
    CHECK(far.find_check("feeder.power_limit")->label.find("4 AWG 5000 m") != std::string::npos);
    CHECK(far.find_check("feeder.power_limit")->verdict() == Verdict::fail);
    CHECK(far.outcome.fit != Fit::fits);
  }

  TEST_CASE("blocks that are not as many as the bank's are said") {
    const std::string feeder = "lug device 4m:4AWG motor 4m:4AWG device lug; ";
    REQUIRE(ready_design().bank.block_count == 6);
    CHECK(issue_of(with_circuit(feeder + "3x [-] block jumper block [+]")) == nullptr);
    const Design fewer = with_circuit(feeder + "2x [-] block jumper block [+]");
    REQUIRE(issue_of(fewer) != nullptr);
    CHECK(issue_of(fewer)->message == "4 blocks are typed, the bank has 6: price, weight and room are for those of the bank.");
  }

  TEST_CASE("two hundred blocks") {
    const Design design = with_circuit("lug device 4m:4AWG motor 4m:4AWG device lug; 100x [-] block jumper block [+]");
    REQUIRE_FALSE(design.typed.leads.empty());
    CHECK(design.protection.faults.posts.most_A > 50e3);
    CHECK(std::isfinite(design.feeder.motor_V));
  }
}
