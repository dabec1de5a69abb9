#pragma once

namespace thole {

// Grows by one whenever the engine's figures change, so that a link can say that it was made with
// others. docs/decisions.md lists what changed with each.
inline constexpr int kEngineEdition = 1;

// Of the job document, the presets and the catalogue: grows when a reader of old files must act.
inline constexpr int kSchema = 1;

}  // namespace thole
