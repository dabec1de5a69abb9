// The painter on a thread of its own: starting a graphics context takes long on a small device, and
// the page is to be read and typed into meanwhile.

import { Painter } from "./painter.js";

let painter = null;
const DEEDS = {
  start({ canvas }) {
    try {
      painter = new Painter(canvas, {
        lost: () => postMessage({ lost: true }),
        restored: () => postMessage({ restored: true }),
      });
      postMessage({ started: true });
    } catch (error) {
      postMessage({ failed: String(error) });
    }
  },
  paint({ packet }) {
    try {
      painter.paint(packet);
    } finally {
      postMessage({ painted: true });  // or the page would wait for ever
    }
  },
  lose: () => painter.lose(),
  restore: () => painter.restore(),
};
addEventListener("message", ({ data }) => DEEDS[data.deed](data));
