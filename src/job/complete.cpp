#include "job/complete.h"

#include "data/circuit_line.h"
#include "data/day_plan.h"
#include "data/deck_items.h"
#include "data/fitted_blocks.h"
#include "data/plate_lines.h"
#include "data/windage.h"
#include "job/estimate.h"
#include "job/fields.h"

namespace thole {
namespace {

// What is impossible is named and left out, so that a rule can stand in for it.
void refuse_impossible(Job& job, Issues& issues) {
  for (const Field& field : all_fields()) {
    if (field.access.origin(job) == Origin::absent || field.access.is_text()) continue;
    const std::string message = range_message(field, field.access.get(job));
    if (message.empty()) continue;
    issues.push_back({Severity::error, field.path(), message});
    clear(field, job);
  }
}

// A line of text that cannot be read is named and left out, too.
void refuse_unreadable(Given<std::string>& line, std::string_view path,
                       std::string (*wrong_with)(std::string_view), Issues& issues) {
  if (!line.known()) return;
  const std::string message = wrong_with(line.value);
  if (message.empty()) return;
  issues.push_back({Severity::error, std::string(path), message});
  line = {};
}

std::string wrong_with_view(std::string_view text) { return read_view(text).message; }
std::string wrong_with_fitted(std::string_view text) { return read_fitted(text).message; }
std::string wrong_with_outline(std::string_view text) { return read_outline(text).message; }
std::string wrong_with_bolts(std::string_view text) { return read_bolt_places(text).message; }
std::string wrong_with_cut_outs(std::string_view text) { return read_cut_outs(text).message; }
std::string wrong_with_day(std::string_view text) { return read_day_plan(text).message; }
std::string wrong_with_circuit(std::string_view text) { return read_circuit(text).message; }
std::string wrong_with_items(std::string_view text) { return read_deck_items(text).message; }

// Of the first of the blocks in the boat that says its own.
std::optional<Chemistry> chemistry_said(const Bank& bank) {
  if (!bank.fitted.known()) return std::nullopt;
  for (const std::vector<SaidBlock>& string : read_fitted(bank.fitted.value).strings) {
    for (const SaidBlock& block : string) {
      if (block.chemistry) return block.chemistry;
    }
  }
  return std::nullopt;
}

// Fills the blanks of `job` with what the preset knows.
void fill_from(const Preset& preset, Job& job) {
  for (const Field& field : all_fields()) {
    if (field.access.origin(job) != Origin::absent) continue;
    if (field.access.origin(preset.values) == Origin::absent) continue;
    if (field.access.is_text()) {
      field.access.set_text(job, field.access.get_text(preset.values));
    } else {
      field.access.set(job, field.access.get(preset.values));
    }
    field.access.set_origin(job, Origin::preset);
  }
}

void use_preset(const std::vector<Preset>& presets, Given<std::string>& id, std::string_view path,
                Job& job, Issues& issues) {
  if (!id.known()) return;
  const Preset* preset = find_item(presets, id.value);
  if (preset != nullptr) {
    fill_from(*preset, job);
    return;
  }
  issues.push_back({Severity::warning, std::string(path),
                    "\"" + id.value + "\" is not in this catalogue; estimates are used instead."});
  id = {};
}

template <class Item>
void drop_unknown(const std::vector<Item>& list, Given<std::string>& id, std::string_view path,
                  Issues& issues) {
  if (!id.known() || find_item(list, id.value) != nullptr) return;
  issues.push_back({Severity::warning, std::string(path),
                    "\"" + id.value + "\" is not in this catalogue; Thole chooses instead."});
  id = {};
}

}  // namespace

Completed complete(const Job& given, const Catalogue& catalogue) {
  Completed done{.job = given};
  Job& job = done.job;
  refuse_impossible(job, done.issues);
  use_preset(catalogue.boats, job.boat.type, "boat.type", job, done.issues);
  use_preset(catalogue.waters, job.water.place, "water.place", job, done.issues);
  drop_unknown(catalogue.motors, job.hold.motor, "hold.motor", done.issues);
  drop_unknown(catalogue.blocks, job.bank.block, "bank.block", done.issues);
  drop_unknown(catalogue.cables, job.feeder.conductor, "feeder.conductor", done.issues);
  drop_unknown(catalogue.cables, job.feeder.tail_conductor, "feeder.tail_conductor", done.issues);
  drop_unknown(catalogue.devices, job.feeder.device, "feeder.device", done.issues);
  drop_unknown(catalogue.chargers, job.charge.charger, "charge.charger", done.issues);
  drop_unknown(catalogue.plates, job.mount.plate, "mount.plate", done.issues);
  drop_unknown(catalogue.bolts, job.mount.bolt, "mount.bolt", done.issues);
  refuse_unreadable(job.bank.fitted, "bank.fitted", wrong_with_fitted, done.issues);
  if (const BatteryBlock* block = find_item(catalogue.blocks, job.bank.block.value);
      block != nullptr && job.bank.block.known() && !job.bank.chemistry.known()) {
    job.bank.chemistry = {block->chemistry, Origin::chosen};  // the block decides it
  }

  if (const std::optional<Chemistry> said = chemistry_said(job.bank);
      said && !job.bank.chemistry.known()) {
    job.bank.chemistry = {*said, Origin::chosen};
  }
  refuse_unreadable(job.boat.side_view, "boat.side_view", wrong_with_view, done.issues);
  refuse_unreadable(job.boat.front_view, "boat.front_view", wrong_with_view, done.issues);
  refuse_unreadable(job.hold.day, "hold.day", wrong_with_day, done.issues);
  refuse_unreadable(job.feeder.network, "feeder.network", wrong_with_circuit, done.issues);
  refuse_unreadable(job.foredeck.items, "foredeck.items", wrong_with_items, done.issues);
  refuse_unreadable(job.mount.outline, "mount.outline", wrong_with_outline, done.issues);
  refuse_unreadable(job.mount.bolt_places, "mount.bolt_places", wrong_with_bolts, done.issues);
  refuse_unreadable(job.mount.cutouts, "mount.cutouts", wrong_with_cut_outs, done.issues);

  estimate_boat(job, done.trace);
  estimate_water(job, done.trace);
  estimate_hold(job, done.trace);
  estimate_shaft(job, done.trace);
  estimate_bank(job, done.trace);
  estimate_feeder(job, done.trace);
  estimate_charge(job, done.trace);
  estimate_locker(job, done.trace);
  estimate_mount(job, done.trace);
  estimate_trim(job, done.trace);
  estimate_control(job, done.trace);
  estimate_foredeck(job, done.trace);
  return done;
}

}  // namespace thole
