#include "io/locker_text.h"

#include <algorithm>
#include <cmath>

#include <nlohmann/json.hpp>

#include "io/figures.h"
#include "io/table_text.h"

namespace thole {
namespace {

using Json = nlohmann::ordered_json;

std::string mm(double length_m, System system) { return show(1000.0 * length_m, "mm", system).text(); }
std::string newtons(double force_N, System system) { return show(force_N, "N", system).text(); }

std::string plural(int count, const std::string& one) {
  return std::to_string(count) + " " + one + (count == 1 ? "" : "s");
}

Json spot(const Spot& at) { return {at.x_m, at.y_m, at.z_m}; }

Json shortfalls(const std::vector<Shortfall>& list) {
  Json out = Json::array();
  for (const Shortfall& shortfall : list) out.push_back({{"said", said(shortfall)}, {"missing_m", shortfall.missing_m}});
  return out;
}

// A figure that is not known is null.
Json known(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

Json checks_of(const Trace& trace) {
  Json out = Json::array();
  for (const Check& check : trace.checks) {
    out.push_back({{"id", check.id}, {"label", check.label}, {"verdict", word(check.verdict())}, {"actual", known(check.actual)},
                   {"limit", check.limit}, {"unit", check.unit}, {"source", check.source->id},
                   {"confirmed", check.source->confirmed}, {"remedy", check.remedy}});
  }
  return out;
}

Json arrangement_json(const Arrangement& arrangement) {
  Json blocks = Json::array();
  for (const PlacedBlock& block : arrangement.blocks) {
    blocks.push_back({{"low_m", spot(block.low)}, {"size_m", spot(block.size)}, {"minus_m", spot(block.minus)}, {"plus_m", spot(block.plus)}});
  }
  Json jumpers = Json::array();
  for (const Jumper& jumper : arrangement.jumpers) {
    jumpers.push_back({{"from", jumper.from + 1}, {"to", jumper.to + 1}, {"links_strings", jumper.links_strings}, {"length_m", jumper.length_m}});
  }
  return {{"posture", arrangement.posture == Posture::upright ? "upright" : "on_side"},
          {"tier_count", arrangement.tier_count},
          {"height_m", arrangement.height_m},
          {"jumpers_m", arrangement.jumpers_m},
          {"jumper_each_m", jumper_each_m(arrangement)},
          {"proved", arrangement.proved},
          {"blocks", std::move(blocks)},
          {"jumpers", std::move(jumpers)}};
}

std::string packing_text(const LockerStudy& study, const Design& design, System system) {
  const BankResult& bank = design.bank;
  std::string text = plural(bank.block_count, "block") + ": " + bank.block.label + ", " + mm(study.input.packing.block_length_m, system) +
                     " by " + mm(study.input.packing.block_width_m, system) + ", " + mm(study.input.packing.block_height_m, system) +
                     " high\n";
  if (!study.input.measured) {
    return text + "The locker is not measured yet: give locker.length_m, locker.width_m and locker.height_m.\n";
  }
  const PackingResult& packing = study.packing;
  if (!packing.fits) {
    text += packing.problem + "\n";
    for (const LockerOption& option : study.options) {
      text += "  " + option.change.label + ": they go in, " + show(option.mass_kg, "kg", system).text() + "\n";
    }
    return text;
  }
  TextTable table{.rows = {{"", "height", "jumpers", "together", "count on, each", "shortest"}},
                  .right = {false, true, true, true, true, false}};
  for (const Arrangement& at : packing.arrangements) {
    table.rows.push_back({arrangement_name(at), mm(at.height_m, system), std::to_string(at.jumpers.size()), mm(at.jumpers_m, system),
                          mm(jumper_each_m(at), system), at.proved ? "proved" : "as found"});
  }
  text += "\n" + table_text(table);
  if (packing.arrangements.empty() || packing.arrangements.front().jumpers.empty()) return text;
  TextTable jumpers{.rows = {{"jumper", "cut to"}}, .right = {false, true}};
  for (const Jumper& jumper : packing.arrangements.front().jumpers) {
    jumpers.rows.push_back({jumper_name(jumper), mm(jumper.length_m, system)});
  }
  const double counted_m = design.job.feeder.jumper_m.value;
  text += "\n" + table_text(jumpers) + "The feeder counts on " + mm(counted_m, system) + " each.";
  const Check check = jumper_check(packing.arrangements.front(), counted_m);
  if (check.verdict() == Verdict::fail) text += " " + check.remedy;
  return text + "\n";
}

std::string place_text(const LockerStudy& study, System system) {
  TextTable table{.rows = {{"near the bank", "", "is, and its limit"}}, .right = {false, false, true}};
  for (const Check& check : study.place.checks) {
    const bool open = check.verdict() == Verdict::not_evaluated;
    table.rows.push_back({check.label, open ? "not measured yet" : std::string(word(check.verdict())),
                          open ? "-" : shown_check(check, system)});
  }
  std::string text = table_text(table);
  for (const Check& check : study.place.checks) {
    if (check.verdict() == Verdict::fail) text += check.label + ": " + check.remedy + "\n";
  }
  return text;
}

std::string restraint_text(const LockerStudy& study, System system) {
  TextTable table{.rows = {{"each block held against", "up", "fore and aft", "to the side"}}, .right = {false, true, true, true}};
  for (const RestraintRule& rule : study.restraint.rules) {
    table.rows.push_back({rule_name(rule, study.restraint, system), newtons(rule.vertical_N, system),
                          newtons(rule.fore_aft_N, system), newtons(rule.side_N, system)});
  }
  std::string text = table_text(table);
  for (const RestraintLine& line : restraint_lines(study, system)) text += line.label + ": " + line.value + "\n";
  for (const Check& check : study.restraint.trace.checks) {
    if (check.verdict() == Verdict::fail) text += check.label + ": " + check.remedy + "\n";
  }
  return text;
}

}  // namespace

std::string arrangement_name(const Arrangement& arrangement) {
  std::string name = arrangement.posture == Posture::upright ? "Upright" : "On their sides";
  if (arrangement.tier_count > 1) name += ", two tiers";
  return name;
}

std::string jumper_name(const Jumper& jumper) {
  return std::to_string(jumper.from + 1) + " to " + std::to_string(jumper.to + 1) +
         (jumper.links_strings ? ", joins strings" : ", plus to minus");
}

std::string rule_name(const RestraintRule& rule, const RestraintResult& result, System system) {
  std::string name = rule.label;
  if (rule.moves_m > 0.0) name += ", may give " + mm(rule.moves_m, system);
  if (rule.id == result.governs) name += ": counts";
  return name;
}

std::string rule_figures(const RestraintRule& rule, System system) {
  if (rule.fore_aft_N == rule.vertical_N && rule.side_N == rule.vertical_N) return newtons(rule.vertical_N, system) + " each way";
  return newtons(rule.vertical_N, system) + " up, " + newtons(rule.fore_aft_N, system) + " along, " + newtons(rule.side_N, system) +
         " across";
}

std::vector<RestraintLine> restraint_lines(const LockerStudy& study, System system) {
  const RestraintResult& restraint = study.restraint;
  if (restraint.rules.empty()) return {};
  const int blocks = std::max(1, study.input.restraint.block_count);
  return {{"locker.restraint", "Straps over each block", std::to_string(restraint.strap_count) + ", in all " +
                                                         std::to_string(restraint.strap_count * blocks)},
          {"locker.strap", "Each strap rated at least", newtons(restraint.strap_need_N, system)},
          {"locker.wall", "Tray's wall at least", mm(restraint.wall_m, system)}};
}

std::vector<std::string> locker_remarks(const LockerStudy& study, const Design& design, System system) {
  const PackingInput& in = study.input.packing;
  std::vector<std::string> remarks;
  remarks.push_back(mm(in.air_gap_m, system) + " of air to each neighbour and wall, " + mm(in.strap_room_m, system) +
                    " beside each block for its straps, " + mm(in.terminal_room_m, system) +
                    " over the posts for two lugs (common practice). Full posts are plus; thin lines are straps.");
  if (design.bank.block.id == "own") {
    remarks.push_back("Your own block counts as large as the one of the catalogue nearest in capacity: measure it.");
  }
  if (in.opening_length_m > in.locker_length_m || in.opening_width_m > (in.by_door ? in.locker_height_m : in.locker_width_m)) {
    remarks.push_back("The opening is larger than the locker: measure both again.");
  }
  return remarks;
}

std::string locker_text(const LockerStudy& study, const Design& design, System system) {
  std::string text = packing_text(study, design, system);
  if (study.input.measured) {
    for (const std::string& remark : locker_remarks(study, design, system)) text += remark + "\n";
  }
  text += "\n" + place_text(study, system) + "\n" + restraint_text(study, system) + "\n";
  for (const Trace* trace : {&study.place, &study.restraint.trace}) {
    for (const Caution& caution : trace->cautions) text += "Caution: " + caution.text + "\n";
  }
  return text;
}

std::string write_locker(const LockerStudy& study, const Design& design) {
  const PackingResult& packing = study.packing;
  Json arrangements = Json::array();
  for (const Arrangement& at : packing.arrangements) arrangements.push_back(arrangement_json(at));
  Json options = Json::array();
  for (const LockerOption& option : study.options) {
    options.push_back({{"block", option.block.id}, {"series_count", option.series_count}, {"parallel_count", option.parallel_count}, {"mass_kg", option.mass_kg}});
  }
  Json rules = Json::array();
  for (const RestraintRule& rule : study.restraint.rules) {
    rules.push_back({{"id", rule.id}, {"label", rule.label}, {"vertical_N", rule.vertical_N}, {"fore_aft_N", rule.fore_aft_N},
                     {"side_N", rule.side_N}, {"moves_m", rule.moves_m}, {"source", rule.source->id}, {"confirmed", rule.source->confirmed}});
  }
  Json room = nullptr;
  if (study.input.measured) {
    room = {{"fits", packing.fits}, {"exact", packing.exact}, {"message", packing.problem}, {"capacity_count", packing.capacity_count},
            {"all_of", shortfalls(packing.all_of)}, {"one_of", shortfalls(packing.one_of)}, {"arrangements", std::move(arrangements)}};
  }
  const Json out = {{"block", design.bank.block.id},
                    {"block_count", design.bank.block_count},
                    {"measured", study.input.measured},
                    {"room", std::move(room)},
                    {"options", std::move(options)},
                    {"near", checks_of(study.place)},
                    {"restraint",
                     {{"rules", std::move(rules)}, {"governs", study.restraint.governs}, {"strap_count", study.restraint.strap_count},
                      {"strap_need_N", study.restraint.strap_need_N}, {"wall_m", study.restraint.wall_m},
                      {"checks", checks_of(study.restraint.trace)}}}};
  return out.dump(2) + "\n";
}

}  // namespace thole
