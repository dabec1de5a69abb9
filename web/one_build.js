// Page, script and program belong together: each carries a mark that tools/make_site.mjs put there.
// A cache somewhere on the way may still bring parts of two builds together. Then nothing is started;
// what this site keeps in the browser is cleared and the page asked for again, once. Jobs are not
// touched by that: they live in the address and in local storage.

export const BUILD = THOLE_BUILD;      // of page and script
export const PROGRAM = THOLE_PROGRAM;  // of the WebAssembly that this script was made for

// Cache storage belongs to an origin, on which more than one Thole may stand.
export const OURS = `thole ${new URL("./", location.href).pathname} `;

const pageBuild = () => document.querySelector('meta[name="thole-build"]')?.content;
const programMark = (module) => {
  const [mark] = WebAssembly.Module.customSections(module, "thole");
  return mark && new TextDecoder().decode(mark);
};

export const belongTogether = (module) => pageBuild() === BUILD && programMark(module) === PROGRAM;

// Forgets every file kept for offline use, and the worker that keeps them.
export async function forgetFiles() {
  try {
    const names = await caches.keys();
    await Promise.all(names.filter((name) => name.startsWith(OURS)).map((name) => caches.delete(name)));
    const registration = await navigator.serviceWorker?.getRegistration();
    await registration?.unregister();
  } catch {
    // no storage, nothing kept
  }
}

// False when it has been tried and did not help. The history entry remembers across the reload, also
// where storage is refused.
export async function startAfresh() {
  if (history.state?.afresh) return false;
  history.replaceState({ ...history.state, afresh: true }, "");
  await forgetFiles();
  location.reload();
  return true;
}

export function startedWell() {
  if (!history.state?.afresh) return;
  const { afresh: _, ...rest } = history.state;
  history.replaceState(rest, "");
}
