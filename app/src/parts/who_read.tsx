/** Who read what, of lines that more than one phone has read. */

import { useSignal } from "../core/signal";
import { calledBy, phones } from "../crew/phones";
import type { ReadLine } from "../messages";

type Known = Parameters<typeof calledBy>[0];

export function WhoRead({ line }: { line: ReadLine | undefined }) {
  const said = whoRead(line, useSignal(phones));
  return said ? <small class="faint who-read">{said}</small> : null;
}

/** Of a place that is held: whose readings disagree. */
export function WhoDiffers({ lines }: { lines: readonly ReadLine[] }) {
  const known = useSignal(phones);
  return (
    <>
      {lines.map((line) => {
        const said = line.differs && whoRead(line, known);
        return said ? (
          <p key={line.line}>
            {line.line}: <b>{said}</b>
          </p>
        ) : null;
      })}
    </>
  );
}

function whoRead(line: ReadLine | undefined, known: Known): string | undefined {
  // Readings of a file that was opened have nobody's name.
  if (!line || line.by.length !== line.texts.length) return undefined;
  if (new Set(line.by.map(({ device }) => device)).size < 2) return undefined;
  return line.texts
    .map((text, at) => `${text} ${calledBy(known, line.by[at]?.device ?? "")}`)
    .join(", ");
}
