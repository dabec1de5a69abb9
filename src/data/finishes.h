#pragma once

// How a plate's surface is protected.

namespace thole {

enum class Finish { bare, anodised, powder, paint };

// Of each face, usually; recalled: anodic film of AA20 to AA25, a powder coat of 60 to 100 um, primer, two coats
// of epoxy and a topcoat.
constexpr double usual_finish_mm(Finish finish) {
  switch (finish) {
    case Finish::bare: return 0.0;
    case Finish::anodised: return 0.025;
    case Finish::powder: return 0.08;
    case Finish::paint: return 0.25;
  }
  return 0.0;
}

}  // namespace thole
