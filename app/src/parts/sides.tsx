/** Which line of an opening is to be read: a sign, not a drawing of this opening. */

/** Ends of each line on a sign of 100 by 100; a corner's line has both ends in one place. */
const LINES: Readonly<Record<string, readonly [number, number, number, number]>> = {
  top: [14, 14, 86, 14],
  bottom: [14, 86, 86, 86],
  left: [14, 86, 14, 14],
  right: [86, 86, 86, 14],
  rising: [14, 86, 86, 14],
  falling: [14, 14, 86, 86],
  width: [14, 50, 86, 50],
  height: [50, 86, 50, 14],
  tl: [14, 14, 14, 14],
  tr: [86, 14, 86, 14],
  br: [86, 86, 86, 86],
  bl: [14, 86, 14, 86],
};

export function Sides({ line, isDoor, words }: { line: string; isDoor: boolean; words: string }) {
  const ends = LINES[line.split(".").at(-1) ?? ""];
  const frame = isDoor ? "M14 92V14H86V92" : "M14 14H86V86H14Z";
  return (
    <svg class="sides" viewBox="0 0 100 100" role="img" aria-label={words}>
      {isDoor && <path class="frame-line" d="M0 92H100" stroke-dasharray="4 5" />}
      <path class="frame-line" d={frame} />
      {ends && (
        <>
          <path class="asked-line" d={`M${ends[0]} ${ends[1]}L${ends[2]} ${ends[3]}`} />
          <circle class="end" cx={ends[0]} cy={ends[1]} r="6.5" />
          <circle class="end" cx={ends[2]} cy={ends[3]} r="6.5" />
        </>
      )}
    </svg>
  );
}
