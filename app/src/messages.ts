// Provisional, written by hand until the core's own are generated.
export type Severity = "note" | "warning" | "stop";
export interface Said { readonly code: string; readonly severity: Severity; readonly place: string; readonly read: string; readonly wrong: string; readonly do: string }
export interface Refusal { readonly kind: "refusal"; readonly read: string; readonly wrong: string; readonly do: string }

export interface Place { readonly device: string; readonly counter: number }
interface Written extends Place { readonly at: string; readonly house: string }
export interface HouseMade extends Written { readonly what: "house-made"; readonly name: string; readonly units: "mm" | "in"; readonly dialect: string }
export interface HouseNamed extends Written { readonly what: "house-named"; readonly name: string }
export interface Setting extends Written { readonly what: "setting"; readonly key: readonly string[]; readonly value: unknown }
export interface OpeningAdded extends Written { readonly what: "opening-added"; readonly opening: string; readonly kind: string; readonly room: string; readonly trim: string }
export interface OpeningChanged extends Written { readonly what: "opening-changed"; readonly opening: string; readonly key: readonly string[]; readonly value: unknown }
export interface OpeningLeftOut extends Written { readonly what: "opening-left-out"; readonly opening: string }
export interface Reading extends Written { readonly what: "reading"; readonly opening: string; readonly line: string; readonly value_text: string; readonly unit: "mm" | "in" | "deg"; readonly again: boolean }
export interface Undo extends Written { readonly what: "undo"; readonly of: Place }
export interface CutNews extends Written { readonly what: "cut-news"; readonly news: unknown }
export interface WallGaps extends Written { readonly what: "wall-gaps"; readonly opening: string; readonly gaps: Readonly<Record<string, string>> }
export interface OpenedFile extends Written { readonly what: "opened-file"; readonly text: string }
export type Entry = HouseMade | HouseNamed | Setting | OpeningAdded | OpeningChanged | OpeningLeftOut | Reading | Undo | CutNews | WallGaps | OpenedFile;

export type Request = { ask: "limits" } | { ask: "fold"; entries: readonly Entry[] };
export type Answer = { kind: "limits" } | { kind: "fold" };
