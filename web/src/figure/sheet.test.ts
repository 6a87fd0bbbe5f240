import { describe, expect, it } from "vitest";
import type { Box, Item } from "../drawing";
import { letterSize, spread, wrapped } from "./lettering";
import { extent, fit, lines, rule } from "./sheet";

const BENCH: Box = { min: [-100, -50], max: [1300, 450] };

describe("fit", () => {
  it.each([[700, 400], [358, 320], [1500, 200]])("keeps the whole box on a sheet of %d by %d px, with one scale", (width, tallest) => {
    const s = fit(BENCH, width, tallest);
    const [low, high] = [s.at(BENCH.min), s.at(BENCH.max)];
    for (const [x, y] of [low, high]) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(width);
      expect(y).toBeGreaterThanOrEqual(0);
      expect(y).toBeLessThanOrEqual(s.height);
    }
    expect(s.height).toBeLessThanOrEqual(tallest + 1e-9);
    expect((high[0] - low[0]) / 1400).toBeCloseTo(s.scale, 9);
    expect((low[1] - high[1]) / 500).toBeCloseTo(s.scale, 9);
  });

  it("turns y up into y down and leaves x as it is", () => {
    const s = fit(BENCH, 700, 400);
    expect(s.at([0, 100])[1]).toBeLessThan(s.at([0, 0])[1]);
    expect(s.at([100, 0])[0]).toBeGreaterThan(s.at([0, 0])[0]);
  });

  it("bears a box without extent", () => {
    const s = fit({ min: [5, 5], max: [5, 5] }, 300, 200);
    expect(s.at([5, 5]).every(Number.isFinite)).toBe(true);
    expect(s.scale).toBe(1);
  });
});

describe("lines", () => {
  const s = fit({ min: [0, 0], max: [100, 100] }, 112, 112); // one px a mm, 6 px of margin

  it("writes rings to a tenth of a pixel, closed where they are", () => {
    expect(lines([[[0, 0], [100, 0], [50, 33.333]], [[10, 10], [20, 20]]], true, s)).toBe("M6 106L106 106L56 72.7ZM16 96L26 86Z");
    expect(lines([[[0, 0], [100, 0]]], false, s)).toBe("M6 106L106 106");
    expect(lines(null, true, s)).toBe("");
    expect(lines([[]], true, s)).toBe("");
  });
});

describe("rule", () => {
  const s = fit({ min: [0, 0], max: [100, 100] }, 112, 112);
  const of = (a: [number, number], b: [number, number], offset: number) => rule({ a, b, offset, text: "" }, s);

  it("stands to the left of the way from A to B", () => {
    expect(of([0, 0], [100, 0], 30)?.a[1]).toBeCloseTo(106 - 30); // left of eastward is north: up the sheet
    expect(of([0, 0], [100, 0], -30)?.a[1]).toBeCloseTo(106 + 30);
    expect(of([0, 0], [0, 100], 30)?.a[0]).toBeCloseTo(6 - 30); // left of northward is west
    expect(of([100, 0], [0, 0], 30)?.a[1]).toBeCloseTo(106 + 30);
  });

  it("keeps its text off a small drawing", () => {
    const small = fit({ min: [0, 0], max: [1000, 100] }, 112, 112);
    const r = rule({ a: [0, 0], b: [1000, 0], offset: 30, text: "" }, small);
    expect(small.at([0, 0])[1] - (r?.a[1] ?? 0)).toBeCloseTo(16);
  });

  it.each([
    [[0, 0], [100, 0], 0], [[100, 0], [0, 0], 0], [[0, 0], [0, 100], -90], [[0, 100], [0, 0], -90], [[0, 0], [50, 50], -45], [[0, 50], [50, 0], 45],
  ] as [[number, number], [number, number], number][])("from %o to %o is read from below or from the right", (a, b, turn) => {
    expect(of(a, b, 20)?.turn).toBeCloseTo(turn);
  });

  it("of no length is none", () => expect(of([5, 5], [5, 5], 20)).toBeUndefined());
});

describe("spread", () => {
  const text = (x: number, y: number, words: string, anchor = "start", size = 20): Item => ({ style: "outline", text: { at: [x, y], text: words, size, anchor, turn: 0 } });
  const s = fit({ min: [0, 0], max: [1000, 200] }, 212, 200); // 0.2 px a mm: 20 mm letters are 4 px, drawn at 11

  it("draws lettering large enough to read", () => {
    expect(letterSize(20, s)).toBe(11);
    expect(letterSize(70, s)).toBe(14);
    expect(letterSize(500, s)).toBe(18);
  });

  it("moves a text down that would run into one above, and leaves others alone", () => {
    const items = [text(0, 100, "first line"), text(0, 70, "second line"), text(600, 70, "far off"), text(0, 40, "third line")];
    const { lines: placed, foot } = spread(items, s);
    const y = items.map((_, i) => placed.get(i)?.y ?? Number.NaN);
    expect(y[0]).toBeCloseTo(s.at([0, 100])[1]);
    expect((y[1] ?? 0) - (y[0] ?? 0)).toBeGreaterThanOrEqual(11);
    expect((y[3] ?? 0) - (y[1] ?? 0)).toBeGreaterThanOrEqual(11);
    expect(y[2]).toBeCloseTo(s.at([0, 70])[1]);
    expect(foot).toBeGreaterThan(y[3] ?? Infinity);
  });

  it("breaks a text that would run off the sheet, and moves what stands below", () => {
    const long = text(0, 100, "mark this side FORM SIDE UP: it shows when you look down into the form");
    const { lines: placed } = spread([long, text(0, 90, "lengths in mm")], s);
    const [first, second] = [placed.get(0), placed.get(1)];
    expect(first?.rows.length).toBeGreaterThan(1);
    expect(first?.rows.join(" ")).toBe(long.text?.text);
    expect(first?.right).toBeLessThanOrEqual(s.width);
    expect((second?.y ?? 0) - (first?.y ?? 0)).toBeGreaterThanOrEqual(11 * (first?.rows.length ?? Infinity));
    expect(wrapped("unbreakable word", 4)).toEqual(["unbreakable", "word"]);
  });

  it("leaves turned texts and other items to themselves", () => {
    const turned = text(0, 0, "up");
    if (turned.text) turned.text.turn = 90;
    expect(spread([turned, { style: "thin" }], s).lines.size).toBe(0);
  });
});

describe("extent", () => {
  const s = fit({ min: [0, 0], max: [1000, 200] }, 212, 200);
  const dim = (offset: number): Item => ({ style: "thin", dimension: { a: [0, 200], b: [1000, 200], offset, text: "1000" } });

  it("is the sheet where all stays on it", () => expect(extent([], s, 0)).toEqual({ left: 0, top: 0, width: s.width, height: s.height }));

  it("reaches out to dimensions that stand off the sheet, and down to the lettering", () => {
    const e = extent([dim(30)], s, s.height + 40);
    const line = rule({ a: [0, 200], b: [1000, 200], offset: 30, text: "" }, s);
    expect(e.top).toBeCloseTo((line?.a[1] ?? 0) - 14);
    expect(e.top + e.height).toBeCloseTo(s.height + 42);
    expect(e.left).toBeCloseTo(-8); // 6 px of margin less 14 for the text
  });
});
