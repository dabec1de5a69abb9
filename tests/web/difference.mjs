// Compares documents of two builds.

const RELATIVE = 1e-9;
const SMALL = 1e-12;  // below this a number is the difference of equal ones

// The first place where two documents differ; empty when they agree.
export function difference(a, b, path = "") {
  if (typeof a === "number" && typeof b === "number") {
    const apart = Math.abs(a - b);
    const equal = apart <= RELATIVE * Math.max(Math.abs(a), Math.abs(b)) || apart <= SMALL;
    return equal ? "" : `${path}: ${a} / ${b}`;
  }
  if (a && b && typeof a === "object" && typeof b === "object") {
    const keys = Object.keys(a);
    if (keys.join() !== Object.keys(b).join()) return `${path}: other keys`;
    for (const key of keys) {
      const found = difference(a[key], b[key], `${path}/${key}`);
      if (found) return found;
    }
    return "";
  }
  return a === b ? "" : `${path}: ${a} / ${b}`;
}
