// Circuits whose copper is as warm as its load, typed ones of every shape, and their picture.

#include <doctest/doctest.h>

#include <cmath>
#include <random>
#include <string>
#include <vector>

#include "calc/feeder_circuit.h"
#include "draw/apart.h"
#include "draw/circuit_plan.h"
#include "draw/layout.h"
#include "io/presets.h"
#include "support.h"

using namespace thole;

namespace {

Design typed(const std::string& text) {
  static const Design usual = evaluate(ready_jobs().front().job, default_catalogue());
  Design design = usual;
  design.job.feeder.network = {text, Origin::given};
  return design;
}

// Between `least` and `most`.
double some(std::mt19937& chance, double least, double most) {
  return least + (most - least) * static_cast<double>(chance() % 10000) / 9999.0;
}

std::string cable(std::mt19937& chance) {
  const char* sizes[] = {"8AWG", "6AWG", "4AWG", "2AWG", "1/0AWG", "16mm2", "25mm2"};
  return std::to_string(some(chance, 0.2, 6.0)) + "m:" + sizes[chance() % 7];
}

// A way out with a node after each piece, branches across and beside, strings that differ.
std::string random_circuit(unsigned seed) {
  std::mt19937 chance(seed);
  const int count = 1 + static_cast<int>(chance() % 5);
  std::string out = "lug device";
  std::string back;
  std::string beside;
  for (int k = 0; k < count; ++k) {
    const std::string plus = "[p" + std::to_string(k) + "]";
    const std::string minus = "[m" + std::to_string(k) + "]";
    out += " " + cable(chance) + " " + plus;
    back = " " + minus + " " + cable(chance) + " lug" + back;
    beside += "; " + plus + " lug load:" + std::to_string(5 + chance() % 40) + "W " + minus;
    if (k > 0 && chance() % 2 == 0) beside += "; [p0] " + cable(chance) + " stud " + plus;
    if (k > 0 && chance() % 2 == 0) beside += "; " + minus + " " + cable(chance) + " [-]";
  }
  std::string text = out + " plug motor plug" + back + beside;
  const int strings = static_cast<int>(chance() % 5);
  for (int k = 0; k < strings; ++k) {
    text += "; [-] block:" + std::to_string(60 + chance() % 40) + "% jumper block:" + std::to_string(60 + chance() % 60) + "Ah [+]";
  }
  return text;
}

double taken_W(const NetworkSolution& s) {
  double sum_W = 0.0;
  for (std::size_t k = 0; k < s.load_V.size(); ++k) sum_W += s.load_V[k] * s.load_A[k];
  return sum_W;
}

double lost_W(const NetworkSolution& s) {
  double sum_W = 0.0;
  for (const double loss_W : s.branch_W) sum_W += loss_W;
  return sum_W;
}

// Of 14 px text, wider than any face in use sets it.
double wide(const std::string& text) {
  double width = 0.0;
  for (const char c : text) width += (static_cast<unsigned char>(c) & 0xC0u) == 0x80u ? 0.0 : 8.0;
  return width;
}

bool overlap(const TextBox& a, const TextBox& b) {
  return std::abs(a.centre.x - b.centre.x) < 0.5 * (a.size.width + b.size.width) - 1e-6 &&
         std::abs(a.centre.y - b.centre.y) < 0.5 * 0.8 * (a.size.height + b.size.height) - 1e-6;
}

void check_labels(const Drawing& drawing, double width, double text_scale) {
  const Size sheet{width, text_scale * drawing.high.y + 24.0};
  const Frame frame(drawing, sheet);
  std::vector<TextBox> boxes;
  for (const Label& label : drawing.labels) {
    TextBox box{frame.at(label.at), {text_scale * wide(label.text), text_scale * 20.0}};
    if (label.align == Align::left) box.centre.x += 0.5 * box.size.width;
    boxes.push_back(box);
  }
  keep_apart(boxes, sheet);
  for (std::size_t a = 0; a < boxes.size(); ++a) {
    for (std::size_t b = 0; b < a; ++b) {
      CAPTURE(drawing.labels[a].text);
      CAPTURE(drawing.labels[b].text);
      CHECK_FALSE(overlap(boxes[a], boxes[b]));
    }
  }
}

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("typed circuits of any shape: solved, at rest, what goes in comes out or is lost") {
    for (unsigned seed = 1; seed <= 120; ++seed) {
      const std::string text = random_circuit(seed);
      CAPTURE(text);
      const Design design = typed(text);
      const FeederCircuit circuit = feeder_circuit(design, default_catalogue());
      REQUIRE(circuit.typed);
      CAPTURE(circuit.solution.message);
      REQUIRE(circuit.solution.solved);
      CHECK(circuit.rests);
      CHECK(circuit.pass_count < 60);
      CHECK(circuit.solution.source_W == rel(taken_W(circuit.solution) + lost_W(circuit.solution), 1e-9));
      // The temperatures are those of the currents, the resistances those of the temperatures.
      for (std::size_t k = 0; k < circuit.copper.size(); ++k) {
        if (!(circuit.copper[k].cold_ohm > 0.0)) continue;
        CableLoad load = circuit.copper[k].load;
        load.current_A = std::abs(circuit.solution.branch_A[k]);
        CHECK(near(circuit.temperature_C[k], conductor_temperature_C(load), 1e-8));
        CHECK(circuit.network.branches[k].resistance_ohm ==
              rel(circuit.copper[k].fixed_ohm + resistance_at(circuit.copper[k].cold_ohm, circuit.temperature_C[k]), 1e-12));
        CHECK(circuit.temperature_C[k] >= load.ambient_C);
      }
    }
  }

  TEST_CASE("no two labels of a circuit's picture overlap, on any sheet, whatever the shape") {
    for (unsigned seed = 1; seed <= 120; ++seed) {
      const FeederCircuit circuit = feeder_circuit(typed(random_circuit(seed)), default_catalogue());
      const Drawing drawing = circuit_plan_picture(circuit, System::metric);
      CAPTURE(seed);
      REQUIRE(drawing.labels.size() > circuit.network.loads.size());
      check_labels(drawing, 412.0, 1.0);
      check_labels(drawing, 320.0, 1.0);
      check_labels(drawing, 380.0, 1.4);
      check_labels(drawing, 900.0, 1.0);
    }
    for (const char* text : {"lug device 5m:4AWG motor 5m:4AWG; 50x [-] block:x4 [+]", "lug motor; 190x [+] lug [a]; [a] lug load:3W [-]",
                             "motor; [-] block:x60:1V:1mohm [+]", "motor; [-] block [m] block [+]; [m] load:20W [-]; [-] block:50% [m]"}) {
      CAPTURE(text);
      const FeederCircuit circuit = feeder_circuit(typed(text), default_catalogue(), {.law = MotorLaw::resistance});
      CAPTURE(circuit.solution.message);
      REQUIRE(circuit.solution.solved);
      const Drawing drawing = circuit_plan_picture(circuit, System::metric);
      check_labels(drawing, 412.0, 1.0);
      CHECK(drawing.labels.size() < 150);
    }
  }

  TEST_CASE("the picture says which piece loses most, and every stroke lies on the sheet") {
    for (const ReadyJob& ready : ready_jobs()) {
      CAPTURE(ready.id);
      const FeederCircuit circuit = feeder_circuit(evaluate(ready.job, default_catalogue()), default_catalogue());
      const Drawing drawing = circuit_plan_picture(circuit, System::us);
      const std::size_t worst = branches_by_loss(circuit.solution).front();
      CHECK(drawing.description.find(circuit.network.branches[worst].label) != std::string::npos);
      int marked = 0;
      for (const Label& label : drawing.labels) marked += label.text.find(", worst") != std::string::npos ? 1 : 0;
      CHECK(marked == 1);
      for (const Shape& shape : drawing.shapes) {
        for (const Point& point : shape.points) {
          CHECK(point.x >= 0.0);
          CHECK(point.x <= drawing.high.x);
          CHECK(point.y >= 0.0);
          CHECK(point.y <= drawing.high.y);
        }
      }
    }
  }

  TEST_CASE("half of every length, half the cable's drop at the same current and temperature") {
    const auto drop_V = [](const std::string& text) {
      const FeederCircuit circuit = feeder_circuit(typed(text), default_catalogue(), {.law = MotorLaw::current});
      REQUIRE(circuit.solution.solved);
      double sum_V = 0.0;
      for (std::size_t k = 0; k < circuit.kinds.size(); ++k) {
        if (circuit.kinds[k] == PieceKind::cable) {
          sum_V += std::abs(circuit.solution.branch_A[k]) * circuit.network.branches[k].resistance_ohm;
        }
      }
      return sum_V;
    };
    CHECK(drop_V("lug device 8m:4AWG 2m:6AWG motor 2m:6AWG 8m:4AWG lug") ==
          rel(2.0 * drop_V("lug device 4m:4AWG 1m:6AWG motor 1m:6AWG 4m:4AWG lug"), 1e-9));
  }

  TEST_CASE("a like string more never lowers a node of the feeder's plus") {
    const std::string feeder = "lug device 5m:4AWG [bow] motor 5m:4AWG lug";
    double before_V = 0.0;
    for (int strings = 1; strings <= 6; ++strings) {
      const std::string text = feeder + "; " + std::to_string(strings) + "x [-] block jumper block [+]";
      const FeederCircuit circuit = feeder_circuit(typed(text), default_catalogue());
      REQUIRE(circuit.solution.solved);
      CHECK(circuit.solution.node_V[1] > before_V);
      CHECK(circuit.solution.load_V.front() < circuit.solution.node_V[1]);
      before_V = circuit.solution.node_V[1];
    }
  }

  TEST_CASE("hotter air, a fuller bundle or more current: warmer copper") {
    const auto temperature_C = [](const std::string& piece) {
      const FeederCircuit circuit = feeder_circuit(typed("lug " + piece + " motor lug"), default_catalogue());
      REQUIRE(circuit.solution.solved);
      for (std::size_t k = 0; k < circuit.kinds.size(); ++k) {
        if (circuit.kinds[k] == PieceKind::cable) return circuit.temperature_C[k];
      }
      return 0.0;
    };
    CHECK(temperature_C("3m:6AWG:45C") > temperature_C("3m:6AWG:30C"));
    CHECK(temperature_C("3m:6AWG:6wires") > temperature_C("3m:6AWG:2wires"));
    CHECK(temperature_C("3m:8AWG") > temperature_C("3m:6AWG"));
  }
}
