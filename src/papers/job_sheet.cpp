#include "papers/job_sheet.h"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <vector>

#include "base/edition.h"
#include "base/number.h"
#include "calc/outputs.h"
#include "calc/joint_metals.h"
#include "calc/proof.h"
#include "calc/snag_study.h"
#include "data/sources.h"
#include "data/sources_mount.h"
#include "draw/bow_elevation.h"
#include "draw/chapters.h"
#include "draw/svg.h"
#include "io/figures.h"
#include "io/joint_text.h"
#include "io/markup.h"
#include "io/qr.h"
#include "papers/dock_worksheets.h"
#include "papers/job_sheet_style.h"
#include "papers/marks.h"

namespace thole {
namespace {

// Cells: a figure stands to the right; a phone has no room for the wide ones.
constexpr std::string_view kFigure = "td class=\"n\"";
constexpr std::string_view kWide = "td class=\"n wide\"";
constexpr std::string_view kRowHead = "th scope=\"row\"";
constexpr std::string_view kTableEnd = "</tbody></table>\n";

std::string capital(std::string_view text) {
  std::string out(text);
  const bool small = !out.empty() && out[0] >= 'a' && out[0] <= 'z';
  if (small) out[0] = static_cast<char>(out[0] - 'a' + 'A');
  return out;
}

// On paper nobody is "you".
std::string_view paper_word(Origin origin) {
  if (origin == Origin::given) return "given";
  return origin == Origin::chosen ? "chosen" : origin_word(origin);
}

// The chapter that tells what the estimates say of a path; what belongs nowhere comes in the first.
const Chapter& home_of(std::string_view path) {
  const Chapter* chapter = find_chapter(path.substr(0, path.find('.')));
  return chapter == nullptr ? all_chapters().front() : *chapter;
}

// What the estimates and the chapter's own stage have to tell, one after the other.
template <class Item, class PathOf, class Tell>
void tell_all(const Design& design, const Chapter& chapter, std::vector<Item> Trace::*list,
              PathOf path_of, Tell tell) {
  for (const Item& item : design.estimates.*list) {
    if (&home_of(path_of(item)) == &chapter) tell(item);
  }
  if (chapter.trace == nullptr) return;
  for (const Item& item : chapter.trace(design)->*list) tell(item);
}

class SheetWriter {
 public:
  SheetWriter(const Design& design, const Catalogue& catalogue, const SheetOptions& options)
      : design_(design),
        catalogue_(catalogue),
        options_(options),
        foredeck_study_(foredeck_study(design)),
        snag_study_(snag_study(design)),
        title_(design.job.title.value.empty() ? "A motor for the bow" : design.job.title.value) {}

  std::string page() {
    out_.raw(
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
        "<meta name=\"viewport\" content=\"width=device-width,initial-scale=1\">\n<title>Job "
        "sheet: ");
    out_.text(title_);
    out_.raw("</title>\n<style>");
    out_.raw(svg_style());
    out_.raw(kSheetStyle);
    out_.raw("</style>\n</head>\n<body>\n<main class=\"sheet\">");
    title_block();
    verdict();
    headlines();
    checks();
    for (const Chapter& chapter : all_chapters()) {
      if (chapter.told(design_)) section(chapter);
    }
    write_dock_worksheets(design_, catalogue_, options_.system, out_);
    sources();
    foot();
    out_.raw("</main>\n</body>\n</html>\n");
    return out_.take();
  }

 private:
  std::string shown(double value, std::string_view unit) const {
    return show(value, unit, options_.system).text();
  }

  // A term and what it is, in a list of such.
  void pair(std::string_view term, std::string_view value) {
    out_.raw("<div>");
    out_.line("dt", term);
    out_.line("dd", value);
    out_.raw("</div>\n");
  }

  // --- the head ---------------------------------------------------------------------------------

  void title_block() {
    const Boat& boat = design_.job.boat;
    out_.raw(
        "<header class=\"title\"><div class=\"name\"><p class=\"kind\">Job sheet: motor at the "
        "bow</p>\n");
    out_.line("h1", title_);
    out_.raw("<p>");
    out_.text(shown(boat.length_m.value, "m"));
    out_.raw(" long, ");
    out_.text(shown(boat.displacement_kg.value, "kg"));
    out_.raw(" loaded, bow ");
    out_.text(shown(boat.bow_height_m.value, "m"));
    out_.raw(" above water</p></div>\n");
    const Qr qr = options_.address.empty() ? Qr{} : make_qr(options_.address);
    if (qr.side > 0) {
      out_.raw("<figure class=\"code\">");
      out_.raw(write_svg(qr, "QR code of this job's link"));
      out_.raw("<figcaption>opens this job</figcaption></figure>\n");
    }
    out_.raw("<dl class=\"block\">");
    pair("Date", options_.date);
    pair("Units", options_.system == System::us ? "US" : "metric");
    pair("Computed by", "Thole, edition " + std::to_string(kEngineEdition));
    pair("Wind asked for", shown(design_.job.water.wind_mps.value, "mps"));
    out_.raw("</dl></header>\n");
  }

  void verdict() {
    const Outcome& outcome = design_.outcome;
    const std::string_view kind = class_of(outcome.fit);
    out_.raw("<section class=\"verdict\"><span class=\"sign ");
    out_.raw(kind);
    out_.raw("\">");
    out_.raw(mark(outcome.fit));
    out_.raw("</span><div><p class=\"answer ");
    out_.raw(kind);
    out_.raw("\">");
    out_.text(capital(word(outcome.fit)));
    out_.raw("</p>\n");
    if (const Check* check = design_.find_check(outcome.governing)) {
      out_.raw("<p>Governed by: ");
      out_.text(check->label);
      out_.raw(", ");
      out_.text(shown_check(*check, options_.system));
      out_.raw(".</p>\n");
      if (outcome.fit == Fit::does_not_fit || outcome.fit == Fit::not_evaluated) {
        out_.line("p", check->remedy);
      }
    }
    if (!outcome.changes.empty()) {
      out_.raw("<p>With these changes every check passes:</p><ul>");
      for (const Change& change : outcome.changes) out_.line("li", change.label);
      out_.raw("</ul>\n");
    }
    if (!design_.issues.empty()) {
      out_.raw("<p>Of the job as it was given:</p><ul>");
      for (const Issue& issue : design_.issues) out_.line("li", issue.message);
      out_.raw("</ul>\n");
    }
    out_.raw("</div></section>\n");
  }

  std::string output_text(const Output& output) const {
    return shown_output(output, design_, catalogue_.shop.currency, options_.system).text();
  }

  void headlines() {
    out_.raw("<dl class=\"heads\">");
    for (const Chapter& chapter : all_chapters()) {
      const Output* output = find_output(chapter.headline);
      if (output != nullptr) pair(label_of(*output), output_text(*output));
    }
    out_.raw("</dl>\n");
  }

  // --- sources: numbered in the order of their first mention
  // --------------------------------------

  void bracketed(std::size_t number) {
    out_.raw("<span class=\"ref\">[");
    out_.raw(std::to_string(number));
    out_.raw("]</span>");
  }

  void reference(const Source& source) {
    const auto found = std::find_if(cited_.begin(), cited_.end(),
                                    [&](const Source* other) { return other->id == source.id; });
    const auto number = static_cast<std::size_t>(found - cited_.begin()) + 1;
    if (found == cited_.end()) cited_.push_back(&source);
    bracketed(number);
  }

  void sources() {
    out_.raw(
        "<section><h2>Sources</h2>\n<p class=\"small\">What the numbers in brackets stand for. "
        "\"Not confirmed\": recalled or disputed; hold it against the document before relying on "
        "it.</p>\n<ul class=\"sources\">");
    for (std::size_t i = 0; i < cited_.size(); ++i) {
      out_.raw("<li>");
      bracketed(i + 1);
      out_.line("span", shown_source(*cited_[i]));
      out_.raw("</li>");
    }
    out_.raw("</ul></section>\n");
  }

  // --- checks -----------------------------------------------------------------------------------

  void check(const Check& check) {
    const Verdict verdict = check.verdict();
    const std::string_view kind = class_of(verdict);
    const double used = check.utilisation();
    const bool held = verdict != Verdict::pass && !check.remedy.empty();
    out_.raw(held ? "<tbody><tr class=\"held\"><td class=\"" : "<tbody><tr><td class=\"");
    out_.raw(kind);
    out_.raw("\">");
    out_.raw(mark(verdict));
    out_.raw(" ");
    out_.raw(word(verdict));
    out_.raw("</td>");
    out_.line(kRowHead, check.label);
    out_.line(kFigure,
              verdict == Verdict::not_evaluated ? "-" : shown_check(check, options_.system));
    out_.raw("<td class=\"use ");
    out_.raw(kind);
    out_.raw("\">");
    utilisation_bar(out_, check);
    out_.line("span", std::isfinite(used) ? fixed(100.0 * std::max(used, 0.0), 0) + " %" : "-");
    out_.raw("</td><td class=\"n\">");
    reference(check.source);
    out_.raw("</td></tr>");
    if (held) {
      out_.raw("<tr><td></td>");
      out_.line("td colspan=\"4\" class=\"small\"", check.remedy);
      out_.raw("</tr>");
    }
    out_.raw("</tbody>\n");
  }

  void checks() {
    out_.raw(
        "<h2>All checks, worst first</h2>\n<p class=\"small\">Each bar shows how much of its limit "
        "is used; the stroke is the limit. Numbers in brackets name the source of the limit, at "
        "the end.</p>\n<table class=\"checks\"><thead><tr><th scope=\"col\">Verdict</th>"
        "<th scope=\"col\">Check</th><th scope=\"col\" class=\"n\">Is, and its limit</th>"
        "<th scope=\"col\">Use of the limit</th>"
        "<th scope=\"col\" class=\"n\"><span class=\"wide\">Source</span></th></tr></thead>\n");
    for (const Check* each : design_.checks_by_seriousness()) check(*each);
    out_.raw("</table>\n");
  }

  // --- chapters ---------------------------------------------------------------------------------

  void section(const Chapter& chapter) {
    out_.raw("<section>");
    out_.line("h2", chapter.title);
    out_.line("p class=\"small\"", chapter.lead);
    if (chapter.picture == nullptr) {
      results(chapter, false);
    } else {
      out_.raw("<div class=\"beside\"><figure>");
      const Drawing drawing = chapter.picture(design_, options_.system);
      out_.raw(write_svg(drawing, {.width_px = 400.0}));
      out_.line("figcaption", drawing.description);
      out_.raw("</figure>\n");
      results(chapter, true);
      out_.raw("</div>\n");
    }
    if (chapter.key == "parts") parts();
    if (chapter.key == "foredeck") foredeck();
    if (chapter.key == "mount") joint();
    values(chapter);
    cautions(chapter);
    assumptions(chapter);
    out_.raw("</section>\n");
  }

  // Beside a picture a table; without one, two columns of rows.
  void results(const Chapter& chapter, bool table) {
    out_.raw(table ? "<table><tbody>" : "<dl class=\"values\">");
    for (const Output& output : all_outputs()) {
      if (output.stage != chapter.key) continue;
      if (output.applies != nullptr && !output.applies(design_)) continue;
      out_.raw(table ? "<tr>" : "<div>");
      out_.line(table ? kRowHead : "dt", label_of(output));
      if (table) {
        out_.line(kFigure, output_text(output));
        out_.raw("<td class=\"n\">");
      } else {
        out_.raw("<dd>");
        out_.text(output_text(output));
        out_.raw(" ");
      }
      if (const Step* step = design_.find_step(step_of(output))) reference(step->source);
      out_.raw(table ? "</td></tr>\n" : "</dd></div>\n");
    }
    out_.raw(table ? kTableEnd : "</dl>\n");
  }

  void values(const Chapter& chapter) {
    const std::size_t before = out_.size();
    bool any = false;
    out_.raw("<h3>What it was reckoned with</h3><dl class=\"values\">");
    for (const Field& field : all_fields()) {
      if (field.section != chapter.key) continue;
      const Origin origin = field.access.origin(design_.job);
      if (origin == Origin::absent) continue;
      any = true;
      out_.raw("<div>");
      out_.line("dt", field.label);
      out_.raw("<dd>");
      out_.line(origin == Origin::given ? "b" : "span",
                shown_field(field, design_.job, catalogue_, options_.system));
      out_.line("span class=\"from\"", paper_word(origin));
      out_.raw("</dd></div>\n");
    }
    out_.raw("</dl>\n");
    if (!any) out_.forget_from(before);
  }

  void cautions(const Chapter& chapter) {
    const std::size_t before = out_.size();
    bool any = false;
    out_.raw("<h3>Cautions</h3><ul class=\"cautions\">");
    tell_all(
        design_, chapter, &Trace::cautions,
        [](const Caution& caution) -> std::string_view { return caution.id; },
        [&](const Caution& caution) {
          any = true;
          item(caution);
        });
    out_.raw("</ul>\n");
    if (!any) out_.forget_from(before);
  }

  void item(const Caution& caution) {
    out_.raw("<li>");
    out_.raw(caution_mark());
    out_.raw("<span>");
    told(caution.text, caution.source);
    out_.raw("</span></li>\n");
  }

  void assumptions(const Chapter& chapter) {
    const std::size_t before = out_.size();
    bool any = false;
    out_.raw("<h3>Taken for granted</h3><ul class=\"notes\">");
    tell_all(
        design_, chapter, &Trace::assumptions,
        [](const Assumption& assumption) -> std::string_view { return assumption.field; },
        [&](const Assumption& assumption) {
          any = true;
          out_.raw("<li>");
          if (const Field* field = find_field(assumption.field)) {
            out_.text(field->label);
            out_.raw(": ");
          }
          told(assumption.text, assumption.source);
          out_.raw("</li>\n");
        });
    out_.raw("</ul>\n");
    if (!any) out_.forget_from(before);
  }

  void told(std::string_view text, const Source& source) {
    out_.text(text);
    out_.raw(" ");
    reference(source);
  }

  // --- what the mount's joint is made of ----------------------------------------------------------

  void joint() {
    const JointMetals joint = joint_metals(design_);
    out_.raw("<h3>Metals that meet, and bedding</h3><ul class=\"notes\">");
    const auto line = [&](std::string_view text, const Source& source) {
      out_.raw("<li>");
      told(text, source);
      out_.raw("</li>\n");
    };
    for (const MetalPair& pair : joint.pairs) {
      line(pair_name(pair) + "; " + pair_said(pair, options_.system) + (pair.harmless() ? "." : (pair.kept_apart ? ", by " : "; what keeps them apart: ") + std::string(pair.by) + "."),
           pair.harmless() ? kGalvanicTable : kGalvanicLimit);
    }
    for (const Bedding& bedding : joint.beddings)
      line(std::string(bedding.task) + ": " + std::string(bedding.kind) + ". " + std::string(bedding.care), kCommonPractice);
    out_.raw("</ul>\n<ul class=\"cautions\">");
    for (const Caution& caution : joint.cautions) item(caution);
    out_.raw("</ul>\n");
  }

  // --- the foredeck: a study of its own; what is measured counts in the verdict -------------------

  void foredeck() {
    const ForedeckStudy& study = foredeck_study_;
    if (!study.room.problem.empty()) out_.line("p", study.room.problem);
    const Drawing drawing = bow_elevation(design_, options_.system);
    out_.raw("<figure>");
    out_.raw(write_svg(drawing, {.width_px = 520.0}));
    out_.line("figcaption", drawing.description);
    out_.raw("</figure>\n<h3>To be measured on board</h3><table><tbody>");
    std::vector<const Check*> checks = study.checks();
    const SnagStudy& snag = snag_study_;
    for (const Check& check : snag.trace.checks) checks.push_back(&check);
    for (const Check* check : checks) {
      if (counts(*check)) continue;  // among the checks of the verdict
      out_.raw("<tr>");
      out_.line(kRowHead, check->label);
      out_.line(kFigure, check->verdict() == Verdict::not_evaluated ? "not measured yet" : std::string(word(check->verdict())) + ": " + shown_check(*check, options_.system));
      out_.raw("<td class=\"n\">");
      reference(check->source);
      out_.raw("</td></tr>\n");
    }
    out_.raw(kTableEnd);
    out_.raw("<h3>Cautions</h3><ul class=\"cautions\">");
    for (const Trace* trace : {&study.light.trace, &study.stowing.trace, &snag.trace}) {
      for (const Caution& caution : trace->cautions) item(caution);
    }
    out_.raw("</ul>\n");
  }

  // --- parts and work ---------------------------------------------------------------------------

  void part(const PartLine& line) {
    const bool whole = line.unit.empty() || line.unit == "m";
    out_.raw("<tr><td class=\"n\">");
    out_.text(Shown{fixed(line.quantity, whole ? 0 : 2), unit_text(line.unit)}.text());
    out_.raw("</td><th scope=\"row\">");
    out_.text(shown_conductor(line.label));
    if (!line.detail.empty()) {
      out_.raw(" ");
      out_.line("span class=\"small\"", line.detail);
    }
    out_.raw("</th>");
    out_.line(kWide, line.mass_kg > 0.0 ? shown(line.mass_kg, "kg") : "-");
    out_.line(kWide, std::to_string(line.lead_days));
    out_.line(kWide, fixed(line.unit_price, 2));
    out_.line(kFigure, fixed(line.price, 2));
    out_.raw("</tr>\n");
  }

  // Its label reaches over the number and the name.
  void sum_row(std::string_view label) {
    out_.raw("<tr class=\"sum\">");
    out_.line("th scope=\"row\" colspan=\"2\"", label);
  }
  void sum(double price) {
    out_.line(kFigure, fixed(price, 2));
    out_.raw("</tr>\n");
  }

  // The head of the last column, which is money.
  void currency_head() {
    out_.line("th scope=\"col\" class=\"n\"", catalogue_.shop.currency);
    out_.raw("</tr></thead>\n<tbody>");
  }

  void parts() {
    const PartsResult& parts = design_.parts;
    out_.raw(
        "<h3>Parts</h3><table><thead><tr><th scope=\"col\" class=\"n\">Number</th>"
        "<th scope=\"col\">Part</th><th scope=\"col\" class=\"n wide\">Weight</th>"
        "<th scope=\"col\" class=\"n wide\">Days</th><th scope=\"col\" class=\"n wide\">Each</th>");
    currency_head();
    for (const PartLine& line : parts.lines) part(line);
    sum_row("Parts, without tax");
    out_.line(kWide, shown(parts.mass_kg, "kg"));
    out_.line(kWide, std::to_string(parts.lead_days));
    out_.line(kWide, "");
    sum(parts.parts_price);
    out_.raw(kTableEnd);
    work();
  }

  void work() {
    const PartsResult& parts = design_.parts;
    out_.raw(
        "<h3>Work</h3><table><thead><tr><th scope=\"col\" class=\"n\">Number</th>"
        "<th scope=\"col\">Work</th><th scope=\"col\" class=\"n\">Hours</th>");
    currency_head();
    for (const TaskLine& task : parts.tasks) {
      out_.raw("<tr>");
      out_.line(kFigure, fixed(task.count, 0));
      out_.line(kRowHead, task.label);
      out_.line(kFigure, fixed(task.labour_h, 1));
      sum(task.labour_h * catalogue_.shop.labour_per_h);
    }
    sum_row("Work, without tax");
    out_.line(kFigure, fixed(parts.labour_h, 1));
    sum(parts.labour_price);
    sum_row("All told, without tax");
    out_.line(kFigure, "");
    sum(parts.total_price);
    out_.raw(kTableEnd);
  }

  // --- the end ----------------------------------------------------------------------------------

  void foot() {
    const std::string_view address = options_.address;
    if (!address.empty()) {
      out_.raw("<p class=\"address small\">This job, to open and change: ");
      // Only an address of the web is made a link: what it says comes from outside.
      const bool web = address.starts_with("https://") || address.starts_with("http://");
      if (web) {
        out_.raw("<a");
        out_.attribute("href", address);
        out_.raw(">");
      }
      out_.text(address);
      out_.raw(web ? "</a></p>\n" : "</p>\n");
    }
    out_.raw("<div class=\"hand\"><p>Fitted by</p><p>Date</p><p>Handed over to</p></div>\n");
  }

  const Design& design_;
  const Catalogue& catalogue_;
  const SheetOptions& options_;
  ForedeckStudy foredeck_study_{};  // kept: sources are cited by address
  SnagStudy snag_study_{};
  std::string title_{};
  std::vector<const Source*> cited_{};
  Markup out_{};
};

}  // namespace

std::string job_sheet_html(const Design& design, const Catalogue& catalogue,
                           const SheetOptions& options) {
  return SheetWriter(design, catalogue, options).page();
}

}  // namespace thole
