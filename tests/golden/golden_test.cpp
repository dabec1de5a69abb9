// Whole designs of the ready-made jobs, as they were last accepted. tools/golden rewrites the files and
// shows the difference; a test run never does. Regression, not proof: the figures are our own.

#include "golden/golden.h"

#include <cmath>
#include <cstdlib>
#include <fstream>
#include <set>
#include <sstream>

#include "io/presets.h"
#include "support.h"

namespace {

// Lines agree when their words do, and their numbers to 1e-5: six figures are printed, and the sixth
// may fall either way where platforms differ in the last bit of sin or pow.
bool agree(const std::string& a, const std::string& b) {
  std::istringstream words_a(a);
  std::istringstream words_b(b);
  std::string x;
  std::string y;
  for (;;) {
    const bool more_a = static_cast<bool>(words_a >> x);
    const bool more_b = static_cast<bool>(words_b >> y);
    if (more_a != more_b) return false;
    if (!more_a) return true;
    if (x == y) continue;
    char* end_x = nullptr;
    char* end_y = nullptr;
    const double number_x = std::strtod(x.c_str(), &end_x);
    const double number_y = std::strtod(y.c_str(), &end_y);
    if (end_x == x.c_str() || end_y == y.c_str() || std::string(end_x) != end_y) return false;
    if (std::abs(number_x - number_y) > 1e-5 * std::max(std::abs(number_x), std::abs(number_y)) &&
        std::abs(number_x - number_y) > 1e-12) {
      return false;
    }
  }
}

}  // namespace

TEST_SUITE("golden") {
  TEST_CASE("ready-made jobs") {
    for (const thole::ReadyJob& ready : thole::ready_jobs()) {
      CAPTURE(ready.id);
      std::ifstream file(thole::test::golden_path(ready.id));
      REQUIRE(file.good());
      std::istringstream actual(
          thole::test::golden_text(thole::evaluate(ready.job, thole::default_catalogue())));
      std::string was;
      std::string is;
      while (std::getline(file, was)) {
        REQUIRE(std::getline(actual, is));
        INFO("was: ", was, "\nis:  ", is);
        CHECK(agree(was, is));
      }
      CHECK_FALSE(std::getline(actual, is));
    }
  }

  TEST_CASE("the ready-made jobs show every verdict") {
    std::set<thole::Fit> seen;
    for (const thole::ReadyJob& ready : thole::ready_jobs()) {
      seen.insert(thole::evaluate(ready.job, thole::default_catalogue()).outcome.fit);
    }
    CHECK(thole::ready_jobs().size() >= 8);
    CHECK(seen.count(thole::Fit::fits) == 1);
    CHECK(seen.count(thole::Fit::fits_with_changes) == 1);
    CHECK(seen.count(thole::Fit::does_not_fit) == 1);
  }
}
