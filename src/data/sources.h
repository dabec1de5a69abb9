#pragma once

// Sources that every topic may use. Those of one topic stand in sources_hold.h, sources_power.h and
// sources_mount.h. docs/sources.md lists them all; a test holds the list against the code.

#include "base/trace.h"

namespace thole {

inline constexpr Source kDefinition{
    .id = "definition", .title = "Definition or plain arithmetic", .locator = ""};
inline constexpr Source kCommonPractice{.id = "common-practice",
                                        .title = "Common practice of the trade, no published source",
                                        .locator = ""};
inline constexpr Source kProjectDecision{.id = "project-decision",
                                         .title = "Our own judgement, shown so that it can be changed",
                                         .locator = "docs/decisions.md"};

}  // namespace thole
