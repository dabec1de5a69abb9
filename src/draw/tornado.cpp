#include "draw/tornado.h"

#include <algorithm>

#include "draw/sketch.h"
#include "io/figures.h"
#include "job/fields.h"

namespace thole {
namespace {

std::string_view key_of(std::string_view path) { return path.substr(path.find('.') + 1); }

}  // namespace

Drawing tornado_picture(const SensitivityResult& result, const Output& output, System system) {
  const std::size_t count = std::min(result.swings.size(), kTornadoRows);
  Drawing drawing{.title = "What moves it most", .to_scale = false};
  double least = result.answer;
  double most = result.answer;
  for (std::size_t i = 0; i < count; ++i) {
    const Swing& swing = result.swings[i];
    least = std::min({least, swing.at_low, swing.at_high});
    most = std::max({most, swing.at_low, swing.at_high});
  }
  const double span = std::max(most - least, 1e-12);
  const auto at = [&](double answer) { return (answer - least) / span; };
  const auto rows = static_cast<double>(count);
  drawing.low = {-0.06, -0.2};
  drawing.high = {1.06, rows + 0.75};
  const double base = at(result.answer);
  drawing.description =
      std::string(label_of(output)) + " " + show(result.answer, shown_unit(output.key), system).text() + ". ";
  for (std::size_t i = 0; i < count; ++i) {
    const Swing& swing = result.swings[i];
    const double low = rows - 1.0 - static_cast<double>(i);
    const auto bar = [&](double answer, Fill fill) {
      add_box(drawing, {std::min(base, at(answer)), low + 0.08}, {std::max(base, at(answer)), low + 0.42},
              Line::outline, fill);
    };
    bar(swing.at_low, Fill::paper);
    bar(swing.at_high, Fill::accent);
    add_polyline(drawing, {{base, low + 0.02}, {base, low + 0.48}}, Line::outline);
    const Field* field = find_field(swing.field);
    const std::string label(field != nullptr ? field->label : swing.field);
    const std::string_view unit = shown_unit(key_of(swing.field));
    const std::string from = show(swing.low, unit, system).text();
    const std::string to = show(swing.high, unit, system).text();
    add_label(drawing, {0.0, low + 0.68}, label + ", " + from + " to " + to, Align::left);
    drawing.description += label + " " + from + " to " + to + ": " +
                           show(swing.at_low, shown_unit(output.key), system).text() + " to " +
                           show(swing.at_high, shown_unit(output.key), system).text() + ". ";
  }
  add_label(drawing, {1.0, rows + 0.35},
            show(result.answer, shown_unit(output.key), system).text() + ", likely " +
                show(result.low, shown_unit(output.key), system).text() + " to " +
                show(result.high, shown_unit(output.key), system).text(),
            Align::right, TextRole::strong);
  return drawing;
}

}  // namespace thole
