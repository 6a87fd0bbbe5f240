import { expect, it } from "vitest";
import { momentsOf } from "./figure";
import { example } from "../fixture/example";
import { hourText, share } from "./timebar";

it("an hour has its place among frames that are not all as far apart", () => {
  const hours = [0, 2, 4, 10];
  expect([-1, 0, 1, 3, 7, 10, 99].map((h) => share(hours, h))).toEqual([0, 0, 1 / 6, 0.5, 2.5 / 3, 1, 1]);
  expect(share([0], 3)).toBe(0);
});

it("hours are told from the first pour", () => {
  expect([0, 29.5].map(hourText)).toEqual(["At the first pour", "29 h 30 min after the first pour"]);
});

it("the pours and the peak are moments of the cure", () => {
  const p = example();
  expect(momentsOf(p).map((m) => m.name)).toEqual([...p.resin.lifts.map((l) => `Lift ${l.number}`), "Peak"]);
});
