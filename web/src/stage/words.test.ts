import { describe, expect, it } from "vitest";
import { example } from "../fixture/example";
import type { Step } from "../plan";
import { whoText } from "./calendar";
import { amount, totalText } from "./cost";
import { sameWords } from "./cutting";

describe("counts and their nouns", () => {
  it.each([[1, "sheet", "1 sheet"], [4, "sheet", "4 sheets"], [0.25, "cartridge", "0.25 cartridges"], [2.5, "kg", "2.50 kg"], [60, "piece", "60 pieces"], [0, "l", "0 l"]])("%d %s is %s", (n, unit, want) => expect(amount(n, unit)).toBe(want));
  it("say what is not priced", () => {
    expect(totalText(0, 13, 13)).toMatch(/^No line has a price yet/);
    expect(totalText(120.5, 1, 13)).toBe("120.50 together, 1 line without a price.");
    expect(totalText(120.5, 0, 13)).toBe("120.50 together.");
  });
});

it("what is said before every setting is said once", () => {
  const setting = (fence_mm: number, re_zero: string) => ({ fence_mm, tilt_deg: 0, first: 1, last: 1, re_zero });
  expect(sameWords([setting(100, "Set the fence to 100.0 mm, check."), setting(90, "Set the fence to 90.0 mm, check.")])).toBe("set the fence to its reading, check.");
  expect(sameWords([setting(100, "Set the fence to 100.0 mm."), setting(90, "Tilt the blade.")])).toBe("");
  expect(sameWords([setting(100, "Set the fence to 100.0 mm.")])).toBe("");
});

it("a step says who does it, where that is more than one", () => {
  const step = example().calendar.steps[0] as Step;
  expect(whoText({ ...step, who: [] })).toBe("");
  expect(whoText({ ...step, hands: 1, who: ["Ada"] })).toBe("");
  expect(whoText({ ...step, hands: 3, who: ["Ada", "Ben", "a helper"] })).toBe(" for Ada, Ben and a helper");
  expect(whoText({ ...step, hands: 2, who: [] })).toBe(" for 2 people");
});
