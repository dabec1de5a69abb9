// Broken and hostile documents: nothing crashes, nothing hangs, everything is named.

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <random>
#include <string>
#include <string_view>

#include "base/edition.h"
#include "io/base64url.h"
#include "io/catalogue_json.h"
#include "io/cbor.h"
#include "io/crc32.h"
#include "io/embedded.h"
#include "io/issues_json.h"
#include "io/job_json.h"
#include "io/limits.h"
#include "io/link.h"
#include "io/presets.h"
#include "io/text.h"
#include "job/fields.h"
#include "support.h"

using namespace thole;

namespace {

bool says(const Issues& issues, Severity severity, std::string_view field,
          std::string_view part = "") {
  return std::any_of(issues.begin(), issues.end(), [&](const Issue& issue) {
    return issue.severity == severity && issue.field == field &&
           issue.message.find(part) != std::string::npos;
  });
}

bool refused(const Issues& issues) { return says(issues, Severity::error, ""); }

// Whatever was read lies in the ranges and can be written again.
void check_sound(const Job& job) {
  for (const Field& field : all_fields()) {
    if (field.access.origin(job) == Origin::absent || field.access.is_text()) continue;
    CHECK(range_message(field, field.access.get(job)).empty());
  }
  const Job again = read_job(write_job(job)).job;
  CHECK(again == job);
}

int count_given(const Job& job) {
  int count = 0;
  for (const Field& field : all_fields())
    count += field.access.origin(job) == Origin::given ? 1 : 0;
  return count;
}

// A link with a sound check sum round this content.
std::string sealed(std::string bytes) {
  const std::uint32_t sum = crc32(bytes);
  for (int shift = 24; shift >= 0; shift -= 8) bytes += static_cast<char>((sum >> shift) & 0xFFu);
  return "job=" + to_base64url(bytes);
}

CborWriter head(std::int64_t schema, std::int64_t edition, std::uint64_t pair_count) {
  CborWriter cbor;
  cbor.integer(schema);
  cbor.integer(edition);
  cbor.map(pair_count);
  return cbor;
}

}  // namespace

TEST_SUITE("bad input") {
  TEST_CASE("every ready-made job cut at each byte keeps what stands before the cut") {
    for (const ReadyJob& ready : ready_jobs()) {
      CAPTURE(ready.id);
      const std::string text(ready.text.substr(0, ready.text.find_last_not_of('\n') + 1));
      int before = 0;
      for (std::size_t size = 0; size < text.size(); ++size) {
        const JobRead read = read_job(std::string_view(text).substr(0, size));
        CHECK(refused(read.issues));
        const int now = count_given(read.job);
        // A number cut inside is a smaller number that may be out of its range.
        CHECK(now >= before - 1);
        before = std::max(before, now);
      }
      CHECK(before == count_given(ready.job));
      CHECK(read_job(text).issues.empty());
    }
  }

  TEST_CASE("the catalogue cut anywhere keeps whole rows") {
    std::string_view text;
    for (const EmbeddedFile& file : preset_files()) {
      if (file.path == "presets/catalogue.json") text = file.text;
    }
    REQUIRE(text.size() > 1000);
    for (std::size_t size = 0; size + 3 < text.size(); size += 97) {
      const CatalogueRead read = read_catalogue(text.substr(0, size));
      CHECK(refused(read.issues));
      for (const MotorClass& motor : read.catalogue.motors) CHECK(motor.thrust_N >= 50.0);
    }
  }

  TEST_CASE("a link with any one character changed is refused") {
    const char kOthers[] = "Aa9-_!%";
    for (const ReadyJob& ready : ready_jobs()) {
      CAPTURE(ready.id);
      const std::string link = write_link(ready.job);
      for (std::size_t i = 4; i < link.size(); ++i) {
        for (const char other : std::string_view(kOthers, sizeof kOthers - 1)) {
          if (link[i] == other) continue;
          std::string changed = link;
          changed[i] = other;
          const LinkRead read = read_link(changed);
          CAPTURE(changed);
          CHECK(refused(read.issues));
          CHECK(read.job == Job{});
        }
      }
    }
  }

  TEST_CASE("a link cut off anywhere is told as cut off") {
    for (const ReadyJob& ready : ready_jobs()) {
      const std::string link = write_link(ready.job);
      for (std::size_t size = 5; size < link.size(); ++size) {
        const LinkRead read = read_link(std::string_view(link).substr(0, size));
        CAPTURE(size);
        CHECK(says(read.issues, Severity::error, "", "cut off"));
        CHECK(read.job == Job{});
      }
    }
    CHECK(refused(read_link("#job=").issues));
    CHECK(refused(read_link("").issues));
  }

  TEST_CASE("what is no link is told so") {
    for (const std::string_view text : {"#_ga=2.1.3", "https://example.org/", "hello", "job", "#",
                                        "....", "{\"schema\": 1}", "\xff\xfe"}) {
      CAPTURE(text);
      CHECK(refused(read_link(text).issues));
    }
    CHECK(refused(read_link(std::string(1'000'000, 'A')).issues));
    CHECK(refused(read_link("job=" + std::string(10'000, '_')).issues));
  }

  TEST_CASE("a sealed link may still hold anything") {
    SUBCASE("newer schema: an error, and what is known is kept") {
      CborWriter cbor = head(kSchema + 1, kEngineEdition, 2);
      for (const int item : {11, 760, 9999, 1}) cbor.integer(item);
      const LinkRead read = read_link(sealed(cbor.bytes()));
      CHECK(says(read.issues, Severity::error, "schema", "newer"));
      CHECK(says(read.issues, Severity::warning, "field 9999", "newer version"));
      CHECK(read.job.boat.length_m.value == 7.6);
    }
    SUBCASE("editions") {
      CHECK(says(read_link(sealed(head(kSchema, kEngineEdition + 1, 0).bytes())).issues,
                 Severity::warning, "edition"));
      CHECK(says(read_link(sealed(head(kSchema, 0, 0).bytes())).issues, Severity::note, "edition"));
      CHECK(read_link(sealed(head(kSchema, kEngineEdition, 0).bytes())).issues.empty());
    }
    SUBCASE("values out of range, of the wrong type, or huge") {
      CborWriter cbor = head(kSchema, kEngineEdition, 4);
      cbor.integer(1), cbor.text(std::string(500, 'x'));
      cbor.integer(10), cbor.integer(3);
      cbor.integer(11), cbor.integer(-760);
      cbor.integer(12), cbor.integer(INT64_MAX);
      const LinkRead read = read_link(sealed(cbor.bytes()));
      CHECK(says(read.issues, Severity::error, "title"));
      CHECK(says(read.issues, Severity::error, "boat.type"));
      CHECK(says(read.issues, Severity::error, "boat.length_m", "between"));
      CHECK(says(read.issues, Severity::error, "boat.displacement_kg"));
      CHECK(read.job == Job{});
    }
    SUBCASE("a list of steps, as written today; a field that is not known yet") {
      CborWriter cbor;
      cbor.integer(kSchema), cbor.integer(kEngineEdition), cbor.list(6);
      for (const int item : {11, 760, 1, 2000, 9000, 1}) cbor.integer(item);
      const LinkRead read = read_link(sealed(cbor.bytes()));
      CHECK(says(read.issues, Severity::warning, "field 9012", "newer version"));
      CHECK(read.job.boat.length_m.value == 7.6);
      CHECK(read.job.boat.displacement_kg.value == 2000.0);
    }
    SUBCASE("not as we write it") {
      for (const std::string_view hex :
           {"010183181801", "0101840b1902f80001", "0101840b1902f82001", "01019bffffffffffffffff01",
            "0101821b7fffffffffffffff01", "010181", "010182", "0101a1181813", "0101bf01", "0101a201020102", "0101a2030401025f", "0101", "01", "",
            "0101a0ff", "2001a0", "0001a0", "0101a11b7fffffffffffffff0101",
            "0101bbffffffffffffffff01", "f97e00", "a0", "0101a1f5f5", "0101a11863c0",
            "0101a16161616161"}) {
        CAPTURE(hex);
        std::string bytes;
        for (std::size_t i = 0; i + 1 < hex.size(); i += 2) {
          bytes += static_cast<char>(std::stoi(std::string(hex.substr(i, 2)), nullptr, 16));
        }
        const LinkRead read = read_link(sealed(bytes));
        CHECK_FALSE(read.issues.empty());
        check_sound(read.job);
      }
    }
  }

  TEST_CASE("random bytes") {
    std::mt19937 random(99);
    for (int i = 0; i < 3000; ++i) {
      std::string bytes(random() % 80, '\0');
      for (char& byte : bytes) byte = static_cast<char>(random() & 0xFFu);
      const LinkRead raw = read_link(bytes);
      CHECK(refused(raw.issues));
      const LinkRead link = read_link(sealed("\x01\x01" + bytes));
      check_sound(link.job);
      check_sound(read_job(bytes).job);
      CHECK(refused(read_job(bytes).issues));
      CHECK(refused(read_catalogue(bytes).issues));
      CHECK(refused(read_preset(bytes).issues));
      CHECK(is_utf8(write_issues(link.issues)));
    }
  }

  TEST_CASE("ready-made jobs with bytes changed at random") {
    std::mt19937 random(5);
    for (const ReadyJob& ready : ready_jobs()) {
      for (int i = 0; i < 300; ++i) {
        std::string text(ready.text);
        for (int k = 0; k < 3; ++k)
          text[random() % text.size()] = static_cast<char>(random() & 0xFFu);
        check_sound(read_job(text).job);
      }
    }
  }

  TEST_CASE("job: each wrong value is named, the right ones stay") {
    const JobRead read = read_job(R"({
      "schema": 1, "title": 5, "colour": "red", "feeder": 3,
      "boat": {"length_m": "7.6", "displacement_kg": -2300, "bow_height_m": 1.35, "crew_count": 2.5,
               "petrol": 1, "layout": "raft", "type": ["x"], "beam_m": null, "lenght_m": 7.6,
               "draft_m": {"a": 1}, "deadrise_deg": 1e300, "leg": "down"},
      "water": {"wind_mps": true}
    })");
    for (const std::string_view field :
         {"title", "feeder", "boat.length_m", "boat.displacement_kg", "boat.crew_count",
          "boat.petrol", "boat.layout", "boat.type", "boat.draft_m", "boat.deadrise_deg",
          "water.wind_mps"}) {
      CAPTURE(field);
      CHECK(says(read.issues, Severity::error, field));
    }
    CHECK(says(read.issues, Severity::warning, "colour"));
    CHECK(says(read.issues, Severity::warning, "boat.lenght_m"));
    CHECK(says(read.issues, Severity::error, "boat.displacement_kg", "between 250 and 15000 kg"));
    CHECK(says(read.issues, Severity::error, "boat.layout", "\"open_skiff\""));
    CHECK(read.issues.size() == 13);
    CHECK(read.job.boat.bow_height_m.value == 1.35);
    CHECK(read.job.boat.leg.value == Leg::down);
    CHECK(count_given(read.job) == 2);
  }

  TEST_CASE("job: the document as a whole") {
    for (const std::string_view text :
         {"", " \n", "[]", "5", "null", "\"text\"", "{", "}", "{\"schema\": 1,}", "{'schema': 1}",
          "{\"schema\": NaN}", "{\"boat\": {\"length_m\": Infinity}}", "{\"schema\": 1} {}",
          "\xEF\xBB", "{\"title\": \"\xff\"}", "{\"boat\": {\"length_m\": 1e999}}",
          "{\"boat\": {\"length_m\": 01}}"}) {
      CAPTURE(text);
      const JobRead read = read_job(text);
      CHECK(refused(read.issues));
      CHECK(read.job == Job{});
    }
    CHECK(says(read_job("{\"boat\": {\"length_m\": 1e999}}").issues, Severity::error, "",
               "too large"));
    CHECK(says(read_job("{\n\n\"boat\" 3}").issues, Severity::error, "", "line 3"));
    CHECK(says(read_job("{\"boat\": {}").issues, Severity::error, "", "breaks off"));
    CHECK(says(read_job("{}").issues, Severity::note, "schema"));
    CHECK(says(read_job("{\"schema\": \"1\"}").issues, Severity::error, "schema"));
    CHECK(says(read_job("{\"schema\": 0}").issues, Severity::error, "schema"));
    const JobRead newer = read_job("{\"schema\": 2, \"boat\": {\"length_m\": 7.6, \"keel\": 1}}");
    CHECK(says(newer.issues, Severity::error, "schema", "newer"));
    CHECK(newer.job.boat.length_m.value == 7.6);
    const JobRead twice = read_job("{\"schema\": 1, \"title\": \"a\", \"title\": \"b\"}");
    CHECK(says(twice.issues, Severity::warning, "title", "twice"));
    CHECK(twice.job.title.value == "b");
    const JobRead dotted = read_job("{\"schema\": 1, \"boat.length_m\": 7.6}");
    CHECK(dotted.issues.size() == 1);
    CHECK(dotted.job == Job{});
  }

  TEST_CASE("deep and large texts end quickly") {
    for (const std::string_view open : {"[", "{\"a\":", "{\"boat\":["}) {
      std::string text;
      for (int i = 0; i < 20000; ++i) text += open;
      CHECK(refused(read_job(text).issues));
      CHECK(refused(read_catalogue(text).issues));
    }
    CHECK(refused(read_job(std::string(kMostJobBytes + 1, ' ') + "{}").issues));
    std::string many = "{\"schema\": 1";
    for (int i = 0; i < 5000; ++i) many += ", \"k" + std::to_string(i) + "\": 1";
    CHECK(read_job(many + "}").issues.size() == 5000);
    std::string list = "{\"schema\": 1, \"motors\": [";
    for (int i = 0; i < 60000; ++i) list += "1,";
    CHECK(has_error(read_catalogue(list + "1]}").issues));
  }

  TEST_CASE("titles: one line, not too long, never half a character") {
    std::string text = "{\"schema\": 1, \"title\": \"a\\nb\\u0000c ";
    for (int i = 0; i < 200; ++i) text += "\u00fc";
    const JobRead read = read_job(text + "\"}");
    CHECK(says(read.issues, Severity::warning, "title"));
    CHECK(read.job.title.value.starts_with("a b c "));
    CHECK(read.job.title.value.size() <= kMostTextBytes);
    CHECK(is_utf8(read.job.title.value));
    Job job;
    job.title = {"half \xc3", Origin::given};
    CHECK(read_link(write_link(job)).job.title.value == "half ?");
    CHECK(read_job(write_job(job)).job.title.value == "half ?");
  }

  TEST_CASE("a job that holds the impossible is written without it") {
    Job job;
    job.boat.length_m = {std::nan(""), Origin::given};
    job.boat.displacement_kg = {HUGE_VAL, Origin::given};
    job.boat.layout = {static_cast<Layout>(99), Origin::given};
    job.boat.bow_height_m = {1.35, Origin::given};
    CHECK(count_given(read_job(write_job(job)).job) == 1);
    CHECK(count_given(read_link(write_link(job)).job) == 1);
  }

  TEST_CASE("catalogue: a row that is not sound is named and left out") {
    const CatalogueRead read = read_catalogue(R"({
      "schema": 1, "shop": {"currency": "USD", "labour_per_h": 90, "scrap_frac": 0.1}, "hats": [],
      "cables": [
        {"id": "a", "conductor": "4 AWG", "insulation_C": 105, "mass_kg_per_m": 0.2, "price_per_m": 5},
        {"id": "a", "conductor": "2 AWG", "insulation_C": 105, "mass_kg_per_m": 0.3, "price_per_m": 8},
        {"conductor": "2 AWG", "mass_kg_per_m": 0.3, "price_per_m": 8},
        {"id": "d", "conductor": "2 AWG", "mass_kg_per_m": 0.3, "price_per_m": -8},
        {"id": "e", "conductor": "2 AWG", "mass_kg_per_m": "0.3", "colour": "red"},
        7,
        {"id": "g", "conductor": "1 AWG", "mass_kg_per_m": 0.4, "colour": "red"}
      ],
      "sundries": [{"id": "s", "label": "S", "per": "week"}, {"id": "t", "label": "T", "per": "bolt"}],
      "devices": {"id": "x"},
      "motors": [{"id": "m", "label": "M", "shaft_lengths_m": [1.6, 1.4]}]
    })");
    CHECK(says(read.issues, Severity::warning, "hats"));
    CHECK(says(read.issues, Severity::error, "cables[1].id", "taken"));
    CHECK(says(read.issues, Severity::error, "cables[2].id"));
    CHECK(says(read.issues, Severity::error, "cables[3].price_per_m", "between 0"));
    CHECK(says(read.issues, Severity::error, "cables[4].mass_kg_per_m"));
    CHECK(says(read.issues, Severity::error, "cables[5]"));
    CHECK(says(read.issues, Severity::warning, "cables[6].colour"));
    CHECK(says(read.issues, Severity::error, "sundries[0].per", "\"bolt\""));
    CHECK(says(read.issues, Severity::error, "devices"));
    CHECK(says(read.issues, Severity::error, "motors[0].shaft_lengths_m", "ascending"));
    CHECK(says(read.issues, Severity::error, "motors[0].thrust_N"));
    REQUIRE(read.catalogue.cables.size() == 2);
    CHECK(read.catalogue.cables[1].id == "g");
    REQUIRE(read.catalogue.sundries.size() == 1);
    CHECK(read.catalogue.sundries[0].per == Per::bolt);
    CHECK(read.catalogue.motors.empty());
    CHECK(read.catalogue.shop.currency == "USD");
  }

  TEST_CASE("preset: needs its names") {
    const PresetRead read =
        read_preset("{\"schema\": 1, \"job\": {\"boat\": {\"length_m\": 99}, \"x\": 1}}");
    CHECK(says(read.issues, Severity::error, "id"));
    CHECK(says(read.issues, Severity::error, "label"));
    CHECK(says(read.issues, Severity::error, "job.boat.length_m"));
    CHECK(says(read.issues, Severity::warning, "job.x"));
  }

  TEST_CASE("a device's curve that is none: the issue names the row and what would be right") {
    const auto read = [](const std::string& curve) {
      return read_catalogue(R"({"schema": 1, "devices": [{"id": "d", "kind": "fuse", "rating_A": 60, "curve": )" + curve + "}]}");
    };
    CHECK_FALSE(refused(read(R"("class-t-fuse")").issues));
    for (const char* curve : {R"("class-u-fuse")", R"("")", "7", "[[1, 2], [3]]", R"("1:10 2:0.5 1:0.1")", "{}"}) {
      CAPTURE(curve);
      const CatalogueRead bad = read(curve);
      const auto named = std::find_if(bad.issues.begin(), bad.issues.end(), [](const Issue& issue) {
        return issue.field.find("curve") != std::string::npos;
      });
      REQUIRE(named != bad.issues.end());
      CHECK(named->message.back() == '.');
      CHECK(named->message.size() > 10);
    }
    CHECK_FALSE(read("null").catalogue.devices.size() > 1);
  }
}
