// The native program: a job in, text out. Exit status 0 whatever the verdict, 2 when the input or
// the command is not sound.

#include <cstdio>
#include <fstream>
#include <iostream>
#include <iterator>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/edition.h"
#include "base/number.h"
#include "calc/design.h"
#include "io/catalogue_json.h"
#include "io/design_json.h"
#include "io/explain.h"
#include "io/issues_json.h"
#include "io/job_json.h"
#include "io/link.h"
#include "io/measure.h"
#include "io/presets.h"
#include "io/schema_json.h"
#include "job/fields.h"

namespace {

using namespace thole;

constexpr int kDone = 0;
constexpr int kBadInput = 2;

constexpr std::string_view kUsage =
    R"(thole: will a GPS-steered bow motor hold this boat, and what does it need?

usage:
  thole evaluate JOB.json          the design as JSON
  thole explain JOB.json [ID]      the steps and checks as text; ID names one, or a stage ("feeder")
  thole link JOB.json              the job as the part of an address after '#'
  thole unlink LINK                the job in a link, as JSON
  thole schema job|catalogue|preset
  thole --help | --version

  -                                in place of a file or a link: standard input
  --catalogue FILE                 a shop's own parts and prices (with evaluate, explain)

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
};

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

int run_evaluate(const Arguments& arguments) {
  const std::optional<Design> design = load_design(arguments);
  if (!design) return kBadInput;
  report(design->issues);
  std::cout << write_design(*design);
  return kDone;
}

// The id itself, or the stage that it begins with.
bool is_meant(std::string_view id, std::string_view wanted) {
  return wanted.empty() || id == wanted ||
         (id.starts_with(wanted) && id.size() > wanted.size() && id[wanted.size()] == '.');
}

int run_explain(const Arguments& arguments) {
  const std::optional<Design> design = load_design(arguments);
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
  std::cout << text;
  return kDone;
}

int run_link(const Arguments& arguments) {
  const Loaded loaded = load_job(arguments.words[1]);
  if (loaded.status == kDone) std::cout << write_link(loaded.job) << '\n';
  return loaded.status;
}

int run_unlink(const Arguments& arguments) {
  const std::string& word = arguments.words[1];
  const LinkRead read = read_link(word == "-" ? text_of(word).value_or("") : word);
  const int status = report(read.issues);
  if (status == kDone) std::cout << write_job(read.job);
  return status;
}

int run_schema(const Arguments& arguments) {
  const std::string& which = arguments.words[1];
  if (which == "job") {
    std::cout << job_schema();
  } else if (which == "catalogue") {
    std::cout << catalogue_schema();
  } else if (which == "preset") {
    std::cout << preset_schema();
  } else {
    return fail("There is a schema for \"job\", \"catalogue\" and \"preset\".");
  }
  return kDone;
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
    std::cout << "  " << field.key << ": " << field.label << ". " << field.help << '\n'
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
    {"evaluate", 2, 2, run_evaluate}, {"explain", 2, 3, run_explain}, {"link", 2, 2, run_link},
    {"unlink", 2, 2, run_unlink},     {"schema", 2, 2, run_schema},
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
    if (word == "--catalogue") {
      if (i + 1 >= argc) return fail("--catalogue needs the name of a file.");
      arguments.catalogue = argv[++i];
    } else {
      arguments.words.emplace_back(word);
    }
  }
  return run(arguments);
}
