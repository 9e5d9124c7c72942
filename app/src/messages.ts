// Made by `python -m longpoint.phone.typescript`; not to be changed by hand.

export interface EntryKey {
  readonly device: string;
  readonly counter: number;
}

export interface Written {
  readonly device: string;
  readonly counter: number;
  readonly at: string;
  readonly house: string;
}

export interface HouseMade {
  readonly device: string;
  readonly counter: number;
  readonly at: string;
  readonly house: string;
  readonly what: "house-made";
  readonly name: string;
  readonly units: "mm" | "in";
  readonly dialect: string;
}

export interface HouseNamed {
  readonly device: string;
  readonly counter: number;
  readonly at: string;
  readonly house: string;
  readonly what: "house-named";
  readonly name: string;
}

export interface SettingMade {
  readonly device: string;
  readonly counter: number;
  readonly at: string;
  readonly house: string;
  readonly what: "setting";
  readonly key: readonly string[];
  readonly value: unknown;
}

export interface OpeningAdded {
  readonly device: string;
  readonly counter: number;
  readonly at: string;
  readonly house: string;
  readonly what: "opening-added";
  readonly opening: string;
  readonly room: string;
  readonly kind: string;
  readonly trim: string;
}

export interface OpeningChanged {
  readonly device: string;
  readonly counter: number;
  readonly at: string;
  readonly house: string;
  readonly what: "opening-changed";
  readonly opening: string;
  readonly key: readonly string[];
  readonly value: unknown;
}

export interface OpeningLeftOut {
  readonly device: string;
  readonly counter: number;
  readonly at: string;
  readonly house: string;
  readonly what: "opening-left-out";
  readonly opening: string;
}

export interface ReadingKept {
  readonly device: string;
  readonly counter: number;
  readonly at: string;
  readonly house: string;
  readonly what: "reading";
  readonly opening: string;
  readonly line: string;
  readonly value_text: string;
  readonly unit: "mm" | "in";
  readonly again: boolean;
  readonly over: readonly EntryKey[] | null;
}

export interface PlaceAdded {
  readonly device: string;
  readonly counter: number;
  readonly at: string;
  readonly house: string;
  readonly what: "place-added";
  readonly place: readonly string[];
  readonly values: Readonly<Record<string, unknown>>;
}

export interface PlaceChanged {
  readonly device: string;
  readonly counter: number;
  readonly at: string;
  readonly house: string;
  readonly what: "place-changed";
  readonly place: readonly string[];
  readonly key: string;
  readonly value: unknown;
}

export interface PlaceLeftOut {
  readonly device: string;
  readonly counter: number;
  readonly at: string;
  readonly house: string;
  readonly what: "place-left-out";
  readonly place: readonly string[];
}

export interface PlaceRead {
  readonly device: string;
  readonly counter: number;
  readonly at: string;
  readonly house: string;
  readonly what: "place-read";
  readonly place: readonly string[];
  readonly line: string;
  readonly value_text: string;
  readonly unit: "mm" | "in" | "deg";
  readonly again: boolean;
  readonly over: readonly EntryKey[];
}

export interface Undone {
  readonly device: string;
  readonly counter: number;
  readonly at: string;
  readonly house: string;
  readonly what: "undo";
  readonly of: EntryKey;
}

export interface CutNews {
  readonly device: string;
  readonly counter: number;
  readonly at: string;
  readonly house: string;
  readonly what: "cut-news";
  readonly told: string;
  readonly state: string;
}

export interface WallGaps {
  readonly device: string;
  readonly counter: number;
  readonly at: string;
  readonly house: string;
  readonly what: "wall-gaps";
  readonly opening: string;
  readonly gaps: Readonly<Record<string, readonly [string, string]>>;
}

export interface FileOpened {
  readonly device: string;
  readonly counter: number;
  readonly at: string;
  readonly house: string;
  readonly what: "opened-file";
  readonly text: string;
}

export type Entry =
  | HouseMade
  | HouseNamed
  | SettingMade
  | OpeningAdded
  | OpeningChanged
  | OpeningLeftOut
  | ReadingKept
  | PlaceAdded
  | PlaceChanged
  | PlaceLeftOut
  | PlaceRead
  | Undone
  | CutNews
  | WallGaps
  | FileOpened;

export type LineState = "unread" | "part" | "held" | "read";

export interface Said {
  readonly code: string;
  readonly severity: "note" | "warning" | "stop";
  readonly place: string;
  readonly read: string;
  readonly wrong: string;
  readonly do: string;
}

export interface Refusal {
  readonly kind: "refusal";
  readonly read: string;
  readonly wrong: string;
  readonly do: string;
}

export interface AskLimits {
  readonly ask: "limits";
  readonly dialect: string;
}

export interface LineLimits {
  readonly line: string;
  readonly short: string;
  readonly words: string;
  readonly scale: "length" | "proud";
  readonly least: number;
  readonly most: number;
  readonly apart: number;
  readonly beside: string;
  readonly beside_apart: number;
  readonly asked: boolean;
}

export interface KindLimits {
  readonly kind: string;
  readonly words: string;
  readonly lines: readonly LineLimits[];
}

export interface Choice {
  readonly value: string;
  readonly words: string;
}

export interface DialectWords {
  readonly value: string;
  readonly words: string;
  readonly quirk: string;
  readonly skirting: string;
  readonly mitre: string;
}

export interface FormLine {
  readonly line: string;
  readonly short: string;
  readonly words: string;
  readonly left_out: string;
  readonly scale: "length" | "signed" | "angle" | "count" | "number" | "choice" | "flag" | "text" | "names" | "lengths" | "angles" | "points" | "tables";
  readonly is_reading: boolean;
  readonly asked: boolean;
  readonly least: number;
  readonly most: number;
  readonly apart: number;
  readonly choices: readonly Choice[];
  readonly names: string;
  readonly form: string;
}

export interface Form {
  readonly form: string;
  readonly title: string;
  readonly label: string;
  readonly lines: readonly FormLine[];
}

export interface Limits {
  readonly kind: "limits";
  readonly kinds: readonly KindLimits[];
  readonly forms: readonly Form[];
  readonly dialects: readonly DialectWords[];
  readonly trims: readonly Choice[];
  readonly mm_per_inch: number;
}

export interface AskFold {
  readonly ask: "fold";
  readonly entries: readonly Entry[];
}

export interface ReadLine {
  readonly line: string;
  readonly texts: readonly string[];
  readonly by: readonly EntryKey[];
  readonly differs: boolean;
}

export interface FoldedOpening {
  readonly mark: string;
  readonly room: string;
  readonly what: string;
  readonly trim: string;
  readonly state: LineState;
  readonly left: number;
  readonly lines: readonly ReadLine[];
}

export interface FoldedPlace {
  readonly place: readonly string[];
  readonly form: string;
  readonly title: string;
  readonly root: string;
  readonly room: string;
  readonly state: LineState;
  readonly left: number;
  readonly lines: readonly ReadLine[];
}

export interface NextLine {
  readonly opening: string;
  readonly line: string;
}

export interface CanUndo {
  readonly of: EntryKey;
  readonly words: string;
}

export interface Fold {
  readonly kind: "fold";
  readonly name: string;
  readonly units: "mm" | "in";
  readonly dialect: string;
  readonly document: Readonly<Record<string, unknown>>;
  readonly openings: readonly FoldedOpening[];
  readonly places: readonly FoldedPlace[];
  readonly next: NextLine | null;
  readonly read: number;
  readonly asked: number;
  readonly held: readonly Said[];
  readonly undo: CanUndo | null;
  readonly saw: string;
  readonly gaps: Readonly<Record<string, Readonly<Record<string, readonly [string, string]>>>>;
}

export interface AskLook {
  readonly ask: "look";
  readonly document: Readonly<Record<string, unknown>>;
  readonly place: readonly string[];
  readonly held: readonly Said[];
}

export interface Face {
  readonly svg: string;
  readonly question: string;
}

export interface PieceRow {
  readonly mark: string;
  readonly what: string;
  readonly figure: string;
  readonly how: string;
  readonly left: string;
  readonly right: string;
  readonly short: string;
  readonly long: string;
}

export interface Look {
  readonly kind: "look";
  readonly mark: string;
  readonly is_held: boolean;
  readonly faces: readonly Face[];
  readonly pieces: readonly PieceRow[];
  readonly findings: readonly Said[];
  readonly lines: readonly string[];
}

export interface AskLabel {
  readonly ask: "label";
  readonly text: string;
  readonly document: Readonly<Record<string, unknown>>;
  readonly held: readonly Said[];
  readonly saw: string;
}

export interface LabelRead {
  readonly kind: "label";
  readonly piece: string;
  readonly opening: string;
  readonly what: string;
  readonly room: string;
  readonly is_cut: boolean;
  readonly row: PieceRow;
  readonly findings: readonly Said[];
}

export interface AskPlan {
  readonly ask: "plan";
  readonly document: Readonly<Record<string, unknown>>;
  readonly held: readonly Said[];
  readonly saw: string;
  readonly is_first: boolean;
}

export interface OpeningState {
  readonly mark: string;
  readonly verdict: "batch" | "read-first" | "prove-saw" | "cut-long" | "hold" | "none";
  readonly words: string;
  readonly why: string;
  readonly chance: string;
  readonly pieces: number;
}

export interface CutEnd {
  readonly setting: string;
  readonly remarks: readonly string[];
  readonly svg: string;
}

export interface CutStep {
  readonly number: number;
  readonly piece: string;
  readonly what: string;
  readonly stick: string;
  readonly stick_words: string;
  readonly profile: string;
  readonly figure: string;
  readonly how: string;
  readonly how_words: string;
  readonly left: CutEnd;
  readonly right: CutEnd;
  readonly remarks: readonly string[];
  readonly svg: string;
  readonly aloud: string;
  readonly check: string;
}

export interface ToBuy {
  readonly profile: string;
  readonly section: string;
  readonly length: string;
  readonly count: number;
  readonly price: string;
  readonly is_spare: boolean;
}

export interface ProofLine {
  readonly profile: string;
  readonly is_proved: boolean;
  readonly words: string;
}

export interface GoalSaid {
  readonly words: string;
  readonly is_proved: boolean;
}

export interface SheetPage {
  readonly name: string;
  readonly title: string;
  readonly html: string;
}

export interface Plan {
  readonly kind: "plan";
  readonly code: string;
  readonly cut_code: string;
  readonly summary: string;
  readonly openings: readonly OpeningState[];
  readonly held: readonly string[];
  readonly findings: readonly Said[];
  readonly cuts: readonly CutStep[];
  readonly done: readonly string[];
  readonly pieces: number;
  readonly to_buy: readonly ToBuy[];
  readonly money: string;
  readonly proofs: readonly ProofLine[];
  readonly goals: readonly GoalSaid[];
  readonly saw: string;
  readonly again: readonly string[];
  readonly document: Readonly<Record<string, unknown>>;
  readonly is_first: boolean;
}

export interface AskSheets {
  readonly ask: "sheets";
  readonly document: Readonly<Record<string, unknown>>;
  readonly held: readonly Said[];
  readonly saw: string;
}

export interface Sheets {
  readonly kind: "sheets";
  readonly sheets: readonly SheetPage[];
}

export interface AskSaw {
  readonly ask: "saw";
  readonly document: Readonly<Record<string, unknown>>;
  readonly held: readonly Said[];
  readonly saw: string;
  readonly told: string;
}

export interface AtSaw {
  readonly kind: "saw";
  readonly saw: string;
  readonly new: readonly string[];
  readonly findings: readonly Said[];
}

export interface AskWall {
  readonly ask: "wall";
  readonly document: Readonly<Record<string, unknown>>;
  readonly opening: string;
  readonly gaps: Readonly<Record<string, readonly [string, string]>>;
}

export interface Wall {
  readonly kind: "wall";
  readonly says: readonly string[];
  readonly taps: readonly string[];
  readonly leaves: readonly string[];
  readonly then: readonly string[];
  readonly blind: readonly string[];
}

export interface AskFile {
  readonly ask: "file";
  readonly document: Readonly<Record<string, unknown>>;
}

export interface File {
  readonly kind: "file";
  readonly name: string;
  readonly text: string;
}

export interface AskOpen {
  readonly ask: "open";
  readonly text: string;
  readonly highest: number;
}

export interface Opened {
  readonly kind: "open";
  readonly name: string;
  readonly openings: number;
  readonly findings: readonly Said[];
  readonly entries: readonly Entry[];
}

export interface AskHandOver {
  readonly ask: "hand-over";
  readonly entries: readonly Entry[];
}

export interface HandOver {
  readonly kind: "hand-over";
  readonly text: string;
  readonly count: number;
  readonly pictures: readonly string[];
}

export interface AskJoined {
  readonly ask: "joined";
  readonly parts: readonly string[];
}

export interface Joined {
  readonly kind: "joined";
  readonly count: number;
  readonly missing: readonly number[];
  readonly text: string;
}

export interface SeenUpTo {
  readonly counter: number;
  readonly sum: string;
}

export interface AskPassing {
  readonly ask: "passing";
  readonly keys: readonly EntryKey[];
  readonly there: Readonly<Record<string, SeenUpTo>>;
}

export interface Passing {
  readonly kind: "passing";
  readonly seen: Readonly<Record<string, SeenUpTo>>;
  readonly lacking: readonly EntryKey[];
  readonly is_behind: boolean;
}

export interface AskCame {
  readonly ask: "came";
  readonly entries: readonly Entry[];
}

export interface CameFrom {
  readonly device: string;
  readonly words: readonly string[];
  readonly more: number;
}

export interface Came {
  readonly kind: "came";
  readonly by: readonly CameFrom[];
}

export interface JournalHere {
  readonly house: string;
  readonly entries: readonly Entry[];
}

export interface AskLabelHouse {
  readonly ask: "label-house";
  readonly text: string;
  readonly journals: readonly JournalHere[];
}

export interface LabelHouse {
  readonly kind: "label-house";
  readonly house: string;
  readonly name: string;
  readonly piece: string;
  readonly is_old: boolean;
  readonly since: string;
}

export type Request =
  | AskLimits
  | AskFold
  | AskLook
  | AskLabel
  | AskPlan
  | AskSheets
  | AskSaw
  | AskWall
  | AskFile
  | AskOpen
  | AskHandOver
  | AskJoined
  | AskLabelHouse
  | AskPassing
  | AskCame;

export type Answer =
  | Limits
  | Fold
  | Look
  | LabelRead
  | Plan
  | Sheets
  | AtSaw
  | Wall
  | File
  | Opened
  | HandOver
  | Joined
  | LabelHouse
  | Passing
  | Came
  | Refusal;
