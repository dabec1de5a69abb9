#include "io/dxf.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <limits>
#include <numbers>
#include <optional>
#include <utility>

#include "base/number.h"
#include "base/order.h"
#include "calc/plate/outline.h"

namespace thole {
namespace {

constexpr double kMmPerM = 1000.0;
constexpr double kTextHeight_mm = 5.0;
constexpr double kTextLine_mm = 8.0;
constexpr double kTextWidth_ratio = 1.0;  // of the height, to a letter: no shop font is wider
constexpr double kEtchClear_mm = 3.0;     // from an edge or a hole
constexpr double kArrow_mm = 40.0;
constexpr double kNear_mm = 1e-3;  // what a file must repeat of the plate
constexpr double kNearArea_ratio = 1e-6;

struct Layer {
  std::string_view name{};
  int colour = 7;
};
constexpr Layer kCutOuter{"CUT_OUTER", 7};
constexpr Layer kCutInner{"CUT_INNER", 1};
constexpr Layer kDrill{"DRILL", 4};
constexpr Layer kEtch{"ETCH", 3};
constexpr Layer kEtchBars{"ETCH_BARS", 5};
constexpr Layer kText{"TEXT", 8};
constexpr std::array kLayers{kCutOuter, kCutInner, kDrill, kEtch, kEtchBars, kText};

struct MmPoint {
  double x_mm = 0.0;
  double y_mm = 0.0;
};

// A string of a file may not break its line, and these old formats know no more than ASCII.
std::string plain(std::string_view text) {
  std::string out;
  for (const char c : text.substr(0, 200)) {
    const auto byte = static_cast<unsigned char>(c);
    if ((byte & 0xC0u) == 0x80u) continue;  // goes on with the character before it
    if (byte >= 0x80u) {
      out += '?';
    } else if (byte < 0x20u || byte == 0x7Fu) {
      out += ' ';
    } else if (c == '^') {
      out += "^ ";  // alone it would begin a control character
    } else if (c == '%' && !out.empty() && out.back() == '%') {
      out += " %";  // two would begin a code
    } else {
      out += c;
    }
  }
  return out;
}

// --- tag pairs
// --------------------------------------------------------------------------------------

// Handles that others refer to; entities count on from kFirstFree.
enum Handle : int {
  kVportTable = 0x8,
  kLtypeTable = 0x5,
  kLayerTable = 0x2,
  kStyleTable = 0x3,
  kViewTable = 0x6,
  kUcsTable = 0x7,
  kAppidTable = 0x9,
  kDimstyleTable = 0xA,
  kBlockRecordTable = 0x1,
  kRootDictionary = 0xC,
  kGroupDictionary = 0xD,
  kPaperSpace = 0x1B,
  kModelSpace = 0x1F,
  kFirstFree = 0x30,
};

std::string hex(int value) {
  constexpr std::string_view kDigits = "0123456789ABCDEF";
  std::string out;
  do {
    out.insert(out.begin(), kDigits[static_cast<std::size_t>(value % 16)]);
    value /= 16;
  } while (value > 0);
  return out;
}

class Tags {
 public:
  explicit Tags(DxfVersion version) : modern_(version == DxfVersion::r2000) {}

  void tag(int code, std::string_view value) {
    const std::string number = std::to_string(code);
    if (number.size() < 3) out_.append(3 - number.size(), ' ');
    out_ += number;
    out_ += "\r\n";
    out_ += value;
    out_ += "\r\n";
  }
  void count(int code, int value) { tag(code, std::to_string(value)); }
  void number(int code, double value, int decimals = 6) { tag(code, fixed(value, decimals)); }
  void at(MmPoint p, int code = 10) {
    number(code, p.x_mm);
    number(code + 10, p.y_mm);
    if (!modern_ || third_) number(code + 20, 0.0);
  }
  // R2000 alone: handle, owner, subclass.
  void handle(int value) {
    if (modern_) tag(5, hex(value));
  }
  int free_handle() { return next_++; }
  void owner(int value) {
    if (modern_) tag(330, hex(value));
  }
  void subclass(std::string_view name) {
    if (modern_) tag(100, name);
  }

  void begin_section(std::string_view name) {
    tag(0, "SECTION");
    tag(2, name);
  }
  void end_section() { tag(0, "ENDSEC"); }

  // The head of each entity; the geometry's subclass follows it.
  void entity(std::string_view type, const Layer& layer, std::string_view subclass_name) {
    tag(0, type);
    handle(free_handle());
    owner(kModelSpace);
    subclass("AcDbEntity");
    tag(8, layer.name);
    subclass(subclass_name);
  }

  bool modern() const { return modern_; }
  void flat(bool flat) { third_ = !flat; }
  std::string take() { return std::move(out_); }

 private:
  std::string out_{};
  bool modern_ = false;
  bool third_ = true;  // points with three coordinates
  int next_ = kFirstFree;
};

// --- what is drawn
// ----------------------------------------------------------------------------------

void contour(Tags& tags, const PlateContour& edges, const Layer& layer,
             const std::vector<MmPoint>& from) {
  if (tags.modern()) {
    tags.entity("LWPOLYLINE", layer, "AcDbPolyline");
    tags.count(90, static_cast<int>(edges.size()));
    tags.count(70, 1);
    tags.number(43, 0.0);
  } else {
    tags.entity("POLYLINE", layer, "");
    tags.count(66, 1);
    tags.at({});
    tags.count(70, 1);
  }
  for (std::size_t i = 0; i < edges.size(); ++i) {
    if (tags.modern()) {
      tags.flat(true);
      tags.at(from[i]);
      tags.flat(false);
    } else {
      tags.tag(0, "VERTEX");
      tags.tag(8, layer.name);
      tags.at(from[i]);
    }
    if (edges[i].is_arc()) tags.number(42, bulge(edges[i]), 12);
  }
  if (!tags.modern()) {
    tags.tag(0, "SEQEND");
    tags.tag(8, layer.name);
  }
}

void circle(Tags& tags, MmPoint centre, double diameter_mm, const Layer& layer) {
  tags.entity("CIRCLE", layer, "AcDbCircle");
  tags.at(centre);
  tags.number(40, 0.5 * diameter_mm);
}

void line(Tags& tags, MmPoint a, MmPoint b, const Layer& layer) {
  tags.entity("LINE", layer, "AcDbLine");
  tags.at(a);
  tags.at(b, 11);
}

void text(Tags& tags, MmPoint at, std::string_view words, const Layer& layer,
          double height_mm = kTextHeight_mm) {
  tags.entity("TEXT", layer, "AcDbText");
  tags.at(at);
  tags.number(40, height_mm);
  tags.tag(1, words);
  tags.subclass("AcDbText");  // a second time: that is the format
}

// --- where engraving may go
// -------------------------------------------------------------------------

struct Box {
  MmPoint low{};
  MmPoint high{};
};

class FreePlace {
 public:
  explicit FreePlace(const PlateShape& shape) : shape_(shape), cut_(cut_of(shape)) {}

  // Metal all round, by the clearance. Points closer together than twice the slack cover the box.
  bool is_free(const Box& box) const {
    constexpr double kStep_mm = 4.0;
    const double slack_mm = kEtchClear_mm + 0.5 * kStep_mm * std::numbers::sqrt2;
    const int across = static_cast<int>(std::ceil((box.high.x_mm - box.low.x_mm) / kStep_mm));
    const int up = static_cast<int>(std::ceil((box.high.y_mm - box.low.y_mm) / kStep_mm));
    for (int i = 0; i <= across; ++i) {
      for (int k = 0; k <= up; ++k) {
        const MmPoint p{std::min(box.low.x_mm + kStep_mm * i, box.high.x_mm),
                        std::min(box.low.y_mm + kStep_mm * k, box.high.y_mm)};
        if (room_mm(p) < slack_mm) return false;
      }
    }
    return true;
  }

  // The low corner of a free box of this size, nearest to the middle of the plate.
  std::optional<MmPoint> find(double width_mm, double height_mm) const {
    constexpr int kTries = 32;
    const PlateBox all = bounds(cut_.outer);
    const double room_x_mm = kMmPerM * (all.high.x_m - all.low.x_m) - width_mm;
    const double room_y_mm = kMmPerM * (all.high.y_m - all.low.y_m) - height_mm;
    if (room_x_mm < 0.0 || room_y_mm < 0.0) return std::nullopt;
    std::vector<std::pair<double, MmPoint>> places;  // by distance
    for (int i = 0; i <= kTries; ++i) {
      for (int k = 0; k <= kTries; ++k) {
        const double x_mm = room_x_mm * i / kTries;
        const double y_mm = room_y_mm * k / kTries;
        places.push_back({std::hypot(x_mm - 0.5 * room_x_mm, y_mm - 0.5 * room_y_mm),
                          {kMmPerM * all.low.x_m + x_mm, kMmPerM * all.low.y_m + y_mm}});
      }
    }
    places = sorted(std::move(places), [](const auto& a, const auto& b) { return a.first < b.first; });
    for (const auto& [off_mm, low] : places) {
      if (is_free({low, {low.x_mm + width_mm, low.y_mm + height_mm}})) return low;
    }
    return std::nullopt;
  }

 private:
  double room_mm(MmPoint p) const {
    const PlatePoint at{p.x_mm / kMmPerM, p.y_mm / kMmPerM};
    if (!on_plate(cut_, at)) return 0.0;
    double least_m = distance_to_edge_m(cut_, at);
    for (const PlateHole& hole : shape_.bolts) {
      const double radius_m = 0.5 * std::max(hole.diameter_m, hole.countersink_m);
      least_m =
          std::min(least_m, std::hypot(at.x_m - hole.at.x_m, at.y_m - hole.at.y_m) - radius_m);
    }
    return kMmPerM * least_m;
  }

  const PlateShape& shape_;
  PlateCut cut_;
};

// --- the whole file
// ---------------------------------------------------------------------------------

class Writer {
 public:
  Writer(const PlateFile& plate, DxfVersion version)
      : plate_(plate), cut_(cut_of(plate.shape)), box_(bounds(cut_.outer)), tags_(version) {}

  std::string write(Issues& issues) {
    header();
    tables();
    blocks();
    tags_.begin_section("ENTITIES");
    for (const PlateContour& each : {cut_.outer}) draw(each, kCutOuter);
    for (const PlateContour& each : cut_.cut_outs) draw(each, kCutInner);
    for (const PlateHole& hole : plate_.shape.bolts) {
      circle(tags_, place(hole.at), kMmPerM * hole.diameter_m, kDrill);
    }
    engraving(issues);
    notes();
    tags_.end_section();
    objects();
    tags_.tag(0, "EOF");
    return tags_.take();
  }

 private:
  MmPoint place(PlatePoint p) const {
    return {kMmPerM * (p.x_m - box_.low.x_m), kMmPerM * (p.y_m - box_.low.y_m)};
  }
  double width_mm() const { return kMmPerM * (box_.high.x_m - box_.low.x_m); }
  double height_mm() const { return kMmPerM * (box_.high.y_m - box_.low.y_m); }

  void draw(const PlateContour& edges, const Layer& layer) {
    std::vector<MmPoint> from;
    for (const PlateEdge& edge : edges) from.push_back(place(edge.from));
    contour(tags_, edges, layer, from);
  }

  // --- what stands before the entities

  void header() {
    tags_.begin_section("HEADER");
    tags_.tag(9, "$ACADVER");
    tags_.tag(1, tags_.modern() ? "AC1015" : "AC1009");
    if (tags_.modern()) {
      tags_.tag(9, "$HANDSEED");
      tags_.tag(5, "FFFF");
      tags_.tag(9, "$INSUNITS");
      tags_.count(70, 4);  // millimetres
      tags_.tag(9, "$MEASUREMENT");
      tags_.count(70, 1);
    }
    tags_.tag(9, "$EXTMIN");
    tags_.at({});
    tags_.tag(9, "$EXTMAX");
    tags_.at({width_mm(), height_mm()});
    tags_.end_section();
    if (tags_.modern()) {
      tags_.begin_section("CLASSES");
      tags_.end_section();
    }
  }

  void begin_table(std::string_view name, int handle, int count) {
    tags_.tag(0, "TABLE");
    tags_.tag(2, name);
    tags_.handle(handle);
    tags_.owner(0);
    tags_.subclass("AcDbSymbolTable");
    tags_.count(70, count);
    if (name == "DIMSTYLE") tags_.subclass("AcDbDimStyleTable");
  }
  void end_table() { tags_.tag(0, "ENDTAB"); }
  void record(std::string_view type, int table, std::string_view subclass, std::string_view name,
              int handle = 0) {
    tags_.tag(0, type);
    if (tags_.modern()) {
      // Alone among them, a dimension style has its handle under another code.
      tags_.tag(type == "DIMSTYLE" ? 105 : 5, hex(handle == 0 ? tags_.free_handle() : handle));
    }
    tags_.owner(table);
    tags_.subclass("AcDbSymbolTableRecord");
    tags_.subclass(subclass);
    tags_.tag(2, name);
  }

  void line_types() {
    begin_table("LTYPE", kLtypeTable, tags_.modern() ? 3 : 1);
    const auto add = [&](std::string_view name, std::string_view words) {
      record("LTYPE", kLtypeTable, "AcDbLinetypeTableRecord", name);
      tags_.count(70, 0);
      tags_.tag(3, words);
      tags_.count(72, 65);
      tags_.count(73, 0);
      tags_.number(40, 0.0);
    };
    if (tags_.modern()) {
      add("ByBlock", "");
      add("ByLayer", "");
    }
    add("CONTINUOUS", "Solid line");
    end_table();
  }

  void layers() {
    begin_table("LAYER", kLayerTable, static_cast<int>(kLayers.size()) + 1);
    const auto add = [&](const Layer& layer) {
      record("LAYER", kLayerTable, "AcDbLayerTableRecord", layer.name);
      tags_.count(70, 0);
      tags_.count(62, layer.colour);
      tags_.tag(6, "CONTINUOUS");
    };
    add({"0", 7});
    for (const Layer& layer : kLayers) add(layer);
    end_table();
  }

  void style() {
    begin_table("STYLE", kStyleTable, 1);
    record("STYLE", kStyleTable, "AcDbTextStyleTableRecord", "STANDARD");
    tags_.count(70, 0);
    tags_.number(40, 0.0);
    tags_.number(41, 1.0);
    tags_.number(50, 0.0);
    tags_.count(71, 0);
    tags_.number(42, kTextHeight_mm);
    tags_.tag(3, "txt");
    tags_.tag(4, "");
    end_table();
  }

  void view_port() {
    begin_table("VPORT", kVportTable, 1);
    record("VPORT", kVportTable, "AcDbViewportTableRecord", "*ACTIVE");
    tags_.count(70, 0);
    tags_.flat(true);
    tags_.at({0.0, 0.0}, 10);
    tags_.at({1.0, 1.0}, 11);
    tags_.at({0.5 * width_mm(), 0.5 * height_mm()}, 12);
    tags_.flat(false);
    tags_.number(40, 1.5 * height_mm());
    tags_.number(41, 1.5);
    end_table();
  }

  void tables() {
    tags_.begin_section("TABLES");
    if (tags_.modern()) view_port();
    line_types();
    layers();
    style();
    if (tags_.modern()) {
      begin_table("VIEW", kViewTable, 0);
      end_table();
      begin_table("UCS", kUcsTable, 0);
      end_table();
      begin_table("APPID", kAppidTable, 1);
      record("APPID", kAppidTable, "AcDbRegAppTableRecord", "ACAD");
      tags_.count(70, 0);
      end_table();
      begin_table("DIMSTYLE", kDimstyleTable, 1);
      record("DIMSTYLE", kDimstyleTable, "AcDbDimStyleTableRecord", "STANDARD");
      tags_.count(70, 0);
      end_table();
      begin_table("BLOCK_RECORD", kBlockRecordTable, 2);
      record("BLOCK_RECORD", kBlockRecordTable, "AcDbBlockTableRecord", "*Model_Space",
             kModelSpace);
      record("BLOCK_RECORD", kBlockRecordTable, "AcDbBlockTableRecord", "*Paper_Space",
             kPaperSpace);
      end_table();
    }
    tags_.end_section();
  }

  void blocks() {
    if (!tags_.modern()) return;
    tags_.begin_section("BLOCKS");
    for (const auto& [name, owner] : {std::pair{"*Model_Space", int{kModelSpace}},
                                      std::pair{"*Paper_Space", int{kPaperSpace}}}) {
      tags_.tag(0, "BLOCK");
      tags_.handle(tags_.free_handle());
      tags_.owner(owner);
      tags_.subclass("AcDbEntity");
      tags_.tag(8, "0");
      tags_.subclass("AcDbBlockBegin");
      tags_.tag(2, name);
      tags_.count(70, 0);
      tags_.at({});
      tags_.tag(3, name);
      tags_.tag(1, "");
      tags_.tag(0, "ENDBLK");
      tags_.handle(tags_.free_handle());
      tags_.owner(owner);
      tags_.subclass("AcDbEntity");
      tags_.tag(8, "0");
      tags_.subclass("AcDbBlockEnd");
    }
    tags_.end_section();
  }

  void objects() {
    if (!tags_.modern()) return;
    tags_.begin_section("OBJECTS");
    tags_.tag(0, "DICTIONARY");
    tags_.handle(kRootDictionary);
    tags_.owner(0);
    tags_.subclass("AcDbDictionary");
    tags_.count(281, 1);
    tags_.tag(3, "ACAD_GROUP");
    tags_.tag(350, hex(kGroupDictionary));
    tags_.tag(0, "DICTIONARY");
    tags_.handle(kGroupDictionary);
    tags_.owner(kRootDictionary);
    tags_.subclass("AcDbDictionary");
    tags_.count(281, 1);
    tags_.end_section();
  }

  // --- what is engraved and what is only said

  void engraving(Issues& issues) {
    const FreePlace free(plate_.shape);
    for (const bool fore : {false, true}) tick(free, fore);
    for (const PlateBar& bar : plate_.bars) stand(free, bar);
    std::vector<std::string> lines{"MOTOR SIDE UP"};
    if (!plate_.name.empty()) lines.push_back(plain(plate_.name));
    double wide_mm = kArrow_mm;
    for (const std::string& each : lines) {
      wide_mm =
          std::max(wide_mm, kTextWidth_ratio * kTextHeight_mm * static_cast<double>(each.size()));
    }
    const double high_mm = kTextLine_mm * static_cast<double>(lines.size() + 1);
    if (const auto low = free.find(wide_mm, high_mm)) {
      const MmPoint at = place({low->x_mm / kMmPerM, low->y_mm / kMmPerM});
      arrow({at.x_mm, at.y_mm + high_mm - 0.5 * kTextLine_mm});
      for (std::size_t i = 0; i < lines.size(); ++i) {
        const double up_mm = kTextLine_mm * static_cast<double>(lines.size() - 1 - i);
        text(tags_, {at.x_mm, at.y_mm + up_mm + 1.0}, lines[i], kEtch);
      }
    } else if (const auto alone = free.find(kArrow_mm, kTextLine_mm)) {
      const MmPoint at = place({alone->x_mm / kMmPerM, alone->y_mm / kMmPerM});
      arrow({at.x_mm, at.y_mm + 0.5 * kTextLine_mm});
      issues.push_back({Severity::note, "plate", "No room to engrave more than the arrow."});
    } else {
      issues.push_back({Severity::note, "plate",
                        "No room to engrave the forward arrow: mark the motor's side by hand."});
    }
  }

  // The bar's four edges, broken where there is no metal.
  void stand(const FreePlace& free, const PlateBar& bar) {
    const double half_mm = 0.5 * kMmPerM * bar.thickness_m;
    const double y_mm = kMmPerM * bar.y_m;
    const double from_mm = kMmPerM * bar.from_x_m;
    const double to_mm = kMmPerM * bar.to_x_m;
    for (const double side : {-1.0, 1.0}) {
      etched(free, {from_mm, y_mm + side * half_mm}, {to_mm, y_mm + side * half_mm});
      const double end_mm = side < 0.0 ? from_mm : to_mm;
      etched(free, {end_mm, y_mm - half_mm}, {end_mm, y_mm + half_mm});
    }
  }

  void etched(const FreePlace& free, MmPoint a, MmPoint b) {
    const int count = std::max(static_cast<int>(std::hypot(b.x_mm - a.x_mm, b.y_mm - a.y_mm)), 1);
    const auto at = [&](int i) {
      return MmPoint{a.x_mm + (b.x_mm - a.x_mm) * i / count, a.y_mm + (b.y_mm - a.y_mm) * i / count};
    };
    int from = -1;
    for (int i = 0; i <= count + 1; ++i) {
      const bool metal = i <= count && free.is_free({at(i), at(i)});
      if (metal && from < 0) from = i;
      if (metal || from < 0) continue;
      const MmPoint start = at(from), end = at(i - 1);
      if (i - 1 > from) line(tags_, placed(start), placed(end), kEtchBars);
      from = -1;
    }
  }

  MmPoint placed(MmPoint p) const { return place({p.x_mm / kMmPerM, p.y_mm / kMmPerM}); }

  void arrow(MmPoint tail) {
    const MmPoint tip{tail.x_mm + kArrow_mm, tail.y_mm};
    line(tags_, tail, tip, kEtch);
    for (const double side : {1.0, -1.0}) {
      line(tags_, tip, {tip.x_mm - 6.0, tip.y_mm + 3.0 * side}, kEtch);
    }
  }

  // On the centre line, just inside of the aft or fore edge.
  void tick(const FreePlace& free, bool fore) {
    constexpr double kLength_mm = 6.0;
    const double edge_mm = kMmPerM * (fore ? box_.high.x_m : box_.low.x_m);
    const double inward = fore ? -1.0 : 1.0;
    const double from_mm = edge_mm + inward * (2.0 * kEtchClear_mm);
    const double to_mm = from_mm + inward * kLength_mm;
    if (!free.is_free({{std::min(from_mm, to_mm), 0.0}, {std::max(from_mm, to_mm), 0.0}})) return;
    line(tags_, place({from_mm / kMmPerM, 0.0}), place({to_mm / kMmPerM, 0.0}), kEtch);
  }

  void notes() {
    std::vector<std::string> lines;
    if (!plate_.name.empty()) lines.push_back(plain(plate_.name));
    lines.push_back("UNITS: MILLIMETRES. OVERALL " + fixed(width_mm(), 1) + " X " +
                    fixed(height_mm(), 1) + ": CONFIRM BEFORE CUTTING");
    lines.push_back("THICKNESS " + fixed(kMmPerM * plate_.shape.thickness_m, 2) +
                    (plate_.material.empty() ? "" : ", " + plain(plate_.material)));
    if (plate_.density_kg_per_m3 > 0.0) {
      lines.push_back("MASS " + fixed(mass_kg(plate_.shape, plate_.density_kg_per_m3), 3) + " KG");
    }
    if (!plate_.bars.empty()) {
      const PlateBar& bar = plate_.bars.front();
      lines.push_back("ETCH_BARS: " + std::to_string(plate_.bars.size()) + " FLAT BARS " +
                      fixed(kMmPerM * bar.height_m, 1) + " X " + fixed(kMmPerM * bar.thickness_m, 1) + ", " +
                      fixed(kMmPerM * (bar.to_x_m - bar.from_x_m), 1) + " LONG, ON EDGE ON THE MOTOR SIDE");
    }
    lines.push_back("SEEN FROM ABOVE, MOTOR SIDE UP, FORWARD TO THE RIGHT");
    lines.push_back("NO KERF OFFSET APPLIED. DRILL: HOLES TO FINISHED DIAMETER");
    for (std::size_t i = 0; i < lines.size(); ++i) {
      const double up_mm = kTextLine_mm * static_cast<double>(lines.size() - i);
      text(tags_, {0.0, height_mm() + up_mm}, lines[i], kText);
    }
    for (std::size_t i = 0; i < plate_.shape.bolts.size(); ++i) {
      const PlateHole& hole = plate_.shape.bolts[i];
      const MmPoint at = place(hole.at);
      std::string words = std::to_string(i + 1) + " %%c" + fixed(kMmPerM * hole.diameter_m, 2);
      if (hole.countersink_m > 0.0) {
        words += " CSK " + trimmed(fixed(plate_.countersink_deg, 1)) + " %%c" +
                 fixed(kMmPerM * hole.countersink_m, 2);
        circle(tags_, at, kMmPerM * hole.countersink_m, kText);
      }
      const double beside_mm = 0.5 * kMmPerM * std::max(hole.diameter_m, hole.countersink_m) + 1.0;
      text(tags_, {at.x_mm + beside_mm, at.y_mm}, words, kText, 3.0);
    }
  }

  const PlateFile& plate_;
  PlateCut cut_;
  PlateBox box_{};
  Tags tags_;
};

}  // namespace

DxfFile write_dxf(const PlateFile& plate, DxfVersion version) {
  DxfFile file{.issues = plate_issues(plate.shape)};
  if (has_error(file.issues)) return file;
  file.text = Writer(plate, version).write(file.issues);
  for (Issue& issue : compare_dxf(file.text, plate.shape)) file.issues.push_back(std::move(issue));
  if (has_error(file.issues)) file.text.clear();
  return file;
}

std::string dxf_file_name(std::string_view name, DxfVersion version) {
  std::string out;
  for (const char c : name.substr(0, 60)) {
    const bool letter = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
    const bool capital = c >= 'A' && c <= 'Z';
    if (letter || capital) {
      out += capital ? static_cast<char>(c - 'A' + 'a') : c;
    } else if (!out.empty() && out.back() != '-') {
      out += '-';
    }
  }
  while (!out.empty() && out.back() == '-') out.pop_back();
  if (out.empty()) out = "plate";
  return out + (version == DxfVersion::r12 ? "_mm.dxf" : "_mm_r2000.dxf");
}

// --- reading back
// -----------------------------------------------------------------------------------

namespace {

constexpr double kHighestCode = 1071.0;

class Reader {
 public:
  explicit Reader(std::string_view text) : rest_(text) {}

  DxfContent run() {
    bool entities = false;
    while (next()) {
      if (code_ == 2 && value_ == "ENTITIES") entities = true;
      if (code_ == 0) {
        if (value_ == "EOF") {
          content_.complete = rest_.empty();
          return std::move(content_);
        }
        if (value_ == "ENDSEC") entities = false;
        kind_ = entities ? value_ : std::string_view{};
        begin();
      } else {
        take();
      }
    }
    return std::move(content_);
  }

 private:
  std::optional<std::string_view> line() {
    const std::size_t end = rest_.find("\r\n");
    if (end == rest_.npos) return std::nullopt;
    const std::string_view found = rest_.substr(0, end);
    rest_.remove_prefix(end + 2);
    return found;
  }
  bool next() {
    const auto code = line();
    const auto value = line();
    if (!code || !value) return false;
    const auto number = plain_number(*code);
    if (!number || !(std::abs(*number) <= kHighestCode)) return false;
    code_ = static_cast<int>(*number);
    value_ = *value;
    return true;
  }
  double number() const {
    return plain_number(value_).value_or(std::numeric_limits<double>::quiet_NaN());
  }

  void begin() {
    if (kind_ == "LWPOLYLINE" || kind_ == "POLYLINE") content_.contours.emplace_back();
    if (kind_ == "VERTEX" && !content_.contours.empty()) {
      content_.contours.back().vertices.emplace_back();
    }
    if (kind_ == "CIRCLE") content_.circles.emplace_back();
  }
  void take() {
    if (kind_ == "CIRCLE") {
      DxfCircle& circle = content_.circles.back();
      if (code_ == 8) circle.layer = value_;
      if (code_ == 10) circle.x_mm = number();
      if (code_ == 20) circle.y_mm = number();
      if (code_ == 40) circle.radius_mm = number();
    }
    if (content_.contours.empty()) return;
    DxfContour& contour = content_.contours.back();
    if (kind_ == "LWPOLYLINE" || kind_ == "POLYLINE") {
      if (code_ == 8) contour.layer = value_;
      if (code_ == 70) contour.closed = std::fmod(number(), 2.0) == 1.0;  // the lowest bit
    }
    if (kind_ == "LWPOLYLINE" && code_ == 10) contour.vertices.emplace_back();
    if ((kind_ != "LWPOLYLINE" && kind_ != "VERTEX") || contour.vertices.empty()) return;
    DxfVertex& vertex = contour.vertices.back();
    if (code_ == 10) vertex.x_mm = number();
    if (code_ == 20) vertex.y_mm = number();
    if (code_ == 42) vertex.bulge_ratio = number();
  }

  std::string_view rest_;
  std::string_view kind_{};
  int code_ = 0;
  std::string_view value_{};
  DxfContent content_{};
};

}  // namespace

DxfContent read_dxf(std::string_view text) { return Reader(text).run(); }

double area_mm2(const DxfContour& contour) {
  double twice_mm2 = 0.0;
  for (std::size_t i = 0; i < contour.vertices.size(); ++i) {
    const DxfVertex& a = contour.vertices[i];
    const DxfVertex& b = contour.vertices[(i + 1) % contour.vertices.size()];
    twice_mm2 += a.x_mm * b.y_mm - b.x_mm * a.y_mm;
    if (a.bulge_ratio == 0.0) continue;
    const double turn_rad = 4.0 * std::atan(a.bulge_ratio);
    const double radius_mm =
        radius_from_bulge_m(std::hypot(b.x_mm - a.x_mm, b.y_mm - a.y_mm), std::abs(a.bulge_ratio));
    twice_mm2 += radius_mm * radius_mm * (turn_rad - std::sin(turn_rad));
  }
  return 0.5 * twice_mm2;
}

Issues compare_dxf(std::string_view text, const PlateShape& shape) {
  Issues issues;
  const auto say = [&](std::string message) {
    issues.push_back({Severity::error, "plate", std::move(message)});
  };
  const DxfContent content = read_dxf(text);
  const PlateCut cut = cut_of(shape);
  if (!content.complete) say("The cut file is not complete.");
  if (cut.outer.empty()) {
    say("There is no outline to compare the cut file with.");
    return issues;
  }
  const PlateBox box = bounds(cut.outer);
  std::vector<std::pair<std::string_view, const PlateContour*>> wanted{
      {kCutOuter.name, &cut.outer}};
  for (const PlateContour& each : cut.cut_outs) wanted.push_back({kCutInner.name, &each});
  const auto off_mm = [&](double x_mm, double y_mm, PlatePoint p) {
    return std::hypot(x_mm - kMmPerM * (p.x_m - box.low.x_m),
                      y_mm - kMmPerM * (p.y_m - box.low.y_m));
  };
  if (content.contours.size() != wanted.size()) say("The cut file has another count of contours.");
  for (std::size_t i = 0; i < std::min(content.contours.size(), wanted.size()); ++i) {
    const DxfContour& found = content.contours[i];
    const PlateContour& edges = *wanted[i].second;
    if (!found.closed) say("A contour of the cut file is open.");
    if (found.layer != wanted[i].first) say("A contour of the cut file is on another layer.");
    const double area_mm2_wanted = kMmPerM * kMmPerM * area_m2(edges);
    if (!(std::abs(area_mm2(found) - area_mm2_wanted) <
          kNearArea_ratio * std::abs(area_mm2_wanted))) {
      say("A contour of the cut file has another area.");
    }
    bool same = found.vertices.size() == edges.size();
    for (std::size_t k = 0; same && k < edges.size(); ++k) {
      const DxfVertex& vertex = found.vertices[k];
      same = off_mm(vertex.x_mm, vertex.y_mm, edges[k].from) < kNear_mm &&
             std::abs(vertex.bulge_ratio - bulge(edges[k])) < kNearArea_ratio &&
             vertex.x_mm >= 0.0 && vertex.y_mm >= 0.0;
    }
    if (!same) say("A contour of the cut file does not run where the plate's does.");
  }
  std::size_t next = 0;
  for (const DxfCircle& circle : content.circles) {
    if (circle.layer != kDrill.name) continue;
    if (next == shape.bolts.size()) {
      say("The cut file has more holes than the plate.");
      return issues;
    }
    const PlateHole& hole = shape.bolts[next++];
    if (!(off_mm(circle.x_mm, circle.y_mm, hole.at) < kNear_mm) ||
        !(std::abs(2.0 * circle.radius_mm - kMmPerM * hole.diameter_m) < kNear_mm)) {
      say("Hole " + std::to_string(next) + " of the cut file is not where the plate has it.");
    }
  }
  if (next < shape.bolts.size()) say("The cut file has fewer holes than the plate.");
  return issues;
}

}  // namespace thole
