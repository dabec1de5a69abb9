// Handing the job on: link, the system's share sheet, files, paper. Each starts in the user's gesture,
// before anything is awaited: later the browser would refuse.

const KEPT_MS = 60_000;  // a downloaded file's address is let go after that

export async function copyLink(link, say) {
  try {
    await navigator.clipboard.writeText(link);
    say("Link copied");
  } catch {
    window.prompt("Copy this link", link);
  }
}

export const canShare = () => typeof navigator.share === "function";

export async function shareLink(link, title, say) {
  try {
    await navigator.share({ title, url: link });
  } catch (error) {
    if (error.name !== "AbortError") await copyLink(link, say);  // closed by the user: nothing to say
  }
}

export function saveFile(name, type, text) {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const anchor = document.createElement("a");
  anchor.href = address;
  anchor.download = name;
  document.body.append(anchor);
  anchor.click();
  anchor.remove();
  setTimeout(() => URL.revokeObjectURL(address), KEPT_MS);
}

// A job file, with the text of its contents, once one was picked.
export function pickFile(opened) {
  const input = document.createElement("input");
  input.type = "file";
  input.accept = ".json,application/json";
  input.addEventListener("change", async () => {
    const [file] = input.files;
    if (file) opened(await file.text());
  });
  input.click();
}
