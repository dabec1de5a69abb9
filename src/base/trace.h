#pragma once

// A result carries its reasons as plain data: steps of arithmetic, checks against limits, cautions.
// Every view (screen, report, command line) prints the same trace its own way.

#include <string>
#include <string_view>
#include <vector>

namespace thole {

// Where a figure comes from. Defined once in data/sources.h, listed in docs/sources.md.
struct Source {
  std::string_view id{};       // "dnv-st-0111-2021": edition in the key
  std::string_view title{};    // what a reader would look for on a shelf
  std::string_view locator{};  // clause, table or page
  bool confirmed = true;       // false: value recalled or disputed; every view says so
};

// As a sentence, which says it when the value is not confirmed.
std::string cited(const Source& source);

// Which of those constants, as traces carry it: they never end, so a pointer will do.
inline constexpr Source kNoSource{};
class SourceRef {
 public:
  constexpr SourceRef() = default;
  constexpr SourceRef(const Source& source) : at_(&source) {}
  SourceRef(const Source&&) = delete;
  constexpr operator const Source&() const { return *at_; }
  constexpr const Source* operator->() const { return at_; }

 private:
  const Source* at_ = &kNoSource;
};

// One quantity put into a formula. The views are of string literals.
struct Term {
  std::string_view symbol{};  // as written in the formula: "rho"
  double value = 0.0;
  std::string_view unit{};     // "" when dimensionless
  std::string_view meaning{};  // one line for a reader who is not an engineer

  Term() = default;
  // Out of line: over a thousand of them are written, and on the web each byte of it travels.
  Term(const char* symbol, double value, const char* unit, const char* meaning);
  Term(std::string_view symbol, double value, std::string_view unit, std::string_view meaning);
};

// One line of arithmetic. `formula` is plain arithmetic over the symbols of `terms`; a test
// evaluates the text and compares it with `value` (see tests/formula_eval.h for what it
// understands).
struct Step {
  std::string id{};            // "feeder.run.drop": stable, used by links and tests
  std::string label{};         // "Voltage lost in the run"
  std::string_view symbol{};   // "V_drop"
  std::string_view formula{};  // "I * r * L"
  std::vector<Term> terms{};
  double value = 0.0;
  std::string_view unit{};
  SourceRef source{};
  std::vector<std::string> assumptions{};
};

enum class Comparison { at_most, at_least };
enum class Verdict { pass, marginal, fail, not_evaluated };

// A change to the job that would mend a check: set a field, or let Thole choose it again (clear).
struct Change {
  std::string field{};  // path: "feeder.conductor"
  bool clear = false;   // true: forget the given value, so that a fitting one is chosen
  double value = 0.0;   // otherwise the new value, in the field's own unit
  std::string text{};   // for fields that hold text
  std::string label{};  // "Let Thole choose the cable"
};

// Steps are for a reader. Where nobody reads them, in a trial or while a slider moves, an Untold on the
// stack leaves them out: all numbers, checks and cautions are the same without.
class Untold {
 public:
  explicit Untold(bool untold = true) : before_(here) { here = before_ || untold; }
  ~Untold() { here = before_; }
  Untold(const Untold&) = delete;
  Untold& operator=(const Untold&) = delete;

 private:
  template <class Write>
  friend void tell(const Write& write);
  [[gnu::noinline]] static void run(void (*call)(const void*), const void* write);

  static constinit thread_local bool here;
  bool before_;
};

// Runs what writes steps down, where they are told. By its address and never inline: on the web it comes
// with the part of the program that the first picture does without.
template <class Write>
void tell(const Write& write) {
  Untold::run([](const void* it) { (*static_cast<const Write*>(it))(); }, &write);
}

// A demand held against a limit. Utilisation is 1 at the limit whichever way the comparison points,
// so that checks of different kinds rank together.
struct Check {
  std::string id{};
  std::string label{};
  double actual = 0.0;
  double limit = 0.0;
  std::string_view unit{};
  Comparison comparison = Comparison::at_most;
  SourceRef source{};       // of the limit, not of the arithmetic
  std::string remedy{};  // what the installer can change, in his words
  std::vector<Change> changes{};
  bool annoys = false;  // past its limit it annoys and endangers nobody: close at worst

  // Demand over capacity; NaN when either is not finite, infinite when there is no capacity at all.
  double utilisation() const;
  Verdict verdict(double marginal_from = 0.9) const;
};

// A danger named where it applies: what to do, and whose rule or licence it falls under.
struct Caution {
  std::string id{};
  std::string text{};
  SourceRef source{};
};

// Something taken for granted because nobody said otherwise. `field` names the job's field when
// there is one to type the true value into.
struct Assumption {
  std::string field{};
  std::string text{};
  SourceRef source{};
};

struct Trace {
  std::vector<Step> steps{};
  std::vector<Check> checks{};
  std::vector<Caution> cautions{};
  std::vector<Assumption> assumptions{};

  // The check furthest past its limit, or closest to it; one that was not evaluated comes before
  // every pass. Null when there is none.
  const Check* governing() const;
};

// True when `a` is the more serious of two checks (fail, not evaluated, marginal, pass; then by
// use).
bool more_serious(const Check& a, const Check& b);

std::string_view word(Verdict verdict);  // "passes", "close", "fails", "not evaluated"

}  // namespace thole
