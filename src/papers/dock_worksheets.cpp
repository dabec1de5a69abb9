#include "papers/dock_worksheets.h"

#include <optional>
#include <string>

#include "base/number.h"
#include "calc/dock_study.h"
#include "io/figures.h"
#include "job/fields.h"
#include "papers/marks.h"

namespace thole {
namespace {

// What the worksheet comes to: its formula by hand, and the figure when the readings are known.
struct Outcome {
  std::string_view label{};
  std::string_view by_hand{};
  std::string figure{};
};

std::string within(double value, double spread, std::string_view unit, System system) {
  return show(value, unit, system).text() + " ± " + show(spread, unit, system).text();
}

Outcome outcome_of(const Design& design, std::size_t worksheet, System system) {
  if (worksheet == 2) {
    Outcome outcome{"Weight for a centimetre of sinkage", "10 × weight in kg / sinkage in mm, in kg for a centimetre"};
    if (const std::optional<ImmersionReading> reading = immersion_test_of(design)) {
      outcome.figure = within(reading->immersion_kg_per_cm, reading->immersion_spread_kg_per_cm, "kg_per_cm", system);
    }
    return outcome;
  }
  const bool roll = worksheet == 0;
  Outcome outcome{"Metacentric height",
                  roll ? "(0.80 × beam in m / period in s) squared, in m"
                       : "weight × shift × line / (boat's weight × foot's way), all in kg and m"};
  if (const std::optional<GmReading> reading = roll ? roll_test_of(design) : inclining_test_of(design)) {
    outcome.figure = within(reading->gm_m, reading->spread_m, "m", system);
  }
  return outcome;
}

void cell(Markup& out, std::string_view text) { out.line("td class=\"n fill\"", text); }

void reading_row(const Field& field, const Design& design, const Catalogue& catalogue, System system, Markup& out) {
  out.raw("<tr><th scope=\"row\">");
  out.text(field.label);
  const std::string unit = unit_text(shown_unit(field.key));
  if (system == System::metric && !unit.empty()) {
    out.raw(", ");
    out.text(unit);
  }
  out.raw("</th>");
  for (int column = 0; column < 3; ++column) cell(out, "");
  const bool known = field.access.origin(design.job) == Origin::given;
  cell(out, known ? shown_field(field, design.job, catalogue, system) : "");
  out.raw("</tr>\n");
}

void one_worksheet(const DockWorksheet& worksheet, std::size_t index, const Design& design, const Catalogue& catalogue,
                   System system, Markup& out) {
  out.line("h3", worksheet.title);
  out.line("p class=\"small\"", worksheet.how);
  out.raw(
      "<table class=\"worksheet\"><thead><tr><th scope=\"col\">Read</th><th scope=\"col\" class=\"n\">First</th>"
      "<th scope=\"col\" class=\"n\">Second</th><th scope=\"col\" class=\"n\">Third</th>"
      "<th scope=\"col\" class=\"n\">Mean</th></tr></thead><tbody>");
  for (const std::string_view path : worksheet.fields) {
    if (const Field* field = find_field(path)) reading_row(*field, design, catalogue, system, out);
  }
  const Outcome outcome = outcome_of(design, index, system);
  out.raw("<tr><th scope=\"row\" colspan=\"4\">");
  out.line("b", outcome.label);
  out.raw(" ");
  out.line("span class=\"small\"", outcome.by_hand);
  out.raw("</th>");
  cell(out, outcome.figure);
  out.raw("</tr></tbody></table>\n");
}

}  // namespace

void write_dock_worksheets(const Design& design, const Catalogue& catalogue, System system, Markup& out) {
  out.raw("<section>");
  out.line("h2", "Tests at the dock");
  out.raw("<ul class=\"cautions\"><li>");
  out.raw(caution_mark());
  out.line("span", dock_caution().text);
  out.raw("</li></ul>\n");
  const std::span<const DockWorksheet> worksheets = dock_worksheets();
  for (std::size_t i = 0; i < worksheets.size(); ++i) one_worksheet(worksheets[i], i, design, catalogue, system, out);
  out.raw("<div class=\"hand\"><p>Tested by</p><p>Date, place</p><p>Water, wind</p></div></section>\n");
}

}  // namespace thole
