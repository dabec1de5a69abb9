// Limits of the data link as its standard's readers print them.

#include "calc/control/data_link.h"
#include "support.h"

using namespace thole;

TEST_SUITE("published") {
  // As installation guides of makers of network parts print them, read in excerpts and not against the
  // standard itself: single drop 6 m, all drops 78 m, 50 devices, 100 m of light (micro) backbone, a
  // terminator at each end, one load number 50 mA, 1.5 V between any two devices. The currents of the three cables are from memory and disputed
  // (kNetworkCable), so they are only held to grow.
  TEST_CASE("marine network limits [NMEA 2000 installation guides]") {
    CHECK(kLongestDrop_m == 6.0);
    CHECK(kAllDrops_m == 78.0);
    CHECK(kNetworkDevice_count == 50);
    CHECK(kTerminator_count == 2);
    CHECK(kLoadNumber_A == 0.05);
    CHECK(kNetworkDrop_V == 1.5);
    REQUIRE(network_cables().size() == 3);
    CHECK(network_cables()[0].longest_m == 100.0);
    CHECK(network_cables()[0].ohm_per_m >= 0.053);
    CHECK(network_cables()[0].ohm_per_m <= 0.057);
    for (std::size_t i = 1; i < network_cables().size(); ++i) {
      CHECK(network_cables()[i].rated_A > network_cables()[i - 1].rated_A);
      CHECK(network_cables()[i].longest_m >= network_cables()[i - 1].longest_m);
      CHECK(network_cables()[i].ohm_per_m <= network_cables()[i - 1].ohm_per_m);
      CHECK_FALSE(network_cables()[i].resistance_source->confirmed);
    }
  }
}
