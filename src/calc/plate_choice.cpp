#include "calc/plate_choice.h"

#include <algorithm>

#include "base/order.h"

namespace thole {
namespace {

constexpr int kFewestStiffeners = 2;

}  // namespace

PlateTrial try_plate(Design design, const PlateStock& stock) {
  PlateTrial trial{.stock = stock};
  design.mount.plate = stock;
  const PlateStudy study = plate_study(design);
  trial.problem = study.solution.problem;
  if (!study.solution.solved) return trial;
  trial.serves = true;
  for (const Check& check : study.checks) {
    if (check.verdict() == Verdict::fail) trial.serves = false;
    if (check.id == "plate.frequency") {
      trial.shakes = check.verdict() == Verdict::fail;
      continue;
    }
    double& use = check.id == "plate.sag"               ? trial.sag_factor
                  : check.id.starts_with("plate.bolt") ? trial.bolts_factor
                                                       : trial.strength_factor;
    use = std::max(use, check.utilisation());
  }
  trial.frequency_Hz = study.frequency_Hz;
  trial.mass_kg = study.solution.mass_kg;
  return trial;
}

PlateChooser::PlateChooser(Design design, std::vector<PlateStock> stocks) : design_(std::move(design)) {
  for (PlateStock& stock : stocks)
    if (find_alloy(stock.alloy) != nullptr) stocks_.push_back(std::move(stock));
  stocks_ = sorted(std::move(stocks_), [](const PlateStock& a, const PlateStock& b) { return a.thickness_mm < b.thickness_mm; });
}

bool PlateChooser::advance() {
  if (trials_.size() == stocks_.size()) return false;
  trials_.push_back(try_plate(design_, stocks_[trials_.size()]));
  return trials_.size() < stocks_.size();
}

double PlateChooser::done_frac() const {
  return stocks_.empty() ? 1.0 : static_cast<double>(trials_.size()) / static_cast<double>(stocks_.size());
}

int PlateChooser::choice() const {
  int best = -1;
  for (std::size_t i = 0; i < trials_.size(); ++i) {
    if (!trials_[i].serves) continue;
    if (best < 0 || trials_[i].mass_kg < trials_[static_cast<std::size_t>(best)].mass_kg) best = static_cast<int>(i);
  }
  return best;
}

std::vector<std::string> remedies_without_plate(const Design& design) {
  std::vector<std::string> says;
  if (!design.job.mount.chocked.value) says.push_back("Rest the stowed motor's outer end on a chock.");
  says.push_back("Set stiffeners on the plate, fore and aft.");
  says.push_back("Make the base longer: rows of bolts farther apart.");
  says.push_back("Stock a thicker plate, or a stronger alloy.");
  says.push_back("Set a beam under the deck, fit larger and thicker backing.");
  says.push_back("Choose a place with more deck under the plate, or less overhang.");
  return says;
}

std::vector<Change> changes_without_plate(const Design& design) {
  std::vector<Change> changes;
  const Mount& job = design.job.mount;
  if (!job.chocked.value) changes.push_back({.field = "mount.chocked", .value = 1.0, .label = "Chock the motor's outer end"});
  if (!job.stiffener_count.known() || job.stiffener_count.value < kFewestStiffeners)
    changes.push_back({.field = "mount.stiffener_count", .value = 1.0 * kFewestStiffeners, .label = "Set two stiffeners"});
  return changes;
}

}  // namespace thole
