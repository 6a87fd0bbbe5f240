import { describe, expect, it } from "vitest";
import { againAt, at, extreme, type Fields, frameAt, infoOf, NO_VALUE, rangeOf, rowAt } from "./fields";
import { colourOf, rampOf, ticks } from "./ramp";

const N = NO_VALUE;
const F: Fields = {
  x0_mm: 100, y0_mm: 50, step_mm: 20, nx: 2, ny: 2, hours: [0, 6, 12],
  hottest_dc: [[200, 201, N, N], [450, 380, N, 333], [300, 290, N, 280]], least_permille: [[0, 0, N, 0], [400, 410, N, 300], [800, 790, N, 700]],
  section_y_mm: 60, levels_mm: [0, 4, 8], section_dc: [[200, 200, N, 200], [500, 450, N, 400], [300, 300, N, 300]], section_permille: [[0, 0, N, 0], [1, 2, N, 3], [4, 5, N, 6]],
  gel_dh: [55, 61, N, N], bonds_dh: [90, 91, N, N], tack_free_dh: [70, 71, N, N], hard_dh: [N, N, N, N], sandable_dh: [200, 210, N, N],
};

describe("fields", () => {
  it("are read by place", () => {
    expect(at(F, F.gel_dh, 101, 51)).toBe(55);
    expect(at(F, F.gel_dh, 139.9, 69)).toBe(61);
    expect(at(F, F.gel_dh, 101, 75)).toBeUndefined();
    for (const [x, y] of [[99, 51], [141, 51], [101, 49], [101, 91]] as const) expect(at(F, F.gel_dh, x, y)).toBeUndefined();
  });
  it("know the range of plan and section over all hours", () => {
    expect(rangeOf(F, infoOf("temperature"))).toEqual([20, 50]);
    expect(rangeOf(F, infoOf("hard"))).toBeUndefined();
  });
  it("find the nearest hour and the row of a height", () => {
    expect([-1, 2, 4, 11, 99].map((t) => frameAt(F, t))).toEqual([0, 0, 1, 2, 2]);
    expect([-1, 0, 3.9, 4, 8].map((z) => rowAt(F, z))).toEqual([undefined, 0, 0, 1, undefined]);
  });
});

describe("ramps", () => {
  it("step at round numbers inside the range", () => {
    expect(ticks(20, 61, 10)).toEqual([25, 30, 35, 40, 45, 50, 55, 60]);
    expect(ticks(0, 0.9, 10)).toEqual([0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8]);
    expect(ticks(5, 5, 10)).toEqual([]);
    expect(ticks(Number.NaN, 5, 10)).toEqual([]);
  });
  it("get darker all the way", () => {
    for (const kind of ["heat", "cure", "time"] as const) {
      const r = rampOf(kind, 0, 100);
      const light = r.colours.map(([a, b, c]) => 0.2126 * a + 0.7152 * b + 0.0722 * c);
      for (let i = 1; i < light.length; i++) expect(light[i]).toBeLessThan(light[i - 1] as number);
      expect(colourOf(r, -5)).toEqual(r.colours[0]);
      expect(colourOf(r, 1e9)).toEqual(r.colours.at(-1));
    }
  });
});

describe("pouring again", () => {
  it("is too early before the gel, bonds until the hour it no longer does, and asks for sanding after", () => {
    const f: Fields = { ...F, hours: [5, 7, 9.05, 12] };
    const states = againAt(f);
    // gelled at 5.5 and 6.1 h, bonding until 9.0 and 9.1 h; the fourth cell holds resin that does not gel in time
    expect(states.map((s) => s.join())).toEqual([`0,0,${N},0`, `1,1,${N},0`, `2,1,${N},0`, `2,2,${N},0`]);
    expect(againAt(f)).toBe(states);
  });
  it("finds the warmest and the coldest place", () => {
    expect(extreme([N, 200, 450, 333], true)).toBe(2);
    expect(extreme([N, 200, 450, 333], false)).toBe(1);
    expect(extreme([N, N], true)).toBeUndefined();
  });
});
