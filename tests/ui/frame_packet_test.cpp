// A frame as words: what the painter reads must be whole, in range and complete.

#include "ui/frame_packet.h"

#include <cstring>
#include <map>
#include <string>

#include "support.h"
#include "ui/wizard.h"

using namespace thole;
using namespace thole::ui;

namespace {

// Reads a packet as web/painter.js does, and holds every count against the words that are there.
struct Read {
  std::uint32_t width = 0;
  std::uint32_t height = 0;
  std::uint32_t ground = 0;
  std::map<std::uint32_t, std::uint32_t> texel_words{};  // by texture
  std::uint32_t vertices = 0;
  int commands = 0;
};

float real(std::uint32_t bits) {
  float value = 0.0f;
  std::memcpy(&value, &bits, sizeof value);
  return value;
}

Read read_packet(const std::vector<std::uint32_t>& words) {
  REQUIRE(words.size() >= static_cast<std::size_t>(kPacketHeader));
  Read read{.width = words[0], .height = words[1], .ground = words[4], .vertices = words[7]};
  std::size_t at = kPacketHeader;
  for (std::uint32_t i = 0; i < words[5]; ++i) {
    REQUIRE(at + kPacketTexture <= words.size());
    const std::uint32_t* t = words.data() + at;
    CHECK(t[4] + t[6] <= t[2]);  // the rectangle lies within the texture
    CHECK(t[5] + t[7] <= t[3]);
    CHECK(t[8] == (t[6] * t[7] + 3) / 4);
    read.texel_words[t[0]] = t[8];
    at += kPacketTexture + t[8];
  }
  const std::uint32_t commands = words[6];
  const std::uint32_t indices = words[8];
  for (std::uint32_t i = 0; i < commands; ++i) {
    REQUIRE(at + kPacketCommand <= words.size());
    const std::uint32_t* c = words.data() + at;
    CHECK(c[0] != 0);  // a texture
    CHECK(c[1] + c[2] <= indices);
    CHECK(c[2] % 3 == 0);
    CHECK(c[3] + c[5] <= read.width);
    CHECK(c[4] + c[6] <= read.height);
    at += kPacketCommand;
  }
  const std::size_t first_vertex = at;
  at += static_cast<std::size_t>(words[7]) * kPacketVertex;
  REQUIRE(at + indices == words.size());
  for (; at < words.size(); ++at) REQUIRE(words[at] < words[7]);
  for (std::size_t v = 0; v < words[7]; ++v) {
    const std::uint32_t* vertex = words.data() + first_vertex + v * kPacketVertex;
    REQUIRE(real(vertex[2]) >= 0.0f);  // within the texture
    REQUIRE(real(vertex[2]) <= 1.0f);
    REQUIRE(real(vertex[3]) >= 0.0f);
    REQUIRE(real(vertex[3]) <= 1.0f);
  }
  read.commands = static_cast<int>(commands);
  return read;
}

}  // namespace

TEST_SUITE("ui") {
  TEST_CASE("a frame leaves as whole words, its first with the type, the next without") {
    test::Wizard wizard;
    const auto packet = [&](bool all) { return pack_frame(*ImGui::GetDrawData(), 0xF7F5EF, all); };
    const Read whole = read_packet(packet(true));
    CHECK(whole.width == 412);
    CHECK(whole.height == 915);
    CHECK(whole.ground == 0xF7F5EF);
    CHECK(whole.commands >= 1);
    CHECK(whole.vertices > 1000);
    REQUIRE(whole.texel_words.size() == 1);
    CHECK(whole.texel_words.begin()->second > 1000);

    const Read next = read_packet(packet(false));
    CHECK(next.texel_words.empty());  // nothing new to be sent
    CHECK(next.vertices == whole.vertices);
  }

  TEST_CASE("pages with letters not seen before send them, and nothing is lost on the way") {
    test::Wizard wizard;
    CHECK(wizard.texels_sent() > 0);  // the first letters
    const std::size_t before = wizard.texels_sent();
    wizard.app().act("app", "page", "pack");
    wizard.settle();
    wizard.view.text_scale = 1.5f;  // every letter anew
    wizard.settle();
    CHECK(wizard.texels_sent() > before);
    const Read whole = read_packet(pack_frame(*ImGui::GetDrawData(), 0, true));
    CHECK(!whole.texel_words.empty());
  }
}
