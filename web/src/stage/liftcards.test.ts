import { describe, expect, it } from "vitest";
import { lateness } from "../cure/figure";
import { example } from "../fixture/example";
import type { Lift, Plan } from "../plan";
import { scaleOf } from "./band";
import { afterwards, momentText } from "./liftcards";

function liftsOf(p: Plan): [Lift, Lift] {
  return [p.resin.lifts[0] as Lift, p.resin.lifts[1] as Lift];
}

const value = (rows: [string, string][], name: string) => rows.find(([n]) => n === name)?.[1];

describe("what comes after a lift", () => {
  it("is told in times of day where the calendar has one", () => {
    const p = example();
    const [one] = liftsOf(p);
    Object.assign(one, { wait_h: 29.49, bonds_until_h: 50.2, scuff: false, gels_h: 29.49, torch_h: [0.15, 0.5] });
    const rows = afterwards(p, one, "Tue 2027-03-16 13:00");
    expect(value(rows, "Flame over it")).toBe("13:10, 13:30");
    expect(value(rows, "Next lift from")).toBe("Wed 17 Mar 18:30, 29 h");
    expect(value(rows, "Bonds by itself until")).toBe("Thu 18 Mar 15:00, 2 d 2 h");
    expect(value(afterwards(p, one, ""), "Next lift from")).toBe("29 h");
  });
  it("asks for sanding where the next lift no longer bonds", () => {
    const p = example();
    const [one] = liftsOf(p);
    one.scuff = true;
    const rows = afterwards(p, one, "");
    expect(value(rows, "Next lift from")).toMatch(/sand this one dull first$/);
    expect(value(rows, "Bonds by itself until")).toBeUndefined();
  });
  it("says when the calendar pours at another time than was computed", () => {
    const p = example();
    const [one, two] = liftsOf(p);
    const [a, b] = ["lift-1", "lift-2"].map((id) => p.calendar.steps.find((s) => s.id === id));
    if (!a || !b) throw new Error("the example has two lifts");
    b.start_h = a.start_h + two.at_h + 13;
    expect(lateness(p, 2)).toBeCloseTo(13, 9);
    expect(value(afterwards(p, one, ""), "Not as computed")).toMatch(/pours lift 2 13 h later/);
    b.start_h = a.start_h + two.at_h;
    expect(value(afterwards(p, one, ""), "Not as computed")).toBeUndefined();
  });
});

it("the scale of temperatures holds everything on it between round ends", () => {
  expect(scaleOf([20, 29.4, 42, 60, 63.3])).toEqual({ low: 10, high: 70, step: 10 });
  expect(scaleOf([18, 131])).toEqual({ low: 0, high: 140, step: 20 });
});

describe("moments", () => {
  it("say what does not come within the hours computed", () => {
    expect(momentText({ h: 29.4, later: false })).toBe("29 h");
    expect(momentText({ h: 336, later: true })).toBe("> 14 d");
  });
  it("decide when the next lift goes on, by zone at worst", () => {
    const p = example();
    const [one] = liftsOf(p);
    Object.assign(one, { scuff: false, gels_h: 20, wait_h: 20, recoat_from: { h: 22, later: false }, recoat_until: { h: 336, later: true }, hold_back_l: 0.11, batches: [{ stir_h: 0.0667, keeps_h: 3 }] });
    const rows = afterwards(p, one, "");
    expect(value(rows, "Next lift from")).toBe("22 h");
    expect(value(rows, "Bonds by itself until")).toBe("longer than 14 d");
    expect(value(rows, "Hold back")).toMatch(/^110 ml/);
    expect(value(rows, "Stir each bucket")).toBe("4 min, and pour it within 3 h");
  });
});
