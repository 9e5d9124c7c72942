/** Light, dark, or plain black and white for the sun; kept on this phone. */

const NAME = "light";

export function chosenLight(): string {
  try {
    return localStorage.getItem(NAME) ?? "";
  } catch {
    return "";
  }
}

export function setLight(value: string): void {
  try {
    localStorage.setItem(NAME, value);
  } catch {
    // It holds until the page is closed.
  }
  show(value);
}

export function show(value = chosenLight()): void {
  if (value) document.documentElement.dataset["light"] = value;
  else delete document.documentElement.dataset["light"];
}
