#pragma once

// How a rule fills a blank. One function per section of the job, called by complete() in the order
// of this list; a rule may read the sections above its own.

#include <string_view>
#include <utility>

#include "base/trace.h"
#include "job/job.h"

namespace thole {

// Fills `target` with the value of the step that `make` returns, unless it is known.
// The step's id becomes "estimate." + path.
template <class MakeStep>
void estimate(Trace& trace, Given<double>& target, std::string_view path, MakeStep make) {
  if (target.known()) return;
  Step step = make();
  step.id = "estimate." + std::string(path);
  target = {step.value, Origin::estimated};
  trace.steps.push_back(std::move(step));
}

// Fills `target` with a plain default and says why.
template <class T>
void assume(Trace& trace, Given<T>& target, T value, std::string_view path, std::string_view why,
            const Source& source) {
  if (target.known()) return;
  target = {std::move(value), Origin::estimated};
  trace.assumptions.push_back({std::string(path), std::string(why), source});
}

void estimate_boat(Job& job, Trace& trace);
void estimate_water(Job& job, Trace& trace);
void estimate_hold(Job& job, Trace& trace);
void estimate_shaft(Job& job, Trace& trace);
void estimate_bank(Job& job, Trace& trace);
void estimate_feeder(Job& job, Trace& trace);
void estimate_charge(Job& job, Trace& trace);
void estimate_locker(Job& job, Trace& trace);
void estimate_mount(Job& job, Trace& trace);
void estimate_trim(Job& job, Trace& trace);
void estimate_control(Job& job, Trace& trace);
void estimate_foredeck(Job& job, Trace& trace);

}  // namespace thole
