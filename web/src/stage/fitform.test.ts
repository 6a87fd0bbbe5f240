import { expect, it } from "vitest";
import { cardOf, type Fitted } from "./fitform";

const FITTED: Fitted = {
  rate_25_per_s: 4e-5, rate_25_low_per_s: 2e-5, rate_25_high_per_s: 8e-5, ratio_of_rates: 0.2114, heat_kj_kg: 251.4, heat_sd_kj_kg: 20, activation_kj_mol: 54.06, glass_transition_c: 52,
  data: [], slab: { depth_mm: 50, peak_c: 83, low_c: 67, high_c: 98 }, measure_next: "",
};

it("an estimate becomes lines of a card, with two deviations each way", () => {
  expect(cardOf(FITTED).split("\n")).toEqual([
    "resins:", "  my resin:", "    origin: data sheet", "    rate_25_per_s: {value: 0.000040000, range: [0.000010000, 0.000160000]}",
    "    rate_ratio: 0.211", "    activation_kj_mol: 54.1", "    heat_kj_kg: {value: 251, range: [211, 291]}", "    glass_transition: 52 C",
  ]);
});

it("a test pour makes it measured", () => {
  expect(cardOf({ ...FITTED, data: [{ name: "test pour, worst reading", given: 40, model: 41, unit: "C", off_by_sd: 0.3 }] })).toContain("origin: measured");
});
