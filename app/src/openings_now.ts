/**
 * The openings as they stand, with what was written since the core last looked: the walk never
 * waits for the planner. Only lists are kept here; what they mean is the core's.
 */

import type { Standing } from "./house";
import type { Entry, EntryKey, FoldedOpening, Limits, LineLimits, ReadLine } from "./messages";

export function openingsNow(standing: Standing, limits: Limits): readonly FoldedOpening[] {
  let openings = standing.fold?.openings ?? [];
  for (const entry of standing.entries.slice(standing.folded)) {
    openings = withEntry(openings, entry, limits);
  }
  return openings;
}

export function linesOf(limits: Limits, kind: string): readonly LineLimits[] {
  return limits.kinds.find((each) => each.kind === kind)?.lines ?? [];
}

/** The first line asked for that is unread, after a given one; undefined: none in this opening. */
export function nextLine(
  opening: FoldedOpening,
  lines: readonly LineLimits[],
  after?: string,
): LineLimits | undefined {
  const from = lines.findIndex((line) => line.line === after) + 1;
  const ordered = [...lines.slice(from), ...lines.slice(0, from)];
  const isUnread = (line: LineLimits) => !textsOf(opening, line.line).length;
  const following = lines.slice(from).find(isUnread);
  return following ?? ordered.find((line) => line.asked && isUnread(line));
}

export function textsOf(opening: FoldedOpening, line: string): readonly string[] {
  return opening.lines.find((each) => each.line === line)?.texts ?? [];
}

/** The entries by which a line was read, for what takes their place. */
export function readersOf(place: { lines: readonly ReadLine[] }, line: string): readonly EntryKey[] {
  return place.lines.find((each) => each.line === line)?.by ?? [];
}

/** A line with one more reading, which stands for itself until the core has looked. */
export function withReading(
  line: ReadLine,
  entry: EntryKey & { readonly again: boolean; readonly value_text: string },
): ReadLine {
  const { device, counter, again, value_text } = entry;
  return {
    ...line,
    texts: [...(again ? line.texts : []), value_text],
    by: [...(again ? line.by : []), { device, counter }],
  };
}

function withEntry(
  openings: readonly FoldedOpening[],
  entry: Entry,
  limits: Limits,
): readonly FoldedOpening[] {
  if (entry.what === "opening-added") {
    const lines = linesOf(limits, entry.kind);
    const added: FoldedOpening = {
      mark: entry.opening,
      room: entry.room,
      what: entry.kind,
      trim: entry.trim,
      state: "unread",
      left: lines.filter((line) => line.asked).length,
      lines: lines.map((line) => ({ line: line.line, texts: [], by: [], differs: false })),
    };
    return [...openings, added];
  }
  if (entry.what === "opening-left-out") {
    return openings.filter((opening) => opening.mark !== entry.opening);
  }
  if (entry.what !== "reading") return openings;
  return openings.map((opening) => {
    if (opening.mark !== entry.opening) return opening;
    const wasUnread = !textsOf(opening, entry.line).length;
    const isAsked = linesOf(limits, opening.what).find((l) => l.line === entry.line)?.asked;
    const lines = opening.lines.map(
      (line): ReadLine =>
        line.line === entry.line
          ? withReading(line, entry)
          : line,
    );
    const left = opening.left - (wasUnread && isAsked ? 1 : 0);
    return { ...opening, lines, left, state: left ? "part" : "read" };
  });
}
