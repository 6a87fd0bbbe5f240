import { describe, expect, it } from "vitest";
import { example } from "../fixture/example";
import { faultOf, fieldsOf, linesOf, merged, split, withDepth, yamlOf } from "./trylifts";

const ROWS = [{ depth: "24.6", after: "" }, { depth: "30", after: "20" }, { depth: "9", after: "30" }];

describe("lifts to try", () => {
  it("become fields, and drop the rest of the document's list", () => {
    expect(fieldsOf(ROWS)).toEqual({
      "resin.lifts[0].depth": "24.6 mm", "resin.lifts[1].depth": "30 mm", "resin.lifts[1].after": "20 h",
      "resin.lifts[2].depth": "9 mm", "resin.lifts[2].after": "30 h", "resin.lifts[3]": "",
    });
  });
  it("and a line for the document", () => {
    expect(yamlOf(ROWS)).toBe("lifts: [{depth: 24.6 mm}, {depth: 30 mm, after: 20 h}, {depth: 9 mm, after: 30 h}]");
  });
  it("fill the basin: the last one takes what is left", () => {
    const moved = withDepth(ROWS, 0, "20", 63.6);
    expect(moved.map((r) => r.depth)).toEqual(["20", "30", "13.6"]);
    expect(ROWS[0]?.depth).toBe("24.6");
    expect(withDepth(ROWS, 2, "12", 63.6).map((r) => r.depth)).toEqual(["24.6", "30", "12"]);
  });
  it("are split and put together without losing depth", () => {
    const more = split(ROWS);
    expect(more).toHaveLength(4);
    expect(more.reduce((s, r) => s + Number(r.depth), 0)).toBeCloseTo(63.6, 9);
    expect(merged(more).map((r) => r.depth)).toEqual(["24.6", "30", "9.0"]);
    expect(merged(ROWS.slice(0, 1))).toEqual(ROWS.slice(0, 1));
  });
  it("say what keeps them from being tried", () => {
    expect(faultOf(ROWS, 63.6)).toBe("");
    expect(faultOf(withDepth(ROWS, 0, "60", 63.6), 63.6)).toBe("Lift 3 needs a depth above 0 mm.");
    expect(faultOf(ROWS, 70)).toBe("The lifts are 63.6 mm together, the basin is 70.0 mm deep.");
    expect(faultOf([ROWS[0] ?? { depth: "", after: "" }, { depth: "39", after: "" }], 63.6)).toBe("Lift 2 needs the hours after lift 1.");
    expect(faultOf([{ depth: "deep", after: "" }], 63.6)).toBe("Lift 1 needs a depth above 0 mm.");
  });
  it("are told beside the plan", () => {
    const [before, now] = [example(), example()];
    now.resin.cure.peak_c = 71.3;
    const lines = linesOf(before, now, "mm");
    expect(lines.find((l) => l.what === "Peak")?.now).toBe("71.3 °C");
    expect(lines.filter((l) => l.before !== l.now).map((l) => l.what)).toEqual(["Peak"]);
  });
});
