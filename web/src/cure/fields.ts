// The cure in space and time, as the server sends it.

export const NO_VALUE = -32768;

export interface Fields {
  x0_mm: number;
  y0_mm: number;
  step_mm: number;
  nx: number;
  ny: number;
  hours: number[];
  hottest_dc: number[][];
  least_permille: number[][];
  section_y_mm: number;
  levels_mm: number[];
  section_dc: number[][];
  section_permille: number[][];
  gel_dh: number[];
  bonds_dh: number[];
  tack_free_dh: number[];
  hard_dh: number[];
  sandable_dh: number[];
}

// A Kind is one quantity that can be mapped.
export type Kind = "temperature" | "conversion" | "again" | "gel" | "bonds" | "tack" | "hard" | "sand";

export interface KindInfo {
  kind: Kind;
  title: string;
  moves: boolean; // changes with the hour
  unit: string;
  of(f: Fields): { plan: number[][]; section?: number[][] };
  read(raw: number): number;
  digits: number;
  states?: string[]; // in place of a number, what each whole value means
}

// AGAIN are the states of a surface that another lift is to be poured on.
export const AGAIN = ["too soft", "bonds", "sand it first"];

const known = new WeakMap<Fields, number[][]>();

// againAt returns, by hour, in which state of AGAIN each surface is: told from the
// hours at which it gels and at which it no longer bonds.
export function againAt(f: Fields): number[][] {
  const old = known.get(f);
  if (old) return old;
  const out = f.hours.map((h) => f.gel_dh.map((gel, n) => {
    if (!hasResin(f, n)) return NO_VALUE;
    if (gel === NO_VALUE || gel > h * 10) return 0;
    const until = f.bonds_dh[n];
    return until === undefined || until === NO_VALUE || until >= h * 10 ? 1 : 2;
  }));
  known.set(f, out);
  return out;
}

// hasResin tells whether a cell of the plan holds resin once all lifts are poured.
export function hasResin(f: Fields, cell: number): boolean {
  const last = f.hottest_dc.at(-1)?.[cell];
  return last !== undefined && last !== NO_VALUE;
}

// KINDS are the maps in the order of the work.
export const KINDS: KindInfo[] = [
  { kind: "temperature", title: "Temperature", moves: true, unit: "°C", digits: 1, read: (v) => v / 10, of: (f) => ({ plan: f.hottest_dc, section: f.section_dc }) },
  { kind: "conversion", title: "Conversion", moves: true, unit: "%", digits: 0, read: (v) => v / 10, of: (f) => ({ plan: f.least_permille, section: f.section_permille }) },
  { kind: "again", title: "Pour again", moves: true, unit: "", digits: 0, read: (v) => v, of: (f) => ({ plan: againAt(f) }), states: AGAIN },
  { kind: "gel", title: "Gelled at", moves: false, unit: "h", digits: 1, read: (v) => v / 10, of: (f) => ({ plan: [f.gel_dh] }) },
  { kind: "bonds", title: "Bonds until", moves: false, unit: "h", digits: 1, read: (v) => v / 10, of: (f) => ({ plan: [f.bonds_dh] }) },
  { kind: "tack", title: "Tack-free at", moves: false, unit: "h", digits: 1, read: (v) => v / 10, of: (f) => ({ plan: [f.tack_free_dh] }) },
  { kind: "hard", title: "Hard at", moves: false, unit: "h", digits: 1, read: (v) => v / 10, of: (f) => ({ plan: [f.hard_dh] }) },
  { kind: "sand", title: "Sandable at", moves: false, unit: "h", digits: 1, read: (v) => v / 10, of: (f) => ({ plan: [f.sandable_dh] }) },
];

export function infoOf(kind: Kind): KindInfo {
  return KINDS.find((k) => k.kind === kind) ?? (KINDS[0] as KindInfo);
}

// rangeOf returns the least and greatest value of a kind over all hours, undefined
// where it has none at all.
export function rangeOf(f: Fields, info: KindInfo): [number, number] | undefined {
  let [low, high] = [Infinity, -Infinity];
  const { plan, section } = info.of(f);
  for (const rows of [plan, section ?? []]) {
    for (const row of rows) {
      for (const v of row) {
        if (v === NO_VALUE) continue;
        if (v < low) low = v;
        if (v > high) high = v;
      }
    }
  }
  return low <= high ? [info.read(low), info.read(high)] : undefined;
}

// at reads the value of a map at a place of the piece, finished view, mm; undefined
// where there is no resin or the time does not come.
export function at(f: Fields, map: number[], x: number, y: number): number | undefined {
  const [i, j] = [Math.floor((x - f.x0_mm) / f.step_mm), Math.floor((y - f.y0_mm) / f.step_mm)];
  if (i < 0 || j < 0 || i >= f.nx || j >= f.ny) return undefined;
  const v = map[j * f.nx + i];
  return v === undefined || v === NO_VALUE ? undefined : v;
}

// rowAt returns the row of the section at a height above the deepest floor.
export function rowAt(f: Fields, z: number): number | undefined {
  for (let k = 0; k + 1 < f.levels_mm.length; k++) {
    if (z >= (f.levels_mm[k] as number) && z < (f.levels_mm[k + 1] as number)) return k;
  }
  return undefined;
}

// extreme returns the cell of a map with the greatest value, or the least.
export function extreme(map: number[], greatest: boolean): number | undefined {
  let best: number | undefined;
  map.forEach((v, n) => {
    if (v === NO_VALUE) return;
    if (best === undefined || (greatest ? v > (map[best] as number) : v < (map[best] as number))) best = n;
  });
  return best;
}

// frameAt returns the index of the hour nearest to t.
export function frameAt(f: Fields, t: number): number {
  let best = 0;
  f.hours.forEach((h, i) => {
    if (Math.abs(h - t) < Math.abs((f.hours[best] as number) - t)) best = i;
  });
  return best;
}
