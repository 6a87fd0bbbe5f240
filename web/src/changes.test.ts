import { describe, expect, it } from "vitest";
import { changes, sentence, withoutUnit } from "./changes";
import { example } from "./fixture/example";

describe("changes", () => {
  it("are none between a plan and itself", () => {
    expect(changes(example(), example())).toEqual([]);
    expect(sentence([])).toBe("Read again: no number changed.");
  });

  it("say the number before and after, the unit once", () => {
    const before = example();
    const after = example();
    before.resin.order_l = 5.9;
    after.resin.order_l = 6.2;
    expect(sentence(changes(before, after))).toBe("resin to order 5.90 → 6.20 l");
  });

  it("leave out what the maker could not read off", () => {
    const after = example();
    after.resin.order_l += 0.0001;
    after.structure.flip_kg += 0.001;
    expect(changes(example(), after)).toEqual([]);
  });

  it("follow the maker's units", () => {
    const [before, after] = [example(), example()];
    before.piece.units = after.piece.units = "in";
    before.piece.height_mm = 430;
    after.piece.height_mm = 431.8;
    expect(changes(before, after)).toEqual([{ what: "height", from: "16 15/16", to: "17 in" }]);
  });

  it("say when a stage is no longer computed, and count findings", () => {
    const after = example();
    for (const s of after.stages) if (s.name === "resin") s.state = "not computed";
    after.findings.push({ code: "read/no-drawing", severity: "stop", stage: "read", where: {}, text: "x", remedy: "y" });
    const text = sentence(changes(example(), after));
    expect(text).toMatch(/resin to order [\d.]+ l → not computed/);
    expect(text).toContain("stop findings 0 → 1");
  });

  it("are cut short after the first few", () => {
    const list = Array.from({ length: 9 }, (_, i) => ({ what: `w${i}`, from: "1", to: "2" }));
    expect(sentence(list, 2)).toBe("w0 1 → 2, w1 1 → 2, and 7 more");
  });
});

describe("withoutUnit", () => {
  it.each([
    ["5.90 l", "6.20 l", "5.90"], ["850 ml", "1.20 l", "850 ml"], ["1 3/8 in", "2 in", "1 3/8"], ["none", "2 mm", "none"],
    ["3", "4", "3"], ["37.0 + 36.8 mm", "50.0 mm", "37.0 + 36.8"], ["1 h 30 min", "2 h", "1 h 30 min"],
  ])("%s before %s is %s", (from, to, text) => expect(withoutUnit(from, to)).toBe(text));
});
