// The wizard in a browser: WebGL 2 through Dear ImGui's own renderer, and the few functions that
// shell.js calls. The only file that knows Emscripten. There is no pointer or key handling here:
// real elements over the canvas take all input and come back through thole_act().

#include <GLES3/gl3.h>
#include <emscripten/emscripten.h>
#include <emscripten/html5.h>
#include <imgui.h>
#include <imgui_impl_opengl3.h>

#include <algorithm>
#include <memory>
#include <string>
#include <string_view>

#include "io/embedded.h"
#include "io/issues_json.h"
#include "io/presets.h"
#include "ui/app.h"
#include "ui/fonts.h"

namespace {

using namespace thole;

struct Page {
  std::unique_ptr<ui::App> app{};
  ui::Viewport view{};
  bool drawable = false;  // the graphics context lives
  std::uint64_t tree_hash = 0;
  int tree_version = 0;  // grows whenever the semantic tree says something new
  std::string text{};    // holds what was last handed to the shell
};

// One page is one program; the shell calls in without a handle.
Page page;

const char* hand_over(std::string text) {
  page.text = std::move(text);
  return page.text.c_str();
}

bool start_drawing() {
  page.drawable = ImGui_ImplOpenGL3_Init("#version 300 es");
  return page.drawable;
}

void clear_to(std::uint32_t rgb) {
  const auto channel = [rgb](int shift) {
    return static_cast<float>((rgb >> shift) & 0xFF) / 255.0f;
  };
  glClearColor(channel(16), channel(8), channel(0), 1.0f);
  glClear(GL_COLOR_BUFFER_BIT);
}

}  // namespace

extern "C" {

// Starts on the canvas with the id "canvas"; 0 when the browser has no WebGL 2.
EMSCRIPTEN_KEEPALIVE int thole_boot() {
  EmscriptenWebGLContextAttributes attributes;
  emscripten_webgl_init_context_attributes(&attributes);
  attributes.majorVersion = 2;
  attributes.alpha = false;
  attributes.depth = false;
  attributes.stencil = false;
  attributes.antialias = false;  // Dear ImGui smooths its own edges
  attributes.powerPreference = EM_WEBGL_POWER_PREFERENCE_LOW_POWER;
  const EMSCRIPTEN_WEBGL_CONTEXT_HANDLE context =
      emscripten_webgl_create_context("#canvas", &attributes);
  if (context <= 0 || emscripten_webgl_make_context_current(context) != EMSCRIPTEN_RESULT_SUCCESS) {
    return 0;
  }
  ImGui::CreateContext();
  ImGui::GetIO().IniFilename = nullptr;
  const ui::Fonts fonts = ui::load_fonts();
  if (!start_drawing()) return 0;
  page.app = std::make_unique<ui::App>(default_catalogue(), fonts);
  return 1;
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

// Draws one frame; returns how many more are wanted.
EMSCRIPTEN_KEEPALIVE int thole_frame(float dt_s, float scroll_y) {
  if (!page.drawable) return 0;
  page.view.scroll_y = scroll_y;
  ImGui::GetIO().DeltaTime = std::clamp(dt_s, 0.001f, 0.1f);
  ImGui_ImplOpenGL3_NewFrame();
  ImGui::NewFrame();
  page.app->frame(page.view);
  ImGui::Render();
  const ImGuiIO& io = ImGui::GetIO();
  glViewport(0, 0, static_cast<int>(io.DisplaySize.x * io.DisplayFramebufferScale.x + 0.5f),
             static_cast<int>(io.DisplaySize.y * io.DisplayFramebufferScale.y + 0.5f));
  clear_to((page.view.dark ? ui::kNight : ui::kDay).paper);
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
  const std::uint64_t hash = page.app->tree().hash();
  if (hash != page.tree_hash) {
    page.tree_hash = hash;
    ++page.tree_version;
  }
  return page.app->frames_wanted();
}

EMSCRIPTEN_KEEPALIVE float thole_content_height() { return page.app->content_height(); }
EMSCRIPTEN_KEEPALIVE int thole_page_turned() { return page.app->take_page_turn() ? 1 : 0; }
EMSCRIPTEN_KEEPALIVE int thole_tree_version() { return page.tree_version; }
EMSCRIPTEN_KEEPALIVE int thole_job_version() { return page.app->document().version(); }
EMSCRIPTEN_KEEPALIVE const char* thole_tree() { return hand_over(page.app->tree().json()); }

EMSCRIPTEN_KEEPALIVE void thole_act(const char* id, const char* verb, const char* text) {
  page.app->act(id, verb, text);
}

// "link" (what follows the '#'), "job" (the file), "page" (key of the page shown), "units".
EMSCRIPTEN_KEEPALIVE const char* thole_text(const char* kind) {
  const std::string_view wanted = kind;
  if (wanted == "link") return hand_over(page.app->link());
  if (wanted == "job") return hand_over(page.app->job_text());
  if (wanted == "page") return hand_over(page.app->state().page);
  if (wanted == "units") return page.app->state().system == System::us ? "us" : "metric";
  return "";
}

// Opens a link or the text of a job file; returns the issues as JSON.
EMSCRIPTEN_KEEPALIVE const char* thole_open(const char* text) {
  return hand_over(write_issues(page.app->open(text)));
}

// The bytes of a weight of the type (0 regular, 1 semibold), so that real inputs are set in it too.
EMSCRIPTEN_KEEPALIVE const void* thole_font(unsigned weight) {
  return font_files()[weight].text.data();
}
EMSCRIPTEN_KEEPALIVE int thole_font_size(unsigned weight) {
  return static_cast<int>(font_files()[weight].text.size());
}

EMSCRIPTEN_KEEPALIVE void thole_context_lost() { page.drawable = false; }
EMSCRIPTEN_KEEPALIVE int thole_context_restored() {
  ImGui_ImplOpenGL3_Shutdown();  // forgets the names of the lost context
  return start_drawing() ? 1 : 0;
}

}  // extern "C"
