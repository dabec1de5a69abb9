#include "papers/plate_papers.h"

#include "base/number.h"
#include "calc/plate_study.h"
#include "draw/elevation_sheet.h"
#include "draw/plate_drawing.h"
#include "draw/svg.h"
#include "io/crc32.h"
#include "io/markup.h"
#include "io/measure.h"
#include "job/fields.h"

namespace thole {
namespace {

// On a screen as wide as it is, on paper at true size with nothing round it.
constexpr std::string_view kPagesStyle = R"(
body:has(>.sheet){margin:0;background:#fff}
.sheet{color-scheme:light;box-sizing:border-box;max-width:none;margin:0 auto;padding:16px;
background:#fff;color:#111;font:16px/1.45 Inter,system-ui,sans-serif}
.sheet h1{margin:0 0 8px;font-size:1.4em;line-height:1.2}
.sheet p{margin:0 0 16px;max-width:44em}
.sheet .page{margin:0 0 16px}
.sheet .page svg{display:block;max-width:100%;height:auto;border:1px solid #777}
@media print{
.sheet{padding:0}
.sheet h1,.sheet p{display:none}
.sheet .page{margin:0;break-after:page}
.sheet .page:last-child{break-after:auto}
.sheet .page svg{max-width:none;border:0}
}
)";

double countersink_deg(const BoltSize& bolt) {
  return bolt.series == ThreadSeries::metric ? 90.0 : 82.0;
}

std::string on_paper(const Drawing& drawing) {
  return write_svg(drawing, {.file = true, .paper = true});
}

// "Powder coat, 0.08 mm a face": a film of paint creeps under bolts, and metal that bonds stays bare.
std::string finish_of(const Design& design, System system) {
  const Field* kind = find_field("mount.finish");
  std::string text = kind != nullptr ? plain_text(*kind, design.job) : std::string();
  const double finish_mm = design.job.mount.finish_mm.value;
  if (finish_mm > 0.0) text += ", " + show(finish_mm, "mm", system).text() + " a face, bare where bonded";
  return text;
}

// With the standards that such plate is sold to; ASTM B209 recalled.
std::string material_of(const Alloy& alloy) {
  const bool marine = alloy.name.find("-H116") != std::string_view::npos;
  return std::string(alloy.name) +
         (is_stainless(alloy) ? ", ASTM A240 or EN 10088-2" : marine ? ", ASTM B928 or EN 485" : ", ASTM B209 or EN 485");
}

// Of what is cut: another plate has another number, so that no revision of one is mistaken for the other.
std::string number_of(const ChosenPlate& plate) {
  std::string told(plate.alloy->name);
  const auto tell = [&](double length_m) { told += ' ' + fixed(1000.0 * length_m, 2); };
  const auto tell_corners = [&](const std::vector<PlateCorner>& corners) {
    for (const PlateCorner& corner : corners) tell(corner.at.x_m), tell(corner.at.y_m), tell(corner.radius_m);
  };
  tell(plate.shape.thickness_m);
  tell_corners(plate.shape.outline);
  for (const std::vector<PlateCorner>& cut : plate.shape.cut_outs) tell_corners(cut);
  for (const PlateHole& bolt : plate.shape.bolts) tell(bolt.at.x_m), tell(bolt.at.y_m), tell(bolt.diameter_m), tell(bolt.countersink_m);
  for (const PlateBar& bar : plate.bars) tell(bar.y_m), tell(bar.from_x_m), tell(bar.to_x_m), tell(bar.height_m), tell(bar.thickness_m);
  std::string number = "P-";
  for (int shift = 28; shift >= 0; shift -= 4) number += "0123456789ABCDEF"[crc32(told) >> shift & 15u];
  return number;
}

std::optional<Drawing> drawing_of(const Design& design, const SheetOptions& options) {
  const std::optional<ChosenPlate> plate = chosen_plate(design);
  if (!plate) return std::nullopt;
  return plate_drawing({.shape = plate->shape,
                        .bars = plate->bars,
                        .part = plate_name(design),
                        .number = number_of(*plate),
                        .date = options.date,
                        .material = material_of(*plate->alloy),
                        .finish = finish_of(design, options.system),
                        .density_kg_per_m3 = plate->alloy->density_kg_per_m3,
                        .countersink_deg = countersink_deg(*plate->bolt),
                        .drafting = options.system == System::us ? Drafting::asme : Drafting::iso});
}

std::vector<Drawing> template_of(const Design& design, Paper paper) {
  const std::optional<ChosenPlate> plate = chosen_plate(design);
  if (!plate) return {};
  return drill_template({.shape = plate->shape,
                         .name = plate_name(design),
                         .paper = paper,
                         .countersink_deg = countersink_deg(*plate->bolt)});
}

Drawing elevation_of(const Design& design, const SheetOptions& options, Paper paper) {
  return elevation_drawing(design, {.name = plate_name(design), .date = options.date, .paper = paper, .system = options.system});
}

// All pages are of one size, as the printer is told once.
std::string document_of(const std::vector<Drawing>& pages, std::string_view title,
                        std::string_view how) {
  if (pages.empty()) return {};
  const double wide_mm = pages.front().high.x - pages.front().low.x;
  const double high_mm = pages.front().high.y - pages.front().low.y;
  Markup out;
  out.raw(
      "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
      "<meta name=\"viewport\" content=\"width=device-width,initial-scale=1\">\n");
  out.line("title", title);
  out.raw("\n<style>@page{margin:0;size:");
  out.number(wide_mm);
  out.raw("mm ");
  out.number(high_mm);
  out.raw("mm}");
  out.raw(svg_style());
  out.raw(kPagesStyle);
  out.raw("</style>\n</head>\n<body>\n<main class=\"sheet\">\n");
  out.line("h1", title);
  out.line("p", how);
  for (const Drawing& page : pages) {
    out.open("section class=\"page\"");
    out.raw(write_svg(page, {.paper = true}));
    out.close("section class=\"page\"");
  }
  out.raw("</main>\n</body>\n</html>\n");
  return out.take();
}

}  // namespace

std::string plate_name(const Design& design) {
  const std::string& title = design.job.title.value;
  return title.empty() ? std::string("Bow plate") : title;
}

std::string plate_drawing_svg(const Design& design, const SheetOptions& options) {
  const std::optional<Drawing> drawing = drawing_of(design, options);
  return drawing ? on_paper(*drawing) : std::string{};
}

std::vector<std::string> drill_template_svgs(const Design& design, Paper paper) {
  std::vector<std::string> pages;
  for (const Drawing& page : template_of(design, paper)) pages.push_back(on_paper(page));
  return pages;
}

std::string plate_drawing_html(const Design& design, const SheetOptions& options) {
  const std::optional<Drawing> drawing = drawing_of(design, options);
  if (!drawing) return {};
  return document_of({*drawing}, "Drawing: " + plate_name(design),
                     "One sheet. On smaller paper it is not to scale: its figures hold.");
}

std::string drill_template_html(const Design& design, Paper paper) {
  return document_of(template_of(design, paper), "Drill template: " + plate_name(design),
                     "Print at 100 %, not fitted to the page, and measure both bars before you "
                     "drill. Look under the deck first: wires, tanks, stringers.");
}

std::string elevation_svg(const Design& design, const SheetOptions& options, Paper paper) {
  return design.hold.motor_found ? on_paper(elevation_of(design, options, paper)) : std::string{};
}

std::string elevation_html(const Design& design, const SheetOptions& options, Paper paper) {
  if (!design.hold.motor_found) return {};
  const Drawing drawing = elevation_of(design, options, paper);
  return document_of({drawing}, drawing.title, "One sheet, across. Print at 100 %, not fitted to the page: then it is to scale.");
}

DxfFile plate_dxf(const Design& design, DxfVersion version) {
  const std::optional<ChosenPlate> plate = chosen_plate(design);
  if (!plate) return {.issues = {{Severity::error, "mount.plate", std::string(kNoPlate)}}};
  return write_dxf({.shape = plate->shape,
                    .bars = plate->bars,
                    .name = plate_name(design),
                    .material = std::string(plate->alloy->name),
                    .density_kg_per_m3 = plate->alloy->density_kg_per_m3,
                    .countersink_deg = countersink_deg(*plate->bolt)},
                   version);
}

}  // namespace thole
