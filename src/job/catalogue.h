#pragma once

// What the shop sells, and the boat types and waters that fill a job's blanks.

#include <string>
#include <string_view>
#include <vector>

#include "data/parts.h"
#include "job/job.h"

namespace thole {

// A named set of values that stand in for what nobody measured: a boat type, a water.
struct Preset {
  std::string id{};
  std::string label{};
  std::string help{};
  Job values{};  // known fields only
};

struct Catalogue {
  std::vector<MotorClass> motors{};
  std::vector<BatteryBlock> blocks{};
  std::vector<CableOffer> cables{};
  std::vector<ProtectiveDevice> devices{};
  std::vector<ChargerModel> chargers{};
  std::vector<PlateStock> plates{};
  std::vector<BoltOffer> bolts{};
  std::vector<Sundry> sundries{};
  std::vector<Task> tasks{};
  ShopRates shop{};
  std::vector<Preset> boats{};
  std::vector<Preset> waters{};
};

// The entry with this id; null when there is none.
template <class Item>
const Item* find_item(const std::vector<Item>& list, std::string_view id) {
  for (const Item& item : list) {
    if (item.id == id) return &item;
  }
  return nullptr;
}

}  // namespace thole
