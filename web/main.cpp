// The wizard in a browser: the few functions that program.js calls. The only file of the wizard
// that knows Emscripten. There is no graphics context here: a frame leaves as a packet of
// triangles, which painter.js paints. Nor is there pointer or key handling: real elements over the
// canvas take all input and come back through thole_act().

#include <emscripten/emscripten.h>
#include <imgui.h>

#include <algorithm>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "draw/svg.h"
#include "io/embedded.h"
#include "io/issues_json.h"
#include "io/presets.h"
#include "io/qr.h"
#include "io/summary_json.h"
#include "papers/job_sheet.h"
#include "papers/plate_papers.h"
#include "ui/app.h"
#include "ui/fonts.h"
#include "ui/frame_packet.h"
#include "ui/pages.h"

namespace {

using namespace thole;

struct Page {
  std::unique_ptr<ui::App> app{};
  ui::Fonts fonts{};
  ui::Viewport view{};
  std::vector<std::uint32_t> packet{};  // the last frame
  bool all_textures = true;             // the painter has none yet, or has lost them
  std::string tree{};    // the semantic tree of the last frame, as JSON
  int tree_version = 0;  // grows whenever it says something new
  std::string text{};    // holds what was last handed to the shell
};

// One page is one program; the shell calls in without a handle.
Page page;

const char* hand_over(std::string text) {
  page.text = std::move(text);
  return page.text.c_str();
}

}  // namespace

extern "C" {

// A long start in three parts, so that the page can paint and answer in between: call it with 0, 1, 2.
EMSCRIPTEN_KEEPALIVE void thole_boot(int part) {
  if (part == 0) {
    default_catalogue();  // read once, and kept
  } else if (part == 1) {
    ImGui::CreateContext();
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.BackendFlags |= ImGuiBackendFlags_RendererHasTextures;
    io.Fonts->TexDesiredFormat = ImTextureFormat_Alpha8;  // type and lines have no colour of their own
    page.fonts = ui::load_fonts();
  } else {
    page.app = std::make_unique<ui::App>(default_catalogue(), page.fonts);
  }
}

// Lengths in CSS px; the canvas itself holds pixel_width x pixel_height.
EMSCRIPTEN_KEEPALIVE void thole_resize(float width, float height, float pixel_width,
                                       float pixel_height, float inset_top, float inset_right,
                                       float inset_bottom, float inset_left) {
  page.view.width = std::max(width, 1.0f);
  page.view.height = std::max(height, 1.0f);
  page.view.inset_top = inset_top;
  page.view.inset_right = inset_right;
  page.view.inset_bottom = inset_bottom;
  page.view.inset_left = inset_left;
  ImGuiIO& io = ImGui::GetIO();
  io.DisplaySize = {page.view.width, page.view.height};
  io.DisplayFramebufferScale = {pixel_width / page.view.width, pixel_height / page.view.height};
}

EMSCRIPTEN_KEEPALIVE void thole_theme(int dark, int reduced_motion, float text_scale) {
  page.view.dark = dark != 0;
  page.view.reduced_motion = reduced_motion != 0;
  page.view.text_scale = std::clamp(text_scale, 0.5f, 3.0f);
}

// A soft keyboard is up.
EMSCRIPTEN_KEEPALIVE void thole_typing(int on) { page.view.typing = on != 0; }

// Lays out and draws one frame; returns how many more are wanted.
EMSCRIPTEN_KEEPALIVE int thole_frame(float dt_s, float scroll_y) {
  page.view.scroll_y = scroll_y;
  ImGui::GetIO().DeltaTime = std::clamp(dt_s, 0.001f, 0.1f);
  ImGui::NewFrame();
  page.app->frame(page.view);
  ImGui::Render();
  page.packet = ui::pack_frame(*ImGui::GetDrawData(), page.app->palette(page.view.dark).paper,
                               page.all_textures);
  page.all_textures = false;
  std::string tree = page.app->tree().json();
  if (tree != page.tree) {
    page.tree = std::move(tree);
    ++page.tree_version;
  }
  return page.app->frames_wanted();
}

// The frame just drawn, as src/ui/frame_packet.h lays it out.
EMSCRIPTEN_KEEPALIVE const void* thole_packet() { return page.packet.data(); }
EMSCRIPTEN_KEEPALIVE int thole_packet_size() {
  return static_cast<int>(page.packet.size() * sizeof page.packet[0]);
}
// The painter has lost its textures: the next packet brings them all.
EMSCRIPTEN_KEEPALIVE void thole_repaint_all() { page.all_textures = true; }

// Before the first frame: one more trial of what would make the job fit; 0 when all is tried.
EMSCRIPTEN_KEEPALIVE int thole_search() { return page.app->search() ? 1 : 0; }

EMSCRIPTEN_KEEPALIVE float thole_content_height() { return page.app->content_height(); }
EMSCRIPTEN_KEEPALIVE int thole_page_turned() { return page.app->take_page_turn() ? 1 : 0; }
EMSCRIPTEN_KEEPALIVE int thole_tree_version() { return page.tree_version; }
EMSCRIPTEN_KEEPALIVE int thole_job_version() { return page.app->document().version(); }
EMSCRIPTEN_KEEPALIVE const char* thole_tree() { return page.tree.c_str(); }

EMSCRIPTEN_KEEPALIVE void thole_act(const char* id, const char* verb, const char* text) {
  page.app->act(id, verb, text);
}

// What is on screen, as other kinds of text: see the names.
EMSCRIPTEN_KEEPALIVE const char* thole_text(const char* kind) {
  const std::string_view wanted = kind;
  const ui::App& app = *page.app;
  const ui::UiState& state = app.state();
  if (wanted == "link") return hand_over(app.link());  // what follows the '#'
  if (wanted == "job") return hand_over(app.job_text());
  if (wanted == "label") return hand_over(app.label());
  if (wanted == "page") return hand_over(state.page);
  if (wanted == "units") return state.system == System::us ? "us" : "metric";
  page.app->tell();
  const Design& design = app.document().design();
  const Catalogue& catalogue = app.document().catalogue();
  if (wanted == "summary") return hand_over(write_summary(design, catalogue, state.system));
  if (wanted == "quote") return hand_over(write_quote(design));
  if (wanted == "qr") return hand_over(write_svg(make_qr(app.address()), "QR code"));
  if (wanted == "svg-style") return hand_over(std::string(svg_style()));
  if (wanted == "picture") {
    const auto picture = ui::find_page(state.page).picture;
    return picture == nullptr ? "" : hand_over(write_svg(picture(design, state.system)));
  }
  if (const auto figure = state.figures.find(std::string(wanted)); figure != state.figures.end()) {
    return hand_over(write_svg(*figure->second));
  }
  const SheetOptions options{
      .system = state.system, .address = app.address(), .date = state.around.date};
  if (wanted == "sheet") return hand_over(job_sheet_html(design, catalogue, options));
  if (wanted == "plate-drawing") return hand_over(plate_drawing_html(design, options));
  if (wanted == "template-a4") return hand_over(drill_template_html(design, Paper::a4));
  if (wanted == "template-letter") return hand_over(drill_template_html(design, Paper::letter));
  if (wanted == "elevation-a4") return hand_over(elevation_html(design, options, Paper::a4));
  if (wanted == "elevation-letter") return hand_over(elevation_html(design, options, Paper::letter));
  if (wanted == "plate-dxf-r12") return hand_over(plate_dxf(design, DxfVersion::r12).text);
  if (wanted == "plate-dxf-r2000") return hand_over(plate_dxf(design, DxfVersion::r2000).text);
  return "";
}

// Opens a link or the text of a job file; returns the issues as JSON.
EMSCRIPTEN_KEEPALIVE const char* thole_open(const char* text) {
  return hand_over(write_issues(page.app->open(text)));
}

// A shop's own catalogue; returns the issues as JSON.
EMSCRIPTEN_KEEPALIVE const char* thole_set_catalogue(const char* text) {
  return hand_over(write_issues(page.app->set_catalogue(text)));
}
EMSCRIPTEN_KEEPALIVE void thole_configure(const char* key, const char* value) {
  page.app->configure(key, value);
}

// The bytes of a weight of the type (0 regular, 1 semibold), so that real inputs are set in it too.
EMSCRIPTEN_KEEPALIVE const void* thole_font(unsigned weight) {
  return font_files()[weight].text.data();
}
EMSCRIPTEN_KEEPALIVE int thole_font_size(unsigned weight) {
  return static_cast<int>(font_files()[weight].text.size());
}

}  // extern "C"
