#include "calc/charge/solar.h"

#include <cmath>
#include <limits>

#include "data/batteries.h"
#include "data/sources.h"
#include "data/sources_battery.h"

namespace thole {
namespace {

constexpr double kMonth_count = 30.0;  // days
constexpr double kDay_h = 24.0;

bool not_negative(double value) { return value >= 0.0 && std::isfinite(value); }
bool share(double value_frac) { return value_frac >= 0.0 && value_frac <= 1.0; }

// Slow charging lies in the absorption range of lead-acid, where it takes in the least.
double taken_in_frac(Chemistry chemistry) { return facts_of(chemistry).absorption_efficiency_frac; }

}  // namespace

double self_loss_per_month_frac(Chemistry chemistry) {
  switch (chemistry) {
    case Chemistry::flooded:
      return 0.10;
    case Chemistry::agm:
    case Chemistry::gel:
    case Chemistry::lifepo4:
      return 0.03;
  }
  return 0.10;
}

SolarResult solar(const SolarInput& in) {
  SolarResult result{};
  if (!(in.bank_Wh > 0.0 && std::isfinite(in.bank_Wh))) {
    result.problem = "The bank needs its watt-hours.";
  } else if (!not_negative(in.panel_W) || !not_negative(in.standing_W) ||
             !(in.full_sun_h >= 0.0 && in.full_sun_h <= kDay_h) || !share(in.derate_frac) ||
             !share(in.missing_frac)) {
    result.problem = "The panel needs its watts and the hours of full sun in a day.";
  }
  if (!result.problem.empty()) return result;
  const double taken_frac = taken_in_frac(in.chemistry);
  const double per_watt_Wh = in.full_sun_h * in.derate_frac * taken_frac;
  const double month_frac = self_loss_per_month_frac(in.chemistry);
  result.gain_Wh = in.panel_W * per_watt_Wh;
  result.self_loss_Wh = in.bank_Wh * month_frac / kMonth_count;
  result.standing_Wh = kDay_h * in.standing_W;
  result.net_Wh = result.gain_Wh - result.self_loss_Wh - result.standing_Wh;
  result.keeps_full = result.net_Wh >= 0.0;
  if (per_watt_Wh > 0.0) {
    result.panel_least_W = (result.self_loss_Wh + result.standing_Wh) / per_watt_Wh;
  }
  const double missing_Wh = in.missing_frac * in.bank_Wh;
  if (missing_Wh > 0.0) {
    result.days_to_full_count =
        result.net_Wh > 0.0 ? missing_Wh / result.net_Wh : std::numeric_limits<double>::infinity();
  }
  Trace& trace = result.trace;
  trace.steps.push_back({.id = "charge.solar_gain",
                         .label = "Sun into the bank, a day",
                         .symbol = "E",
                         .formula = "W_p * h * f * e_c",
                         .terms = {{"W_p", in.panel_W, "W", "panel, by its label"},
                                   {"h", in.full_sun_h, "h", "hours of full sun in the day"},
                                   {"f", in.derate_frac, "", "what is left lying flat and warm"},
                                   {"e_c", taken_frac, "", "share that the bank stores"}},
                         .value = result.gain_Wh,
                         .unit = "Wh",
                         .source = kCommonPractice});
  trace.steps.push_back({.id = "charge.self_loss",
                         .label = "Lost at rest, a day",
                         .symbol = "E_s",
                         .formula = "E_b * r / 30",
                         .terms = {{"E_b", in.bank_Wh, "Wh", "bank, by its label"},
                                   {"r", month_frac, "", "lost in a month, 25 °C"}},
                         .value = result.self_loss_Wh,
                         .unit = "Wh",
                         .source = kCommonPractice,
                         .assumptions = {"It about doubles with every 10 °C more."}});
  trace.steps.push_back({.id = "charge.solar_net",
                         .label = "Gained at rest, a day",
                         .symbol = "E_n",
                         .formula = "E - E_s - 24 * P",
                         .terms = {{"E", result.gain_Wh, "Wh", "sun into the bank"},
                                   {"E_s", result.self_loss_Wh, "Wh", "lost at rest"},
                                   {"P", in.standing_W, "W", "what draws on the bank at rest"}},
                         .value = result.net_Wh,
                         .unit = "Wh",
                         .source = kDefinition});
  trace.checks.push_back({.id = "charge.solar_keeps",
                          .label = "Sun against what the bank loses at rest",
                          .actual = result.gain_Wh,
                          .limit = result.self_loss_Wh + result.standing_Wh,
                          .unit = "Wh",
                          .comparison = Comparison::at_least,
                          .source = kCommonPractice,
                          .remedy = "Fit a larger panel, or switch off what draws at rest."});
  trace.cautions.push_back({"charge.solar_controller",
                            "Put a charge controller made for the chemistry between panel and "
                            "bank, one that steps up to the bank's volts, and fuse its lead.",
                            kCommonPractice});
  return result;
}

}  // namespace thole
