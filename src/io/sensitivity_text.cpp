#include "io/sensitivity_text.h"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "io/figures.h"
#include "io/table_text.h"
#include "job/fields.h"

namespace thole {
namespace {

using Json = nlohmann::ordered_json;

constexpr double kBarSigns_count = 24.0;

Json number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

std::string key_of(const std::string& path) { return path.substr(path.find('.') + 1); }

std::string label_of(const std::string& path) {
  const Field* field = find_field(path);
  return field != nullptr ? std::string(field->label) : path;
}

}  // namespace

std::string sensitivity_text(const SensitivityResult& result, const Output& output, System system) {
  const std::string_view unit = shown_unit(output.key);
  const auto said = [&](double value) { return show(value, unit, system).text(); };
  std::string text = std::string(label_of(output)) + ": " + said(result.answer) + ", likely " +
                     said(result.low) + " to " + said(result.high) + "\n\n";
  if (result.swings.empty()) return text + "No value of this job moves it.\n";
  TextTable table{.rows = {{"", "from", "low", "high", "at low", "at high", ""}},
                  .right = {false, false, true, true, true, true, false}};
  const double widest = result.swings.front().width;
  for (const Swing& swing : result.swings) {
    const std::string key = key_of(swing.field);
    const auto value = [&](double number) { return show(number, shown_unit(key), system).text(); };
    const auto signs =
        static_cast<std::size_t>(std::lround(kBarSigns_count * swing.width / widest));
    table.rows.push_back({label_of(swing.field), std::string(origin_word(swing.origin)),
                          value(swing.low), value(swing.high), said(swing.at_low),
                          said(swing.at_high), std::string(std::max<std::size_t>(signs, 1), '#')});
  }
  return text + table_text(table) +
         "\nEach value alone, at the ends between which nineteen of twenty true ones lie; parts "
         "stay as chosen.\n";
}

std::string write_sensitivity(const SensitivityResult& result, const Output& output) {
  Json swings = Json::array();
  for (const Swing& swing : result.swings) {
    swings.push_back({{"field", swing.field},
                      {"label", label_of(swing.field)},
                      {"origin", std::string(origin_word(swing.origin))},
                      {"value", number(swing.value)},
                      {"low", number(swing.low)},
                      {"high", number(swing.high)},
                      {"at_low", number(swing.at_low)},
                      {"at_high", number(swing.at_high)},
                      {"width", number(swing.width)},
                      {"why", std::string(swing.why)},
                      {"source", std::string(swing.source->id)}});
  }
  const Json out = {{"output", output.path()},         {"label", std::string(label_of(output))},
                    {"answer", number(result.answer)}, {"low", number(result.low)},
                    {"high", number(result.high)},     {"swings", std::move(swings)}};
  return out.dump(2) + "\n";
}

}  // namespace thole
