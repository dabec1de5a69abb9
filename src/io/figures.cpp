#include "io/figures.h"

#include <cmath>

#include "base/number.h"

namespace thole {
namespace {

// Empty when the list has no entry with this id.
template <class Row>
std::string_view label_in(const std::vector<Row>& rows, std::string_view id) {
  const Row* row = find_item(rows, id);
  return row == nullptr ? std::string_view{} : std::string_view(row->label);
}

std::string_view plain_label(const Catalogue& catalogue, std::string_view list,
                             std::string_view id) {
  if (list == "boats") return label_in(catalogue.boats, id);
  if (list == "waters") return label_in(catalogue.waters, id);
  if (list == "motors") return label_in(catalogue.motors, id);
  if (list == "blocks") return label_in(catalogue.blocks, id);
  if (list == "devices") return label_in(catalogue.devices, id);
  if (list == "chargers") return label_in(catalogue.chargers, id);
  if (list == "plates") return label_in(catalogue.plates, id);
  return {};
}

}  // namespace

std::string shown_item(const Catalogue& catalogue, std::string_view list, std::string_view id) {
  if (list == "cables") {
    const CableOffer* cable = find_item(catalogue.cables, id);
    if (cable != nullptr)
      return shown_conductor(cable->conductor) + ", " + fixed(cable->insulation_C, 0) + " °C";
  }
  if (list == "bolts") {
    const BoltOffer* bolt = find_item(catalogue.bolts, id);
    if (bolt != nullptr) return bolt->size + " " + bolt->grade;
  }
  const std::string_view label = plain_label(catalogue, list, id);
  return std::string(label.empty() ? id : label);
}

std::string shown_conductor(std::string name) {
  const std::size_t at = name.find("mm2");
  return at == name.npos ? name : name.replace(at, 3, "mm²");
}

std::string_view shown_unit(std::string_view key) {
  const std::string_view unit = unit_of(key);
  return unit.empty() && key.ends_with("_frac") ? std::string_view("frac") : unit;
}

Shown shown_output(const Output& output, const Design& design, std::string_view currency,
                   System system) {
  if (output.text != nullptr) return {shown_conductor(output.text(design)), ""};
  const double value = output.number(design);
  if (output.key.ends_with("_price")) return {fixed(value, 0), std::string(currency)};
  if (output.key.ends_with("_sinkage_m")) return show(1000.0 * value, "mm", system);
  return show(value, shown_unit(output.key), system);
}

std::string shown_field(const Field& field, const Job& job, const Catalogue& catalogue,
                        System system) {
  if (field.access.origin(job) == Origin::absent) return {};
  switch (field.kind) {
    case Kind::number:
      return show(field.access.get(job), shown_unit(field.key), system).text();
    case Kind::catalogue_id:
      return shown_item(catalogue, field.list, field.access.get_text(job));
    case Kind::count:
    case Kind::toggle:
    case Kind::choice:
    case Kind::text:
      return plain_text(field, job);
  }
  return {};
}

std::string shown_check(const Check& check, System system) {
  if (check.verdict() == Verdict::not_evaluated) return std::string(word(Verdict::not_evaluated));
  const std::string_view unit = check.unit.empty() && check.limit > 0.0 && check.limit < 1.0
                                    ? std::string_view("frac")
                                    : check.unit;
  Shown actual = show(check.actual, unit, system);
  Shown limit = show(check.limit, unit, system);
  if (actual.text() == limit.text() && check.actual != check.limit) {
    // Too close to be told apart in three figures.
    actual = {significant(check.actual, 5), unit_text(check.unit)};
    limit = {significant(check.limit, 5), unit_text(check.unit)};
  }
  if (check.comparison == Comparison::at_least) return actual.text() + ", needs " + limit.text();
  return (actual.unit == limit.unit ? actual.number : actual.text()) + " of " + limit.text();
}

std::string shown_source(const Source& source) {
  std::string text(source.title);
  if (!source.locator.empty()) text += ", " + std::string(source.locator);
  if (!source.confirmed) text += " (not confirmed)";
  return text;
}

std::string_view origin_word(Origin origin) {
  switch (origin) {
    case Origin::absent:
      return "not given";
    case Origin::given:
      return "yours";
    case Origin::preset:
      return "typical";
    case Origin::estimated:
      return "estimated";
    case Origin::chosen:
      return "chosen for you";
  }
  return "";
}

}  // namespace thole
