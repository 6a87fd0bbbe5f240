import { describe, expect, it } from "vitest";
import { contentOf, readingsOf, readingsText } from "./readings";

describe("readings of a test pour", () => {
  it.each([
    ["0,22\n1,22.6\n2,23.4"],
    ["time h, temp C\n0, 22\n1, 22.6\n\n2, 23.4\n"],
    ["0;22\r\n1;22,6\r\n2;23,4"],
    ["# logger 3\n0\t22\n1\t22.6\n2\t23.4"],
    ["0 22\n1 22.6\n2 23.4"],
    ["0 h, 22 C\n1 h, 22.6 °C\n2, 23.4"],
  ])("are read from %j", (text) => {
    expect(readingsOf(text)).toEqual({ list: [[0, 22], [1, 22.6], [2, 23.4]], wrong: "" });
  });
  it("name the line that is none", () => {
    expect(readingsOf("0,22\n1,warm").wrong).toMatch(/^Line 2, “1,warm”/);
    expect(readingsOf("0,22\n0,23").wrong).toBe("Line 2: 0 h does not come after 0 h.");
    expect(readingsOf("0,22\n5").wrong).toMatch(/^Line 2/);
    expect(readingsOf("hours\nC\n0,22").wrong).toMatch(/^Line 2/); // one line of heads, no more
    expect(readingsOf("")).toEqual({ list: [], wrong: "" });
  });
  it("are thinned evenly before they are sent, ends kept", () => {
    const many = Array.from({ length: 5000 }, (_, i) => [i / 100, 20 + i / 1000] as [number, number]);
    const sent = contentOf(many).split("\n");
    expect(sent).toHaveLength(400);
    expect(sent[0]).toBe("0,20");
    expect(sent.at(-1)).toBe("49.99,24.999");
    expect(contentOf([[0, 22]])).toBe("0,22");
  });
  it("are told in one line", () => {
    expect(readingsText([[0, 22], [4, 61.5], [9, 40]])).toBe("3 readings, 0 to 9 h; warmest 61.5 °C at 4 h.");
    expect(readingsText([[0, 22]])).toMatch(/^1 reading, /);
    expect(readingsText([])).toBe("");
  });
});
