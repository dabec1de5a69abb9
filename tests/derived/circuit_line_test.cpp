// A feeder typed piece by piece: read, refused with a sentence, put in place of the usual circuit.

#include <doctest/doctest.h>

#include <string>

#include "base/units.h"
#include "calc/feeder_circuit.h"
#include "data/circuit_line.h"
#include "io/job_json.h"
#include "io/presets.h"
#include "support.h"

using namespace thole;

namespace {

Design typed(const std::string& text) {
  Job job = ready_jobs().front().job;
  if (!text.empty()) job.feeder.network = {text, Origin::given};
  return evaluate(job, default_catalogue());
}

FeederCircuit circuit_of(const std::string& text, MotorLaw law = MotorLaw::power) {
  return feeder_circuit(typed(text), default_catalogue(), {.law = law});
}

const NetworkBranch& branch_of(const FeederCircuit& circuit, std::string_view label) {
  for (const NetworkBranch& branch : circuit.network.branches) {
    if (branch.label == label) return branch;
  }
  FAIL("no such piece");
  return circuit.network.branches.front();
}

}  // namespace

TEST_SUITE("derived") {
  TEST_CASE("a typed circuit: pieces, nodes, ways side by side") {
    const CircuitRead read = read_circuit(
        "lug device:0.8mohm 16.4ft:1/0AWG:45C:4wires [bow] plug motor plug [back] 5m:25mm2 lug;\n"
        "2x [-] block:x2:80%:90Ah [+]; [bow] load:30W [back]");
    CAPTURE(read.message);
    REQUIRE(read.message.empty());
    CHECK(read.has_blocks);
    REQUIRE(read.pieces.size() == 8 + 6 + 1);
    CHECK(read.pieces[1].resistance_ohm == 0.8e-3);
    CHECK(read.pieces[2].conductor == "1/0 AWG");
    CHECK(read.pieces[2].length_m == rel(16.4 * 0.3048, 1e-12));
    CHECK(read.pieces[2].ambient_C == 45.0);
    CHECK(read.pieces[2].bundled_count == 4);
    CHECK(read.nodes[static_cast<std::size_t>(read.pieces[2].to)] == "bow");
    CHECK(read.pieces[4].motor);
    CHECK(read.pieces[7].to == 0);
    CHECK(read.pieces[8].from == 0);
    CHECK(read.pieces[8].charge_frac == rel(0.8, 1e-12));
    CHECK(read.pieces[9].kind == PieceKind::jumper);
    CHECK(read.pieces[10].to == 1);
    CHECK(read.pieces[14].power_W == 30.0);
    CHECK(read.pieces[0].label == "Lug 1");
    CHECK(read.pieces[7].label == "Lug 2");
  }

  TEST_CASE("the usual circuit typed by hand is the usual circuit") {
    // What the first ready-made job has: see thole feeder on it.
    const Design usual = typed("");
    const FeederCircuit a = feeder_circuit(usual, default_catalogue());
    const FeederResult& feeder = usual.feeder;
    const auto size = [](std::string conductor) {
      std::erase(conductor, ' ');
      return conductor;
    };
    const auto metres = [](double length_m) { return std::to_string(length_m) + "m:"; };
    const std::string run = size(feeder.conductor);
    const std::string tail = size(feeder.tail_conductor);
    const Feeder& job = usual.job.feeder;
    const double near_m = job.device_distance_m.value;
    const std::string protection = "lug " + metres(near_m) + run + " lug device ";
    const std::string whole = protection + metres(job.run_m.value - near_m) + run + " lug lug lug " + metres(job.tail_m.value) + tail +
                              " plug motor plug " + metres(job.tail_m.value) + tail + " lug lug lug " +
                              metres(job.run_m.value - near_m) + run + " device lug " + metres(near_m) + run + " lug";
    const FeederCircuit b = circuit_of(whole);
    CAPTURE(whole);
    REQUIRE(a.solution.solved);
    REQUIRE(b.solution.solved);
    CHECK(b.typed);
    CHECK_FALSE(a.typed);
    // The same copper and, within a lug on each side, the same joints.
    CHECK(near(b.solution.load_V.front(), a.solution.load_V.front(), 4.0 * job.lug_ohm.value * a.solution.load_A.front()));
    CHECK(b.rests);
  }

  TEST_CASE("each piece has its own: volts, state, milliohms, device of the catalogue") {
    const std::string bank = "; [-] block:12.4V:14mohm jumper:0.5mohm block:80% [+]; [-] block jumper block:40Ah [+]";
    const FeederCircuit circuit = circuit_of("lug device:thermal-48v-60 5m:4AWG motor 5m:4AWG lug:0.3mohm" + bank);
    REQUIRE(circuit.solution.solved);
    CHECK(branch_of(circuit, "Block 1").open_circuit_V == 12.4);
    CHECK(branch_of(circuit, "Block 1").resistance_ohm == rel(0.014, 1e-12));
    CHECK(branch_of(circuit, "Jumper 1").resistance_ohm == rel(0.5e-3, 1e-12));
    CHECK(branch_of(circuit, "Device").resistance_ohm == rel(0.83e-3, 1e-12));  // presets/catalogue.json
    CHECK(branch_of(circuit, "Lug 2").resistance_ohm == rel(0.3e-3, 1e-12));
    CHECK(branch_of(circuit, "Block 2").open_circuit_V > branch_of(circuit, "Block 3").open_circuit_V);  // fuller than at the end
    CHECK(branch_of(circuit, "Block 4").resistance_ohm > branch_of(circuit, "Block 3").resistance_ohm);  // smaller
  }

  TEST_CASE("what cannot be is refused by a sentence that names the piece") {
    const struct {
      std::string text;
      std::string said;
    } rows[] = {
        {"lug 0m:4AWG motor", "longer than 0 m"},
        {"lug -3m:4AWG motor", "longer than 0 m"},
        {"lug 6000m:4AWG motor 6000m:4AWG", "10 km long at most"},
        {"11000m:4AWG motor", "10 km long at most"},
        {"5m:5AWG motor", "14AWG to 4/0AWG"},
        {"4AWG motor", "its length is missing"},
        {"5m:4AWG:3furlongs motor", "write 5m:4AWG"},
        {"5m:4AWG:200C motor", "-40 to 90 C"},
        {"5m:4AWG:2.5wires motor", "1 to 60 wires"},
        {"lug:0mohm motor", "0.001 mohm to 1000 ohm"},
        {"lug:-1mohm motor", "0.001 mohm to 1000 ohm"},
        {"lug:1e3mohm motor", "write lug"},
        {"splice motor", "\"splice\": this is no piece"},
        {"lug 2x motor", "stands before a whole way"},
        {"lug", "The motor is missing"},
        {"", "The motor is missing"},
        {"motor motor", "one motor"},
        {"motor:5W lug", "nothing of its own"},
        {"motor; [-] block:-80Ah [+]", "more than 0 Ah"},
        {"motor; [-] block:120% [+]", "0 to 100 %"},
        {"motor; [-] block:0V [+]", "more than 0 V"},
        {"motor; [-] block:x201 [+]", "x1 to x200"},
        {"motor; 51x [-] block:x4 [+]", "200 blocks at most"},
        {"motor; 200x [-] block:x200 [+]", "500 nodes"},
        {"lug motor lug; lug [-]", "The bank is shorted"},
        {"[a] motor [b]; [a] lug [b]", "shorted"},
        {"lug motor [a] lug; [-] block [c] lug [+]; [-] lug [c]", "shorted"},
        {"[bow] lug [bow] motor", "leads back to it and is shorted"},
        {"lug [bow] motor; [bow] lug [end]", "[end] is named once and the circuit is open there"},
        {"[bow] motor", "[bow] is named once"},
        {"[a] motor [b]; [a] load:3W [b]; [-] block [+]", "the circuit is open there"},
        {"lug [] motor", "named in brackets"},
        {"lug [bow motor", "named in brackets"},
        {"lug [much-too-long-a-name] motor", "named in brackets"},
        {"[a] [b] motor", "no piece lies before it"},
        {"motor; load:0W", "more than 0"},
        {"motor; load", "write load:30W"},
        {"motor; 2x", "A way has a piece"},
        {"motor; [a]", "A way has a piece"},
    };
    for (const auto& row : rows) {
      const CircuitRead read = read_circuit(row.text);
      CAPTURE(row.text);
      CAPTURE(read.message);
      CHECK(read.message.find(row.said) != std::string::npos);
      CHECK((read.message.empty() || read.message.back() == '.'));
      CHECK(read.pieces.empty());
    }
    for (const char* text : {"\xff\xfe", ";;;", "[[[", ":::", "::m", "x", "[+]", "[-] [+]", "1x 1x motor", "5m:AWG motor", "\t\n"}) {
      CAPTURE(text);
      CHECK_FALSE(read_circuit(text).message.empty());
    }
  }

  TEST_CASE("an unreadable circuit is an issue of its field, and the usual one stands in") {
    const Design design = typed("lug 0m:4AWG motor");
    bool named = false;
    for (const Issue& issue : design.issues) named = named || issue.field == "feeder.network";
    CHECK(named);
    CHECK_FALSE(feeder_circuit(design, default_catalogue()).typed);
    const FeederCircuit missing = circuit_of("device:none-such motor");
    CHECK_FALSE(missing.solution.solved);
    CHECK(missing.solution.message.find("none-such") != std::string::npos);
  }

  TEST_CASE("more than the bank gives: the part that limits is named") {
    const FeederCircuit thin = circuit_of("lug 900m:10AWG motor 100m:10AWG lug");
    REQUIRE_FALSE(thin.solution.solved);
    CHECK(thin.solution.message.find("\"10 AWG 900 m\" limits it most") != std::string::npos);
    const FeederCircuit weak = circuit_of("lug motor lug; [-] block:12V:500mohm [+]");
    REQUIRE_FALSE(weak.solution.solved);
    CHECK(weak.solution.message.find("\"Block\" limits it most") != std::string::npos);
    const FeederCircuit reversed = circuit_of("lug motor lug; [+] block jumper block [-]");
    REQUIRE_FALSE(reversed.solution.solved);
    CHECK(reversed.solution.message.find("poles are changed over") != std::string::npos);
  }

  TEST_CASE("the three laws of a motor, and the motor's law of the job") {
    const std::string text = "lug device 5m:4AWG motor 5m:4AWG lug; [-] block:11.5V jumper block:11.5V [+]";
    const FeederCircuit power = circuit_of(text, MotorLaw::power);
    const FeederCircuit current = circuit_of(text, MotorLaw::current);
    const FeederCircuit ohm = circuit_of(text, MotorLaw::resistance);
    // At less than its nominal volts a controller takes more, a resistance less.
    const Design design = typed(text);
    REQUIRE(power.solution.load_V.front() < design.bank.nominal_V);
    CHECK(power.solution.load_A.front() > current.solution.load_A.front());
    CHECK(current.solution.load_A.front() > ohm.solution.load_A.front());
    CHECK(design.job.feeder.motor_law.value == MotorLaw::power);
    CHECK(design.job.feeder.motor_law.origin == Origin::estimated);
    Job job = design.job;
    job.feeder.motor_law = {MotorLaw::resistance, Origin::given};
    const Design asked = evaluate(job, default_catalogue());
    CHECK(feeder_circuit(asked, default_catalogue()).network.loads.front().resistance_ohm > 0.0);
  }

  TEST_CASE("at rest next to nothing flows, full thrust from a full bank has more volts than the day's end") {
    const Design design = typed("");
    const auto volts = [&](CircuitMoment moment) {
      const FeederCircuit circuit = feeder_circuit(design, default_catalogue(), {.moment = moment});
      REQUIRE(circuit.solution.solved);
      return circuit.solution.load_V.front();
    };
    const double rest_V = volts(CircuitMoment::at_rest);
    const double full_V = volts(CircuitMoment::full_thrust);
    const double end_V = volts(CircuitMoment::end_of_day);
    CHECK(rest_V == rel(design.bank.open_circuit_full_V, 1e-3));
    // The stage's jumpers are as hot as the whole current would make them; here each is by its own.
    CHECK(full_V == rel(design.feeder.motor_full_V, 1e-3));
    CHECK(full_V > end_V);
  }
}
