// The canvas under the page and who paints it: a worker where the browser lets one own a canvas, this
// thread where it does not, nobody where there is no WebGL 2.

import { Painter } from "./painter.js";

const SLOW_START_MS = 8000;  // a worker that has not answered by then will not

// Calls back: ready() once it can paint, painted() after each packet, lost(), restored(), none() when
// nobody can paint here.
export class Canvas {
  constructor(place, callbacks) {
    this.place = place;
    this.callbacks = callbacks;
    this.busy = false;  // a packet is being painted
    this.able = false;  // there is a graphics context
    this.hand = null;   // takes a packet
    this.loss = null;   // for the tests
  }

  start() {
    if (typeof OffscreenCanvas === "undefined" || !HTMLCanvasElement.prototype.transferControlToOffscreen) {
      this.startHere();
      return;
    }
    let worker;
    const instead = () => {
      clearTimeout(late);
      worker?.terminate();
      if (!this.hand) this.startHere();
    };
    const late = setTimeout(instead, SLOW_START_MS);
    try {
      const canvas = this.fresh().transferControlToOffscreen();
      worker = new Worker(new URL("./painter_worker.js", import.meta.url), { type: "module" });
      worker.onerror = instead;
      worker.onmessage = ({ data }) => {
        if (data.failed) instead();
        if (data.started) {
          clearTimeout(late);
          this.hand = (packet) => worker.postMessage({ deed: "paint", packet }, [packet]);
          this.loss = (deed) => worker.postMessage({ deed });
          this.begin();
        }
        if (data.painted) this.done();
        if (data.lost) this.lost();
        if (data.restored) this.restored();
      };
      worker.postMessage({ deed: "start", canvas }, [canvas]);
    } catch {
      instead();
    }
  }

  startHere() {
    try {
      const painter = new Painter(this.fresh(), {
        lost: () => this.lost(), restored: () => this.restored() });
      this.hand = (packet) => {
        try {
          painter.paint(packet);
        } finally {
          this.done();
        }
      };
      this.loss = (deed) => painter[deed]();
      this.begin();
    } catch {
      this.place.replaceChildren();
      this.callbacks.none();
    }
  }

  // An element that has once given its drawing away, or failed to give a context, is of no more use.
  fresh() {
    const canvas = document.createElement("canvas");
    this.place.replaceChildren(canvas);
    return canvas;
  }

  begin() {
    this.able = true;
    this.callbacks.ready();
  }

  paint(packet) {
    this.busy = true;
    this.hand(packet);
  }

  done() {
    this.busy = false;
    this.callbacks.painted();
  }

  lost() {
    this.able = false;
    this.busy = false;
    this.callbacks.lost();
  }

  restored() {
    this.able = true;
    this.callbacks.restored();
  }
}
