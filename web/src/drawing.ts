// Display lists as the server sends them: mm, y up.

import type { View } from "./plan";

export type Point = [number, number];

export type Style =
  | "outline" | "thin" | "hidden" | "centre" | "frame"
  | "concrete" | "resin" | "resin-deep" | "foam" | "board"
  | "caution" | "stop";

export interface Path { rings: Point[][] | null; closed: boolean; fill: boolean; hatch: boolean; shade?: number }
export interface Lettering { at: Point; text: string; size: number; anchor: string; turn: number }
export interface Dimension { a: Point; b: Point; offset: number; text: string }
export interface Spot { at: Point; radius: number; label: string }

export interface Item {
  style: Style;
  path?: Path;
  text?: Lettering;
  dimension?: Dimension;
  spot?: Spot;
}

export interface Box { min: Point; max: Point }

export interface Drawing {
  name: string;
  title: string;
  view: View;
  box: Box;
  items: Item[] | null;
}

// A Title is one line of the list of drawings.
export interface Title { name: string; title: string; room: string; view: View }

// A Figure is one thing that can be looked at, from one or from both sides.
export interface Figure {
  key: string;
  title: string;
  room: string;
  names: Partial<Record<View, string>>;
}

const SIDE = /[-_ ](finished|form)$/;

// figures joins drawings that show the same thing from its two sides: their names
// differ in the last word only.
export function figures(list: Title[]): Figure[] {
  const out: Figure[] = [];
  for (const t of list) {
    const key = t.name.replace(SIDE, "");
    const known = out.find((f) => f.key === key);
    if (known) known.names[t.view] = t.name;
    else out.push({ key, title: shortTitle(key), room: t.room, names: { [t.view]: t.name } });
  }
  return out;
}

// ROOMS are the words for the rooms that drawings belong to, in building order.
const ROOMS: Record<string, string> = {
  relief: "Piece", knockout: "Knockout", form: "Form", base: "Base", concrete: "Concrete", resin: "Resin",
};

// A Room is a group of figures.
export interface Room { name: string; title: string; first: Figure }

// rooms lists the rooms that have figures, in building order.
export function rooms(list: Figure[]): Room[] {
  const out: Room[] = [];
  for (const f of list) {
    if (!out.some((r) => r.name === f.room)) out.push({ name: f.room, title: ROOMS[f.room] ?? shortTitle(f.room), first: f });
  }
  const order = Object.keys(ROOMS);
  return out.toSorted((a, b) => order.indexOf(a.name) - order.indexOf(b.name));
}

// shortTitle makes a name into a word or two for a row of names: "layer-2" is
// "Layer 2".
function shortTitle(key: string): string {
  const words = key.replaceAll(/[-_]+/g, " ").trim();
  return words.charAt(0).toUpperCase() + words.slice(1);
}

// sideOf returns the drawing of a figure for the wanted side, or the only one it has.
export function sideOf(f: Figure, side: "finished" | "form"): { name: string; view: View } | undefined {
  for (const view of [side, "", "finished", "form"] as const) {
    const name = f.names[view];
    if (name !== undefined) return { name, view };
  }
  return undefined;
}

// turns tells whether a figure has both sides.
export function turns(f: Figure): boolean {
  return f.names.finished !== undefined && f.names.form !== undefined;
}

// toView carries a place on the piece between the two views: the piece is turned
// over like a page, x runs the other way and y stays.
export function toView(at: Point, from: View, to: View, lengthMM: number): Point {
  const mirrored = from !== "" && to !== "" && from !== to;
  return mirrored ? [lengthMM - at[0], at[1]] : at;
}

const LOOKS_DOWN = /^(plan|layer)\b/;

// looksDown tells whether a drawing shows the piece from above or from below, so that
// a place on the piece has a place on it.
export function looksDown(d: Drawing): boolean {
  return d.view !== "" && LOOKS_DOWN.test(d.name);
}
