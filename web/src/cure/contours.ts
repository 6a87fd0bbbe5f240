// Lines of equal value over a grid of cells, and values between the middles of cells.

import { NO_VALUE } from "./fields";

export interface Cells {
  cols: number;
  rows: number; // row 0 at the bottom
  values: number[];
  read(raw: number): number;
}

// A Spot is a place in cells: [2.5, 0.5] is the middle of the third cell of row 0.
export type Spot = [number, number];

export interface Contour { level: number; lines: Spot[][] }

// valueOf returns the value of a cell, undefined outside and where there is none.
export function valueOf(g: Cells, col: number, row: number): number | undefined {
  if (col < 0 || row < 0 || col >= g.cols || row >= g.rows) return undefined;
  const v = g.values[row * g.cols + col];
  return v === undefined || v === NO_VALUE ? undefined : g.read(v);
}

// sample returns the value at a place, straight between the middles of the cells
// around it that have one; undefined where none of the four has.
export function sample(g: Cells, x: number, y: number): number | undefined {
  const [i, j] = [Math.floor(x - 0.5), Math.floor(y - 0.5)];
  const [u, v] = [x - 0.5 - i, y - 0.5 - j];
  let [sum, weight] = [0, 0];
  for (const [di, dj, w] of [[0, 0, (1 - u) * (1 - v)], [1, 0, u * (1 - v)], [0, 1, (1 - u) * v], [1, 1, u * v]] as const) {
    const value = valueOf(g, i + di, j + dj);
    if (value === undefined || w <= 0) continue;
    sum += w * value;
    weight += w;
  }
  return weight > 0 ? sum / weight : undefined;
}

// contours follows each level through the squares between four middles of cells.
export function contours(g: Cells, levels: number[]): Contour[] {
  return levels.map((level) => ({ level, lines: joined(pieces(g, level)) }));
}

// pieces returns the straight parts of one level, one or two in a square.
function pieces(g: Cells, level: number): [Spot, Spot][] {
  const out: [Spot, Spot][] = [];
  for (let j = 0; j + 1 < g.rows; j++) {
    for (let i = 0; i + 1 < g.cols; i++) {
      const corners = [valueOf(g, i, j), valueOf(g, i + 1, j), valueOf(g, i + 1, j + 1), valueOf(g, i, j + 1)];
      if (corners.every((v) => v !== undefined)) out.push(...inSquare(corners as number[], i, j, level));
    }
  }
  return out;
}

const CORNERS: Spot[] = [[0.5, 0.5], [1.5, 0.5], [1.5, 1.5], [0.5, 1.5]];

function inSquare(corners: number[], i: number, j: number, level: number): [Spot, Spot][] {
  const cuts: Spot[] = [];
  for (let k = 0; k < 4; k++) {
    const [a, b] = [corners[k] as number, corners[(k + 1) % 4] as number];
    if (a >= level === b >= level) continue;
    const [p, q, t] = [CORNERS[k] as Spot, CORNERS[(k + 1) % 4] as Spot, (level - a) / (b - a)];
    cuts.push([i + p[0] + t * (q[0] - p[0]), j + p[1] + t * (q[1] - p[1])]);
  }
  if (cuts.length < 2) return [];
  const pair = (a: number, b: number): [Spot, Spot] => [cuts[a] as Spot, cuts[b] as Spot];
  if (cuts.length === 2) return [pair(0, 1)];
  // A saddle: the middle decides which corners belong together.
  const mean = corners.reduce((s, v) => s + v, 0) / 4;
  return (corners[0] as number) >= level === mean >= level ? [pair(0, 1), pair(2, 3)] : [pair(3, 0), pair(1, 2)];
}

const keyOf = (p: Spot) => `${p[0].toFixed(4)} ${p[1].toFixed(4)}`;

// joined strings pieces that share an end together.
function joined(parts: [Spot, Spot][]): Spot[][] {
  const at = new Map<string, number[]>();
  parts.forEach(([a, b], n) => {
    for (const k of [keyOf(a), keyOf(b)]) at.set(k, [...(at.get(k) ?? []), n]);
  });
  const used = new Set<number>();
  const grow = (line: Spot[]) => {
    for (;;) {
      const end = line.at(-1) as Spot;
      const next = at.get(keyOf(end))?.find((n) => !used.has(n));
      if (next === undefined) return line;
      used.add(next);
      const [a, b] = parts[next] as [Spot, Spot];
      line.push(keyOf(a) === keyOf(end) ? b : a);
    }
  };
  const out: Spot[][] = [];
  parts.forEach(([a, b], n) => {
    if (used.has(n)) return;
    used.add(n);
    const ahead = grow([a, b]);
    out.push(grow(ahead.toReversed()));
  });
  return out;
}

// some thins levels out until at most `most` are left, so that lines stay apart.
export function some(levels: number[], most: number): number[] {
  const step = Math.ceil(levels.length / most);
  return step <= 1 ? levels : levels.filter((_, i) => i % step === step - 1);
}
