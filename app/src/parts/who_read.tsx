/** Who read what of a line that more than one phone has read. */

import { useSignal } from "../core/signal";
import { calledBy, phones } from "../crew/phones";
import type { ReadLine } from "../messages";

export function WhoRead({ line }: { line: ReadLine | undefined }) {
  const known = useSignal(phones);
  // Readings of a file that was opened have nobody's name.
  if (!line || line.by.length !== line.texts.length) return null;
  if (new Set(line.by.map(({ device }) => device)).size < 2) return null;
  const said = line.texts.map((text, at) => `${text} ${calledBy(known, line.by[at]?.device ?? "")}`);
  return <small class="faint who-read">{said.join(", ")}</small>;
}
