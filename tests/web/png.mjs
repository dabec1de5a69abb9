// PNG to pixels and back, as much of it as screenshots need: 8 bits, colour with or without alpha.

import { crc32, deflateSync, inflateSync } from "node:zlib";

const SIGNATURE = Buffer.from([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]);
const CHANNELS = { 2: 3, 6: 4 };  // colour types: RGB, RGBA

// { width, height, at(x, y): [r, g, b] }
export function decode(png) {
  if (!png.subarray(0, 8).equals(SIGNATURE)) throw new Error("not a PNG");
  const parts = [];
  let header = null;
  for (let from = 8; from < png.length;) {
    const length = png.readUInt32BE(from);
    const kind = png.toString("latin1", from + 4, from + 8);
    const body = png.subarray(from + 8, from + 8 + length);
    if (kind === "IHDR") header = body;
    if (kind === "IDAT") parts.push(body);
    from += length + 12;
  }
  const [width, height] = [header.readUInt32BE(0), header.readUInt32BE(4)];
  const channels = CHANNELS[header[9]];
  if (header[8] !== 8 || !channels || header[12] !== 0) throw new Error("no screenshot is such a PNG");
  const pixels = unfilter(inflateSync(Buffer.concat(parts)), width * channels, height, channels);
  return {
    width, height,
    at(x, y) {
      const from = (y * width + x) * channels;
      return [pixels[from], pixels[from + 1], pixels[from + 2]];
    },
  };
}

// Each line is stored as the difference from what its neighbours foretell (PNG, 9.2).
function unfilter(data, stride, height, step) {
  const out = Buffer.alloc(stride * height);
  for (let y = 0; y < height; ++y) {
    const filter = data[y * (stride + 1)];
    const line = y * stride;
    for (let x = 0; x < stride; ++x) {
      const left = x >= step ? out[line + x - step] : 0;
      const up = y > 0 ? out[line - stride + x] : 0;
      const corner = x >= step && y > 0 ? out[line - stride + x - step] : 0;
      out[line + x] = data[y * (stride + 1) + 1 + x] + foretold(filter, left, up, corner);
    }
  }
  return out;
}

function foretold(filter, left, up, corner) {
  switch (filter) {
    case 1: return left;
    case 2: return up;
    case 3: return (left + up) >> 1;
    case 4: {
      const [l, u, c] = [Math.abs(up - corner), Math.abs(left - corner), Math.abs(left + up - 2 * corner)];
      return l <= u && l <= c ? left : u <= c ? up : corner;
    }
    default: return 0;
  }
}

// From rows of RGB bytes.
export function encode(width, height, rgb) {
  const stride = width * 3;
  const lines = Buffer.alloc((stride + 1) * height);
  for (let y = 0; y < height; ++y) {
    const line = y * (stride + 1);
    lines[line] = 1;  // the difference from the left packs well
    for (let x = 0; x < stride; ++x) {
      lines[line + 1 + x] = rgb[y * stride + x] - (x >= 3 ? rgb[y * stride + x - 3] : 0);
    }
  }
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 2, 0, 0, 0], 8);
  return Buffer.concat([SIGNATURE, chunk("IHDR", header), chunk("IDAT", deflateSync(lines, { level: 9 })),
    chunk("IEND", Buffer.alloc(0))]);
}

function chunk(kind, body) {
  const out = Buffer.alloc(body.length + 12);
  out.writeUInt32BE(body.length, 0);
  out.write(kind, 4, "latin1");
  out.set(body, 8);
  out.writeUInt32BE(crc32(out.subarray(4, 8 + body.length)), 8 + body.length);
  return out;
}

// How many pixels of a box (all of the picture without one) have which colour.
export function colours(picture, box = { x: 0, y: 0, width: picture.width, height: picture.height }) {
  const counts = new Map();
  const right = Math.min(box.x + box.width, picture.width);
  const bottom = Math.min(box.y + box.height, picture.height);
  for (let y = Math.max(0, Math.round(box.y)); y < bottom; ++y) {
    for (let x = Math.max(0, Math.round(box.x)); x < right; ++x) {
      const colour = picture.at(x, y).join();
      counts.set(colour, (counts.get(colour) ?? 0) + 1);
    }
  }
  return counts;
}
