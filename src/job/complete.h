#pragma once

// From what is given to a full job. A blank is filled first from the boat type and the water that
// the job names, then by a rule; each rule leaves a step or an assumption behind. What the engine
// chooses from the catalogue (motor, block, cable ...) stays blank here: the stages choose it.

#include "base/issue.h"
#include "base/trace.h"
#include "job/catalogue.h"
#include "job/job.h"

namespace thole {

struct Completed {
  Job job;
  Trace trace{};  // the estimates: step ids are "estimate." + the field's path
  Issues issues{};
};

// Values outside their range are reported, and treated as absent so that a rule fills them; unknown
// catalogue ids likewise.
Completed complete(const Job& given, const Catalogue& catalogue);

}  // namespace thole
