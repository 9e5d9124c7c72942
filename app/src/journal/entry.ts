/** What is written down, in the order it was written; nothing is ever changed or taken out. */

import type { Entry } from "../messages";

/** An entry before the journal has given it its place. */
export type Fresh = Entry extends infer E
  ? E extends Entry
    ? Omit<E, "device" | "counter" | "at">
    : never
  : never;

/** A name for something new that no other phone will give: short enough to be read out. */
export function freshName(): string {
  const letters = "abcdefghjkmnpqrstuvwxyz23456789";
  const drawn = crypto.getRandomValues(new Uint8Array(10));
  return Array.from(drawn, (value) => letters[value % letters.length]).join("");
}
