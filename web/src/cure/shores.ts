// The lines of the piece that a map is laid under: shores and terraces as drawn.

import type { Drawing, Point } from "../drawing";

export interface Shores {
  basin: Point[][]; // of the widest step, islands as holes
  terraces: Point[][];
}

// shoresOf reads them from the drawing of the plan, finished view; undefined where
// there is none.
export function shoresOf(plan: Drawing | undefined): Shores | undefined {
  const water = (plan?.items ?? []).filter((i) => i.style === "resin" && i.path?.closed).map((i) => i.path?.rings ?? []);
  const [basin, ...terraces] = water;
  return basin && basin.length > 0 ? { basin, terraces: terraces.flat() } : undefined;
}

// pathOf writes rings for a sheet of width by height on which x0..x1 and y0..y1 mm lie.
export function pathOf(rings: Point[][], box: { x0: number; y0: number; x1: number; y1: number }, width: number, height: number): string {
  const x = (v: number) => (((v - box.x0) / (box.x1 - box.x0)) * width).toFixed(2);
  const y = (v: number) => (height - ((v - box.y0) / (box.y1 - box.y0)) * height).toFixed(2);
  return rings.map((r) => `M${r.map((p) => `${x(p[0])} ${y(p[1])}`).join("L")}Z`).join("");
}
