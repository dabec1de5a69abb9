#pragma once

// Sources of the foredeck: navigation lights, lifting by hand, what gives first in a snag.

#include "base/trace.h"

namespace thole {

inline constexpr Source kColregsRule21{
    .id = "colregs-1972-rule-21",
    .title = "International regulations for preventing collisions at sea, 1972",
    .locator = "Rule 21(b): sidelights, an unbroken light from right ahead to 22.5 degrees abaft the beam"};
inline constexpr Source kColregsAnnexHorizontal{
    .id = "colregs-1972-annex-i-9",
    .title = "International regulations for preventing collisions at sea, 1972",
    .locator = "Annex I, 9: horizontal sectors; all-round lights hidden by no more than 6 degrees"};
inline constexpr Source kColregsAnnexVertical{
    .id = "colregs-1972-annex-i-10",
    .title = "International regulations for preventing collisions at sea, 1972",
    .locator = "Annex I, 10: all of the light to 5, 60 % of it to 7.5 degrees from the horizontal; recalled",
    .confirmed = false};
inline constexpr Source kColregsRule3{
    .id = "colregs-1972-rule-3",
    .title = "International regulations for preventing collisions at sea, 1972",
    .locator = "Rule 3(i): under way is not at anchor, made fast or aground; recalled",
    .confirmed = false};
inline constexpr Source kNioshLifting{
    .id = "niosh-lifting-1991",
    .title = "Revised NIOSH lifting equation (Waters and others, Ergonomics 36, 1993)",
    .locator = "23 kg times factors of reach, height and travel; hands at most 63 cm out"};
inline constexpr Source kPlasticTube{
    .id = "plastic-hinge-tube",
    .title = "Elementary plasticity: fully plastic moment of a round tube",
    .locator = "(D^3 - d^3) / 6 times yield; a composite breaks at its elastic moment"};

}  // namespace thole
