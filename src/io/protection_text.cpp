#include "io/protection_text.h"

#include <nlohmann/json.hpp>

#include "io/figures.h"
#include "io/table_text.h"

namespace thole {
namespace {

using Json = nlohmann::ordered_json;

Json range(const FaultRange& fault) { return {{"least_A", fault.least_A}, {"most_A", fault.most_A}}; }

}  // namespace

std::string protection_text(const ProtectionStudy& study, System system) {
  const auto amperes = [&](double current_A) { return show(current_A, "A", system).text(); };
  TextTable faults{.rows = {{"short circuit at", "old, flat, cold", "new, charged, warm"}}, .right = {false, true, true}};
  const FaultRanges& at = study.result.faults;
  for (const auto& [where, fault] : {std::pair{"the bank's posts", at.posts}, {"the stud", at.stud}, {"the plug", at.plug}})
    faults.rows.push_back({where, amperes(fault.least_A), amperes(fault.most_A)});
  TextTable findings{.rows = {{"", "", "has", "needs"}}, .right = {false, false, true, true}};
  for (const Finding& finding : study.result.findings) {
    const Check& check = finding.check;
    findings.rows.push_back({check.label, std::string(word(check.verdict())), show(check.actual, check.unit, system).text(),
                             show(check.limit, check.unit, system).text()});
  }
  std::string text = table_text(faults) + "\n" + table_text(findings);
  for (const Finding& finding : study.result.findings) {
    if (finding.check.utilisation() > 1.0 && !finding.check.remedy.empty())
      text += "\n" + finding.check.label + ": " + finding.check.remedy;
  }
  return text + "\nOpening times are of the device's class: yours follows its maker's curve. Starting and stalling draw three "
                "times the motor's current (common practice: two to four times, for less than a second).\n";
}

std::string write_protection(const ProtectionStudy& study) {
  Json findings = Json::array();
  for (const Finding& finding : study.result.findings) {
    const Check& check = finding.check;
    findings.push_back({{"id", check.id}, {"label", check.label}, {"verdict", word(check.verdict())}, {"actual", check.actual},
                        {"limit", check.limit}, {"unit", check.unit}, {"at_A", finding.at_A}, {"danger", !check.annoys},
                        {"source", check.source->id}, {"confirmed", check.source->confirmed}, {"remedy", check.remedy}});
  }
  const FaultRanges& at = study.result.faults;
  const Json out = {{"verdict", word(study.result.verdict)},
                    {"faults", {{"posts", range(at.posts)}, {"stud", range(at.stud)}, {"plug", range(at.plug)}}},
                    {"electronics_A", study.result.electronics_A},
                    {"findings", std::move(findings)}};
  return out.dump(2) + "\n";
}

}  // namespace thole
