import { expect, it } from "vitest";
import { fieldsOf, yamlOf } from "./trylifts";

const ROWS = [{ depth: "24.6", after: "" }, { depth: "30", after: "20" }, { depth: "9", after: "" }];

it("lifts to try become fields, and drop the rest of the document's list", () => {
  expect(fieldsOf(ROWS)).toEqual({
    "resin.lifts[0].depth": "24.6 mm", "resin.lifts[1].depth": "30 mm", "resin.lifts[1].after": "20 h", "resin.lifts[2].depth": "9 mm", "resin.lifts[3]": "",
  });
});

it("and a line for the document", () => {
  expect(yamlOf(ROWS)).toBe("lifts: [{depth: 24.6 mm}, {depth: 30 mm, after: 20 h}, {depth: 9 mm}]");
});
