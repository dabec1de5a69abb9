#include "golden/golden.h"

#include "base/number.h"

namespace thole::test {

std::string golden_text(const Design& design) {
  std::string text = "verdict: " + std::string(word(design.outcome.fit)) + "\n";
  text += "governing: " + design.outcome.governing + "\n";
  for (const Change& change : design.outcome.changes) text += "change: " + change.label + "\n";
  for (const Output& output : all_outputs()) {
    text += output.path() + ": ";
    text += output.text != nullptr ? output.text(design) : significant(output.number(design), 6);
    text += "\n";
  }
  for (const Trace* trace : design.traces()) {
    for (const Check& check : trace->checks) {
      text += "check " + check.id + ": " + significant(check.actual, 6) + " against " +
              significant(check.limit, 6) + ", " + std::string(word(check.verdict())) + "\n";
    }
  }
  return text;
}

std::string golden_path(const std::string& job_id) {
  return std::string(THOLE_ROOT) + "/tests/golden/" + job_id + ".txt";
}

}  // namespace thole::test
