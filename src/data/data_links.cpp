#include "data/data_links.h"

#include <array>

#include "data/sources_control.h"

namespace thole {
namespace {

constexpr std::array kCables{
    NetworkCable{.id = "light",
                 .label = "Light (micro)",
                 .longest_m = 100.0,
                 .rated_A = 3.0,
                 .ohm_per_m = 0.057,
                 .length_source = kLightBackbone,
                 .resistance_source = kLightBackbone},
    NetworkCable{.id = "mid",
                 .label = "Mid",
                 .longest_m = 200.0,
                 .rated_A = 4.0,
                 .ohm_per_m = 0.0134,
                 .length_source = kNetworkCable,
                 .resistance_source = kNetworkConductor},
    NetworkCable{.id = "heavy",
                 .label = "Heavy (mini)",
                 .longest_m = 200.0,
                 .rated_A = 8.0,
                 .ohm_per_m = 0.0134,
                 .length_source = kNetworkCable,
                 .resistance_source = kNetworkConductor},
};

}  // namespace

std::span<const NetworkCable> network_cables() { return kCables; }

}  // namespace thole
