// The native program: a job in, text out. Exit status 0 whatever the verdict, 2 when the input or
// the command is not sound.

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <fstream>
#include <iostream>
#include <iterator>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/edition.h"
#include "base/number.h"
#include "base/units.h"
#include "calc/cable_study.h"
#include "calc/charging_study.h"
#include "calc/compass_study.h"
#include "calc/bank_day_study.h"
#include "calc/design.h"
#include "calc/feeder_circuit.h"
#include "calc/hold/calibrate.h"
#include "calc/hold/day.h"
#include "calc/hold/rose.h"
#include "calc/hold/simulate.h"
#include "calc/locker_study.h"
#include "calc/load_cases_study.h"
#include "calc/plate/outline.h"
#include "calc/plate_study.h"
#include "calc/proof.h"
#include "calc/protection_study.h"
#include "calc/sensitivity.h"
#include "calc/studies.h"
#include "draw/chapters.h"
#include "draw/circuit_plan.h"
#include "draw/locker_plan.h"
#include "draw/charge_curve.h"
#include "draw/compass_plan.h"
#include "draw/bow_elevation.h"
#include "draw/foredeck_plan.h"
#include "draw/svg.h"
#include "io/catalogue_json.h"
#include "io/charging_text.h"
#include "io/circuit_text.h"
#include "io/compass_text.h"
#include "io/day_text.h"
#include "io/design_json.h"
#include "io/explain.h"
#include "io/foredeck_text.h"
#include "io/hold_run_text.h"
#include "io/issues_json.h"
#include "io/job_json.h"
#include "io/link.h"
#include "io/locker_text.h"
#include "io/measure.h"
#include "io/loads_text.h"
#include "io/plate_text.h"
#include "io/power_day_text.h"
#include "io/presets.h"
#include "io/protection_text.h"
#include "io/rose_text.h"
#include "io/schema_json.h"
#include "io/sensitivity_text.h"
#include "io/trial_text.h"
#include "job/fields.h"
#include "papers/job_sheet.h"
#include "papers/plate_papers.h"

namespace {

using namespace thole;

constexpr int kDone = 0;
constexpr int kBadInput = 2;
constexpr const char* kNoLocker =
    "The locker is not measured: give locker.length_m, locker.width_m and locker.height_m.";

constexpr std::string_view kUsage =
    R"(thole: will a GPS-steered bow motor hold this boat, and what does it need?

usage:
  thole evaluate JOB.json          the design as JSON
  thole explain JOB.json [ID]      the steps and checks as text; ID names one, or a stage ("feeder")
  thole sheet JOB.json             the job sheet, a page of HTML to print
  thole rose JOB.json              what wind and current are held, from every side; loads by angle
  thole hold JOB.json              an hour of holding, simulated: how still, at what cost
  thole feeder JOB.json            the feeder as a circuit, usual or typed: what loses most first, how warm;
                                   the same cable by six rules of drop and three of ampacity
  thole day JOB.json               what a day takes from the bank, by the hour; which block ends it, and years
  thole protection JOB.json        short circuits from a new bank to an old one, against fuse, cable and motor
  thole locker JOB.json            whether the bank goes into its locker, how it lies there, what holds it down
  thole charge JOB.json            tonight on shore by the hour, the engine, the sun; the locker's air
  thole loads JOB.json             what the mount must stand, case by case, and how fast she may go
  thole plate JOB.json             the plate by finite elements: stress, bolts, deck, sag in each load case
  thole compass JOB.json           what the feeder does to the heading sensor at full thrust
  thole foredeck JOB.json          room for the stowed motor, the bow light, thrust by shaft length, what a snag breaks
  thole sensitivity JOB.json [RESULT]  which values move a result most ("hold.limiting_wind_mps")
  thole calibrate JOB.json         the job with what a trial at sea told of its loads
  thole picture JOB.json PAGE      the picture of a page ("shaft", "mount" ...) as SVG
  thole link JOB.json              the job as the part of an address after '#'
  thole unlink LINK                the job in a link, as JSON
  thole schema job|catalogue|preset|design
  thole --help | --version

  -                                in place of a file or a link: standard input
  -o FILE                          where to write, in place of standard output
  --catalogue FILE                 a shop's own parts and prices
  --units metric|us                of sheet and picture; metric when not said
  --address URL                    of the wizard's page: the sheet then bears the job's link
  --date TEXT                      that the sheet bears
  --hours H                        of hold: how long, 0.01 to 24; 1 when not said
  --seed N                         of hold: which gusts; the same number, the same hour; 1 when not said
  --gusts LAW                      of hold: npd, davenport, harris or ochi-shin; as in the job when not said
  --within LENGTH                  of hold: how near is near enough; as in the job when not said
  --share PERCENT                  of hold: for how much of the time; as in the job when not said
  --track FILE.csv                 of hold: where the bow was, second by second
  --quick                          of evaluate, explain, sheet: without the plate by finite elements, snag and
                                   foredeck, as the engine in a page has it
  --json                           of rose, hold, day, feeder, locker, compass ...: figures for a program
  --svg                            a drawing: of plate with all measures, at true size, ASME and inches
                                   with US units; of feeder the circuit, of locker how the blocks lie, of
                                   charge the night, of foredeck from above, of compass lines of equal error
  --template a4|letter             of plate: to drill through, at true size, on pages to be joined
  --tile N                         of --template: which page; 1 when not said
  --dxf                            of plate: to be cut, R12 in millimetres; a name with _mm.dxf says so
  --r2000                          of --dxf: the newer dialect, which states its units
  --side                           of foredeck: from the side, with the motor's way up
  --elevation                      of foredeck: the whole bow from the side, motor stowed and down; of plate
                                   the same with all measures, to scale on A4 or, with US units, Letter
  --netlist                        of feeder: the circuit as a deck for ngspice
  --stretch "hours=2, wind=12 kn"  of day: a stretch of it, any number; thrust=50 % in place of a wind
                                   when it creeps; the hours of the job when none is said
  --weak "capacity=70"             of day: one block of each string, percent; charge=90 as well
  --drift "minutes=5, speed=0.9 kn, wind=12 kn"   of calibrate: adrift, over the ground; and off (from
                                   straight downwind), height (of the wind), current, from (where it
                                   comes from, clockwise off the wind)
  --held "thrust=45 %, wind=12 kn" of calibrate: mean thrust shown; and height, current, from, waves
                                   with -o the job goes to the file, and what was found is printed

Exit status: 0 when the job was computed, whatever the verdict; 2 when the input is not sound.
Issues are written to standard error as JSON.
)";

int fail(std::string message) {
  std::cerr << write_issues({{Severity::error, "", std::move(message)}}) << '\n';
  return kBadInput;
}

// Says what there is to say of the input; the exit status.
int report(const Issues& issues) {
  if (!issues.empty()) std::cerr << write_issues(issues) << '\n';
  return has_error(issues) ? kBadInput : kDone;
}

std::optional<std::string> text_of(const std::string& name) {
  if (name == "-") {
    return std::string(std::istreambuf_iterator<char>(std::cin), std::istreambuf_iterator<char>());
  }
  std::ifstream file(name, std::ios::binary);
  if (!file) return std::nullopt;
  std::string text((std::istreambuf_iterator<char>(file)), std::istreambuf_iterator<char>());
  if (file.bad()) return std::nullopt;
  return text;
}

// --- commands -----------------------------------------------------------------------------------

struct Arguments {
  std::vector<std::string> words{};  // without options
  std::string catalogue{};           // file; empty: the built-in one
  std::string output{};              // file; empty: standard output
  std::string units{"metric"};
  std::string address{};
  std::string date{};
  std::string hours{"1"};
  std::string seed{"1"};
  std::string gusts{};   // empty, as the next two: as the job says
  std::string within{};
  std::string share{};
  std::string track{};
  std::string weak{};
  std::vector<std::string> stretches{};
  std::vector<std::string> drifts{};
  std::vector<std::string> holds{};
  bool json = false;
  bool quick = false;
  bool netlist = false;
  bool dxf = false;
  bool r2000 = false;
  bool svg = false;
  bool side = false;
  bool elevation = false;
  std::string paper{};  // of the drill template
  std::string tile = "1";  // which of its pages
};

System system_of(const Arguments& arguments) {
  return arguments.units == "us" ? System::us : System::metric;
}

int put_in(const std::string& name, std::string_view text) {
  std::ofstream file(name, std::ios::binary);
  file << text;
  file.close();
  return file ? kDone : fail("Cannot write the file \"" + name + "\".");
}

// To the file that was named, or else to standard output.
int put(const Arguments& arguments, std::string_view text) {
  if (!arguments.output.empty()) return put_in(arguments.output, text);
  std::cout << text;
  return kDone;
}

// The job of the file that the command names, judged. Not sound: the exit status is in `status`.
struct Loaded {
  Job job{};
  int status = kBadInput;
};

Loaded load_job(const std::string& name) {
  const std::optional<std::string> text = text_of(name);
  if (!text) return {{}, fail("Cannot read the file \"" + name + "\".")};
  const JobRead read = read_job(*text);
  return {read.job, report(read.issues)};
}

std::optional<Catalogue> load_catalogue(const std::string& name) {
  if (name.empty()) return default_catalogue();
  const std::optional<std::string> text = text_of(name);
  if (!text) {
    fail("Cannot read the file \"" + name + "\".");
    return std::nullopt;
  }
  CatalogueRead read = read_catalogue(*text);
  if (report(read.issues) != kDone) return std::nullopt;
  add_default_presets(read.catalogue);
  return std::move(read.catalogue);
}

std::optional<Design> load_design(const Arguments& arguments) {
  const Loaded loaded = load_job(arguments.words[1]);
  if (loaded.status != kDone) return std::nullopt;
  const std::optional<Catalogue> catalogue = load_catalogue(arguments.catalogue);
  if (!catalogue) return std::nullopt;
  return evaluate(loaded.job, *catalogue);
}

// With the proof, unless it is to be quick.
Design judged(const Arguments& arguments, const Job& job, const Catalogue& catalogue) {
  return arguments.quick ? evaluate(job, catalogue) : proven(job, catalogue);
}

std::optional<Design> load_judged(const Arguments& arguments) {
  const Loaded loaded = load_job(arguments.words[1]);
  if (loaded.status != kDone) return std::nullopt;
  const std::optional<Catalogue> catalogue = load_catalogue(arguments.catalogue);
  if (!catalogue) return std::nullopt;
  return judged(arguments, loaded.job, *catalogue);
}

int run_evaluate(const Arguments& arguments) {
  const std::optional<Design> design = load_judged(arguments);
  if (!design) return kBadInput;
  report(design->issues);
  return put(arguments, write_design(*design));
}

// The id itself, or the stage that it begins with.
bool is_meant(std::string_view id, std::string_view wanted) {
  return wanted.empty() || id == wanted ||
         (id.starts_with(wanted) && id.size() > wanted.size() && id[wanted.size()] == '.');
}

int run_explain(const Arguments& arguments) {
  const std::optional<Design> design = load_judged(arguments);
  if (!design) return kBadInput;
  report(design->issues);
  const std::string wanted = arguments.words.size() > 2 ? arguments.words[2] : "";
  std::string text;
  for (const Trace* trace : design->traces()) {
    for (const Step& step : trace->steps) {
      if (is_meant(step.id, wanted)) text += explain(step) + "\n";
    }
    for (const Check& check : trace->checks) {
      if (is_meant(check.id, wanted)) text += explain(check) + "\n";
    }
  }
  if (text.empty()) return fail("This design has no step, check or stage \"" + wanted + "\".");
  if (wanted.empty()) {
    text += "Verdict: " + std::string(word(design->outcome.fit));
    if (!design->outcome.governing.empty()) text += ", governed by " + design->outcome.governing;
    text += "\n";
  }
  return put(arguments, text);
}

// The address of the page with the job behind it: what stands after a '#' is replaced.
std::string whole_link(const std::string& address, const Job& given) {
  return address.empty() ? "" : address.substr(0, address.find('#')) + "#" + write_link(given);
}

int run_sheet(const Arguments& arguments) {
  const Loaded loaded = load_job(arguments.words[1]);
  if (loaded.status != kDone) return loaded.status;
  const std::optional<Catalogue> catalogue = load_catalogue(arguments.catalogue);
  if (!catalogue) return kBadInput;
  const Design design = judged(arguments, loaded.job, *catalogue);
  report(design.issues);
  return put(arguments, job_sheet_html(design, *catalogue,
                                       {.system = system_of(arguments),
                                        .address = whole_link(arguments.address, loaded.job),
                                        .date = arguments.date}));
}

int run_picture(const Arguments& arguments) {
  const Chapter* chapter = find_chapter(arguments.words[2]);
  if (chapter == nullptr || chapter->picture == nullptr) {
    std::string pages;
    for (const Chapter& each : all_chapters()) {
      if (each.picture != nullptr) pages += (pages.empty() ? "" : ", ") + std::string(each.key);
    }
    return fail("There is a picture for " + pages + ".");
  }
  const std::optional<Design> design = load_design(arguments);
  if (!design) return kBadInput;
  report(design->issues);
  if (!chapter->told(*design)) return fail("This design has no picture of that page: nothing was measured for it.");
  return put(arguments, write_svg(chapter->picture(*design, system_of(arguments)),
                                  {.width_px = 640.0, .file = true}));
}

std::optional<GustLaw> gust_law(std::string_view word) {
  if (word == "npd") return GustLaw::npd;
  if (word == "davenport") return GustLaw::davenport;
  if (word == "harris") return GustLaw::harris;
  if (word == "ochi-shin") return GustLaw::ochi_shin;
  return std::nullopt;
}

// A whole number of at most nine digits.
std::optional<std::uint64_t> whole_number(std::string_view word) {
  if (word.empty() || word.size() > 9) return std::nullopt;
  std::uint64_t number = 0;
  for (const char digit : word) {
    if (digit < '0' || digit > '9') return std::nullopt;
    number = 10 * number + static_cast<std::uint64_t>(digit - '0');
  }
  return number;
}

// What is said with the command counts before what the job says. Gives what is wrong, or null.
const char* override_run(const Arguments& arguments, System system, HoldRunInput& in) {
  if (!arguments.gusts.empty()) {
    const std::optional<GustLaw> law = gust_law(arguments.gusts);
    if (!law) return "Gusts are by npd, davenport, harris or ochi-shin.";
    in.gust.law = *law;
  }
  if (!arguments.within.empty()) {
    const std::optional<double> within_m = read_measure(arguments.within, "m", system, nullptr);
    if (!within_m || !(*within_m > 0.0)) return "Say how near is near enough: \"5 m\" or \"16 ft\".";
    in.tolerance_m = *within_m;
  }
  if (!arguments.share.empty()) {
    const std::optional<double> share = read_measure(arguments.share, "frac", system, nullptr);
    if (!share || !(*share > 0.0 && *share < 1.0)) return "A share is above 0 and below 100 %.";
    in.tolerance_frac = *share;
  }
  return nullptr;
}

int run_hold(const Arguments& arguments) {
  const std::optional<double> hours_h = plain_number(arguments.hours);
  const std::optional<std::uint64_t> seed = whole_number(arguments.seed);
  const System system = system_of(arguments);
  if (!hours_h || *hours_h < 0.01 || *hours_h > 24.0) return fail("Hours are 0.01 to 24.");
  if (!seed) return fail("A seed is a whole number of at most nine digits.");

  const std::optional<Design> design = load_design(arguments);
  if (!design) return kBadInput;
  report(design->issues);
  if (!design->hold.motor_found) return fail("There is no motor in this catalogue.");
  HoldReport hour{.input = hold_run_input(*design),
                  .mean_load_N = design->hold.thrust_mean_N,
                  .margin_factor = design->hold.margin_actual_factor};
  hour.input.record_h = *hours_h;
  hour.input.seed = *seed;
  if (const char* wrong = override_run(arguments, system, hour.input)) return fail(wrong);
  hour.run = simulate_hold(hour.input);
  if (const int status = report(hour.run.issues); status != kDone) return status;
  hour.required = required_margin(hour.input, hour.mean_load_N);
  if (!arguments.track.empty()) {
    const int status = put_in(arguments.track, track_csv(hour.run.track));
    if (status != kDone) return status;
  }
  return put(arguments, arguments.json ? write_hold_report(hour) : hold_report_text(hour, system));
}

int run_rose(const Arguments& arguments) {
  const std::optional<Design> design = load_design(arguments);
  if (!design) return kBadInput;
  report(design->issues);
  if (!design->hold.motor_found) return fail("There is no motor in this catalogue.");
  const RoseResult result = rose(hold_input(*design), design->hold.motor);
  return put(arguments,
             arguments.json ? write_rose(result) : rose_text(result, system_of(arguments)));
}

int run_day(const Arguments& arguments) {
  const System system = system_of(arguments);
  std::vector<Stretch> stretches;
  for (const std::string& text : arguments.stretches) {
    std::string message;
    const std::optional<Stretch> stretch = read_stretch(text, system, message);
    if (!stretch) return fail(message);
    stretches.push_back(*stretch);
  }
  std::optional<BlockCondition> weak;
  if (!arguments.weak.empty()) {
    std::string message;
    weak = read_weak_block(arguments.weak, system, message);
    if (!weak) return fail(message);
  }
  const std::optional<Design> design = load_design(arguments);
  if (!design) return kBadInput;
  report(design->issues);
  if (!design->hold.motor_found) return fail("There is no motor in this catalogue.");
  const HoldInput input = hold_input(*design);
  const MotorClass& motor = design->hold.motor;
  BankDayInput asked = bank_day_input(*design);
  if (!stretches.empty()) asked.day.segments.clear();
  for (const Stretch& stretch : stretches) {
    asked.day.segments.push_back(
        stretch.wind_mps ? holding_segment(input, motor, *stretch.wind_mps, stretch.duration_h)
                         : creeping_segment(stretch.thrust_frac, stretch.duration_h));
  }
  const DayResult draw = day_draw(asked.day);
  if (weak) {
    asked.unlike = true;
    for (RunString& string : asked.bank.strings) string.blocks.front().condition = *weak;
  }
  asked.winds_mps.clear();
  for (int wind_kn = 5; wind_kn <= 25; wind_kn += 5) asked.winds_mps.push_back(mps_from_kn(wind_kn));
  asked.moment_s = 3600.0;
  const BankDay run = bank_day(*design, asked);
  return put(arguments, arguments.json ? write_power_day(draw, run, *design)
                                       : day_text(draw, system) + "\n" +
                                             power_day_text(run, *design, system));
}

int run_feeder(const Arguments& arguments) {
  const Loaded loaded = load_job(arguments.words[1]);
  if (loaded.status != kDone) return kBadInput;
  const std::optional<Catalogue> catalogue = load_catalogue(arguments.catalogue);
  if (!catalogue) return kBadInput;
  const Design design = evaluate(loaded.job, *catalogue);
  report(design.issues);
  if (!design.bank.found || !design.feeder.found) {
    return fail("There is no bank, or no cable, tail and device for it, in this catalogue.");
  }
  const FeederCircuit circuit = feeder_circuit(design, *catalogue);
  if (arguments.netlist) return put(arguments, spice_deck(circuit.network));
  if (arguments.svg) {
    const Drawing drawing = circuit_plan_picture(circuit, system_of(arguments));
    return put(arguments, write_svg(drawing, {.width_px = 412.0, .height_px = drawing.high.y + 24.0, .file = true}));
  }
  const CableStudy cable = cable_study(design);
  const int status = put(arguments, arguments.json ? write_circuit(circuit, cable) : circuit_text(circuit, cable));
  return status == kDone && !circuit.solution.solved ? kBadInput : status;
}

int run_charge(const Arguments& arguments) {
  const std::optional<Design> design = load_design(arguments);
  if (!design) return kBadInput;
  report(design->issues);
  const ChargingStudy study = charging_study(*design);
  if (!study.problem.empty()) return fail(study.problem);
  const System system = system_of(arguments);
  if (arguments.svg) {
    if (study.night.points.empty()) return fail(study.shore.problem);
    return put(arguments, write_svg(charge_curve_picture(study.night, system), {.width_px = 640.0, .file = true}));
  }
  return put(arguments, arguments.json ? write_charging(study) : charging_text(study, system));
}

int run_protection(const Arguments& arguments) {
  const std::optional<Design> design = load_design(arguments);
  if (!design) return kBadInput;
  report(design->issues);
  if (!design->bank.found || !design->feeder.found) {
    return fail("There is no bank, or no cable, tail and device for it, in this catalogue.");
  }
  const ProtectionStudy study = protection_study(*design);
  return put(arguments, arguments.json ? write_protection(study) : protection_text(study, system_of(arguments)));
}

int run_locker(const Arguments& arguments) {
  const Loaded loaded = load_job(arguments.words[1]);
  if (loaded.status != kDone) return loaded.status;
  const std::optional<Catalogue> catalogue = load_catalogue(arguments.catalogue);
  if (!catalogue) return kBadInput;
  const Design design = Evaluation(loaded.job, *catalogue, {}, Telling::every_step, kAll).design();
  report(design.issues);
  if (!design.bank.found) return fail("There is no bank in this catalogue to put anywhere.");
  const System system = system_of(arguments);
  if (arguments.svg) {
    if (!design.locker.measured) return fail(kNoLocker);
    return put(arguments, write_svg(locker_picture(design, system), {.width_px = 640.0, .file = true}));
  }
  const LockerStudy study = locker_study(design, *catalogue);
  return put(arguments, arguments.json ? write_locker(study, design) : locker_text(study, design, system));
}

int run_compass(const Arguments& arguments) {
  const std::optional<Design> design = load_design(arguments);
  if (!design) return kBadInput;
  report(design->issues);
  const CompassStudy study = compass_study(*design);
  if (const int status = report(study.result.issues); status != kDone) return status;
  const System system = system_of(arguments);
  if (arguments.svg) {
    return put(arguments, write_svg(compass_plan_picture(study.input, study.result, study.boat_length_m, system),
                                    {.width_px = 640.0, .file = true}));
  }
  return put(arguments, arguments.json ? write_compass(study) : compass_text(study, system));
}

int cut_plate(const Arguments& arguments, const Design& design) {
  const DxfFile cut = plate_dxf(design, arguments.r2000 ? DxfVersion::r2000 : DxfVersion::r12);
  report(cut.issues);
  return cut.text.empty() ? kBadInput : put(arguments, cut.text);
}

int draw_plate(const Arguments& arguments, const Design& design) {
  const std::optional<ChosenPlate> plate = chosen_plate(design);
  if (!plate) return fail(kNoPlate);
  report(plate_issues(plate->shape));
  return put(arguments, plate_drawing_svg(design, {.system = system_of(arguments), .date = arguments.date}));
}

int draw_template(const Arguments& arguments, const Design& design) {
  if (!chosen_plate(design)) return fail(kNoPlate);
  if (arguments.paper != "a4" && arguments.paper != "letter") return fail("--template takes a4 or letter.");
  const std::vector<std::string> pages = drill_template_svgs(design, arguments.paper == "a4" ? Paper::a4 : Paper::letter);
  const std::optional<std::uint64_t> asked = whole_number(arguments.tile);
  if (!asked || *asked < 1 || *asked > pages.size()) {
    return fail("--tile takes a page of the template, 1 to " + std::to_string(pages.size()) + ".");
  }
  return put(arguments, pages[static_cast<std::size_t>(*asked - 1)]);
}

int draw_elevation(const Arguments& arguments, const Design& design) {
  if (!design.hold.motor_found) return fail(kNoElevation);
  const System system = system_of(arguments);
  const bool letter = arguments.paper.empty() ? system == System::us : arguments.paper == "letter";
  if (!arguments.paper.empty() && !letter && arguments.paper != "a4") return fail("--template takes a4 or letter.");
  return put(arguments, elevation_svg(design, {.system = system, .date = arguments.date}, letter ? Paper::letter : Paper::a4));
}

int run_loads(const Arguments& arguments) {
  const std::optional<Design> design = load_design(arguments);
  if (!design) return kBadInput;
  report(design->issues);
  const LoadsStudy study = load_cases_study(*design);
  const int status = put(arguments, arguments.json ? write_loads(study) : loads_text(study, system_of(arguments)));
  return status == kDone && !study.known ? kBadInput : status;
}

int run_plate(const Arguments& arguments) {
  const std::optional<Design> design = load_design(arguments);
  if (!design) return kBadInput;
  report(design->issues);
  if (arguments.dxf) return cut_plate(arguments, *design);
  if (arguments.svg) return draw_plate(arguments, *design);
  if (arguments.elevation) return draw_elevation(arguments, *design);
  if (!arguments.paper.empty()) return draw_template(arguments, *design);
  const PlateStudy study = plate_study(*design);
  const int status = put(arguments, arguments.json ? write_plate(study) : plate_text(study, system_of(arguments)));
  return status == kDone && !study.solution.solved ? kBadInput : status;
}

int run_foredeck(const Arguments& arguments) {
  const std::optional<Design> design = load_design(arguments);
  if (!design) return kBadInput;
  report(design->issues);
  const System system = system_of(arguments);
  constexpr double kDrawn_px = 640.0;
  if (arguments.elevation) return put(arguments, write_svg(bow_elevation(*design, system), {.width_px = kDrawn_px, .file = true}));
  const ForedeckStudy deck = foredeck_study(*design);
  if (arguments.svg || arguments.side) {
    if (!deck.room.problem.empty()) return fail(deck.room.problem);
    return put(arguments, write_svg(arguments.side ? foredeck_side(deck, system) : foredeck_plan(deck, system), {.width_px = kDrawn_px, .file = true}));
  }
  const LengthStudy length = length_study(*design);
  const SnagStudy snag = snag_study(*design);
  return put(arguments, arguments.json ? write_foredeck(deck, length, snag)
                                       : foredeck_text(deck, system) + "\n" + shaft_length_text(length, system) + "\n" +
                                             snag_text(snag, system));
}

int run_sensitivity(const Arguments& arguments) {
  const Loaded loaded = load_job(arguments.words[1]);
  if (loaded.status != kDone) return loaded.status;
  const std::optional<Catalogue> catalogue = load_catalogue(arguments.catalogue);
  if (!catalogue) return kBadInput;
  SensitivityInput input;
  if (arguments.words.size() > 2) input.output = arguments.words[2];
  const SensitivityResult result = sensitivity(loaded.job, *catalogue, input);
  if (!result.known_output) {
    return fail("There is no number \"" + std::string(input.output) + "\" among the results.");
  }
  const Output& output = *find_output(input.output);
  return put(arguments, arguments.json ? write_sensitivity(result, output)
                                       : sensitivity_text(result, output, system_of(arguments)));
}

template <class Reading>
bool read_all(const std::vector<std::string>& texts, System system,
              std::optional<Reading> (*read)(std::string_view, System, std::string&),
              std::vector<Reading>& readings) {
  for (const std::string& text : texts) {
    std::string message;
    const std::optional<Reading> reading = read(text, system, message);
    if (!reading) {
      fail(message);
      return false;
    }
    readings.push_back(*reading);
  }
  return true;
}

int run_calibrate(const Arguments& arguments) {
  const System system = system_of(arguments);
  CalibrateInput said;
  if (!read_all(arguments.drifts, system, read_drift, said.drifts)) return kBadInput;
  if (!read_all(arguments.holds, system, read_held, said.holds)) return kBadInput;
  const Loaded loaded = load_job(arguments.words[1]);
  if (loaded.status != kDone) return loaded.status;
  const std::optional<Catalogue> catalogue = load_catalogue(arguments.catalogue);
  if (!catalogue) return kBadInput;
  const Design design = Evaluation(loaded.job, *catalogue, {}, Telling::every_step, kAll).design();
  CalibrateInput input = trial_input(design);
  input.drifts.insert(input.drifts.end(), said.drifts.begin(), said.drifts.end());
  input.holds.insert(input.holds.end(), said.holds.begin(), said.holds.end());
  if (input.drifts.empty() && input.holds.empty()) {
    return fail("The job holds no trial (its wind, and a drift or a thrust); or say it: --drift, --held; see thole --help.");
  }
  const CalibrateResult trial = calibrate(input);
  report(trial.issues);
  if (!trial.fitted) return kBadInput;
  const Job job = with_trial_factors(loaded.job, trial);
  const int status = put(arguments, write_job(job));
  if (!arguments.output.empty() && status == kDone) {
    std::cout << (arguments.json ? write_trial(trial) : trial_text(trial));
  }
  return status;
}

int run_link(const Arguments& arguments) {
  const Loaded loaded = load_job(arguments.words[1]);
  return loaded.status == kDone ? put(arguments, write_link(loaded.job) + "\n") : loaded.status;
}

int run_unlink(const Arguments& arguments) {
  const std::string& word = arguments.words[1];
  const LinkRead read = read_link(word == "-" ? text_of(word).value_or("") : word);
  const int status = report(read.issues);
  return status == kDone ? put(arguments, write_job(read.job)) : status;
}

int run_schema(const Arguments& arguments) {
  const std::string& which = arguments.words[1];
  if (which == "job") {
    return put(arguments, job_schema());
  }
  if (which == "catalogue") {
    return put(arguments, catalogue_schema());
  }
  if (which == "preset") {
    return put(arguments, preset_schema());
  }
  if (which == "design") {
    return put(arguments, design_schema());
  }
  return fail("There is a schema for \"job\", \"catalogue\", \"preset\" and \"design\".");
}

// --- help ---------------------------------------------------------------------------------------

std::string range_text(const Field& field) {
  switch (field.kind) {
    case Kind::number:
    case Kind::count: {
      const std::string unit = unit_text(field.unit());
      return trimmed(significant(field.min, 4)) + " to " + trimmed(significant(field.max, 4)) +
             (unit.empty() ? "" : " " + unit);
    }
    case Kind::toggle:
      return "true or false";
    case Kind::choice: {
      std::string text;
      for (const Option& option : field.options) {
        if (!text.empty()) text += ", ";
        text += option.key;
      }
      return text;
    }
    case Kind::text:
      return "text";
    case Kind::catalogue_id:
      return "id in \"" + std::string(field.list) + "\"";
  }
  return "";
}

void print_help() {
  std::cout << kUsage << "\nThe values of a job, each of which may be left out:\n";
  std::string_view section = "-";
  for (const Field& field : all_fields()) {
    if (field.section != section) {
      section = field.section;
      std::cout << '\n' << (section.empty() ? "(the job itself)" : section) << '\n';
    }
    std::cout << "  " << field.key << ": " << field.label << ". " << help_of(field) << '\n'
              << "      " << range_text(field) << '\n';
  }
}

struct Command {
  std::string_view name{};
  std::size_t least_words = 0;  // with its own name
  std::size_t most_words = 0;
  int (*run)(const Arguments&) = nullptr;
};
constexpr Command kCommands[] = {
    {"evaluate", 2, 2, run_evaluate},
    {"explain", 2, 3, run_explain},
    {"sheet", 2, 2, run_sheet},
    {"picture", 3, 3, run_picture},
    {"link", 2, 2, run_link},
    {"unlink", 2, 2, run_unlink},
    {"schema", 2, 2, run_schema},
    {"rose", 2, 2, run_rose},
    {"hold", 2, 2, run_hold},
    {"day", 2, 2, run_day},
    {"feeder", 2, 2, run_feeder},
    {"loads", 2, 2, run_loads},
    {"plate", 2, 2, run_plate},
    {"charge", 2, 2, run_charge},
    {"foredeck", 2, 2, run_foredeck},
    {"protection", 2, 2, run_protection},
    {"locker", 2, 2, run_locker},
    {"compass", 2, 2, run_compass},
    {"sensitivity", 2, 3, run_sensitivity},
    {"calibrate", 2, 2, run_calibrate},
};

int run(const Arguments& arguments) {
  for (const Command& command : kCommands) {
    if (arguments.words.empty() || arguments.words.front() != command.name) continue;
    if (arguments.words.size() < command.least_words ||
        arguments.words.size() > command.most_words) {
      return fail("\"thole " + std::string(command.name) +
                  "\" takes other arguments; see thole --help.");
    }
    return command.run(arguments);
  }
  return fail("There is no such command; see thole --help.");
}

// Options that take the next word as their value.
struct ValueOption {
  std::string_view name{};
  std::string Arguments::*place = nullptr;
};
constexpr ValueOption kOptions[] = {
    {"--template", &Arguments::paper},
    {"--tile", &Arguments::tile},
    {"-o", &Arguments::output},       {"--catalogue", &Arguments::catalogue},
    {"--units", &Arguments::units},   {"--address", &Arguments::address},
    {"--date", &Arguments::date},     {"--hours", &Arguments::hours},
    {"--seed", &Arguments::seed},     {"--gusts", &Arguments::gusts},
    {"--within", &Arguments::within}, {"--share", &Arguments::share},
    {"--track", &Arguments::track},
    {"--weak", &Arguments::weak},
};

// Those that may be said again and again.
struct ListOption {
  std::string_view name{};
  std::vector<std::string> Arguments::*place = nullptr;
};
constexpr ListOption kLists[] = {
    {"--stretch", &Arguments::stretches},
    {"--drift", &Arguments::drifts},
    {"--held", &Arguments::holds},
};

// Where the next word goes; null when this one is no option.
std::string* place_for(std::string_view word, Arguments& arguments) {
  for (const ValueOption& option : kOptions) {
    if (option.name == word) return &(arguments.*(option.place));
  }
  for (const ListOption& option : kLists) {
    if (option.name == word) return &(arguments.*(option.place)).emplace_back();
  }
  return nullptr;
}

}  // namespace

int main(int argc, char** argv) {
  Arguments arguments;
  for (int i = 1; i < argc; ++i) {
    const std::string_view word = argv[i];
    if (word == "--help" || word == "-h") {
      print_help();
      return kDone;
    }
    if (word == "--version") {
      std::cout << "thole, engine edition " << kEngineEdition << ", schema " << kSchema << '\n';
      return kDone;
    }
    if (word == "--quick") {
      arguments.quick = true;
      continue;
    }
    if (word == "--json") {
      arguments.json = true;
      continue;
    }
    if (word == "--svg") {
      arguments.svg = true;
      continue;
    }
    if (word == "--side") {
      arguments.side = true;
      continue;
    }
    if (word == "--elevation") {
      arguments.elevation = true;
      continue;
    }
    if (word == "--dxf") {
      arguments.dxf = true;
      continue;
    }
    if (word == "--r2000") {
      arguments.r2000 = true;
      continue;
    }
    if (word == "--netlist") {
      arguments.netlist = true;
      continue;
    }
    std::string* const place = place_for(word, arguments);
    if (place == nullptr) {
      arguments.words.emplace_back(word);
    } else if (++i < argc) {
      *place = argv[i];
    } else {
      return fail(std::string(word) + " needs a value; see thole --help.");
    }
  }
  if (arguments.units != "metric" && arguments.units != "us") {
    return fail("Units are \"metric\" or \"us\".");
  }
  return run(arguments);
}
