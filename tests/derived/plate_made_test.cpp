// The plate as it is made: its shape from the job, stiffeners, the stock chosen, the deck found by a flex test.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <string>

#include "calc/plate/outline.h"
#include "calc/plate_choice.h"
#include "calc/plate_flex.h"
#include "draw/pictures.h"
#include "io/presets.h"
#include "job/fields.h"
#include "support.h"
#include "trace_support.h"

using namespace thole;

namespace {

Job plate_job() {
  for (const ReadyJob& ready : ready_jobs())
    if (ready.id == "walkaround-in-sheltered-water") return ready.job;
  return {};
}
PlateStudy study_of(const Job& job) { return plate_study(evaluate(job, default_catalogue())); }

// A beam 600 mm long and 60 mm wide on four stiff bolts that hold both ways, 500 N at its middle.
PlateModel beam(std::vector<PlateBar> bars) {
  PlateModel model{.shape = {.outline = rectangle_outline(0.64, 0.06, 0.0), .thickness_m = 0.006},
                   .wish = {.size_m = 0.012},
                   .material = {.modulus_Pa = 70e9, .poisson_ratio = 0.0, .density_kg_per_m3 = 2700.0},
                   .support = {.bolt_N_per_m = 1e11, .bolts_both_ways = true},
                   .bars = std::move(bars),
                   .cases = {{"middle", {{.foot = {.middle = {0.32, 0.0}}, .force_N = -500.0}}}},
                   .thin = true};
  for (const double x_m : {0.02, 0.62})
    for (const double y_m : {0.02, -0.02}) model.shape.bolts.push_back({.at = {x_m, y_m}, .diameter_m = 0.006});
  return model;
}

}  // namespace

// Simply supported beam, P L^3 / (48 E I), I of plate and bar about their common axis by the theorem of
// parallel axes (Gere and Goodno, Mechanics of Materials, composite sections; common practice).
TEST_CASE("plate and stiffener bend as the composite beam they are") {
  const PlateBar bar{.y_m = 0.0, .from_x_m = 0.0, .to_x_m = 0.64, .height_m = 0.030, .thickness_m = 0.006, .effective_width_m = 0.06};
  const PlateSolution stiff = solve_plate(beam({bar}));
  REQUIRE_MESSAGE(stiff.solved, stiff.problem);
  const double plate_m2 = 0.06 * 0.006, bar_m2 = 0.030 * 0.006;
  const double axis_m = bar_m2 * 0.018 / (plate_m2 + bar_m2);  // above mid-plane
  const double inertia_m4 = 0.06 * std::pow(0.006, 3) / 12.0 + plate_m2 * axis_m * axis_m +
                            0.006 * std::pow(0.030, 3) / 12.0 + bar_m2 * (0.018 - axis_m) * (0.018 - axis_m);
  const double sag_m = 500.0 * std::pow(0.6, 3) / (48.0 * 70e9 * inertia_m4);
  CHECK(-stiff.cases[0].foot_sag_m == rel(sag_m, 0.02));
  // Stress at the free edge under the load: M c / I, M = P L / 4.
  CHECK(stiff.cases[0].bar_stress_Pa == rel(500.0 * 0.6 / 4.0 * (0.033 - axis_m) / inertia_m4, 0.05));
  const PlateSolution bare = solve_plate(beam({}));
  REQUIRE(bare.solved);
  CHECK(-bare.cases[0].foot_sag_m == rel(500.0 * std::pow(0.6, 3) / (48.0 * 70e9 * 0.06 * std::pow(0.006, 3) / 12.0), 0.02));
}

// Beside the weight: the trapezoid, a cut-out, two bars, five bolts.
TEST_CASE("the mount's picture shows the plate as it is made") {
  Job job = plate_job();
  const Drawing plain = mount_picture(evaluate(job, default_catalogue()), System::metric);
  job.mount.front_width_mm = {150.0, Origin::given};
  job.mount.cutouts = {"50x30@150,0", Origin::given};
  job.mount.bolt_places = {"40,55 40,-55 260,40 260,-40 150,60", Origin::given};
  job.mount.stiffener_count = {2, Origin::given};
  const Drawing drawing = mount_picture(evaluate(job, default_catalogue()), System::metric);
  CHECK(drawing.circles.size() == 6);
  CHECK(drawing.shapes.size() == plain.shapes.size() + 3);
  CHECK(drawing.handles.size() == 1);  // of the overhang: bolts have left the grid
  CHECK(plain.handles.size() == 3);
  CHECK(drawing.description.find("5 bolts, each in its place, 2 stiffeners") != std::string::npos);
  CHECK(drawing.circles[2].centre.x == rel(260.0, 1e-9));
  CHECK(drawing.circles[2].centre.y == rel(40.0, 1e-9));
}

// 450 mm long, 220 mm aft and 200 mm fore, sharp corners: 0.0945 m2 less six holes. Bars of 430 mm.
TEST_CASE("parts and trim take the plate as it is made, with its stiffeners") {
  Job job = plate_job();
  job.mount.plate_length_mm = {450.0, Origin::given};
  job.mount.plate_width_mm = {220.0, Origin::given};
  job.mount.front_width_mm = {200.0, Origin::given};
  job.mount.corner_mm = {0.0, Origin::given};
  job.mount.stiffener_count = {2, Origin::given};
  job.mount.stiffener_height_mm = {40.0, Origin::given};
  job.mount.stiffener_thickness_mm = {8.0, Origin::given};
  const Design design = evaluate(job, default_catalogue());
  const std::optional<ChosenPlate> chosen = chosen_plate(design);
  REQUIRE(chosen);
  const double density_kg_per_m3 = chosen->alloy->density_kg_per_m3;
  const double hole_m = chosen->bolt->hole_mm / 1000.0;
  const double net_m2 = 0.45 * 0.21 - 6.0 * 0.25 * std::numbers::pi * hole_m * hole_m;
  const auto line = [&](const std::string& id) {
    const auto found = std::find_if(design.parts.lines.begin(), design.parts.lines.end(),
                                    [&](const PartLine& each) { return each.id == id; });
    REQUIRE(found != design.parts.lines.end());
    return *found;
  };
  const double plate_kg = net_m2 * chosen->shape.thickness_m * density_kg_per_m3;
  CHECK(line(design.mount.plate.id).mass_kg == rel(plate_kg, 1e-9));
  const PartLine bars = line(design.mount.plate.id + ".stiffener");
  const double bars_kg = 2.0 * 0.43 * 0.040 * 0.008 * density_kg_per_m3;
  CHECK(bars.quantity == 2.0);
  CHECK(bars.mass_kg == rel(bars_kg, 1e-9));
  CHECK(line(design.mount.bolt.id).quantity == 6.0);
  job.mount.bolt_places = {"50,70 50,-70 170,70 170,-70 290,60 290,-60 230,0", Origin::given};
  const Design placed = evaluate(job, default_catalogue());
  for (const PartLine& each : placed.parts.lines)
    if (each.id == placed.mount.bolt.id) CHECK(each.quantity == 7.0);
  job.mount.bolt_places = {};
  job.mount.stiffener_count = {0, Origin::given};
  const Design bare = evaluate(job, default_catalogue());
  CHECK(design.parts.mass_kg - bare.parts.mass_kg == rel(bars_kg, 1e-9));
  CHECK(design.trim.added_kg - bare.trim.added_kg == rel(bars_kg, 1e-9));
}

// By hand: 400 mm long, 240 mm aft and 160 mm fore, sharp corners, one cut-out of 100 by 50 mm with corners of
// 5 mm, five bolts: 400 * 200 - 5000 + (4 - pi) 25 mm2, less the holes.
TEST_CASE("a plate of its own shape weighs area times thickness times density, and its step says so") {
  Job job = plate_job();
  const Design plain = evaluate(job, default_catalogue());
  const Step* strip = plain.find_step("mount.plate_mass");
  REQUIRE(strip != nullptr);
  CHECK(strip->symbol == "m_p");
  CHECK(strip->value == plain.mount.plate_mass_kg);
  job.mount.outline = {"0/120 400/80", Origin::given};
  job.mount.corner_mm = {0.0, Origin::given};
  job.mount.cutouts = {"100x50@180,0", Origin::given};
  job.mount.bolt_places = {"40,90 40,-90 260,70 260,-70 100,0", Origin::given};
  const Design design = evaluate(job, default_catalogue());
  const Alloy* alloy = find_alloy(design.mount.plate.alloy);
  const BoltSize* bolt = find_bolt_size(design.mount.bolt.size);
  REQUIRE(alloy != nullptr);
  REQUIRE(bolt != nullptr);
  const double pi = std::numbers::pi;
  const double net_mm2 = 400.0 * 200.0 - 5000.0 + (4.0 - pi) * 25.0 - 5.0 * 0.25 * pi * bolt->hole_mm * bolt->hole_mm;
  const double plate_kg = 1e-9 * net_mm2 * design.mount.plate_thickness_mm * alloy->density_kg_per_m3;
  CHECK(design.mount.plate_mass_kg == rel(plate_kg, 1e-9));
  const Step* step = design.find_step("mount.plate_mass");
  REQUIRE(step != nullptr);
  CHECK(step->formula == "A * t * rho");
  CHECK(step->value == design.mount.plate_mass_kg);
  CHECK(step->terms.front().value == rel(1e-6 * net_mm2, 1e-9));
  test::check_formulas(design.mount.trace);
  job.mount.stiffener_count = {3, Origin::given};
  job.mount.stiffener_height_mm = {40.0, Origin::given};
  job.mount.stiffener_thickness_mm = {8.0, Origin::given};
  const Design stiff = evaluate(job, default_catalogue());
  const double bars_kg = 3.0 * 0.38 * 0.040 * 0.008 * alloy->density_kg_per_m3;  // ends 10 mm from the edges
  CHECK(stiff.mount.plate_mass_kg == rel(plate_kg + bars_kg, 1e-9));
  test::check_formulas(stiff.mount.trace);
}

// A cut-out larger than the plate leaves no metal: the rectangle stands, and no mass below nothing.
TEST_CASE("a shape that cannot be cut weighs as the rectangle of its fields") {
  Job job = plate_job();
  job.mount.cutouts = {"1400x1400@200,0", Origin::given};
  const Design design = evaluate(job, default_catalogue());
  CHECK(design.mount.plate_mass_kg == rel(evaluate(plate_job(), default_catalogue()).mount.plate_mass_kg, 1e-12));
  for (const PartLine& line : design.parts.lines) CHECK(line.mass_kg >= 0.0);
}

TEST_CASE("stiffeners of the job stiffen its plate, and a bar that makes no sense is refused") {
  Job job = plate_job();
  const PlateStudy bare = study_of(job);
  REQUIRE(bare.solution.solved);
  job.mount.stiffener_count = {2, Origin::given};
  job.mount.stiffener_height_mm = {40.0, Origin::given};
  const PlateStudy stiff = study_of(job);
  REQUIRE_MESSAGE(stiff.solution.solved, stiff.solution.problem);
  CHECK(stiff.model.bars.size() == 2);
  CHECK(stiff.findings[0].sag_mm < bare.findings[0].sag_mm);
  CHECK(stiff.solution.mass_kg > bare.solution.mass_kg);
  CHECK(stiff.findings[0].bar_MPa > 0.0);
  PlateModel model = stiff.model;
  model.bars[0].height_m = 0.0;
  CHECK_FALSE(solve_plate(model).solved);
}

TEST_CASE("outline, front width, corners, bolts and cut-outs shape the plate that is studied") {
  Job job = plate_job();
  job.mount.front_width_mm = {0.7 * evaluate(job, default_catalogue()).job.mount.plate_width_mm.value, Origin::given};
  const PlateStudy trapezoid = study_of(job);
  REQUIRE_MESSAGE(trapezoid.solution.solved, trapezoid.solution.problem);
  CHECK(trapezoid.solution.area_m2 < study_of(plate_job()).solution.area_m2);
  job = plate_job();
  job.mount.outline = {"0/110 250/105 400/85 450/70", Origin::given};
  job.mount.bolt_places = {"50,70 50,-70 170,70 170,-70 290,60 290,-60 230,0", Origin::given};
  job.mount.cutouts = {"30@90,0", Origin::given};
  const PlateStudy shaped = study_of(job);
  REQUIRE_MESSAGE(shaped.solution.solved, shaped.solution.problem);
  CHECK(shaped.model.shape.bolts.size() == 7);
  CHECK(shaped.model.shape.cut_outs.size() == 1);
  // Trapezoids between the stations, less rounded corners and the hole.
  CHECK(shaped.solution.area_m2 == rel(2.0 * (0.25 * 0.1075 + 0.15 * 0.095 + 0.05 * 0.0775) - 0.25 * 3.14159265 * 0.03 * 0.03, 0.01));
  // What presses on the deck and what bolts pull stand in balance with the load.
  for (std::size_t i = 0; i < shaped.model.cases.size(); ++i) {
    double up_N = 0.0, size_N = 1.0;
    for (const PlateLoad& load : shaped.model.cases[i].loads) up_N += load.force_N;
    double pull_N = 0.0;
    for (const double bolt_N : shaped.solution.cases[i].bolt_N) pull_N += bolt_N;
    size_N += pull_N + shaped.solution.cases[i].deck_N;
    CHECK(std::abs(up_N + shaped.solution.cases[i].deck_N - pull_N) < 1e-9 * size_N);
  }
  // The other way round, port and starboard change places.
  job.mount.bolt_places = {"50,-70 50,70 170,-70 170,70 290,-60 290,60 230,0", Origin::given};
  const PlateStudy mirrored = study_of(job);
  for (std::size_t b = 0; b < 7; ++b)
    CHECK(mirrored.solution.cases[0].bolt_N[b] == doctest::Approx(shaped.solution.cases[0].bolt_N[b]).epsilon(1e-3));
}

TEST_CASE("a sag made with a known deck gives that deck back; no deck explains others") {
  Job job = plate_job();
  job.boat.deck = {DeckKind::cored_foam, Origin::given};
  job.mount.test_mass_kg = {40.0, Origin::given};
  job.mount.test_arm_mm = {200.0, Origin::given};
  CHECK(flex_test(evaluate(job, default_catalogue())).verdict == FlexVerdict::not_measured);
  job.mount.test_sag_mm = {1.0, Origin::given};
  std::string problem;
  const Design design = evaluate(job, default_catalogue());
  const double soft_mm = flex_sag(design, 0.4, 0.4, problem).total_mm;
  REQUIRE_MESSAGE(std::isfinite(soft_mm), problem);
  CHECK(soft_mm > flex_sag(design, 0.8, 0.8, problem).total_mm);
  CHECK(soft_mm > flex_sag(design, 0.4, 0.8, problem).total_mm);
  job.mount.test_sag_mm = {soft_mm, Origin::given};
  const FlexTest test = flex_test(evaluate(job, default_catalogue()));
  REQUIRE(test.verdict == FlexVerdict::found);
  CHECK(test.deck_factor == rel(0.4, 0.02));
  CHECK(test.panel_factor == rel(0.4, 0.02));
  REQUIRE(test.changes.size() == 2);
  CHECK(test.changes[0].field == "mount.deck_factor");
  CHECK(test.changes[1].field == "mount.panel_factor");
  job.mount.test_sag_mm = {99.0, Origin::given};
  CHECK(flex_test(evaluate(job, default_catalogue())).verdict == FlexVerdict::plate_softer);
  job.mount.test_sag_mm = {0.05, Origin::given};
  CHECK(flex_test(evaluate(job, default_catalogue())).verdict == FlexVerdict::plate_stiffer);
  job.mount.deck_factor = {0.4, Origin::given};
  const PlateStudy study = study_of(job);
  REQUIRE(study.solution.solved);
  thole::test::check_formulas(study.trace);
}

// While nothing opens the joint gives both ways; a weight that overcomes the clamp finds it softer than in proportion.
TEST_CASE("a flex test's weight finds a tight joint, until it opens it") {
  Job job = plate_job();
  job.mount.test_mass_kg = {10.0, Origin::given};
  job.mount.test_arm_mm = {200.0, Origin::given};
  Design design = evaluate(job, default_catalogue());
  std::string problem;
  const double light_mm = flex_sag(design, 1.0, 1.0, problem).total_mm;
  design.job.mount.test_mass_kg.value = 20.0;
  CHECK(flex_sag(design, 1.0, 1.0, problem).total_mm == rel(2.0 * light_mm, 1e-9));
  design.mount.clamp_left_N = 1.0;
  CHECK(flex_sag(design, 1.0, 1.0, problem).total_mm > 1.002 * 2.0 * light_mm);
}

TEST_CASE("with the deck's own sag the flex test tells which of the two gives") {
  Job job = plate_job();
  job.boat.deck = {DeckKind::cored_foam, Origin::given};
  job.mount.test_mass_kg = {40.0, Origin::given};
  job.mount.test_arm_mm = {200.0, Origin::given};
  std::string problem;
  const Design design = evaluate(job, default_catalogue());
  struct Made {
    double deck_factor;
    double panel_factor;
    const char* gives;
  };
  for (const Made& made : {Made{0.3, 1.0, "joint"}, Made{1.0, 0.25, "deck itself"}, Made{1.2, 0.9, "No joint"}}) {
    CAPTURE(made.gives);
    const FlexSag sag = flex_sag(design, made.deck_factor, made.panel_factor, problem);
    Job measured = job;
    measured.mount.test_sag_mm = {sag.total_mm, Origin::given};
    measured.mount.test_deck_mm = {sag.middle_mm, Origin::given};
    const FlexTest test = flex_test(evaluate(measured, default_catalogue()));
    REQUIRE(test.verdict == FlexVerdict::found);
    CHECK(test.told_apart);
    CHECK(test.panel_factor == rel(made.panel_factor, 0.02));
    CHECK(test.deck_factor == rel(made.deck_factor, 0.06));
    CHECK(test.says.find(made.gives) != std::string::npos);
    for (const Change& change : test.changes) thole::apply(change, measured);
    const FlexTest again = flex_test(evaluate(measured, default_catalogue()));
    CHECK(again.present_mm == rel(sag.total_mm, 0.01));
  }
}

TEST_CASE("the stock chosen by the elements serves in every case, and is the lightest that does") {
  const Job job = plate_job();
  PlateChooser chooser(evaluate(job, default_catalogue()), default_catalogue().plates);
  while (chooser.advance()) {
  }
  CHECK(chooser.done_frac() == 1.0);
  REQUIRE_FALSE(chooser.trials().empty());
  const int choice = chooser.choice();
  REQUIRE(choice >= 0);
  CHECK(chooser.trials()[static_cast<std::size_t>(choice)].serves);
  for (const PlateTrial& trial : chooser.trials()) {
    CAPTURE(trial.stock.id);
    if (trial.serves) CHECK(trial.mass_kg >= chooser.trials()[static_cast<std::size_t>(choice)].mass_kg);
    if (trial.serves) CHECK(std::max(trial.strength_factor, trial.bolts_factor) <= 1.0);
  }
  // Thicker of the same alloy never sags more.
  for (const PlateTrial& a : chooser.trials())
    for (const PlateTrial& b : chooser.trials())
      if (a.stock.alloy == b.stock.alloy && a.stock.thickness_mm < b.stock.thickness_mm) CHECK(a.sag_factor > b.sag_factor);
  CHECK_FALSE(remedies_without_plate(evaluate(job, default_catalogue())).empty());
}
