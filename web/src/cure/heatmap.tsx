// One map of the cure, drawn cell by cell; what lies under the pointer is read out.

import { useEffect, useRef } from "preact/hooks";
import { NO_VALUE } from "./fields";
import { colourOf, type Ramp } from "./ramp";

export interface Grid {
  cols: number;
  rows: number; // row 0 at the bottom
  values: number[];
  read(raw: number): number;
  heights?: number[]; // borders of the rows, where they are not all the same
}

interface Props {
  grid: Grid;
  ramp: Ramp;
  label: string;
  ratio: number; // width over height on the screen
  onPlace(col: number | undefined, row: number | undefined): void;
}

export function HeatMap({ grid, ramp, label, ratio, onPlace }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const c = canvas.current;
    if (c) paint(c, grid, ramp);
  }, [grid, ramp]);
  const move = (e: PointerEvent) => {
    const box = canvas.current?.getBoundingClientRect();
    if (!box || box.width === 0) return;
    const up = 1 - (e.clientY - box.top) / box.height;
    onPlace(Math.floor(((e.clientX - box.left) / box.width) * grid.cols), rowOf(grid, up));
  };
  return (
    // A canvas has no words of its own; the role lets its label be read.
    // oxlint-disable-next-line jsx-a11y/prefer-tag-over-role
    <canvas ref={canvas} class="heat" role="img" aria-label={label} style={{ aspectRatio: String(ratio) }}
      onPointerMove={move} onPointerDown={move} onPointerLeave={() => onPlace(undefined, undefined)} />
  );
}

// rowOf returns the row at a share of the height, from the bottom.
export function rowOf(grid: Grid, up: number): number {
  const h = grid.heights;
  if (!h || h.length < 2) return Math.floor(up * grid.rows);
  const z = (h[0] as number) + up * ((h.at(-1) as number) - (h[0] as number));
  for (let k = 0; k + 1 < h.length; k++) if (z < (h[k + 1] as number)) return k;
  return grid.rows - 1;
}

// SCREEN is how many pixels of the canvas one cell takes; the browser scales the rest.
const SCREEN = 4;

function paint(canvas: HTMLCanvasElement, grid: Grid, ramp: Ramp): void {
  const ctx = canvas.getContext("2d");
  if (!ctx) return;
  const high = grid.heights ? 200 : grid.rows * SCREEN;
  canvas.width = grid.cols * SCREEN;
  canvas.height = high;
  const image = ctx.createImageData(canvas.width, high);
  for (let y = 0; y < high; y++) {
    const row = rowOf(grid, 1 - (y + 0.5) / high);
    for (let x = 0; x < canvas.width; x++) {
      const v = grid.values[row * grid.cols + Math.floor(x / SCREEN)];
      if (v === undefined || v === NO_VALUE) continue;
      image.data.set([...colourOf(ramp, grid.read(v)), 255], (y * canvas.width + x) * 4);
    }
  }
  ctx.putImageData(image, 0, 0);
}
