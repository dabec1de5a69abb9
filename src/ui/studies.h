#pragma once

// Questions that take longer than a frame, asked on a page: the hour of holding and the margin it
// needs, limits from every side, what moves an answer most, the trial at sea, when a fuse opens, the
// feeder as a circuit, the plate under load. Each keeps its answer
// plate under load, the ways to charge. Each keeps its answer
// plate under load, the bank over a day. Each keeps its answer
// until the design changes, and says so then.
// plate under load, the feeder's field at the heading sensor. Each keeps its answer until the design
// changes, and says so then.

#include <cstdint>
#include <memory>
#include <optional>

#include "calc/cable_study.h"
#include "calc/feeder_circuit.h"
#include "calc/charging_study.h"
#include "calc/compass_study.h"
#include "calc/foredeck_study.h"
#include "calc/bank_day_study.h"
#include "calc/hold/rose.h"
#include "calc/locker_study.h"
#include "calc/length_study.h"
#include "calc/load_cases_study.h"
#include "calc/plate_choice.h"
#include "calc/plate_flex.h"
#include "calc/plate_study.h"
#include "calc/protection_study.h"
#include "calc/sensitivity.h"
#include "calc/snag_study.h"
#include "calc/studies.h"
#include "ui/widgets.h"

namespace thole::ui {

struct WatchedHour {
  int version = -1;  // of the document that was asked
  HoldRunInput input{};
  double mean_load_N = 0.0;
  double margin_factor = 0.0;  // of that design's motor
  double asked_margin_factor = 0.0;
  std::unique_ptr<HoldSimulation> running{};
  std::optional<HoldRun> run{};
  std::unique_ptr<MarginSearch> searching{};
  std::optional<RequiredMargin> required{};
  std::uint64_t seed = 1;
  std::size_t length = 1;  // of the record, among those offered
  std::size_t pace = 1;    // of playing
  double at_s = 0.0;  // what the picture shows
  bool playing = false;
};

struct RankedInputs {
  int version = -1;
  std::size_t output = 0;  // of those that may be asked for
  std::unique_ptr<SensitivityStudy> running{};
  std::optional<SensitivityResult> result{};
};

template <class Result>
struct Remembered {
  int version = -1;
  std::optional<Result> result{};
};

// The answer to the design of now; under a finger the last one stays.
template <class Result, class Make>
const Result& up_to_date(Context& ui, Remembered<Result>& kept, Make make) {
  const bool held = !ui.state.dragged.id.empty();
  if (!kept.result || (!held && kept.version != ui.document.version())) {
    kept.result = make(ui.document.design());
    kept.version = ui.document.version();
  }
  return *kept.result;
}

struct LoadedPlate {
  Remembered<PlateStudy> study{};
  std::size_t shown = 0;  // of the kinds of load
  std::optional<std::size_t> picked{};  // of all loads, one by one; instead
  bool to_scale = false;  // how the side view is bent
  std::string held{};     // id of what a finger moves on the picture
  PlatePoint from{};      // where that stood at the press
  PlatePoint to{};
  PlatePoint probe{};     // where stress and sag are read
  bool probed = false;
  std::optional<std::size_t> bolt{};  // picked; the one that pulls most until one is
};

struct ChosenStock {
  int version = -1;  // of the document that was asked
  std::unique_ptr<PlateChooser> running{};
};

struct LiveCircuit {
  Remembered<FeederCircuit> solved{};
  std::size_t shown = 2;  // of the moments
};

struct LockerView {
  Remembered<LockerStudy> study{};
  std::size_t shown = 0;  // of the arrangements that hold the bank
};

// The plan with the field's lines, in the units that it was drawn for.
struct HeadingView {
  CompassStudy study{};
  System system = System::metric;
  Drawing plan{};
};

struct ShaftStudies {
  Remembered<LengthStudy> length{};
  Remembered<SnagStudy> snag{};
  Remembered<ForedeckStudy> foredeck{};
};

struct ScrubbedDay {
  int version = -1;  // of the document that was asked
  std::unique_ptr<BankDayStudy> running{};
  std::optional<BankDay> result{};
  double at_h = 0.0;  // what the picture shows
};

struct Studies {
  WatchedHour hour{};
  RankedInputs ranked{};
  Remembered<RoseResult> limits{};
  Remembered<CalibrateResult> trial{};
  LoadedPlate plate{};
  ScrubbedDay bank_day{};
  Remembered<LoadsStudy> loads{};
  ChosenStock stock{};
  Remembered<FlexTest> flex{};
  Remembered<ProtectionStudy> protection{};
  LiveCircuit circuit{};
  Remembered<CableStudy> cable{};
  LockerView locker{};
  Remembered<ChargingStudy> charging{};
  Remembered<HeadingView> heading{};
  ShaftStudies shaft{};
};

// The parts of the hold page below its fields.
void draw_watched_hour(Context& ui);
void draw_limits(Context& ui);
void draw_ranked_inputs(Context& ui);
void draw_trial(Context& ui);

// Of the bank page.
void draw_locker_room(Context& ui);
void draw_near_bank(Context& ui);
void draw_held_down(Context& ui);

// Of the bank page.
void draw_bank_day(Context& ui);

// Of the feeder page.
void draw_opening_times(Context& ui);
void draw_live_circuit(Context& ui);
void draw_six_answers(Context& ui);

// Of the charge page.
void draw_locker_air(Context& ui);
void draw_tonight(Context& ui);
void draw_engine_way(Context& ui);
void draw_sun_way(Context& ui);

// Of the shaft page.
void draw_length_curve(Context& ui);
void draw_tube_bend(Context& ui);
void draw_snag(Context& ui);
void draw_foredeck_room(Context& ui);
void draw_bow_light(Context& ui);
void draw_stowing(Context& ui);
void draw_bow_elevation(Context& ui);

// Of the mount page.
void draw_loaded_plate(Context& ui);
void draw_plate_papers(Context& ui);  // to print and to cut by

// Of the control page.
void draw_heading_sensor(Context& ui);
void draw_loads(Context& ui);

// Of the trim page.
void draw_bank_slider(Context& ui);
void draw_weight_shares(Context& ui);
void draw_heights(Context& ui);
void draw_capacity_plate(Context& ui);
void draw_roll_test(Context& ui);
void draw_inclining_test(Context& ui);
void draw_immersion_test(Context& ui);
void draw_plate_choice(Context& ui);
void draw_flex_test(Context& ui);
void draw_joint_metals(Context& ui);

// Of this page; made on first use.
Studies& studies_of(UiState& state);

}  // namespace thole::ui
