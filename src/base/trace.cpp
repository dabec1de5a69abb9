#include "base/trace.h"

#include <cmath>
#include <limits>

namespace thole {
namespace {

int seriousness(Verdict verdict) {
  switch (verdict) {
    case Verdict::fail:
      return 3;
    case Verdict::not_evaluated:
      return 2;
    case Verdict::marginal:
      return 1;
    case Verdict::pass:
      return 0;
  }
  return 2;
}

}  // namespace

std::string cited(const Source& source) {
  return std::string(source.title) + ", " + std::string(source.locator) + (source.confirmed ? "." : "; not confirmed.");
}

constinit thread_local bool Untold::here = false;

void Untold::run(void (*call)(const void*), const void* write) {
  if (!here) call(write);
}

Term::Term(const char* of_symbol, double of_value, const char* of_unit, const char* of_meaning)
    : symbol(of_symbol), value(of_value), unit(of_unit), meaning(of_meaning) {}
Term::Term(std::string_view of_symbol, double of_value, std::string_view of_unit,
           std::string_view of_meaning)
    : symbol(of_symbol), value(of_value), unit(of_unit), meaning(of_meaning) {}

double Check::utilisation() const {
  const double demand = comparison == Comparison::at_most ? actual : limit;
  const double capacity = comparison == Comparison::at_most ? limit : actual;
  if (!std::isfinite(demand) || !std::isfinite(capacity)) {
    return std::numeric_limits<double>::quiet_NaN();
  }
  if (capacity <= 0.0) {
    return demand <= 0.0 ? 0.0 : std::numeric_limits<double>::infinity();
  }
  return demand / capacity;
}

Verdict Check::verdict(double marginal_from) const {
  const double used = utilisation();
  if (std::isnan(used)) return Verdict::not_evaluated;
  if (used > 1.0) return annoys ? Verdict::marginal : Verdict::fail;
  return used >= marginal_from ? Verdict::marginal : Verdict::pass;
}

bool more_serious(const Check& a, const Check& b) {
  const int rank_a = seriousness(a.verdict());
  const int rank_b = seriousness(b.verdict());
  if (rank_a != rank_b) return rank_a > rank_b;
  return a.utilisation() > b.utilisation();  // false for NaN: the first of equals stays
}

const Check* Trace::governing() const {
  const Check* worst = nullptr;
  for (const Check& check : checks) {
    if (worst == nullptr || more_serious(check, *worst)) worst = &check;
  }
  return worst;
}

std::string_view word(Verdict verdict) {
  switch (verdict) {
    case Verdict::pass:
      return "passes";
    case Verdict::marginal:
      return "close";
    case Verdict::fail:
      return "fails";
    case Verdict::not_evaluated:
      return "not evaluated";
  }
  return "not evaluated";
}

}  // namespace thole
