import { expect, test } from "vitest";
import { fixed, inches, length, volume } from "./measure";

test("inches are fractions in lowest terms", () => {
  expect(inches(34.925)).toBe("1 3/8 in");
  expect(inches(25.4)).toBe("1 in");
  expect(inches(0)).toBe("0 in");
  expect(inches(12.7)).toBe("1/2 in");
});

test("a length shows the maker's unit first", () => {
  expect(length(1220, "mm").main).toBe("1220.0 mm");
  expect(length(1220, "in").other).toBe("1220.0 mm");
});

test("gallons say whose they are", () => {
  expect(volume(3.785411784, "in").main).toBe("1.00 US gal");
  expect(volume(12.43, "mm").main).toBe("12.43 l");
});

test("no number is a dash and there is no minus zero", () => {
  expect(fixed(Number.NaN, 1)).toBe("–");
  expect(fixed(-0.01, 1)).toBe("0.0");
});
