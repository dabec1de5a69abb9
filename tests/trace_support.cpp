#include "trace_support.h"

#include <map>
#include <string>

#include "formula_eval.h"
#include "support.h"

namespace thole::test {

void check_formulas(const Trace& trace) {
  for (const Step& step : trace.steps) {
    std::map<std::string, double> terms;
    for (const Term& term : step.terms) terms[std::string(term.symbol)] = term.value;
    CAPTURE(step.id);
    const Evaluation shown = evaluate_formula(step.formula, terms);
    CHECK(shown.error == "");
    if (step.value == 0.0) {
      CHECK(near(shown.value, 0.0, 1e-12));
    } else {
      CHECK(shown.value == rel(step.value, 1e-9));
    }
    CHECK_FALSE(step.source->id.empty());
    CHECK_FALSE(step.label.empty());
  }
}

}  // namespace thole::test
