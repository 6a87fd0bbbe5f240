import { describe, expect, it } from "vitest";
import { type Cells, contours, sample, some } from "./contours";
import { NO_VALUE } from "./fields";

function cells(cols: number, rows: number, of: (x: number, y: number) => number): Cells {
  const values = Array.from({ length: cols * rows }, (_, n) => of((n % cols) + 0.5, Math.floor(n / cols) + 0.5));
  return { cols, rows, values, read: (v) => v };
}

describe("values between cells", () => {
  it("follow a plane exactly inside, and are missing away from all cells", () => {
    const g = cells(5, 4, (x, y) => 3 * x - 2 * y + 1);
    for (const [x, y] of [[0.5, 0.5], [2.3, 1.7], [4.5, 3.5]] as const) expect(sample(g, x, y)).toBeCloseTo(3 * x - 2 * y + 1, 9);
    expect(sample(g, 7, 7)).toBeUndefined();
  });
  it("leave out cells without a value", () => {
    const g = cells(2, 1, (x) => (x < 1 ? 10 : NO_VALUE));
    expect(sample(g, 0.9, 0.5)).toBe(10);
    expect(sample(g, 1.6, 0.5)).toBeUndefined();
  });
});

describe("contours", () => {
  it("lie where the value is the level", () => {
    const cone = cells(21, 21, (x, y) => Math.hypot(x - 10.5, y - 10.5));
    const [ring] = contours(cone, [6]);
    expect(ring?.lines).toHaveLength(1);
    const line = ring?.lines[0] ?? [];
    expect(line.length).toBeGreaterThan(30);
    for (const [x, y] of line) expect(Math.abs(Math.hypot(x - 10.5, y - 10.5) - 6)).toBeLessThan(0.05);
    expect(line[0]).toEqual(line.at(-1)); // closed
  });
  it("stop where there is nothing, and never cross at a saddle", () => {
    const gap = cells(6, 3, (x) => (x > 2 && x < 4 ? NO_VALUE : x));
    expect(contours(gap, [3])[0]?.lines).toEqual([]);
    const saddle = contours(cells(2, 2, (x, y) => (x < 1 === y < 1 ? 1 : 0)), [0.4])[0]?.lines ?? [];
    expect(saddle).toHaveLength(2);
    expect(new Set(saddle.flat().map(String)).size).toBe(4);
  });
  it("are thinned to as many as can be told apart", () => {
    expect(some([1, 2, 3], 5)).toEqual([1, 2, 3]);
    expect(some([1, 2, 3, 4, 5, 6, 7, 8], 4)).toEqual([2, 4, 6, 8]);
    expect(some([], 4)).toEqual([]);
  });
});
