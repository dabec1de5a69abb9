// Paints the packets that the program hands over (src/ui/frame_packet.h) with WebGL 2. It knows no
// page: the same class works on a canvas of the document and, in a worker, on one off the screen.

const HEADER = 9;
const TEXTURE = 9;
const COMMAND = 7;
const VERTEX_BYTES = 20;
const DROP = 2;
const ALTER = 1;

const VERTEX_SHADER = `#version 300 es
layout(location = 0) in vec2 at;
layout(location = 1) in vec2 place;
layout(location = 2) in vec4 tint;
uniform vec2 size;
out vec2 texel;
out vec4 ink;
void main() {
  texel = place;
  ink = tint;
  gl_Position = vec4(2.0 * at.x / size.x - 1.0, 1.0 - 2.0 * at.y / size.y, 0.0, 1.0);
}`;
const PIXEL_SHADER = `#version 300 es
precision mediump float;
uniform sampler2D coverage;
in vec2 texel;
in vec4 ink;
out vec4 colour;
void main() { colour = vec4(ink.rgb, ink.a * texture(coverage, texel).r); }`;

const CONTEXT = {
  alpha: false, depth: false, stencil: false, powerPreference: "low-power",
  antialias: false,  // the triangles bring their own soft edges
};

export class Painter {
  // Throws when the canvas gives no WebGL 2. `lost` and `restored` are called when the graphics
  // context goes and when it is back; the next packet must then bring all textures.
  constructor(canvas, { lost, restored }) {
    this.canvas = canvas;
    this.gl = canvas.getContext("webgl2", CONTEXT);
    if (!this.gl) throw new Error("no WebGL 2");
    this.loss = this.gl.getExtension("WEBGL_lose_context");
    canvas.addEventListener("webglcontextlost", (event) => {
      event.preventDefault();  // asks for it back
      lost();
    });
    canvas.addEventListener("webglcontextrestored", () => {
      this.prepare();
      restored();
    });
    this.prepare();
  }

  prepare() {
    const { gl } = this;
    const program = gl.createProgram();
    for (const [type, text] of [[gl.VERTEX_SHADER, VERTEX_SHADER], [gl.FRAGMENT_SHADER, PIXEL_SHADER]]) {
      const shader = gl.createShader(type);
      gl.shaderSource(shader, text);
      gl.compileShader(shader);
      gl.attachShader(program, shader);
    }
    gl.linkProgram(program);
    gl.useProgram(program);
    this.size = gl.getUniformLocation(program, "size");
    gl.bindVertexArray(gl.createVertexArray());
    gl.bindBuffer(gl.ARRAY_BUFFER, gl.createBuffer());
    gl.bindBuffer(gl.ELEMENT_ARRAY_BUFFER, gl.createBuffer());
    gl.vertexAttribPointer(0, 2, gl.FLOAT, false, VERTEX_BYTES, 0);
    gl.vertexAttribPointer(1, 2, gl.FLOAT, false, VERTEX_BYTES, 8);
    gl.vertexAttribPointer(2, 4, gl.UNSIGNED_BYTE, true, VERTEX_BYTES, 16);
    for (const place of [0, 1, 2]) gl.enableVertexAttribArray(place);
    gl.enable(gl.BLEND);
    gl.blendFunc(gl.SRC_ALPHA, gl.ONE_MINUS_SRC_ALPHA);
    gl.pixelStorei(gl.UNPACK_ALIGNMENT, 1);
    this.textures = new Map();
  }

  paint(buffer) {
    const { gl, canvas } = this;
    const words = new Uint32Array(buffer);
    const floats = new Float32Array(buffer);
    const [width, height] = words;
    const [textures, commands, vertices, indices] = words.subarray(5, HEADER);
    // A canvas is blank once it is sized: so it is sized by what fills it at once.
    if (canvas.width !== width) canvas.width = width;
    if (canvas.height !== height) canvas.height = height;
    let at = HEADER;
    for (let i = 0; i < textures; ++i) at = this.take(words, at);

    gl.viewport(0, 0, width, height);
    gl.disable(gl.SCISSOR_TEST);
    gl.clearColor(...[16, 8, 0].map((shift) => ((words[4] >> shift) & 255) / 255), 1);
    gl.clear(gl.COLOR_BUFFER_BIT);
    gl.enable(gl.SCISSOR_TEST);
    gl.uniform2f(this.size, floats[2], floats[3]);
    const vertexAt = 4 * (at + commands * COMMAND);
    gl.bufferData(gl.ARRAY_BUFFER, new Uint8Array(buffer, vertexAt, vertices * VERTEX_BYTES), gl.STREAM_DRAW);
    gl.bufferData(gl.ELEMENT_ARRAY_BUFFER,
      new Uint32Array(buffer, vertexAt + vertices * VERTEX_BYTES, indices), gl.STREAM_DRAW);
    for (let i = 0; i < commands; ++i, at += COMMAND) {
      const [texture, first, count, x, y, w, h] = words.subarray(at, at + COMMAND);
      gl.scissor(x, y, w, h);
      gl.bindTexture(gl.TEXTURE_2D, this.textures.get(texture) ?? null);
      gl.drawElements(gl.TRIANGLES, count, gl.UNSIGNED_INT, 4 * first);
    }
  }

  // One texture record; returns where the next begins.
  take(words, at) {
    const { gl } = this;
    const [id, deed, width, height, x, y, w, h, size] = words.subarray(at, at + TEXTURE);
    const next = at + TEXTURE + size;
    if (deed === DROP) {
      gl.deleteTexture(this.textures.get(id));
      this.textures.delete(id);
      return next;
    }
    const texels = new Uint8Array(words.buffer, 4 * (at + TEXTURE), w * h);
    if (deed === ALTER && this.textures.has(id)) {
      gl.bindTexture(gl.TEXTURE_2D, this.textures.get(id));
      gl.texSubImage2D(gl.TEXTURE_2D, 0, x, y, w, h, gl.RED, gl.UNSIGNED_BYTE, texels);
      return next;
    }
    gl.deleteTexture(this.textures.get(id) ?? null);
    this.textures.set(id, gl.createTexture());
    gl.bindTexture(gl.TEXTURE_2D, this.textures.get(id));
    for (const [name, value] of [[gl.TEXTURE_MIN_FILTER, gl.LINEAR], [gl.TEXTURE_MAG_FILTER, gl.LINEAR],
      [gl.TEXTURE_WRAP_S, gl.CLAMP_TO_EDGE], [gl.TEXTURE_WRAP_T, gl.CLAMP_TO_EDGE]]) {
      gl.texParameteri(gl.TEXTURE_2D, name, value);
    }
    gl.texImage2D(gl.TEXTURE_2D, 0, gl.R8, width, height, 0, gl.RED, gl.UNSIGNED_BYTE, texels);
    return next;
  }

  // For the tests: what a phone does to a page that was long in the background.
  lose() { this.loss?.loseContext(); }
  restore() { this.loss?.restoreContext(); }
}
