// How a drawing in mm stands on a sheet of pixels.

import type { Box, Dimension, Item, Point } from "../drawing";

// A Sheet carries places in mm, y up, to pixels, y down.
export interface Sheet {
  width: number;
  height: number;
  scale: number; // pixels per mm
  at(p: Point): Point;
}

const MARGIN = 6; // px around the drawing's box

// fit lays box on a sheet `width` px wide and at most `tallest` px high. A box
// without extent gets a scale of 1.
export function fit(box: Box, width: number, tallest: number): Sheet {
  const w = box.max[0] - box.min[0];
  const h = box.max[1] - box.min[1];
  const room = Math.max(width - 2 * MARGIN, 1);
  const across = w > 0 ? room / w : Infinity;
  const down = h > 0 ? Math.max(tallest - 2 * MARGIN, 1) / h : Infinity;
  const scale = Number.isFinite(Math.min(across, down)) ? Math.min(across, down) : 1;
  const left = (width - w * scale) / 2;
  const height = h * scale + 2 * MARGIN;
  return {
    width,
    height,
    scale,
    at: (p) => [left + (p[0] - box.min[0]) * scale, height - MARGIN - (p[1] - box.min[1]) * scale],
  };
}

// lines writes rings as path data.
export function lines(rings: Point[][] | null, closed: boolean, sheet: Sheet): string {
  let d = "";
  for (const ring of rings ?? []) {
    for (const [i, p] of ring.entries()) {
      const [x, y] = sheet.at(p);
      d += `${i === 0 ? "M" : "L"}${short(x)} ${short(y)}`;
    }
    if (closed && ring.length > 0) d += "Z";
  }
  return d;
}

function short(v: number): string {
  return String(Math.round(v * 10) / 10);
}

// A Rule is a dimension line on the sheet.
export interface Rule {
  a: Point; // ends of the dimension line
  b: Point;
  fromA: Point; // feet of the extension lines, at what is measured
  fromB: Point;
  text: Point;
  turn: number; // degrees, clockwise as SVG turns, so that the text reads from below or from the right
}

const NEAREST = 16; // px: a dimension line keeps this far from what it measures
const GAP = 2; // px between what is measured and its extension line
const ABOVE = 4; // px between the line and its text

// rule places a dimension: its line stands `offset` mm to the left of A to B, but
// never so near on a small sheet that its text falls into the drawing.
export function rule(d: Dimension, sheet: Sheet): Rule | undefined {
  const a = sheet.at(d.a);
  const b = sheet.at(d.b);
  const len = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (!(len > 0)) return undefined;
  const along: Point = [(b[0] - a[0]) / len, (b[1] - a[1]) / len];
  const side = d.offset < 0 ? -1 : 1;
  const left: Point = [along[1] * side, -along[0] * side]; // y points down on the sheet
  const off = d.offset === 0 ? 0 : Math.max(Math.abs(d.offset) * sheet.scale, NEAREST);
  const move = (p: Point, by: number): Point => [p[0] + left[0] * by, p[1] + left[1] * by];
  let turn = (Math.atan2(along[1], along[0]) * 180) / Math.PI;
  if (turn >= 90 - 1e-9) turn -= 180;
  if (turn < -90 - 1e-9) turn += 180;
  const up = up90(turn);
  const middle = move([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], off);
  return {
    a: move(a, off),
    b: move(b, off),
    fromA: move(a, Math.min(GAP, off)),
    fromB: move(b, Math.min(GAP, off)),
    text: [middle[0] + up[0] * ABOVE, middle[1] + up[1] * ABOVE],
    turn,
  };
}

// up90 is the direction above a line of text turned by `turn` degrees.
function up90(turn: number): Point {
  const r = (turn * Math.PI) / 180;
  return [Math.sin(r), -Math.cos(r)];
}

// An Extent is the part of a sheet that holds everything drawn on it, px.
export interface Extent { left: number; top: number; width: number; height: number }

const BESIDE = 14; // px that the text of a dimension needs beyond its line

// extent widens a sheet where dimension lines had to stand farther out than the
// drawing's box allows for; foot is how far down its lettering reaches.
export function extent(items: Item[], sheet: Sheet, foot: number): Extent {
  let [left, top, right, low] = [0, 0, sheet.width, Math.max(sheet.height, foot + 2)];
  for (const { dimension } of items) {
    const r = dimension && rule(dimension, sheet);
    for (const [x, y] of r ? [r.a, r.b] : []) {
      [left, top] = [Math.min(left, x - BESIDE), Math.min(top, y - BESIDE)];
      [right, low] = [Math.max(right, x + BESIDE), Math.max(low, y + BESIDE)];
    }
  }
  return { left, top, width: right - left, height: low - top };
}
