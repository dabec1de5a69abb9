#pragma once

// Kinds of what tells the motor where to stay, for the job and for the stages that judge it.

namespace thole {

enum class FeederLay { side_by_side, one_above_other, twisted };
enum class DataLink { none, marine_network, ethernet };
enum class Backbone { light, mid, heavy };  // by its cable, in the order of network_cables()
enum class NetworkFeed { end, middle };  // where a backbone gets its power
enum class RemotePower { cells, charged, wired };
enum class MainSwitch { none, house, own };  // what the motor's bank is switched by

}  // namespace thole
