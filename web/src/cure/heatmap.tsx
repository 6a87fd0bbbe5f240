// One map of the cure: filled between labelled lines of equal value, under the lines
// of the piece. What lies under the pointer, or under the cross that the arrow keys
// move, is read out.

import { useEffect, useId, useMemo, useRef, useState } from "preact/hooks";
import type { Point } from "../drawing";
import { type Cells, contours, sample, some, type Spot, valueOf } from "./contours";
import { colourOf, isDark, type Ramp } from "./ramp";
import { pathOf, type Shores } from "./shores";

export interface Grid extends Cells {
  heights?: number[]; // borders of the rows, where they are not all the same
  wet?(cell: number): boolean; // holds resin, though it may have no value
  smooth: boolean; // a value between two cells has a meaning
}

export interface Place { x0: number; y0: number; x1: number; y1: number }

export interface Pin { col: number; row: number; text: string }

interface Props {
  grid: Grid;
  ramp: Ramp;
  label: string;
  ratio: number; // width over height on the screen
  place: Place;
  shores?: Shores | undefined;
  cut?: number | undefined; // y of the section to mark
  pin?: Pin | undefined;
  words(v: number): string;
  onPlace(col: number | undefined, row: number | undefined): void;
}

const WIDE = 1000; // units of the drawing over the map

export function HeatMap({ grid, ramp, label, ratio, place, shores, cut, pin, words, onPlace }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const id = useId();
  const high = WIDE / ratio;
  const [cross, setCross] = useState<[number, number]>();
  useEffect(() => {
    if (canvas.current) paint(canvas.current, grid, ramp, shores !== undefined);
  }, [grid, ramp, shores]);
  const lines = useMemo(() => (grid.smooth ? contours(grid, some(ramp.steps, 5)) : []), [grid, ramp]);
  const at = (p: Spot): Spot => [(p[0] / grid.cols) * WIDE, high * (1 - upOf(grid, p[1]))];
  const move = (e: PointerEvent) => {
    const box = canvas.current?.getBoundingClientRect();
    if (!box || box.width === 0) return;
    const up = 1 - (e.clientY - box.top) / box.height;
    setCross(undefined);
    onPlace(Math.floor(((e.clientX - box.left) / box.width) * grid.cols), rowOf(grid, up));
  };
  const key = (e: KeyboardEvent) => {
    const step = STEPS[e.key];
    if (!step) return;
    e.preventDefault();
    const from = cross ?? [pin?.col ?? Math.floor(grid.cols / 2), pin?.row ?? Math.floor(grid.rows / 2)];
    const to: [number, number] = cross ? [within(from[0] + step[0], grid.cols), within(from[1] + step[1], grid.rows)] : from;
    setCross(to);
    onPlace(to[0], to[1]);
  };
  const leave = () => {
    setCross(undefined);
    onPlace(undefined, undefined);
  };
  const clip = shores && pathOf(shores.basin, place, 1, 1);
  return (
    // The arrow keys move the place that is read; the place is said below the maps.
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex, jsx-a11y/no-noninteractive-element-interactions
    <div class="heat" role="application" aria-roledescription="map" aria-label={`${label}. Arrow keys move the place that is read.`} tabIndex={0} style={{ aspectRatio: String(ratio) }}
      onKeyDown={key} onBlur={leave}>
      <canvas ref={canvas} style={clip ? { clipPath: `url(#${id})` } : undefined} onPointerMove={move} onPointerDown={move} onPointerLeave={() => onPlace(undefined, undefined)} />
      <svg viewBox={`0 0 ${WIDE} ${high}`} preserveAspectRatio="none" aria-hidden="true">
        {clip && <clipPath id={id} clipPathUnits="objectBoundingBox"><path clip-rule="evenodd" d={clip} /></clipPath>}
        {lines.flatMap((c) => c.lines.map((l, n) => <path key={`${c.level} ${n}`} class={isDark(colourOf(ramp, c.level)) ? "iso iso-light" : "iso"} d={`M${l.map((p) => at(p).map((v) => v.toFixed(1)).join(" ")).join("L")}`} />))}
        {shores && <path class="shore" d={pathOf([...shores.basin, ...shores.terraces] as Point[][], place, WIDE, high)} />}
        {cut !== undefined && <path class="cut-line" d={`M0 ${cutAt(cut, place, high)}H${WIDE}`} />}
      </svg>
      {labelsOf(lines, grid).map((l) => <span key={l.text + l.left} class="iso-value" aria-hidden="true" style={{ left: `${l.left}%`, top: `${l.top}%` }}>{words(Number(l.text))}</span>)}
      {pin && <span class={`pin ${pin.col > grid.cols * 0.8 ? "pin-left" : ""}`} aria-hidden="true" style={placed([pin.col + 0.5, pin.row + 0.5], grid)}>{pin.text}</span>}
      {cross && <span class="cross" aria-hidden="true" style={placed([cross[0] + 0.5, cross[1] + 0.5], grid)} />}
    </div>
  );
}

const STEPS: Record<string, [number, number]> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };

function within(v: number, n: number): number {
  return Math.max(0, Math.min(n - 1, v));
}

function cutAt(y: number, p: Place, high: number): string {
  return (high * (1 - (y - p.y0) / (p.y1 - p.y0))).toFixed(1);
}

function placed(p: Spot, g: Grid) {
  return { left: `${(100 * p[0]) / g.cols}%`, top: `${100 * (1 - upOf(g, p[1]))}%` };
}

// labelsOf puts one label on the longest line of each level, apart from each other.
export function labelsOf(lines: { level: number; lines: Spot[][] }[], g: Grid): { text: string; left: number; top: number }[] {
  const out: { text: string; left: number; top: number }[] = [];
  for (const c of lines) {
    const longest = c.lines.toSorted((a, b) => b.length - a.length)[0];
    if (!longest || longest.length < 6) continue;
    for (const share of [0.5, 0.3, 0.7, 0.15, 0.85]) {
      const p = longest[Math.floor(share * (longest.length - 1))] as Spot;
      const [left, top] = [(100 * p[0]) / g.cols, 100 * (1 - upOf(g, p[1]))];
      if (left < 3 || left > 97 || top < 6 || top > 94 || out.some((o) => Math.abs(o.left - left) < 9 && Math.abs(o.top - top) < 16)) continue;
      out.push({ text: String(c.level), left, top });
      break;
    }
  }
  return out;
}

// upOf returns how far up the map a row lies, 0 to 1; 1.5 is the middle of row 1.
function upOf(g: Grid, row: number): number {
  const h = g.heights;
  if (!h || h.length < 2) return row / g.rows;
  const k = Math.max(0, Math.min(h.length - 2, Math.floor(row)));
  const [low, high] = [h[k] as number, h[k + 1] as number];
  return (low + (row - k) * (high - low) - (h[0] as number)) / ((h.at(-1) as number) - (h[0] as number));
}

// rowOf returns the row at a share of the height, from the bottom.
export function rowOf(grid: Grid, up: number): number {
  const h = grid.heights;
  if (!h || h.length < 2) return Math.floor(up * grid.rows);
  const z = (h[0] as number) + up * ((h.at(-1) as number) - (h[0] as number));
  for (let k = 0; k + 1 < h.length; k++) if (z < (h[k + 1] as number)) return k;
  return grid.rows - 1;
}

// FINE is how many pixels of the canvas one cell takes; the browser scales the rest.
const FINE = 6;

// placesOf returns the place in cells of each line of pixels, from the top.
function placesOf(g: Grid, high: number): number[] {
  return Array.from({ length: high }, (_, y) => {
    const up = 1 - (y + 0.5) / high;
    if (!g.heights || g.heights.length < 2) return up * g.rows;
    const k = rowOf(g, up);
    const [low, top] = [upOf(g, k), upOf(g, k + 1)];
    return k + (up - low) / (top - low);
  });
}

function paint(canvas: HTMLCanvasElement, g: Grid, ramp: Ramp, clipped: boolean): void {
  const ctx = canvas.getContext("2d");
  if (!ctx) return;
  canvas.width = g.cols * FINE;
  canvas.height = g.heights ? 240 : g.rows * FINE;
  const image = ctx.createImageData(canvas.width, canvas.height);
  placesOf(g, canvas.height).forEach((row, y) => {
    for (let x = 0; x < canvas.width; x++) {
      const c = pixel(g, ramp, (x + 0.5) / FINE, row, clipped, x + y);
      if (c) image.data.set([...c, 255], (y * canvas.width + x) * 4);
    }
  });
  ctx.putImageData(image, 0, 0);
}

const NEVER: [number, number, number][] = [[150, 145, 135], [205, 200, 190]]; // stripes where the time does not come

function pixel(g: Grid, ramp: Ramp, col: number, row: number, clipped: boolean, stripe: number): [number, number, number] | undefined {
  const [i, j] = [Math.floor(col), Math.floor(row)];
  const own = valueOf(g, i, j);
  if (own === undefined && g.wet?.(j * g.cols + i)) return NEVER[Math.floor(stripe / 7) % 2];
  if (own === undefined && !clipped) return undefined;
  const v = g.smooth ? sample(g, col, row) : own;
  const near = v ?? (clipped ? nearby(g, i, j) : own);
  return near === undefined ? undefined : colourOf(ramp, near);
}

// nearby returns the value of a neighbour, for the slivers of a cell along the shore.
function nearby(g: Grid, i: number, j: number): number | undefined {
  for (const [di, dj] of [[1, 0], [-1, 0], [0, 1], [0, -1], [1, 1], [-1, -1], [1, -1], [-1, 1]] as const) {
    const v = valueOf(g, i + di, j + dj);
    if (v !== undefined) return v;
  }
  return undefined;
}
