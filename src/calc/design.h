#pragma once

// The whole program is one function: evaluate(), and with what takes longer proven() (proof.h). Screen,
// command line, job pack and link are readers of the Design that they return. Only design.cpp knows the order of the stages.

#include <array>
#include <memory>
#include <string>
#include <vector>

#include "base/issue.h"
#include "base/trace.h"
#include "calc/bank/bank.h"
#include "calc/charge/charge.h"
#include "calc/control/control.h"
#include "calc/feeder/feeder.h"
#include "calc/hold/hold.h"
#include "calc/locker/locker.h"
#include "calc/mount/mount.h"
#include "calc/parts/parts.h"
#include "calc/protection/protection.h"
#include "calc/shaft/shaft.h"
#include "calc/trim/trim.h"
#include "job/catalogue.h"
#include "job/job.h"

namespace thole {

enum class Fit { fits, fits_with_changes, does_not_fit, not_evaluated };

std::string_view word(Fit fit);  // "fits", "fits with changes", "does not fit", "not evaluated"

struct Outcome {
  Fit fit = Fit::not_evaluated;
  std::string governing{};        // id of the check that governs
  std::vector<Change> changes{};  // what makes it fit, tried by the engine; empty when nothing does
  bool proven = false;            // the proof had its say
};

struct Design {
  Job job{};  // full: every value with its origin
  HoldResult hold{};
  ShaftResult shaft{};
  BankResult bank{};
  FeederResult feeder{};
  TypedPaths typed{};             // of a feeder that was typed piece by piece, for its protection
  ProtectionResult protection{};  // of the feeder; its trace stands at the end of the feeder's
  ChargeResult charge{};
  LockerResult locker{};
  MountResult mount{};
  TrimResult trim{};
  ControlResult control{};
  PartsResult parts{};
  Trace estimates{};
  Issues issues{};
  Outcome outcome{};

  // In the order of the stages, the estimates first.
  std::array<const Trace*, 11> traces() const;
  std::vector<const Check*> checks_by_seriousness() const;
  const Check* find_check(std::string_view id) const;
  const Step* find_step(std::string_view id) const;
};

// The same job and catalogue give the same design everywhere. Never fails: what is wrong with the
// job is in `issues`, what does not pass in the checks. With typed circuits, without the proof.
Design evaluate(const Job& job, const Catalogue& catalogue);

// What the hold stage was asked, with the motor that was chosen: for questions beyond evaluate(),
// such as other winds, other hours, the motion in time. Of the full job of a design.
HoldInput hold_input(const Design& design);

// What the feeder's protection and the charge stage were asked, likewise. Precondition: a bank, and
// for protection a feeder.
ProtectionInput protection_input(const Design& design);
ChargeInput charge_input(const Design& design);

// What the mount stage was asked, likewise; plates and bolts are the chosen ones.
MountInput mount_input(const Design& design);

// What the locker stage was asked, likewise.
LockerInput locker_input(const Design& design);

// What the bank stage was asked, were nothing but these blocks on the shelf and none of them named.
BankInput bank_input(const Design& design, std::vector<BatteryBlock> blocks);

// Whether a design comes with the steps of its arithmetic; all else is the same without.
enum class Telling { every_step, no_steps };

// What goes beyond the stages. The engine module must be small and has none of it.
struct PlateMade;
struct Beyond {
  // A feeder typed piece by piece in place of the fields' own, and what it is made of: typed_feeder.h.
  void (*typed_circuit)(FeederInput in, const Catalogue& catalogue, Design& design, FeederParts& parts) = nullptr;
  // The plate as it is made and what it weighs, where it is no plain rectangle: plate_made.h.
  PlateMade (*plate)(Design& design) = nullptr;
  // Adds checks that take too long for the stages: proof.h.
  void (*proof)(Design& design, const Catalogue& catalogue) = nullptr;
};

// evaluate() in slices, for a page that must draw in between: the stages at once, the search for
// what would make the job fit a trial at a time, and then the proof of what was found.
class Evaluation {
 public:
  // `before`: the outcome of the job as it was. While the search goes on and both do not pass as
  // they are, it stands for the answer. The catalogue must outlive the evaluation.
  Evaluation(const Job& job, const Catalogue& catalogue, const Outcome& before = {},
             Telling telling = Telling::every_step, Beyond beyond = {});
  ~Evaluation();
  Evaluation(Evaluation&&) noexcept;
  Evaluation& operator=(Evaluation&&) noexcept;

  // One more trial; false when the search is over, and design() what evaluate() gives.
  bool step();
  bool searching() const;
  // Whether what is left to do is the proof, and the search for what would pass it.
  bool proving() const;
  const Design& design() const { return design_; }

 private:
  struct Search;
  void conclude(std::vector<Change> changes);
  void judge();
  bool take_proof();
  bool rest();

  Design design_;
  std::unique_ptr<Search> search_{};
  Beyond beyond_{};  // its proof until it is asked
  Telling telling_ = Telling::every_step;
};

}  // namespace thole
