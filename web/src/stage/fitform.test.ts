import { expect, it } from "vitest";
import { cardOf } from "./fitform";

it("an estimate becomes lines of a card", () => {
  expect(cardOf({
    rate_25_per_s: 4.2241e-5, rate_25_low_per_s: 1, rate_25_high_per_s: 1, ratio_of_rates: 0.2114, heat_kj_kg: 251.4, activation_kj_mol: 54.06, glass_transition_c: 52,
    data: [], slab: { depth_mm: 50, peak_c: 83, low_c: 67, high_c: 98 }, measure_next: "",
  })).toBe("rate_25_per_s: {value: 0.000042241, origin: measured}\nrate_ratio: {value: 0.211, origin: measured}\nactivation_kj_mol: {value: 54.1, origin: measured}\nheat_kj_kg: {value: 251, origin: measured}");
});
