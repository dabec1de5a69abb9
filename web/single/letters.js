// Bytes as letters that can stand in HTML, nine to eleven: all of ASCII from the blank on but "<", which could
// begin a tag. A sixth shorter than base64, and as sound in whatever a server or a mail says of its letters.

const FIRST = 0x20;
const LEFT_OUT = 0x3c;
const BASE = 94;  // 94 ** 11 > 2 ** 72
const BYTES = 9;
const LETTERS = 11;
const LIMB_BITS = 24;  // nine bytes are three limbs, and a limb times the base is a whole number still
const LIMB = (1 << LIMB_BITS) - 1;

const letter = (digit) => digit + FIRST + (digit + FIRST >= LEFT_OUT ? 1 : 0);
const digit = (code) => code - FIRST - (code > LEFT_OUT ? 1 : 0);

export function lettersOf(bytes) {
  const out = [];
  for (let at = 0; at < bytes.length; at += BYTES) {
    const byte = (i) => bytes[at + i] ?? 0;
    const limb = (i) => (byte(3 * i) << 16) | (byte(3 * i + 1) << 8) | byte(3 * i + 2);
    let [high, middle, low] = [limb(0), limb(1), limb(2)];
    const block = new Array(LETTERS);
    for (let i = LETTERS - 1; i >= 0; --i) {
      middle += (high % BASE) * (LIMB + 1);
      high = Math.floor(high / BASE);
      low += (middle % BASE) * (LIMB + 1);
      middle = Math.floor(middle / BASE);
      block[i] = letter(low % BASE);
      low = Math.floor(low / BASE);
    }
    out.push(String.fromCharCode(...block));
  }
  return out.join("");
}

export function bytesOf(letters, length) {
  const bytes = new Uint8Array(Math.ceil(length / BYTES) * BYTES);
  for (let at = 0, to = 0; to < length; at += LETTERS, to += BYTES) {
    let high = 0, middle = 0, low = 0;
    for (let i = 0; i < LETTERS; ++i) {
      low = low * BASE + digit(letters.charCodeAt(at + i));
      middle = middle * BASE + (low >>> LIMB_BITS);
      high = high * BASE + (middle >>> LIMB_BITS);
      low &= LIMB;
      middle &= LIMB;
    }
    [high, middle, low].forEach((limb, i) => {
      bytes[to + 3 * i] = limb >>> 16;
      bytes[to + 3 * i + 1] = limb >>> 8;
      bytes[to + 3 * i + 2] = limb;
    });
  }
  return bytes.subarray(0, length);
}
