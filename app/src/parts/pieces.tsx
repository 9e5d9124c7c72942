/** The pieces of an opening or another place. */

import type { PieceRow } from "../messages";

export function PieceRows({ rows }: { rows: readonly PieceRow[] }) {
  return (
    <section class="stack" aria-label="Pieces">
      <h2>Pieces</h2>
      <ul class="stack">
        {rows.map((row) => (
          <li key={row.mark} class="card piece">
            <div class="row">
              <b class="grow">
                {row.what} <small class="faint">{row.mark}</small>
              </b>
              <b class="figures big">{row.figure}</b>
            </div>
            <p class="faint">{row.how}</p>
            <p class="ends">
              <span>left {row.left}</span>
              <span>
                {row.short === row.long ? "" : "long to long "}
                {row.long}
              </span>
              <span>right {row.right}</span>
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}
