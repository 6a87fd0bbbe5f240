import { describe, expect, it } from "vitest";
import { forecast, later } from "./clock";

describe("clock times", () => {
  it.each([
    ["Tue 2027-03-16 13:00", 0, "Tue 16 Mar 13:00"],
    ["Tue 2027-03-16 13:00", 29.5, "Wed 17 Mar 18:30"],
    ["Fri 2027-12-31 23:30", 1, "Sat 1 Jan 00:30"],
    ["Mon 2028-02-28 08:00", 24, "Tue 29 Feb 08:00"],
    ["day 17 13:00", 29.5, "day 18 18:30"],
    ["day 1 00:00", 0.1, "day 1 00:06"],
    ["", 5, ""],
    ["not placed", 5, ""],
    ["Tue 2027-03-16 13:00", Number.NaN, ""],
  ])("%s and %d h is %s", (start, hours, want) => expect(later(start, hours)).toBe(want));
  it("of a forecast are no finer than it", () => {
    expect([0.15, 2.44, 8.847, 29.49].map(forecast).map((h) => h.toFixed(2))).toEqual(["0.17", "2.50", "9.00", "29.50"]);
  });
});
