#pragma once

// One table per kind of row describes every column of the catalogue, as job/fields.h does for the
// job. Reader, writer and schema are loops over it.

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "job/catalogue.h"
#include "job/fields.h"

namespace thole {

template <class Row>
using ColumnMember =
    std::variant<double Row::*, int Row::*, bool Row::*, std::string Row::*,
                 std::vector<double> Row::*, Chemistry Row::*, DeviceKind Row::*,
                 std::optional<DeviceClass> Row::*, Per Row::*>;

// A column that a row may do without.
template <class T>
inline constexpr bool is_optional = false;
template <class T>
inline constexpr bool is_optional<std::optional<T>> = true;

template <class Row>
struct Column {
  std::string_view key{};  // the member's name; the unit is its suffix
  ColumnMember<Row> member{};
  double min = 0.0;  // of numbers, also of each number in a list
  double max = 0.0;
};

// A column must be filled when the row's default is not an allowed value.
template <class Row>
std::span<const Column<Row>> columns();

template <>
std::span<const Column<MotorClass>> columns<MotorClass>();
template <>
std::span<const Column<BatteryBlock>> columns<BatteryBlock>();
template <>
std::span<const Column<CableOffer>> columns<CableOffer>();
template <>
std::span<const Column<ProtectiveDevice>> columns<ProtectiveDevice>();
template <>
std::span<const Column<ChargerModel>> columns<ChargerModel>();
template <>
std::span<const Column<PlateStock>> columns<PlateStock>();
template <>
std::span<const Column<BoltOffer>> columns<BoltOffer>();
template <>
std::span<const Column<Sundry>> columns<Sundry>();
template <>
std::span<const Column<Task>> columns<Task>();
template <>
std::span<const Column<ShopRates>> columns<ShopRates>();

// One sentence for who fills it in; empty where the key says it all.
template <class Row>
std::string_view help_of(const Column<Row>& column);

template <>
std::string_view help_of(const Column<MotorClass>& column);
template <>
std::string_view help_of(const Column<BatteryBlock>& column);
template <>
std::string_view help_of(const Column<CableOffer>& column);
template <>
std::string_view help_of(const Column<ProtectiveDevice>& column);
template <>
std::string_view help_of(const Column<ChargerModel>& column);
template <>
std::string_view help_of(const Column<PlateStock>& column);
template <>
std::string_view help_of(const Column<BoltOffer>& column);
template <>
std::string_view help_of(const Column<Sundry>& column);
template <>
std::string_view help_of(const Column<Task>& column);
template <>
std::string_view help_of(const Column<ShopRates>& column);

// How the enumerators of a column are written in files; the position is the enumerator's value.
std::span<const Option> options_of(Chemistry);
std::span<const Option> options_of(DeviceKind);
std::span<const Option> options_of(DeviceClass);
std::span<const Option> options_of(Per);

// Calls visit(key, help, member) for each list of rows in a catalogue, in the order of the file.
template <class Visit>
void for_each_list(Visit visit) {
  visit("motors", "Motor classes.", &Catalogue::motors);
  visit("blocks", "Batteries as they stand on the shelf.", &Catalogue::blocks);
  visit("cables", "Boat cable.", &Catalogue::cables);
  visit("devices", "Breakers and fuses.", &Catalogue::devices);
  visit("chargers", "Mains chargers with isolated outputs.", &Catalogue::chargers);
  visit("plates", "Plate for the mount.", &Catalogue::plates);
  visit("bolts", "Bolts with nut and washers.", &Catalogue::bolts);
  visit("sundries", "Small parts that scale with the job.", &Catalogue::sundries);
  visit("tasks", "Work that scales with the job.", &Catalogue::tasks);
}

}  // namespace thole
