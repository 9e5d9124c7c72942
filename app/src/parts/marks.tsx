/** Small drawings of our own: each says by its shape what its colour says as well. */

import type { ComponentChildren } from "preact";

function Drawn({ children, box = "0 0 24 24" }: { children: ComponentChildren; box?: string }) {
  return (
    <svg
      viewBox={box}
      fill="none"
      stroke="currentColor"
      stroke-width="2.2"
      stroke-linecap="square"
      aria-hidden="true"
    >
      {children}
    </svg>
  );
}

/** Held: a board nailed across. */
export const HeldMark = () => (
  <Drawn>
    <path d="M8 2h8l6 6v8l-6 6H8l-6-6V8z" fill="currentColor" />
    <path d="M6 12h12" stroke="var(--card)" stroke-width="3.4" />
  </Drawn>
);

/** Ready: a mitred corner, closed, and a tick. */
export const ReadyMark = () => (
  <Drawn>
    <path d="M3 12l6 7L21 5" stroke-width="3.4" />
  </Drawn>
);

/** Look at it: a rising edge. */
export const LookMark = () => (
  <Drawn>
    <path d="M12 3l10 18H2z" />
    <path d="M12 10v5M12 18v.5" />
  </Drawn>
);

/** Best found, not proved to be the best: a ring. */
export const FoundMark = () => (
  <Drawn>
    <circle cx="12" cy="12" r="8" />
  </Drawn>
);

/** Not read: an empty opening, dashed. */
export const UnreadMark = () => (
  <Drawn>
    <path d="M4 4h16v16H4z" stroke-dasharray="3 4" />
  </Drawn>
);

/** Said: a pencil stroke. */
export const SaidMark = () => (
  <Drawn>
    <path d="M4 20l3-1L20 6l-2-2L5 17z" />
  </Drawn>
);

export const BackMark = () => (
  <svg width="28" height="28" viewBox="0 0 24 24" aria-hidden="true">
    <path d="M15 4l-8 8 8 8" fill="none" stroke="currentColor" stroke-width="2.6" />
  </svg>
);

/** Tabs. */
export const HouseMark = () => (
  <Drawn>
    <path d="M3 21V10l9-7 9 7v11z" />
    <path d="M9 21v-7h6v7" />
  </Drawn>
);
export const TapeMark = () => (
  <Drawn>
    <path d="M3 5h11a5 5 0 0 1 5 5v3" />
    <path d="M2 13h20v6H2zM6 13v3M10 13v4M14 13v3M18 13v4" />
  </Drawn>
);
export const SawMark = () => (
  <Drawn>
    <path d="M2 18h20M12 18a8 8 0 1 1 8-8" />
    <path d="M12 10l8 8" stroke-dasharray="2 3" />
  </Drawn>
);
export const WallMark = () => (
  <Drawn>
    <path d="M3 21V3h18v18M8 21V8h8v13" />
    <path d="M3 3l5 5M21 3l-5 5" />
  </Drawn>
);
export const BuyMark = () => (
  <Drawn>
    <path d="M2 8l17-4 3 2-17 4zM2 14l17-4M2 20l17-4 3 2M2 8v12" />
  </Drawn>
);
export const SheetMark = () => (
  <Drawn>
    <path d="M5 2h10l4 4v16H5z" />
    <path d="M8 10h8M8 14h8M8 18h5" />
  </Drawn>
);
