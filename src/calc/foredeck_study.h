#pragma once

// The foredeck of a design: room for the stowed motor and its way up, the bow light, the person who stows
// it. Most of it must be measured on the boat first: a check counts in the verdict once it can be judged (proof.h).

#include <string>
#include <vector>

#include "calc/design.h"
#include "calc/foredeck/light.h"
#include "calc/foredeck/room.h"
#include "calc/foredeck/stow.h"

namespace thole {

struct ForedeckStudy {
  RoomInput room_input{};
  RoomResult room{};
  LightInput light_input{};
  LightResult light{};
  StowResult stowing{};
  double axis_below_m = 0.0;  // propeller axis under the deck, motor down
  std::vector<std::string> notes{};

  // Of all three, in this order.
  std::vector<const Check*> checks() const;
};

ForedeckStudy foredeck_study(const Design& design);

}  // namespace thole
