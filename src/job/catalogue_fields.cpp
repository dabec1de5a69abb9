#include "job/catalogue_fields.h"

#include <array>

namespace thole {
namespace {

constexpr double kMost_price = 100000.0;
constexpr int kMost_lead_days = 365;

constexpr std::array kDeviceKindOptions{Option{"breaker", "Breaker"}, Option{"fuse", "Fuse"}};
// In the order of DeviceClass.
constexpr std::array kDeviceClassOptions{
    Option{"blade-fuse", "Blade fuse"},           Option{"bolt-fuse", "Bolt-down fuse"},
    Option{"class-t-fuse", "Class T fuse"},       Option{"thermal-breaker", "Thermal breaker"},
    Option{"breaker-instant", "Breaker without delay"},
    Option{"breaker-short", "Breaker, short delay"},
    Option{"breaker-medium", "Breaker, medium delay"},
    Option{"breaker-long", "Breaker, long delay"}};
constexpr std::array kPerOptions{Option{"job", "Job"}, Option{"block", "Block"},
                                 Option{"bolt", "Bolt"}, Option{"metre", "Metre of feeder"},
                                 Option{"joint", "Joint"}, Option{"network", "Marine network"},
                                 Option{"network_metre", "Metre of its backbone"},
                                 Option{"network_device", "Device on it"},
                                 Option{"ethernet_metre", "Metre of Ethernet cable"},
                                 Option{"remote_cells", "Remote that runs on cells"},
                                 Option{"plug", "Plug"}, Option{"stud_block", "Stud block"},
                                 Option{"battery_switch", "Battery switch"}};

}  // namespace

// Key and member cannot differ.
#define THOLE_ROW(Row)                               \
  template <>                                        \
  std::span<const Column<Row>> columns<Row>() {      \
    static constexpr Column<Row> kColumns[] = {
#define THOLE_COLUMN(Row, name, help, ...) {#name, &Row::name, __VA_ARGS__}
#define THOLE_END(Row) \
  }                    \
  ;                    \
  return kColumns;     \
  }
#include "job/catalogue_columns.inc"
#undef THOLE_ROW
#undef THOLE_COLUMN
#undef THOLE_END

std::span<const Option> options_of(Chemistry) { return find_field("bank.chemistry")->options; }
std::span<const Option> options_of(DeviceKind) { return kDeviceKindOptions; }
std::span<const Option> options_of(DeviceClass) { return kDeviceClassOptions; }
std::span<const Option> options_of(Per) { return kPerOptions; }

}  // namespace thole
