#pragma once

// What carries the plate: bedding and core under it, bolts with their backing, and the deck's panel as a whole.
// Each tells its steps.

#include "base/trace.h"
#include "calc/mount/bolt_group.h"
#include "calc/mount/deck_panel.h"
#include "calc/mount/mount.h"
#include "data/bolts.h"

namespace thole {

// Pressure that sinks the plate by a metre, in N/m3: a millimetre of bedding compound, on the core.
double add_deck_stiffness(const MountInput& in, double deck_factor, Trace& trace);

// Of one bolt in N/m: the shank over its grip, on core and plug under the backing.
double add_bolt_stiffness(const MountInput& in, const BoltSize& size, double thickness_mm, double deck_factor, Trace& trace);

// The deck between its supports, under this pattern of bolts.
PanelStiffness add_deck_panel(const MountInput& in, double span_mm, double breadth_mm, const BoltPattern& pattern, double panel_factor, Trace& trace);

}  // namespace thole
