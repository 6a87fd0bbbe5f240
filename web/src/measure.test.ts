import { describe, expect, it } from "vitest";
import { about, area, count, duration, fixed, inches, length, mass, mm, percent, pounds, systemOf, temperature, volume } from "./measure";

describe("inches", () => {
  it.each([
    [0, "0 in"], [25.4, "1 in"], [34.925, "1 3/8 in"], [34.9, "1 3/8 in"], [12.7, "1/2 in"], [0.79375, "1/32 in"],
    [1219.2, "48 in"], [19.05, "3/4 in"], [24.6, "31/32 in"], [-34.925, "-1 3/8 in"], [0.39, "0 in"], [0.4, "1/32 in"], [-0.1, "0 in"],
    [25.39, "1 in"],
  ])("%d mm is %s", (v, text) => expect(inches(v)).toBe(text));

  it("is never further than 1/64 in from the length", () => {
    for (let v = 0; v < 300; v += 0.37) {
      const words = inches(v).replace(" in", "").split(" ").map((w) => w.split("/").map(Number));
      const back = words.reduce((sum, [part = 0, of = 1]) => sum + part / of, 0) * 25.4;
      expect(Math.abs(back - v), `${v} mm: ${inches(v)}`).toBeLessThanOrEqual(25.4 / 64 + 1e-9);
    }
  });
});

describe("a measure in the maker's units first", () => {
  it.each([
    [length(34.9, "mm"), "34.9 mm", "1 3/8 in"],
    [length(34.9, "in"), "1 3/8 in", "34.9 mm"],
    [volume(3.785411784, "mm"), "3.79 l", "1.00 US gal"],
    [volume(3.785411784, "in"), "1.00 US gal", "3.79 l"],
    [volume(0.0295735295625, "mm"), "30 ml", "1.0 US fl oz"],
    [mass(0.45359237, "mm"), "454 g", "1 lb 0.0 oz"],
    [mass(98.676, "mm"), "98.7 kg", "217 lb 8.7 oz"],
    [area(92903.04, "in"), "1.00 ft²", "0.093 m²"],
    [temperature(20, "mm"), "20.0 °C", "68.0 °F"],
    [temperature(-40, "in"), "-40.0 °F", "-40.0 °C"],
  ])("%o", (got, main, other) => expect(got).toEqual({ main, other }));

  it.each(["mm", "cm", "", "IN"])("%s is metric", (u) => expect(systemOf(u)).toBe("mm"));
  it("in is customary", () => expect(systemOf("in")).toBe("in"));
});

describe("other numbers", () => {
  it.each([
    [duration(0), "0 min"], [duration(0.25), "15 min"], [duration(1.5), "1 h 30 min"], [duration(47.99), "47 h 59 min"], [duration(48), "2 d"],
    [duration(241), "10 d 1 h"], [duration(-1), "-1 h"], [duration(0.9999), "1 h"],
    [percent(0.0654), "6.5 %"], [pounds(0.01), "0.4 oz"], [mm(-0.01), "0.0 mm"], [fixed(1e-9, 2), "0.00"],
    [count(1, "batch", "batches"), "1 batch"], [count(0, "note"), "0 notes"],
  ])("%s", (got, text) => expect(got).toBe(text));

  it("a number that is none is a dash, not NaN", () => {
    for (const v of [Number.NaN, Infinity, -Infinity]) {
      expect([mm(v), inches(v), fixed(v, 1), duration(v), percent(v), pounds(v), mass(v, "mm").main, volume(v, "in").main, area(v, "mm").main]).toEqual(Array(9).fill("–"));
    }
  });
});

it("forecasts are not written to the minute", () => {
  expect([0.1, 2.6, 10.05, 29.53, 75.2, Number.NaN].map(about)).toEqual(["0 min", "2 h 30 min", "10 h", "30 h", "3 d 3 h", "–"]);
});
