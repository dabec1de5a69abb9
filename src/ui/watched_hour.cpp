// An hour of holding, watched: run in slices, then played.

#include <algorithm>

#include "base/number.h"
#include "draw/footprint.h"
#include "io/figures.h"
#include "ui/studies.h"

namespace thole::ui {
namespace {

constexpr long kStepsPerFrame = 6000;  // some milliseconds
struct Length {
  const char* key = "";
  const char* label = "";
  double record_h = 1.0;
};
constexpr Length kLengths[] = {{"quarter", "15 min", 0.25}, {"one", "1 h", 1.0}, {"four", "4 h", 4.0}};
struct Pace {
  const char* key = "";
  const char* label = "";
  double ratio = 1.0;  // to real time
};
constexpr Pace kPaces[] = {{"slow", "10 ×", 10.0}, {"usual", "60 ×", 60.0}, {"fast", "300 ×", 300.0}};

template <class Row, std::size_t kCount>
void pick(Context& ui, std::string_view id, std::string_view name, const Row (&rows)[kCount],
          std::size_t& taken) {
  std::vector<SemOption> options;
  for (const Row& row : rows) options.push_back({row.key, row.label});
  const int pressed = segments(ui, id, name, options, static_cast<int>(taken));
  if (pressed >= 0) taken = static_cast<std::size_t>(pressed);
  ui.sheet.space(kUnit);
}
constexpr double kTrack_s = 2.0;  // an hour of it; longer records keep as many points

void begin(Context& ui, WatchedHour& hour) {
  const Design& design = ui.document.design();
  hour.version = ui.document.version();
  hour.input = hold_run_input(design);
  hour.input.seed = hour.seed;
  hour.input.record_h = kLengths[hour.length].record_h;
  hour.input.track_s = kTrack_s * std::max(1.0, hour.input.record_h);
  hour.mean_load_N = design.hold.thrust_mean_N;
  hour.margin_factor = design.hold.margin_actual_factor;
  hour.asked_margin_factor = design.hold.margin_factor;
  hour.run.reset();
  hour.required.reset();
  hour.searching.reset();
  hour.playing = false;
  hour.running = std::make_unique<HoldSimulation>(hour.input);
}

// A slice of what is under way.
void advance(Context& ui, WatchedHour& hour) {
  if (hour.running) {
    ui.state.easing = true;
    if (hour.running->advance(kStepsPerFrame)) return;
    hour.run = hour.running->take();
    hour.running.reset();
    if (!hour.run->track.empty()) hour.at_s = hour.run->track.back().time_s;
  } else if (hour.searching) {
    ui.state.easing = true;
    if (hour.searching->advance(kStepsPerFrame)) return;
    hour.required = hour.searching->result();
    hour.searching.reset();
  }
}

void play(Context& ui, WatchedHour& hour) {
  const double end_s = hour.run->track.back().time_s;
  if (hour.playing) {
    hour.at_s += kPaces[hour.pace].ratio * static_cast<double>(ImGui::GetIO().DeltaTime);
    if (hour.at_s >= end_s) hour.playing = false;
    ui.state.easing = true;
  }
  hour.at_s = std::clamp(hour.at_s, 0.0, end_s);
  const std::string words = fixed(hour.at_s / 60.0, 1) + " min";
  if (const std::optional<double> minutes =
          slider(ui, {.id = "hour.at",
                      .name = "Moment shown",
                      .words = words,
                      .value_min = hour.at_s / 60.0,
                      .most_min = end_s / 60.0,
                      .step_min = 0.5})) {
    hour.at_s = std::clamp(60.0 * *minutes, 0.0, end_s);
    hour.playing = false;
  }
  pick(ui, "hour.pace", "How fast it plays", kPaces, hour.pace);
  if (button(ui, "hour.play", hour.playing ? "Pause" : "Play it")) {
    hour.playing = !hour.playing;
    if (hour.playing && hour.at_s >= end_s) hour.at_s = 0.0;
    ui.state.easing = true;
  }
}

void draw_statistics(Context& ui, const WatchedHour& hour) {
  const HoldStatistics& s = hour.run->statistics;
  const System system = ui.state.system;
  const Within list(ui.sheet, Role::list, "The hour in figures");
  const auto row = [&](std::string_view id, std::string_view label, const Shown& value) {
    const Within item(ui.sheet, Role::listitem);
    result_row(ui, id, label, value, "");
  };
  const auto share = [](double frac) { return Shown{fixed(100.0 * frac, 0), "%"}; };
  row("hour.half", "Within, half of the time", show(s.radius_half_m, "m", system));
  row("hour.most", "Within, 95 % of the time", show(s.radius_95_m, "m", system));
  row("hour.max", "Farthest", show(s.radius_max_m, "m", system));
  row("hour.within", "Within " + show(hour.input.tolerance_m, "m", system).text(),
      share(s.within_frac));
  row("hour.lost", "Spot lost",
      s.lost ? Shown{"after " + fixed(s.lost_at_s / 60.0, 1), "min"} : Shown{"no", ""});
  row("hour.full", "All thrust wanted", share(s.full_frac));
  row("hour.current", "Mean current", show(s.current_mean_A, "A", system));
  row("hour.energy", "Energy in an hour", show(s.energy_per_hour_Wh, "Wh", system));
  row("hour.hunting", "Thrust spent over thrust needed", {fixed(s.hunting_ratio, 2), ""});
  row("hour.steering", "Steering", {fixed(s.steering_deg_per_s, 1), "°/s"});
  row("hour.heading", "Heading off the wind",
      {fixed(s.heading_mean_deg, 0) + " ± " + fixed(s.heading_deviation_deg, 0), "°"});
}

void draw_margin(Context& ui, WatchedHour& hour) {
  const System system = ui.state.system;
  const std::string asked = show(hour.input.tolerance_m, "m", system).text() + ", " +
                            fixed(100.0 * hour.input.tolerance_frac, 0) + " % of the time";
  heading(ui, 2, "Thrust over mean load");
  if (hour.searching) {
    progress_bar(ui, "hour.searching", "Looking for the least thrust", hour.searching->done_frac());
    if (button(ui, "hour.stop-search", "Stop", Weight::quiet)) hour.searching.reset();
    return;
  }
  if (!hour.required) {
    note(ui, "The rules are 1.4 where it may wander, 1.6 to hold firm, 2.0 in gusts off the land. The "
             "simulation says what your own tolerance takes.");
    if (button(ui, "hour.margin", "Find what " + asked + " takes")) {
      hour.searching = std::make_unique<MarginSearch>(hour.input, hour.mean_load_N);
      ui.state.easing = true;
    }
    return;
  }
  const Within list(ui.sheet, Role::list, "Margins");
  const auto row = [&](std::string_view id, std::string_view label, const std::string& value) {
    const Within item(ui.sheet, Role::listitem);
    result_row(ui, id, label, {value, ""}, "");
  };
  const RequiredMargin& required = *hour.required;
  row("margin.found", "For " + asked,
      required.found ? fixed(required.margin_factor, 2) + ", " +
                           show(required.thrust_N, "N", system).text()
                     : "not even four times");
  row("margin.own", "This motor", fixed(hour.margin_factor, 2));
  row("margin.asked", "Asked for on this page", fixed(hour.asked_margin_factor, 2));
  row("margin.loose", "Rule, may wander", "1.40");
  row("margin.firm", "Rule, holds firm", "1.60");
  row("margin.gusty", "Rule, gusts off the land", "2.00");
  if (!required.found) note(ui, "At four times the mean load the receiver's error still spoils it.");
}

void draw_run(Context& ui, WatchedHour& hour) {
  const HoldRun& run = *hour.run;
  for (const Issue& issue : run.issues) note(ui, issue.message);
  if (run.track.empty()) return;
  const float width = ui.sheet.width;
  figure(ui, "footprint", footprint_picture(run, hour.input, hour.at_s, ui.state.system),
         std::min(0.86f * width, 460.0f));
  play(ui, hour);
  note(ui, "Watch circles are within 30 % of other honest programs. Boat, motor, sea and law: see every "
           "step below.");
  draw_statistics(ui, hour);
  ui.sheet.space(kUnit);
  const float low = std::min(0.42f * width, 240.0f);
  figure(ui, "thrust-history", effort_picture(run, hour.input, Effort::thrust, hour.at_s, ui.state.system), low);
  figure(ui, "power-history", effort_picture(run, hour.input, Effort::power, hour.at_s, ui.state.system), low);
  if (hour.version == ui.document.version()) draw_margin(ui, hour);
  for (const Check& check : run.trace.checks) check_row(ui, check);
  if (disclosure(ui, "hour.steps", "Steps of the simulation")) {
    for (const Step& step : run.trace.steps) step_note(ui, step);
    for (const Assumption& assumption : run.trace.assumptions) body(ui, assumption.text);
  }
}

}  // namespace

void draw_watched_hour(Context& ui) {
  if (!ui.document.design().hold.motor_found) {
    note(ui, "There is no motor to watch: none in the catalogue holds this.");
    return;
  }
  WatchedHour& hour = studies_of(ui.state).hour;
  advance(ui, hour);
  if (hour.running) {
    progress_bar(ui, "hour.running", "Simulating", hour.running->done_frac());
    if (button(ui, "hour.stop", "Stop", Weight::quiet)) hour.running.reset();
    return;
  }
  note(ui, "Gusts number " + std::to_string(hour.seed) + "; the same number gives the same hour, here and by "
               "thole hold --seed.");
  const bool stale = hour.run && hour.version != ui.document.version();
  if (stale) note(ui, "The design has changed since this was simulated.");
  if (!hour.run || stale) {
    pick(ui, "hour.length", "For how long", kLengths, hour.length);
    if (button(ui, "hour.start", "Simulate it", Weight::primary)) begin(ui, hour);
    if (hour.running) ui.state.easing = true;
  } else if (button(ui, "hour.again", "The same with other gusts")) {
    ++hour.seed;
    begin(ui, hour);
    ui.state.easing = true;
  }
  if (hour.run) draw_run(ui, hour);
}

}  // namespace thole::ui
