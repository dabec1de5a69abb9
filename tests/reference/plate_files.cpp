// Cut files of several plates, and what they should hold.
//
// usage: thole_plate_files FOLDER   writes NAME_r12.dxf, NAME_r2000.dxf and plates.json there

#include <cmath>
#include <cstdio>
#include <fstream>
#include <nlohmann/json.hpp>
#include <string>

#include "calc/plate/outline.h"
#include "io/dxf.h"
#include "plate_shapes.h"

using namespace thole;

int main(int count, char** words) {
  if (count != 2) {
    std::fprintf(stderr, "usage: thole_plate_files FOLDER\n");
    return 2;
  }
  const std::string folder = words[1];
  nlohmann::json plates = nlohmann::json::array();
  for (const auto& [name, shape] : test::plates_to_cut()) {
    const PlateBox whole = bounds(rounded(shape.outline));
    // On the centre line, over holes and cut-outs where the plate has them.
    const PlateBar bar{.from_x_m = whole.low.x_m + 0.02, .to_x_m = whole.high.x_m - 0.02, .height_m = 0.04, .thickness_m = 0.008};
    const PlateFile plate{.shape = shape,
                          .bars = {bar},
                          .name = "P-103 " + name,
                          .material = "5083-H116",
                          .density_kg_per_m3 = 2660.0};
    for (const DxfVersion version : {DxfVersion::r12, DxfVersion::r2000}) {
      const DxfFile file = write_dxf(plate, version);
      for (const Issue& issue : file.issues)
        std::fprintf(stderr, "%s: %s\n", name.c_str(), issue.message.c_str());
      if (file.text.empty()) return 1;
      const std::string ending = version == DxfVersion::r12 ? "_r12.dxf" : "_r2000.dxf";
      std::ofstream(folder + "/" + name + ending, std::ios::binary) << file.text;
    }
    const PlateCut cut = cut_of(shape);
    const PlateBox box = bounds(cut.outer);
    nlohmann::json inner = nlohmann::json::array();
    for (const PlateContour& each : cut.cut_outs) inner.push_back(std::abs(area_m2(each)));
    nlohmann::json holes = nlohmann::json::array();
    for (const PlateHole& hole : shape.bolts) {
      holes.push_back({hole.at.x_m - box.low.x_m, hole.at.y_m - box.low.y_m, hole.diameter_m});
    }
    plates.push_back({{"name", name},
                      {"area_m2", area_m2(cut.outer)},
                      {"perimeter_m", perimeter_m(cut.outer)},
                      {"size_m", {box.high.x_m - box.low.x_m, box.high.y_m - box.low.y_m}},
                      {"cut_outs_m2", inner},
                      {"bar", {bar.from_x_m - box.low.x_m, bar.to_x_m - box.low.x_m, bar.y_m - box.low.y_m, bar.thickness_m}},
                      {"holes", holes}});
  }
  std::ofstream(folder + "/plates.json") << plates.dump();
  return 0;
}
