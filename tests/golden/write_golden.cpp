// Rewrites tests/golden/*.txt; tools/golden runs it and shows what changed.

#include <fstream>

#include "golden/golden.h"
#include "io/presets.h"

int main() {
  for (const thole::ReadyJob& ready : thole::ready_jobs()) {
    std::ofstream file(thole::test::golden_path(ready.id));
    file << thole::test::golden_text(thole::evaluate(ready.job, thole::default_catalogue()));
  }
}
