#include "calc/parts/parts.h"

#include <algorithm>
#include <cmath>

#include "base/number.h"
#include "data/sources.h"

namespace thole {
namespace {

constexpr double kNoise = 1e-9;  // so that 12.000000000001 m is not sold as 13

double round_up(double quantity, double step) { return step * std::ceil(quantity / step - kNoise); }
double whole_metres_up(double length_m) { return round_up(length_m, 1.0); }
double hundredths_up(double area_m2) { return std::ceil(100.0 * area_m2 - kNoise) / 100.0; }

// A line of whole pieces.
PartLine pieces(std::string_view group, const std::string& id, const std::string& label,
                double count, double unit_mass_kg, double unit_price) {
  return {.id = id,
          .label = label.empty() ? id : label,
          .group = group,
          .quantity = count,
          .unit_mass_kg = unit_mass_kg,
          .mass_kg = count * unit_mass_kg,
          .unit_price = unit_price,
          .price = count * unit_price};
}

void add_motor(const PartsInput& in, PartsResult& r) {
  const MotorClass& motor = in.motor;
  if (motor.id.empty()) return;
  const auto shorter =
      std::count_if(motor.shaft_lengths_m.begin(), motor.shaft_lengths_m.end(),
                    [&](double length_m) { return length_m < in.shaft_length_m - kNoise; });
  PartLine line = pieces("motor", motor.id, motor.label, 1.0, motor.mass_kg,
                         motor.price + motor.price_per_shaft_step * static_cast<double>(shorter));
  line.detail = "shaft " + fixed(in.shaft_length_m, 2) + " m";
  line.lead_days = motor.lead_days;
  r.lines.push_back(std::move(line));
}

void add_bank(const PartsInput& in, PartsResult& r) {
  if (in.block.id.empty() || in.block_count <= 0) return;
  PartLine line =
      pieces("bank", in.block.id, in.block.label, in.block_count, in.block.mass_kg, in.block.price);
  line.detail =
      significant(in.block.nominal_V, 3) + " V, " + significant(in.block.capacity_Ah, 3) + " Ah";
  line.lead_days = in.block.lead_days;
  r.lines.push_back(std::move(line));
}

void add_cables(const PartsInput& in, PartsResult& r) {
  std::vector<CableUse> bought;
  for (const CableUse& use : in.feeder.cables) {
    if (use.cable.id.empty() || !(use.length_m > 0.0)) continue;
    const auto same = std::find_if(bought.begin(), bought.end(), [&](const CableUse& other) {
      return other.cable.id == use.cable.id;
    });
    if (same == bought.end()) {
      bought.push_back(use);
    } else {
      same->length_m += use.length_m;
    }
  }
  for (const CableUse& use : bought) {
    const double metres = whole_metres_up(use.length_m * (1.0 + in.shop.scrap_frac));
    PartLine line = pieces("feeder", use.cable.id, "Boat cable " + use.cable.conductor, metres,
                           use.cable.mass_kg_per_m, use.cable.price_per_m);
    line.detail = fixed(use.length_m, 1) + " m in all, single conductor";
    line.unit = "m";
    line.mass_kg = use.length_m * use.cable.mass_kg_per_m;
    r.lines.push_back(std::move(line));
  }
}

void add_devices(const PartsInput& in, PartsResult& r) {
  for (const DeviceUse& use : in.feeder.devices) {
    if (use.device.id.empty() || use.count <= 0) continue;
    r.lines.push_back(
        pieces("feeder", use.device.id, use.device.label, use.count, 0.0, use.device.price));
  }
}

void add_chargers(const PartsInput& in, PartsResult& r) {
  for (const ChargerUse& use : in.chargers) {
    if (use.charger.id.empty() || use.count <= 0) continue;
    r.lines.push_back(pieces("charger", use.charger.id, use.charger.label, use.count,
                             use.charger.mass_kg, use.charger.price));
  }
}

void add_mount(const PartsInput& in, PartsResult& r) {
  if (!in.plate.id.empty() && in.plate_area_m2 > 0.0) {
    const double area_m2 = hundredths_up(in.plate_area_m2 * (1.0 + in.shop.scrap_frac));
    PartLine line =
        pieces("mount", in.plate.id, in.plate.label, area_m2, 0.0, in.plate.price_per_m2);
    line.detail = in.plate.alloy + ", " + significant(in.plate.thickness_mm, 3) + " mm";
    if (in.plate_net_m2 > 0.0) line.detail += ", " + significant(in.plate_net_m2, 3) + " m2 as cut";
    line.unit = "m2";
    line.mass_kg = in.plate_mass_kg;
    r.lines.push_back(std::move(line));
  }
  if (const StiffenerUse& bar = in.stiffeners; bar.count > 0 && in.plate_mass_kg > 0.0) {
    const double net_m2 = in.plate_net_m2 > 0.0 ? in.plate_net_m2 : in.plate_area_m2;
    const double price_per_kg = in.plate.price_per_m2 * net_m2 / in.plate_mass_kg;
    PartLine line = pieces("mount", in.plate.id + ".stiffener", "Stiffener, flat bar", bar.count, bar.mass_kg,
                           bar.mass_kg * (1.0 + in.shop.scrap_frac) * price_per_kg);
    line.detail = in.plate.alloy + ", " + significant(bar.height_mm, 3) + " x " + significant(bar.thickness_mm, 3) +
                  " mm, " + significant(1000.0 * bar.length_m, 3) + " mm each";
    r.lines.push_back(std::move(line));
  }
  if (!in.bolt.id.empty() && in.bolt_count > 0) {
    PartLine line = pieces("mount", in.bolt.id, "Bolt " + in.bolt.size + ", nut and washers",
                           in.bolt_count, in.bolt_mass_kg, in.bolt.price_each);
    line.detail = in.bolt.grade;
    r.lines.push_back(std::move(line));
  }
}

// How many of what a sundry or a task is counted by.
double count_of(const PartsInput& in, Per per) {
  switch (per) {
    case Per::job:
      return 1.0;
    case Per::block:
      return in.block_count;
    case Per::bolt:
      return in.bolt_count;
    case Per::metre:
      return in.feeder.way_m;
    case Per::joint:
      return in.feeder.joint_count;
    case Per::plug:
      return in.feeder.plug_count;
    case Per::stud_block:
      return in.feeder.stud_block_count;
    case Per::battery_switch:
      return in.feeder.switch_count;
    case Per::network:
      return in.network_m > 0.0 ? 1.0 : 0.0;
    case Per::network_metre:
      return in.network_m;
    case Per::network_device:
      return in.network_m > 0.0 ? in.network_device_count : 0.0;
    case Per::ethernet_metre:
      return in.ethernet_m;
    case Per::remote_cells:
      return in.remote_cells ? 1.0 : 0.0;
  }
  return 0.0;
}

void add_sundries(const PartsInput& in, PartsResult& r) {
  for (const Sundry& sundry : in.sundries) {
    const double count = round_up(sundry.count * count_of(in, sundry.per), 1.0);
    if (!(count > 0.0)) continue;
    r.lines.push_back(
        pieces("sundries", sundry.id, sundry.label, count, sundry.mass_kg, sundry.price));
  }
}

void add_tasks(const PartsInput& in, PartsResult& r) {
  for (const Task& task : in.tasks) {
    const double count = count_of(in, task.per);
    if (!(count > 0.0)) continue;
    r.tasks.push_back({.id = task.id,
                       .label = task.label.empty() ? task.id : task.label,
                       .count = count,
                       .labour_h = count * task.labour_h});
  }
}

double sum_of(const std::vector<PartLine>& lines, std::string_view group,
              double PartLine::*member) {
  double sum = 0.0;
  for (const PartLine& line : lines) {
    if (line.group == group) sum += line.*member;
  }
  return sum;
}

// One step that adds up the groups of the list.
Step total_step(const PartsResult& r, Step step, double PartLine::*member) {
  step.formula = "motor + bank + feeder + charger + mount + sundries";
  constexpr std::pair<std::string_view, std::string_view> kGroups[] = {
      {"motor", "motor and shaft"}, {"bank", "batteries"},        {"feeder", "cable and devices"},
      {"charger", "charger"},       {"mount", "plate and bolts"}, {"sundries", "small parts"}};
  for (const auto& [group, meaning] : kGroups) {
    step.terms.push_back({group, sum_of(r.lines, group, member), step.unit, meaning});
  }
  step.source = kDefinition;
  return step;
}

void add_up(const PartsInput& in, PartsResult& r) {
  for (const PartLine& line : r.lines) {
    r.parts_price += line.price;
    r.mass_kg += line.mass_kg;
    r.lead_days = std::max(r.lead_days, line.lead_days);
  }
  for (const TaskLine& task : r.tasks) r.labour_h += task.labour_h;
  r.labour_price = r.labour_h * in.shop.labour_per_h;
  r.total_price = r.parts_price + r.labour_price;
  tell([&] {
    std::vector<Step>& steps = r.trace.steps;
    steps.push_back(total_step(r,
                               {.id = "parts.parts_price",
                                .label = "Price of all parts, without tax",
                                .symbol = "P",
                                .value = r.parts_price},
                               &PartLine::price));
    steps.push_back(total_step(
        r,
        {.id = "parts.mass",
         .label = "Weight of all parts",
         .symbol = "m",
         .value = r.mass_kg,
         .unit = "kg",
         .assumptions = {"Protective devices are left out; cable and plate without scrap."}},
        &PartLine::mass_kg));
    steps.push_back({.id = "parts.labour_price",
                     .label = "Price of the work, without tax",
                     .symbol = "W",
                     .formula = "t * r",
                     .terms = {{"t", r.labour_h, "h", "hours of all tasks"},
                               {"r", in.shop.labour_per_h, "", "price of an hour"}},
                     .value = r.labour_price,
                     .source = kDefinition});
    steps.push_back(
        {.id = "parts.total_price",
         .label = "Parts and work, without tax",
         .symbol = "S",
         .formula = "P + W",
         .terms = {{"P", r.parts_price, "", "all parts"}, {"W", r.labour_price, "", "the work"}},
         .value = r.total_price,
         .source = kDefinition});
  });
}

void name_missing(const PartsInput& in, PartsResult& r) {
  const std::pair<bool, std::string_view> wanted[] = {
      {in.motor.id.empty(), "motor"},
      {in.block.id.empty() || in.block_count <= 0, "bank"},
      {sum_of(r.lines, "feeder", &PartLine::quantity) <= 0.0, "feeder"},
      {in.feeder.devices.empty(), "protective device"},
      {in.chargers.empty(), "charger"},
      {in.plate.id.empty(), "mount plate"},
      {in.bolt.id.empty() || in.bolt_count <= 0, "bolts"}};
  r.complete = true;
  for (const auto& [missing, name] : wanted) {
    if (!missing) continue;
    r.complete = false;
    r.trace.assumptions.push_back(
        {"", "Not in the price and the weight, because none was found: " + std::string(name) + ".",
         kProjectDecision});
  }
}

}  // namespace

PartsResult parts(const PartsInput& in) {
  PartsResult result;
  add_motor(in, result);
  add_bank(in, result);
  add_cables(in, result);
  add_devices(in, result);
  add_chargers(in, result);
  add_mount(in, result);
  add_sundries(in, result);
  add_tasks(in, result);
  add_up(in, result);
  name_missing(in, result);
  return result;
}

}  // namespace thole
