#include "draw/chapters.h"

#include <array>

#include "draw/locker_plan.h"

#include "draw/foredeck_plan.h"

namespace thole {
namespace {

constexpr std::array kChapters{
    Chapter{.key = "boat",
            .title = "Boat",
            .lead = "What the wind and the water take hold of.",
            .picture = boat_picture},
    Chapter{.key = "water",
            .title = "Water",
            .lead = "The worst in which it should still hold.",
            .picture = water_picture},
    Chapter{.key = "hold",
            .title = "Hold",
            .lead = "The thrust that keeps the bow over the spot.",
            .headline = "hold.thrust_required_N",
            .picture = hold_picture,
            .trace = [](const Design& d) { return &d.hold.trace; }},
    Chapter{.key = "shaft",
            .title = "Shaft",
            .lead = "From the deck to water that stays solid.",
            .headline = "shaft.length_required_m",
            .picture = shaft_picture,
            .trace = [](const Design& d) { return &d.shaft.trace; }},
    Chapter{.key = "bank",
            .title = "Bank",
            .lead = "Batteries that last the day, old and cold.",
            .headline = "bank.endurance_h",
            .picture = bank_picture,
            .trace = [](const Design& d) { return &d.bank.trace; }},
    Chapter{.key = "feeder",
            .title = "Feeder",
            .lead = "Cable and protection from bank to motor.",
            .headline = "feeder.drop_frac",
            .picture = feeder_picture,
            .trace = [](const Design& d) { return &d.feeder.trace; }},
    Chapter{.key = "charge",
            .title = "Charging",
            .lead = "Full again by morning, and vented.",
            .headline = "charge.time_h",
            .picture = charge_picture,
            .trace = [](const Design& d) { return &d.charge.trace; }},
    Chapter{.key = "locker",
            .title = "Locker",
            .lead = "Where the bank lives, and what holds it down.",
            .picture = locker_picture,
            .trace = [](const Design& d) { return &d.locker.trace; },
            .applies = [](const Design& d) { return d.locker.measured; }},
    Chapter{.key = "mount",
            .title = "Mount",
            .lead = "A plate that does not flex, bolts that stay.",
            .headline = "mount.plate_thickness_mm",
            .picture = mount_picture,
            .trace = [](const Design& d) { return &d.mount.trace; }},
    Chapter{.key = "trim",
            .title = "Trim",
            .lead = "What the weight does to how she floats.",
            .headline = "trim.bow_sinkage_m",
            .picture = trim_picture,
            .trace = [](const Design& d) { return &d.trim.trace; }},
    Chapter{.key = "control",
            .title = "Control and sensors",
            .lead = "What tells the motor where to stay.",
            .headline = "control.heading_error_deg",
            .picture = control_picture,
            .trace = [](const Design& d) { return &d.control.trace; }},
    Chapter{.key = "foredeck",
            .title = "Foredeck",
            .lead = "Room to stow it, and a light that is seen.",
            .picture = foredeck_picture},
    Chapter{.key = "parts",
            .title = "Parts and work",
            .lead = "What is bought, and the hours it takes.",
            .headline = "parts.total_price",
            .trace = [](const Design& d) { return &d.parts.trace; }},
};

}  // namespace

std::span<const Chapter> all_chapters() { return kChapters; }

const Chapter* find_chapter(std::string_view key) {
  for (const Chapter& chapter : kChapters) {
    if (chapter.key == key) return &chapter;
  }
  return nullptr;
}

}  // namespace thole
