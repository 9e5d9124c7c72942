/** Rooms, walls, runs and other trim as they stand, with what the core has not yet looked at. */

import type { Standing } from "./house";
import type { Entry, FoldedPlace, Form, FormLine, Limits, ReadLine } from "./messages";
import { withReading } from "./openings_now";

export type Way = readonly string[];

export function sameWay(a: Way, b: Way): boolean {
  return a.length === b.length && a.every((part, at) => part === b[at]);
}

export function placesNow(standing: Standing, limits: Limits): readonly FoldedPlace[] {
  let places = standing.fold?.places ?? [];
  for (const entry of standing.entries.slice(standing.folded)) {
    places = withEntry(places, entry, limits);
  }
  return places;
}

export function formOf(limits: Limits, place: { readonly form: string }): Form | undefined {
  return limits.forms.find((form) => form.form === place.form);
}

/** The parts of a place: a room's walls, a wall's openings. */
export function partsOf(places: readonly FoldedPlace[], way: Way): readonly FoldedPlace[] {
  return places.filter(
    (place) => place.place.length === way.length + 2 && sameWay(place.place.slice(0, -2), way),
  );
}

/** What is unread of a place and all its parts. */
export function leftOf(places: readonly FoldedPlace[], way: Way): number {
  const inside = places.filter((place) => sameWay(place.place.slice(0, way.length), way));
  return inside.reduce((sum, place) => sum + place.left, 0);
}

export function textsIn(place: FoldedPlace, line: string): readonly string[] {
  return place.lines.find((each) => each.line === line)?.texts ?? [];
}

/** The same as it is shown: of a choice its words, those of the country. */
export function shownIn(place: FoldedPlace, line: FormLine): readonly string[] {
  return textsIn(place, line.line).map(
    (text) => line.choices.find(({ value }) => value === text)?.words ?? text,
  );
}

/** The next line the walk stops at, after a given one; undefined: all that is asked is read. */
export function nextAsked(place: FoldedPlace, form: Form, after?: string): FormLine | undefined {
  const from = form.lines.findIndex((line) => line.line === after) + 1;
  const ordered = [...form.lines.slice(from), ...form.lines.slice(0, from)];
  return ordered.find(
    (line) =>
      line.asked && line.scale !== "tables" && line.line !== after && !textsIn(place, line.line).length,
  );
}

/** The form of a place that isn't there yet. */
export function formAt(limits: Limits, way: Way, kind: unknown): Form | undefined {
  const lists = way.filter((_, at) => at % 2 === 0);
  const first = lists[0] === "trims" ? `trims:${String(kind)}` : (lists[0] ?? "");
  const name = [first, ...lists.slice(1)].join(".");
  return limits.forms.find((form) => form.form === name);
}

function withEntry(
  places: readonly FoldedPlace[],
  entry: Entry,
  limits: Limits,
): readonly FoldedPlace[] {
  switch (entry.what) {
    case "place-added":
      return withAdded(places, entry.place, entry.values, limits);
    case "place-left-out":
      return places.filter(
        (place) => !sameWay(place.place.slice(0, entry.place.length), entry.place),
      );
    case "place-changed":
      return withLine(places, entry.place, entry.key, limits, (line) => ({
        ...line,
        texts: entry.value === null ? [] : texts(entry.value),
        by: [],
      }));
    case "place-read":
      return withLine(places, entry.place, entry.line, limits, (line) => withReading(line, entry));
    default:
      return places;
  }
}

function withAdded(
  places: readonly FoldedPlace[],
  way: Way,
  values: Readonly<Record<string, unknown>>,
  limits: Limits,
): readonly FoldedPlace[] {
  if (places.some((place) => sameWay(place.place, way))) return places;
  const above = places.find((place) => sameWay(place.place, way.slice(0, -2)));
  const form = above
    ? limits.forms.find((each) => each.form === `${above.form}.${way.at(-2) ?? ""}`)
    : formAt(limits, way, values["kind"]);
  if (!form) return places;
  const lines = form.lines.map(
    (line): ReadLine => ({
      line: line.line,
      texts: line.line in values ? texts(values[line.line]) : [],
      by: [],
      differs: false,
    }),
  );
  const label = way.at(-1) ?? "";
  const added: FoldedPlace = {
    place: way,
    form: form.form,
    title: above ? `${above.title}, ${form.title.replace(/^an? /, "")} ${label}` : label,
    root: way[1] ?? label,
    room: String(values["room"] ?? (way[0] === "rooms" ? (way[1] ?? "") : "")),
    state: "unread",
    left: form.lines.filter((line) => line.asked && !(line.line in values)).length,
    lines,
  };
  return [...places, added];
}

function withLine(
  places: readonly FoldedPlace[],
  way: Way,
  name: string,
  limits: Limits,
  change: (line: ReadLine) => ReadLine,
): readonly FoldedPlace[] {
  return places.map((place) => {
    if (!sameWay(place.place, way)) return place;
    const lines = place.lines.map((line) => (line.line === name ? change(line) : line));
    const isRead = (line: string) => lines.some((each) => each.line === line && each.texts.length);
    const asked = formOf(limits, place)?.lines.filter((line) => line.asked) ?? [];
    const left = asked.filter((line) => !isRead(line.line)).length;
    return { ...place, lines, left, state: left ? "part" : "read" };
  });
}

function texts(value: unknown): readonly string[] {
  if (Array.isArray(value)) return value.map((each) => (Array.isArray(each) ? each.join(" ") : String(each)));
  if (typeof value === "boolean") return [value ? "yes" : "no"];
  return [String(value)];
}
