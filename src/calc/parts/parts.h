#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/trace.h"
#include "data/parts.h"

namespace thole {

// What the earlier stages chose, with how much of it.
struct CableUse {
  CableOffer cable{};
  double length_m = 0.0;  // of single conductor, out and back counted
};
struct DeviceUse {
  ProtectiveDevice device{};
  int count = 1;
};
struct ChargerUse {
  ChargerModel charger{};
  int count = 1;
};

// What the feeder is made of.
struct FeederParts {
  std::vector<CableUse> cables{};  // uses of the same cable are bought together
  std::vector<DeviceUse> devices{};
  double way_m = 0.0;   // one way, what Per::metre counts
  int joint_count = 0;  // what Per::joint counts, and so on
  int plug_count = 1;
  int stud_block_count = 1;
  int switch_count = 1;
};

// Flat bars on the plate, of its alloy.
struct StiffenerUse {
  int count = 0;
  double length_m = 0.0;  // each, as the next three
  double height_mm = 0.0;
  double thickness_mm = 0.0;
  double mass_kg = 0.0;
};

struct PartsInput {
  MotorClass motor{};           // empty id: none
  double shaft_length_m = 0.0;  // the price steps up with each length above the shortest
  BatteryBlock block{};         // empty id: none
  int block_count = 0;
  FeederParts feeder{};
  std::vector<ChargerUse> chargers{};
  PlateStock plate{};          // empty id: none
  double plate_area_m2 = 0.0;  // of the rectangle that it is cut from
  double plate_net_m2 = 0.0;   // of the finished plate; 0: the whole rectangle
  double plate_mass_kg = 0.0;  // of the finished plate
  StiffenerUse stiffeners{};
  BoltOffer bolt{};            // empty id: none
  int bolt_count = 0;
  double bolt_mass_kg = 0.0;  // each, with nut and washers
  double network_m = 0.0;        // backbone of the marine network; 0: there is none
  int network_device_count = 0;  // on it
  double ethernet_m = 0.0;       // 0: there is none
  bool remote_cells = false;     // the hand remote runs on cells, and wants a spare set
  std::vector<Sundry> sundries{};
  std::vector<Task> tasks{};
  ShopRates shop{};
};

struct PartLine {
  std::string id{};
  std::string label{};
  std::string detail{};
  std::string_view group{};   // "motor", "bank", "feeder", "charger", "mount", "sundries"
  double quantity = 0.0;      // to buy, rounded up
  std::string_view unit{};    // "" for pieces, "m", "m2"
  double unit_mass_kg = 0.0;  // 0 for plate, which is weighed as cut
  double mass_kg = 0.0;       // that goes aboard: without scrap
  double unit_price = 0.0;
  double price = 0.0;
  int lead_days = 0;
};

struct TaskLine {
  std::string id{};
  std::string label{};
  double count = 1.0;  // of what the task is counted by
  double labour_h = 0.0;
};

struct PartsResult {
  std::vector<PartLine> lines{};
  std::vector<TaskLine> tasks{};
  double parts_price = 0.0;
  double labour_h = 0.0;
  double labour_price = 0.0;
  double total_price = 0.0;
  double mass_kg = 0.0;
  int lead_days = 0;      // of the slowest part
  bool complete = false;  // nothing that was to be chosen is missing
  Trace trace{};
};

// The parts list, its price and mass, the hours, and when the last part arrives. Prices in the
// catalogue's currency, without tax. Cable is bought in whole metres and plate in hundredths of a
// square metre, each after the shop's scrap allowance; stiffeners are priced by weight as the plate's
// stock is. Quantities come in computed.
PartsResult parts(const PartsInput& in);

}  // namespace thole
