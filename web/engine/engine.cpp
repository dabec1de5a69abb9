// The engine alone as WebAssembly: text in, text out. index.mjs beside it is its only caller. It
// needs nothing of a browser and nothing of Emscripten's script: a bare module with its own memory.
//
// Every answer is {"issues": [...], "value": ...}; value is null when the input is not sound, and
// then the issues say why. It stays in place until the next call.

#include <emscripten/emscripten.h>

#include <string>
#include <string_view>
#include <utility>

#include "base/edition.h"
#include "calc/design.h"
#include "io/catalogue_json.h"
#include "io/design_json.h"
#include "io/issues_json.h"
#include "io/job_json.h"
#include "io/link.h"
#include "io/presets.h"

namespace {

using namespace thole;

std::string last_answer;

// `value` is JSON.
const char* answer(const Issues& issues, std::string_view value) {
  last_answer = "{\"issues\": " + write_issues(issues) + ", \"value\": ";
  last_answer += has_error(issues) ? std::string_view("null") : value;
  last_answer += "}";
  return last_answer.c_str();
}

// A shop's own parts with the boat types and waters that it does not bring.
CatalogueRead catalogue_of(std::string_view text) {
  CatalogueRead read = read_catalogue(text);
  add_default_presets(read.catalogue);
  return read;
}

// The stages alone: what goes beyond them would double the module.
Design stages_of(const Job& job, const Catalogue& catalogue) {
  Evaluation evaluation(job, catalogue);
  while (evaluation.step()) {
  }
  return evaluation.design();
}

}  // namespace

extern "C" {

// Without a text of its own: the built-in catalogue.
EMSCRIPTEN_KEEPALIVE const char* thole_evaluate(const char* job_text, const char* catalogue_text) {
  const JobRead job = read_job(job_text);
  if (*catalogue_text == '\0') {
    return answer(job.issues, write_design(stages_of(job.job, default_catalogue())));
  }
  const CatalogueRead shop = catalogue_of(catalogue_text);
  Issues issues = job.issues;
  issues.insert(issues.end(), shop.issues.begin(), shop.issues.end());
  return answer(issues, write_design(stages_of(job.job, shop.catalogue)));
}

EMSCRIPTEN_KEEPALIVE const char* thole_link(const char* job_text) {
  const JobRead read = read_job(job_text);
  return answer(read.issues, "\"" + write_link(read.job) + "\"");  // its letters need no escape
}

EMSCRIPTEN_KEEPALIVE const char* thole_unlink(const char* link) {
  const LinkRead read = read_link(link);
  return answer(read.issues, write_job(read.job));
}

EMSCRIPTEN_KEEPALIVE const char* thole_version() {
  return answer({}, "{\"edition\": " + std::to_string(kEngineEdition) +
                        ", \"schema\": " + std::to_string(kSchema) + "}");
}

}  // extern "C"
