// Reads and writes the sections of a WebAssembly module, and its data.

function unsigned(value) {
  const bytes = [];
  do {
    bytes.push((value & 0x7f) | (value > 0x7f ? 0x80 : 0));
    value >>>= 7;
  } while (value);
  return bytes;
}
function signed(value) {
  const bytes = [];
  for (;;) {
    const low = value & 0x7f;
    value >>= 7;
    const last = (value === 0 && !(low & 0x40)) || (value === -1 && (low & 0x40));
    bytes.push(last ? low : low | 0x80);
    if (last) return bytes;
  }
}

class Reader {
  constructor(bytes, at = 0) { this.bytes = bytes; this.at = at; }
  number() {
    let value = 0;
    for (let shift = 0; ; shift += 7) {
      const byte = this.bytes[this.at++];
      value |= (byte & 0x7f) << shift;
      if (!(byte & 0x80)) {
        this.shift = shift + 7;
        this.negative = (byte & 0x40) !== 0;
        return value;
      }
    }
  }
  signedNumber() {
    const value = this.number();
    return this.negative && this.shift < 32 ? value | (-1 << this.shift) : value;
  }
}

export const DATA = 11;
export const DATA_COUNT = 12;

export function sections(bytes) {
  const found = [];
  const reader = new Reader(bytes, 8);
  while (reader.at < bytes.length) {
    const id = bytes[reader.at++];
    const size = reader.number();
    found.push({ id, bytes: bytes.subarray(reader.at, reader.at + size) });
    reader.at += size;
  }
  return found;
}
export const joined = (bytes, parts) => Buffer.concat([bytes.subarray(0, 8),
  ...parts.flatMap(({ id, bytes: body }) => [Buffer.from([id, ...unsigned(body.length)]), body])]);

// Segments that are in memory from the start; the bytes are the module's own, to be written to.
export function segments(body) {
  const reader = new Reader(body);
  const found = [];
  const count = reader.number();
  for (let i = 0; i < count; ++i) {
    if (reader.number() !== 0 || body[reader.at++] !== 0x41) throw new Error("data that is not simply placed");
    const address = reader.signedNumber();
    if (body[reader.at++] !== 0x0b) throw new Error("data at an address that is worked out");
    const size = reader.number();
    found.push({ address, bytes: body.subarray(reader.at, reader.at + size) });
    reader.at += size;
  }
  return found;
}
export const dataSection = (pieces) => ({ id: DATA, bytes: Buffer.concat([Buffer.from(unsigned(pieces.length)),
  ...pieces.flatMap(({ address, bytes }) =>
    [Buffer.from([0, 0x41, ...signed(address), 0x0b, ...unsigned(bytes.length)]), bytes])]) });
