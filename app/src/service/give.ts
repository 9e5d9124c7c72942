/** Hands something on: to another app where the phone can, else as a file or to the clipboard. */

export async function giveText(title: string, text: string): Promise<void> {
  if (navigator.share) {
    try {
      await navigator.share({ title, text });
      return;
    } catch {
      // Not shared after all: the clipboard has it.
    }
  }
  await navigator.clipboard?.writeText(text);
}

/** Returns whether it left the page; a share that was called off didn't. */
export async function giveFile(name: string, text: string, kind: string): Promise<boolean> {
  const file = new File([text], name, { type: kind });
  if (navigator.canShare?.({ files: [file] }) && matchMedia("(pointer: coarse)").matches) {
    try {
      await navigator.share({ files: [file], title: name });
      return true;
    } catch (trouble) {
      if (trouble instanceof DOMException && trouble.name === "AbortError") return false;
    }
  }
  const address = URL.createObjectURL(file);
  const anchor = document.createElement("a");
  anchor.href = address;
  anchor.download = name;
  anchor.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
  return true;
}
