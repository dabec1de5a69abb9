// The job sheet says everything that the design says, each thing where it belongs, and nothing that
// a browser would run or fetch.

#include "papers/job_sheet.h"

#include <cctype>
#include <string>
#include <string_view>
#include <vector>

#include "base/number.h"
#include "calc/design.h"
#include "calc/outputs.h"
#include "draw/chapters.h"
#include "io/figures.h"
#include "io/link.h"
#include "io/markup.h"
#include "io/presets.h"
#include "job/fields.h"
#include "support.h"

using namespace thole;

namespace {

bool has(std::string_view text, std::string_view part) { return text.find(part) != text.npos; }

std::size_t count(std::string_view text, std::string_view part) {
  std::size_t times = 0;
  for (std::size_t at = text.find(part); at != text.npos; at = text.find(part, at + 1)) ++times;
  return times;
}

// Without tags, each of them a blank: what is read.
std::string words(std::string_view html) {
  std::string out;
  bool inside = false;
  for (const char c : html) {
    if (c == '<') inside = true;
    const bool blank = inside || std::isspace(static_cast<unsigned char>(c)) != 0;
    if (!blank) out += c;
    if (blank && !out.empty() && out.back() != ' ') out += ' ';
    if (c == '>') inside = false;
  }
  return out;
}

// What stands under a chapter's heading.
std::string chapter_of(const std::string& sheet, std::string_view title) {
  const std::size_t from = sheet.find("<h2>" + std::string(title) + "</h2>");
  REQUIRE(from != sheet.npos);
  return sheet.substr(from, sheet.find("<h2>", from + 1) - from);
}

const Catalogue& catalogue() { return default_catalogue(); }

Job ready_job(std::string_view id) {
  for (const ReadyJob& ready : ready_jobs()) {
    if (ready.id == id) return ready.job;
  }
  return {};
}

std::string sheet_of(const Job& job, const SheetOptions& options = {}) {
  return job_sheet_html(evaluate(job, catalogue()), catalogue(), options);
}

}  // namespace

TEST_SUITE("derived") {
  TEST_CASE("every output, value, check, caution, assumption and source is on the sheet") {
    for (const ReadyJob& ready : ready_jobs()) {
      for (const System system : {System::metric, System::us}) {
        CAPTURE(ready.id);
        const Design design = evaluate(ready.job, catalogue());
        const std::string sheet = job_sheet_html(design, catalogue(), {.system = system});
        const std::string read = words(sheet);
        for (const Output& output : all_outputs()) {
          if (output.applies != nullptr && !output.applies(design)) continue;
          CAPTURE(output.path());
          const std::string shown =
              shown_output(output, design, catalogue().shop.currency, system).text();
          CHECK(has(words(chapter_of(sheet, find_chapter(output.stage)->title)),
                    words(escaped(std::string(label_of(output)) + " " + shown))));
        }
        for (const Field& field : all_fields()) {
          if (field.section.empty() || field.access.origin(design.job) == Origin::absent) continue;
          CAPTURE(field.path());
          CHECK(has(words(chapter_of(sheet, find_chapter(field.section)->title)),
                    escaped(std::string(field.label) + " " +
                            shown_field(field, design.job, catalogue(), system))));
        }
        for (const Check* check : design.checks_by_seriousness()) {
          CAPTURE(check->id);
          CHECK(has(read, std::string(word(check->verdict())) + " " + escaped(check->label)));
          CHECK(has(sheet, escaped(shown_source(check->source))));
          if (check->verdict() != Verdict::pass) CHECK(has(read, escaped(check->remedy)));
        }
        for (const Chapter& chapter : all_chapters()) {
          CAPTURE(chapter.key);
          if (!chapter.told(design)) continue;
          const std::string part = chapter_of(sheet, chapter.title);
          if (chapter.picture != nullptr) {
            CHECK(has(part, "<svg class=\"drawing\""));
            CHECK(
                has(part, escaped(chapter.picture(design, system).description) + "</figcaption>"));
          }
          if (chapter.trace == nullptr) continue;
          for (const Caution& caution : chapter.trace(design)->cautions) {
            CHECK(has(part, escaped(caution.text)));
          }
          for (const Assumption& assumption : chapter.trace(design)->assumptions) {
            CHECK(has(part, escaped(assumption.text)));
            CHECK(has(sheet, escaped(shown_source(assumption.source))));
          }
        }
        for (const Assumption& assumption : design.estimates.assumptions) {
          CHECK(has(read, escaped(assumption.text)));
        }
        for (const Change& change : design.outcome.changes) CHECK(has(read, escaped(change.label)));
        CHECK(has(read, words(escaped(design.job.title.value))));
      }
    }
  }

  TEST_CASE("the sheet begins with its verdict, and the worst check comes first") {
    const Job job = ready_job("dual-console-with-a-thin-cable");
    const Design design = evaluate(job, catalogue());
    const std::string read = words(sheet_of(job));
    const std::size_t verdict = read.find("Fits with changes");
    std::size_t at = read.find("All checks, worst first");
    REQUIRE(at != read.npos);
    CHECK(verdict < at);
    CHECK(design.checks_by_seriousness().front()->verdict() == Verdict::fail);
    for (const Check* check : design.checks_by_seriousness()) {
      CAPTURE(check->id);
      at = read.find(std::string(word(check->verdict())) + " " + escaped(check->label), at);
      REQUIRE(at != read.npos);
    }
  }

  TEST_CASE("parts and work add up to what they cost") {
    const Job job = ready_job("skiff-on-a-lake");
    const Design design = evaluate(job, catalogue());
    double parts_price = 0.0;
    double hours_h = 0.0;
    for (const PartLine& line : design.parts.lines) parts_price += line.price;
    for (const TaskLine& task : design.parts.tasks) hours_h += task.labour_h;
    const double work_price = hours_h * catalogue().shop.labour_per_h;
    const std::string read = words(chapter_of(sheet_of(job), "Parts and work"));
    CHECK(has(read, "Work, without tax " + fixed(hours_h, 1) + " " + fixed(work_price, 2)));
    CHECK(has(read, "All told, without tax " + fixed(parts_price + work_price, 2)));
    for (const PartLine& line : design.parts.lines) CHECK(has(read, escaped(shown_conductor(line.label))));
    for (const TaskLine& task : design.parts.tasks) CHECK(has(read, escaped(task.label)));
  }

  TEST_CASE("hostile words stay words") {
    Job job = ready_job("skiff-on-a-lake");
    job.title = {"<script>alert(1)</script><img src=x onerror=y>\"'&", Origin::given};
    const std::string sheet = sheet_of(
        job, {.address = "javascript:alert(1)//\"><script>", .date = "</dd><script>1</script>"});
    CHECK_FALSE(has(sheet, "<script"));
    CHECK_FALSE(has(sheet, "<img"));
    CHECK_FALSE(has(sheet, "href"));  // only a web address is made a link
    CHECK(
        has(sheet, "&lt;script&gt;alert(1)&lt;/script&gt;&lt;img src=x onerror=y&gt;&quot;&#39;"));
    CHECK(has(sheet, "javascript:alert(1)//&quot;&gt;&lt;script&gt;"));
    Catalogue shop = catalogue();
    shop.shop.currency = "<b>EUR";
    for (MotorClass& motor : shop.motors) motor.label = "<script>motor</script>";
    for (Sundry& sundry : shop.sundries) sundry.label = "<script>sundry</script>";
    for (Task& task : shop.tasks) task.label = "<script>task</script>";
    const std::string hostile = job_sheet_html(evaluate(job, shop), shop, {});
    CHECK_FALSE(has(hostile, "<script"));
    CHECK_FALSE(has(hostile, "<b>EUR"));
    CHECK(has(hostile, "&lt;script&gt;task"));
  }

  TEST_CASE("nothing on the sheet is run or fetched, and its style speaks of itself alone") {
    const Job job = ready_job("pilothouse-in-the-estuary");
    const std::string address = "https://boats.example/thole/#" + write_link(job);
    const std::string sheet = sheet_of(job, {.address = address});
    for (const std::string_view bad :
         {"<script", "<link", "<iframe", "<img", "<object", " src=", "url(", "@import",
          " style=", " onload", " onclick", " id="}) {
      CAPTURE(bad);
      CHECK_FALSE(has(sheet, bad));
    }
    CHECK(count(sheet, "http") == 2);  // the link's address: where it leads, and as it is read
    CHECK(count(sheet, "<svg class=\"qr\"") == 1);
    CHECK(count(sheet_of(job), "<svg class=\"qr\"") == 0);
    CHECK(count(sheet, "<main class=\"sheet\">") == 1);
    // Each rule but those of the paper and of the drawings begins at the sheet.
    const std::size_t from = sheet.find("<style>") + 7;
    const std::string style = sheet.substr(from, sheet.find("</style>") - from);
    std::size_t rules = 0;
    for (std::size_t open = style.find('{'); open != style.npos; open = style.find('{', open + 1)) {
      const std::size_t before = style.find_last_of("{}", open - 1);
      std::string selector = style.substr(before + 1, open - before - 1);
      while (!selector.empty() && selector.front() == '\n') selector.erase(0, 1);
      CAPTURE(selector);
      CHECK((selector.starts_with(".sheet") || selector.starts_with(".drawing") ||
             selector.starts_with("@") || selector == "body:has(>.sheet)"));
      ++rules;
    }
    CHECK(rules > 60);
  }

  TEST_CASE("a job that says nothing still makes a sheet") {
    const std::string sheet = sheet_of({});
    CHECK(has(words(sheet), "A motor for the bow"));
    Catalogue empty;
    const Design design = evaluate({}, empty);
    CHECK(has(job_sheet_html(design, empty, {}), "</html>"));
  }

  TEST_CASE("checks are said in the unit of their limit") {
    Check check{.actual = 0.041, .limit = 0.03};
    CHECK(shown_check(check, System::metric) == "4.1 of 3 %");
    check = {.actual = 1.5, .limit = 1.62, .unit = "m", .comparison = Comparison::at_least};
    CHECK(shown_check(check, System::metric) == "1.5 m, needs 1.62 m");
    check = {.actual = 12000.0, .limit = 9000.0, .unit = "W"};
    CHECK(shown_check(check, System::metric) == "12 kW of 9000 W");  // not "12 of 9000 W"
    check = {.actual = 100.01, .limit = 100.0, .unit = "A"};
    CHECK(shown_check(check, System::metric) == "100.01 of 100.00 A");
  }
}
