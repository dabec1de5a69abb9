// The program's functions (web/main.cpp) under JavaScript names.

import { loadModule } from "./load.js";

// Resolves to the program; rejects when it cannot be loaded or started here.
export async function startProgram() {
  const { module, rest } = await loadModule();
  await nextTask();
  const text = (name, ...types) => module.cwrap(name, "string", types);
  const number = (name, ...types) => module.cwrap(name, "number", types);
  const bytes = (from, size) => module.HEAPU8.slice(from, from + size);
  // Whole documents go by the heap: what goes as "string" must fit on the stack.
  const document = (name) => {
    const read = module.cwrap(name, "string", ["number"]);
    return (words) => {
      const letters = new TextEncoder().encode(`${words}\0`);
      const at = module._malloc(letters.length);
      module.HEAPU8.set(letters, at);
      const answer = read(at);
      module._free(at);
      return answer;
    };
  };
  for (const part of [0, 1, 2]) {
    number("thole_boot", "number")(part);
    await nextTask();
  }
  return {
    resize: number("thole_resize", ...Array(8).fill("number")),
    theme: number("thole_theme", "number", "number", "number"),
    typing: number("thole_typing", "number"),
    search: number("thole_search"),
    frame: number("thole_frame", "number", "number"),
    // A copy of the last frame: it may be handed to another thread.
    packet: () => bytes(module._thole_packet(), module._thole_packet_size()).buffer,
    repaintAll: number("thole_repaint_all"),
    contentHeight: number("thole_content_height"),
    pageTurned: number("thole_page_turned"),
    treeVersion: number("thole_tree_version"),
    jobVersion: number("thole_job_version"),
    tree: text("thole_tree"),
    act: number("thole_act", "string", "string", "string"),
    text: text("thole_text", "string"),
    open: document("thole_open"),
    font: (semibold) => bytes(module._thole_font(semibold), module._thole_font_size(semibold)),
    setCatalogue: document("thole_set_catalogue"),
    configure: number("thole_configure", "string", "string"),
    whole: () => rest.here,
    makeWhole: () => rest.fetch(),
    memoryBytes: () => module.HEAPU8.length,
  };
}

// Resolves once the browser has painted what is there; at once where nobody looks.
export const firstPaint = () => new Promise((resolve) => {
  if (document.hidden) resolve();
  else requestAnimationFrame(() => setTimeout(resolve));
});

// Lets the browser paint and answer between two pieces of a long start.
export const nextTask = () => new Promise((resolve) => {
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = resolve;
  port2.postMessage(null);
});
