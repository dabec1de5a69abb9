#include "io/catalogue_json.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <nlohmann/json.hpp>
#include <set>
#include <type_traits>

#include "base/edition.h"
#include "base/number.h"
#include "data/device_curves.h"
#include "io/json_scan.h"
#include "io/limits.h"
#include "io/schema_check.h"
#include "io/text.h"
#include "job/catalogue_fields.h"

namespace thole {
namespace {

using Json = nlohmann::ordered_json;

// What a value of each kind must be, for the message.
std::string wanted(double, double min, double max) {
  return "must be a number between " + trimmed(significant(min, 6)) + " and " +
         trimmed(significant(max, 6));
}
std::string wanted(int, double min, double max) {
  return "must be a whole number between " + fixed(min, 0) + " and " + fixed(max, 0);
}
std::string wanted(bool, double, double) { return "must be true or false"; }
std::string wanted(const std::string&, double, double) { return "must be text in quotes"; }
std::string wanted(const std::vector<double>&, double min, double max) {
  return "must be a list of ascending numbers between " + trimmed(significant(min, 6)) + " and " +
         trimmed(significant(max, 6));
}
template <class Enum>
requires std::is_enum_v<Enum> std::string wanted(Enum, double, double) {
  std::string text = "must be one of";
  for (const Option& option : options_of(Enum{})) text += " \"" + std::string(option.key) + "\"";
  return text;
}

template <class Enum>
std::string wanted(std::optional<Enum>, double, double) {
  return wanted(Enum{}, 0.0, 0.0);
}

bool allowed(double value, double min, double max) { return value >= min && value <= max; }
bool allowed(int value, double min, double max) { return value >= min && value <= max; }
bool allowed(bool, double, double) { return true; }
bool allowed(const std::string& value, double, double) { return !value.empty(); }
bool allowed(const std::vector<double>& values, double min, double max) {
  double previous = -HUGE_VAL;
  for (const double value : values) {
    if (!allowed(value, min, max) || value <= previous) return false;
    previous = value;
  }
  return !values.empty();
}
template <class Enum>
requires std::is_enum_v<Enum>
bool allowed(Enum, double, double) { return true; }
template <class Enum>
bool allowed(std::optional<Enum>, double, double) { return true; }

// Takes the item in; false when it is of the wrong type.
bool take(const JsonItem& item, double& value) {
  value = item.number;
  return item.kind == JsonKind::number;
}

bool take(const JsonItem& item, int& value) {
  const bool whole = item.kind == JsonKind::number && item.number >= -1e9 && item.number <= 1e9 &&
                     item.number == static_cast<int>(item.number);
  if (whole) value = static_cast<int>(item.number);
  return whole;
}

bool take(const JsonItem& item, bool& value) {
  value = item.number != 0.0;
  return item.kind == JsonKind::boolean;
}

bool take(const JsonItem& item, std::string& value) {
  value = plain_line(item.text, kMostTextBytes);
  return item.kind == JsonKind::text;
}

bool take(const JsonItem& item, std::vector<double>&) { return item.kind == JsonKind::array; }

template <class Enum>
requires std::is_enum_v<Enum>
bool take(const JsonItem& item, Enum& value) {
  const std::span<const Option> options = options_of(Enum{});
  for (std::size_t i = 0; item.kind == JsonKind::text && i < options.size(); ++i) {
    if (options[i].key != item.text) continue;
    value = static_cast<Enum>(i);
    return true;
  }
  return false;
}

template <class Enum>
bool take(const JsonItem& item, std::optional<Enum>& value) {
  Enum named{};
  if (!take(item, named)) return false;
  value = named;
  return true;
}

// What one column cannot say of another: what is wrong, or empty.
template <class Row>
std::string discord(const Row&) { return ""; }
std::string discord(const ProtectiveDevice& device) {
  if (!device.curve || curve_of(*device.curve).kind == device.kind) return "";
  return device.kind == DeviceKind::fuse ? "A fuse has a fuse's curve." : "A breaker has a breaker's curve.";
}

// --- one row ------------------------------------------------------------------------------------

// A value of some row, once the kind of row is forgotten: there are many kinds, and what is read is the same.
using Place = std::variant<double*, int*, bool*, std::string*, std::vector<double>*, Chemistry*,
                           DeviceKind*, std::optional<DeviceClass>*, Per*>;
struct Slot {
  std::string_view key{};
  double min = 0.0;
  double max = 0.0;
  Place place{};
};

template <class Row>
std::vector<Slot> slots_of(Row& row) {
  std::vector<Slot> slots;
  for (const Column<Row>& column : columns<Row>()) {
    const Place place =
        std::visit([&](auto member) -> Place { return &(row.*member); }, column.member);
    slots.push_back({column.key, column.min, column.max, place});
  }
  return slots;
}

// Takes an item in; `inside_list`: it stands in brackets behind the key. False when it is of the wrong type.
bool take(const JsonItem& item, bool inside_list, const Place& place) {
  if (inside_list) {
    std::vector<double>* const* list = std::get_if<std::vector<double>*>(&place);
    if (list == nullptr) return false;
    (*list)->push_back(item.number);
    return item.kind == JsonKind::number;
  }
  return std::visit([&](auto* at) { return take(item, *at); }, place);
}

// Reads the items that stand under `root`. False when something in them is not sound.
bool read_slots(std::span<const JsonItem> items, std::string_view root, std::span<const Slot> slots,
                Issues& issues) {
  std::set<std::string_view> complained;
  const auto complain = [&](const Slot& slot) {
    if (!complained.insert(slot.key).second) return;
    const std::string what =
        std::visit([&](auto* at) { return wanted(*at, slot.min, slot.max); }, slot.place);
    const std::string key(slot.key);
    issues.push_back({Severity::error, std::string(root) + "." + key, key + " " + what + "."});
  };
  for (const JsonItem& item : items) {
    const std::string_view path = inside(item.path, root);
    if (path.empty()) continue;
    const std::size_t bracket = path.find('[');
    const auto slot = std::find_if(slots.begin(), slots.end(), [&](const Slot& each) {
      return each.key == path.substr(0, bracket);
    });
    if (slot == slots.end()) {
      if (path.find_first_of(".[", 1) == path.npos) {
        issues.push_back({Severity::warning, item.path,
                          "\"" + std::string(path) + "\" is not known here and was left out."});
      }
      continue;
    }
    if (!take(item, bracket != path.npos, slot->place)) complain(*slot);
  }
  for (const Slot& slot : slots) {
    const bool good =
        std::visit([&](auto* at) { return allowed(*at, slot.min, slot.max); }, slot.place);
    if (!good) complain(slot);
  }
  return complained.empty();
}

template <class Row>
bool read_row(std::span<const JsonItem> items, std::string_view root, Row& row, Issues& issues) {
  const bool good = read_slots(items, root, slots_of(row), issues);
  const std::string wrong = discord(row);
  if (!wrong.empty()) issues.push_back({Severity::error, std::string(root), wrong});
  return good && wrong.empty();
}

// The items of one list fall into runs, one to a row. `take` is given each run with its path, and says how
// many rows there are now.
using TakeRow = std::function<std::size_t(std::span<const JsonItem>, const std::string&)>;

void read_rows(const JsonScan& scan, std::string_view key, Issues& issues, const TakeRow& take) {
  const std::span<const JsonItem> all(scan.items);
  std::size_t count = 0;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const std::string& path = all[i].path;
    const std::string_view rest = inside(path, key);
    if (rest.empty() || rest.find(']') != rest.size() - 1) continue;
    if (all[i].kind != JsonKind::object) {
      issues.push_back({Severity::error, path, "Must be an object in braces."});
      continue;
    }
    if (count >= kMostRows) {
      issues.push_back(
          {Severity::error, path,
           "More than " + std::to_string(kMostRows) + " rows; the rest was left out."});
      return;
    }
    std::size_t end = i + 1;
    while (end < all.size() && !inside(all[end].path, path).empty()) ++end;
    count = take(all.subspan(i + 1, end - i - 1), path);
  }
}

template <class Row>
void read_list(const JsonScan& scan, std::string_view key, std::vector<Row>& list, Issues& issues) {
  std::set<std::string> ids;
  read_rows(scan, key, issues, [&](std::span<const JsonItem> items, const std::string& path) {
    Row row;
    if (!read_row(items, path, row, issues)) return list.size();
    if (ids.insert(row.id).second) {
      list.push_back(std::move(row));
    } else {
      issues.push_back(
          {Severity::error, path + ".id", "The id \"" + row.id + "\" is taken by a row above."});
    }
    return list.size();
  });
}

bool is_list(std::string_view key) {
  bool found = false;
  for_each_list(
      [&](std::string_view name, std::string_view, auto) { found = found || name == key; });
  return found;
}

void judge_top_level(const JsonScan& scan, Issues& issues) {
  for (const JsonItem& item : scan.items) {
    if (item.path.empty() || item.path.find_first_of(".[", 1) != item.path.npos) continue;
    if (is_list(item.path)) {
      if (item.kind != JsonKind::array)
        issues.push_back({Severity::error, item.path, "Must be a list in square brackets."});
    } else if (item.path == "shop") {
      if (item.kind != JsonKind::object)
        issues.push_back({Severity::error, item.path, "Must be an object in braces."});
    } else if (item.path != "schema" && item.path != "$schema") {
      issues.push_back({Severity::warning, item.path,
                        "\"" + item.path + "\" is not known here and was left out."});
    }
  }
}

// --- writing ------------------------------------------------------------------------------------

template <class Row>
Json row_json(const Row& row) {
  Json out = Json::object();
  for (const Column<Row>& column : columns<Row>()) {
    std::visit(
        [&]<class T>(T Row::*member) {
          const auto key_of = [](auto value) {
            return std::string(options_of(value)[static_cast<std::size_t>(value)].key);
          };
          const std::string key(column.key);
          if constexpr (is_optional<T>) {
            if (row.*member) out[key] = key_of(*(row.*member));
          } else if constexpr (std::is_enum_v<T>) {
            out[key] = key_of(row.*member);
          } else {
            out[key] = row.*member;
          }
        },
        column.member);
  }
  return out;
}

std::string on_one_line(const Json& value) {
  return value.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace

CatalogueRead read_catalogue(std::string_view text) {
  CatalogueRead read;
  const JsonScan scan = scan_json(text, kMostCatalogueBytes);
  read.issues = scan.issues;
  if (scan.items.empty() || scan.items.front().kind != JsonKind::object) {
    if (read.issues.empty())
      read.issues.push_back({Severity::error, "", "The file must hold one object in braces."});
    return read;
  }
  const Issues schema = check_schema(scan);
  read.issues.insert(read.issues.end(), schema.begin(), schema.end());
  judge_top_level(scan, read.issues);
  for_each_list([&](std::string_view key, std::string_view, auto member) {
    read_list(scan, key, read.catalogue.*member, read.issues);
  });
  ShopRates shop;
  if (read_row(std::span<const JsonItem>(scan.items), "shop", shop, read.issues))
    read.catalogue.shop = shop;
  return read;
}

std::string write_catalogue(const Catalogue& catalogue) {
  std::string text = "{\n  \"schema\": " + std::to_string(kSchema) +
                     ",\n  \"shop\": " + on_one_line(row_json(catalogue.shop));
  for_each_list([&](std::string_view key, std::string_view, auto member) {
    text += ",\n  \"" + std::string(key) + "\": [";
    const char* separator = "\n    ";
    for (const auto& row : catalogue.*member) {
      text += separator + on_one_line(row_json(row));
      separator = ",\n    ";
    }
    text += "\n  ]";
  });
  return text + "\n}\n";
}

}  // namespace thole
