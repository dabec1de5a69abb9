// Documents survive the way out and back.

#include <algorithm>
#include <cmath>
#include <fstream>
#include <iterator>
#include <random>
#include <string>

#include "base/edition.h"
#include "io/base64url.h"
#include "io/catalogue_json.h"
#include "io/cbor.h"
#include "io/crc32.h"
#include "io/embedded.h"
#include "io/issues_json.h"
#include "io/job_json.h"
#include "io/link.h"
#include "io/measure.h"
#include "io/presets.h"
#include "io/schema_json.h"
#include "job/catalogue_fields.h"
#include "job/fields.h"
#include "support.h"

using namespace thole;

namespace {

std::string file_text(const std::string& path) {
  std::ifstream file(std::string(THOLE_ROOT) + "/" + path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

// A job with each field given at random, on the grid that the link rounds to.
Job random_job(std::mt19937& random, double share) {
  const auto at_random = [&random](double low, double high) {
    return low + (high - low) * static_cast<double>(random() % 10001) / 10000.0;
  };
  Job job;
  for (const Field& field : all_fields()) {
    if (at_random(0.0, 1.0) > share) continue;
    if (field.access.is_text()) {
      field.access.set_text(job, "text-" + std::to_string(random() % 1000));
    } else {
      const double value = at_random(field.min, field.max);
      field.access.set(
          job, std::clamp(std::round(value / field.quantum) * field.quantum, field.min, field.max));
    }
    field.access.set_origin(job, Origin::given);
  }
  return job;
}

// The same fields, each number within half a quantum.
void check_close(const Job& a, const Job& b) {
  for (const Field& field : all_fields()) {
    CAPTURE(field.path());
    CHECK(field.access.origin(a) == field.access.origin(b));
    if (field.access.is_text()) {
      CHECK(field.access.get_text(a) == field.access.get_text(b));
    } else {
      CHECK(near(field.access.get(a), field.access.get(b), 0.501 * field.quantum));
    }
  }
}

std::string said(const Issues& issues) { return write_issues(issues); }

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("every preset reads without a word and survives the way back") {
    int catalogues = 0, boats = 0, waters = 0, jobs = 0;
    std::vector<EmbeddedFile> files(preset_files().begin(), preset_files().end());
    files.insert(files.end(), ready_job_files().begin(), ready_job_files().end());
    for (const EmbeddedFile& file : files) {
      CAPTURE(file.path);
      if (file.path == "presets/catalogue.json") {
        const CatalogueRead read = read_catalogue(file.text);
        CHECK_MESSAGE(read.issues.empty(), said(read.issues));
        const std::string text = write_catalogue(read.catalogue);
        const CatalogueRead again = read_catalogue(text);
        CHECK_MESSAGE(again.issues.empty(), said(again.issues));
        CHECK(write_catalogue(again.catalogue) == text);
        ++catalogues;
      } else if (file.path.starts_with("jobs/")) {
        const JobRead read = read_job(file.text);
        CHECK_MESSAGE(read.issues.empty(), said(read.issues));
        const JobRead again = read_job(write_job(read.job));
        CHECK(again.job == read.job);
        CHECK(again.issues.empty());
        CHECK(write_job(again.job) == write_job(read.job));
        const LinkRead linked = read_link(write_link(read.job));
        CHECK_MESSAGE(linked.issues.empty(), said(linked.issues));
        check_close(linked.job, read.job);
        CHECK(write_link(linked.job) == write_link(read.job));
        ++jobs;
      } else {
        const PresetRead read = read_preset(file.text);
        CHECK_MESSAGE(read.issues.empty(), said(read.issues));
        const PresetRead again = read_preset(write_preset(read.preset));
        CHECK(again.preset.values == read.preset.values);
        CHECK(write_preset(again.preset) == write_preset(read.preset));
        const std::size_t slash = file.path.find('/');
        CHECK(file.path.substr(slash + 1) == read.preset.id + ".json");
        ++(file.path.starts_with("boats/") ? boats : waters);
      }
    }
    CHECK(catalogues == 1);
    CHECK(boats >= 6);
    CHECK(waters >= 5);
    CHECK(jobs >= 8);
  }

  TEST_CASE("the built-in catalogue and jobs are all there, and jobs name what it has") {
    const Catalogue& catalogue = default_catalogue();
    for_each_list([&](std::string_view key, std::string_view, auto member) {
      CAPTURE(key);
      CHECK((catalogue.*member).size() >= 6);
    });
    CHECK(catalogue.boats.size() >= 6);
    CHECK(catalogue.waters.size() >= 5);
    CHECK(ready_jobs().size() >= 8);
    for (const ReadyJob& ready : ready_jobs()) {
      CAPTURE(ready.id);
      CHECK_FALSE(ready.label.empty());
      const Job& job = ready.job;
      const auto named = [](const Given<std::string>& id, const auto& list) {
        return !id.known() || find_item(list, id.value) != nullptr;
      };
      CHECK(named(job.boat.type, catalogue.boats));
      CHECK(named(job.water.place, catalogue.waters));
      CHECK(named(job.hold.motor, catalogue.motors));
      CHECK(named(job.bank.block, catalogue.blocks));
      CHECK(named(job.feeder.conductor, catalogue.cables));
      CHECK(named(job.mount.plate, catalogue.plates));
      CHECK(named(job.mount.bolt, catalogue.bolts));
    }
  }

  TEST_CASE("job and JSON are one: what is written reads back equal, and has the same bytes") {
    std::mt19937 random(20260101);
    for (int i = 0; i < 200; ++i) {
      const Job job = random_job(random, 0.01 * (i % 101));
      const std::string text = write_job(job);
      const JobRead read = read_job(text);
      REQUIRE_MESSAGE(read.issues.empty(), said(read.issues));
      CHECK(read.job == job);
      CHECK(write_job(read.job) == text);
    }
  }

  TEST_CASE(
      "job and link are one to half a quantum, and the second link has the first one's bytes") {
    std::mt19937 random(7);
    for (int i = 0; i < 200; ++i) {
      const Job job = random_job(random, 0.01 * (i % 101));
      const std::string link = write_link(job);
      const LinkRead read = read_link(link);
      REQUIRE_MESSAGE(read.issues.empty(), said(read.issues));
      CHECK(read.edition == kEngineEdition);
      check_close(read.job, job);
      CHECK(write_link(read.job) == link);
      CHECK(read_link(write_link(read.job)).job == read.job);
    }
  }

  TEST_CASE("both ends of every range travel") {
    for (const Field& field : all_fields()) {
      if (field.access.is_text()) continue;
      for (const double value : {field.min, field.max}) {
        CAPTURE(field.path());
        Job job;
        field.access.set(job, value);
        field.access.set_origin(job, Origin::given);
        const LinkRead read = read_link(write_link(job));
        CHECK_MESSAGE(read.issues.empty(), said(read.issues));
        CHECK(near(field.access.get(read.job), value, 0.501 * field.quantum));
        CHECK(range_message(field, field.access.get(read.job)).empty());
        CHECK(write_link(read.job) == write_link(job));
      }
    }
  }

  TEST_CASE("a value typed on the grid travels as it was typed") {
    Job job;
    job.boat.length_m = {7.6, Origin::given};
    job.boat.bow_height_m = {1.355, Origin::given};
    job.feeder.allowed_drop_frac = {0.03, Origin::given};
    job.bank.resistance_ohm = {0.00385, Origin::given};
    job.trim.bank_y_m = {-0.35, Origin::given};
    job.boat.displacement_kg = {2300.0, Origin::given};
    CHECK(read_link(write_link(job)).job == job);
  }

  TEST_CASE("only what is given is written") {
    Job job;
    job.boat.length_m = {7.6, Origin::given};
    job.boat.beam_m = {2.6, Origin::estimated};
    job.boat.layout = {Layout::t_top, Origin::preset};
    job.hold.motor = {"bow-36v-500", Origin::chosen};
    CHECK(write_job(job) == "{\n  \"schema\": 1,\n  \"boat\": {\n    \"length_m\": 7.6\n  }\n}\n");
    const Job linked = read_link(write_link(job)).job;
    CHECK(linked.boat.length_m.value == 7.6);
    CHECK_FALSE(linked.boat.beam_m.known());
    CHECK_FALSE(linked.hold.motor.known());
  }

  TEST_CASE("a typical job of 25 values is a link of fewer than 250 characters") {
    Job job;
    int count = 0;
    for (const Field& field : all_fields()) {
      if (count == 25) break;
      if (field.access.is_text()) {
        field.access.set_text(job, field.key == "title" ? "Walkaround, 36 V" : "walkaround-9");
      } else {
        field.access.set(job, std::floor(0.4 * field.min + 0.6 * field.max));
      }
      field.access.set_origin(job, Origin::given);
      ++count;
    }
    const std::string link = write_link(job);
    CHECK(link.size() < 250);
    CHECK(read_link(link).issues.empty());
    // Every field of the job at once still is a link that a chat and a QR code (2953 bytes) carry.
    std::mt19937 random(3);
    CHECK(write_link(random_job(random, 1.0)).size() < 1500);
  }

  TEST_CASE("links of the first editions, which held a map, open as ever") {
    std::mt19937 random(17);
    for (int i = 0; i < 50; ++i) {
      const Job job = read_link(write_link(random_job(random, 0.3))).job;
      std::uint64_t count = 0;
      CborWriter pairs;
      for (const Field& field : all_fields()) {
        if (field.access.origin(job) != Origin::given) continue;
        ++count;
        pairs.integer(field.number);
        if (field.access.is_text()) {
          pairs.text(field.access.get_text(job));
        } else {
          pairs.integer(std::llround(field.access.get(job) / field.quantum));
        }
      }
      CborWriter whole;
      whole.integer(kSchema), whole.integer(kEngineEdition), whole.map(count);
      std::string bytes = whole.bytes() + pairs.bytes();
      const std::uint32_t sum = crc32(bytes);
      for (int shift = 24; shift >= 0; shift -= 8) bytes += static_cast<char>((sum >> shift) & 0xFFu);
      const LinkRead read = read_link("job=" + to_base64url(bytes));
      CHECK_MESSAGE(read.issues.empty(), said(read.issues));
      CHECK(read.job == job);
    }
  }

  TEST_CASE("a link is found in what people paste") {
    const std::string link = write_link(ready_jobs().front().job);
    const Job job = read_link(link).job;
    const std::string payload = link.substr(4);
    std::string broken = "https://example.org/thole/#" + link;
    broken.insert(60, "\r\n  ");
    broken.insert(40, "\n");
    for (const std::string& text :
         {"#" + link, "https://example.org/thole/#" + link,
          "https://example.org/a?b=c#" + link + "&from=mail", "  " + link + "\n", "(" + link + ")",
          link + ".", link + ").", "<" + link + ">", link + "=", "\"#" + link + "\",", payload,
          "https://example.org/#job%3D" + payload, broken}) {
      CAPTURE(text);
      const LinkRead read = read_link(text);
      CHECK_MESSAGE(read.issues.empty(), said(read.issues));
      CHECK(read.job == job);
    }
  }

  TEST_CASE("the published schemas are those of this program") {
    CHECK(file_text("docs/formats/job.schema.json") == job_schema());
    CHECK(file_text("docs/formats/catalogue.schema.json") == catalogue_schema());
    CHECK(file_text("docs/formats/preset.schema.json") == preset_schema());
    CHECK(file_text("docs/formats/design.schema.json") == design_schema());
  }

  TEST_CASE("what is shown reads back within what was shown") {
    const char* units[] = {"m",   "mm", "kg", "N", "mps",  "Nm", "MPa", "C",
                           "ohm", "W",  "Wh", "h", "frac", "m2", "cm2", "m3"};
    std::mt19937 random(11);
    for (const char* unit : units) {
      for (const System system : {System::metric, System::us}) {
        for (int i = 0; i < 300; ++i) {
          const double value =
              std::pow(10.0, -2.0 + 5.0 * static_cast<double>(random() % 1000) / 1000.0);
          const std::string text = show(value, unit, system).text();
          CAPTURE(unit);
          CAPTURE(text);
          std::string message;
          const std::optional<double> read = read_measure(text, unit, system, &message);
          REQUIRE_MESSAGE(read.has_value(), message);
          CHECK(show(*read, unit, system).text() == text);
        }
      }
    }
  }
}
