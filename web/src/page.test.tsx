// The page's parts as a reader meets them, without a browser.

import { render } from "preact";
import { beforeEach, describe, expect, it } from "vitest";
import { App } from "./app";
import { problemOf } from "./api";
import { alike, numbersOf, placeText } from "./findings";
import { example } from "./fixture/example";
import { keyNumbers } from "./keynumbers";
import type { Finding, Plan } from "./plan";
import { runs } from "./stage/concrete";
import { buy } from "./stage/cost";
import { changed, drawings, openStages, plan, problem, titles } from "./state";

function show(p: Plan | undefined): HTMLElement {
  const root = document.createElement("div");
  plan.value = p;
  render(<App />, root);
  return root;
}

const texts = (root: HTMLElement, selector: string) => [...root.querySelectorAll(selector)].map((e) => e.textContent);

function finding(over: Partial<Finding>): Finding {
  return { code: "a/b", severity: "note", stage: "a", where: {}, text: "t", remedy: "r", ...over };
}

beforeEach(() => {
  problem.value = undefined;
  changed.value = undefined;
  titles.value = [];
  drawings.value = new Map();
  openStages.value = new Set();
});

describe("the page", () => {
  it("waits, then says what is wrong, then shows the plan", () => {
    expect(show(undefined).textContent).toContain("Working the piece out");
    problem.value = { error: "read piece.yaml:3", hint: "write a length", findings: [finding({ text: "No length.", remedy: "Write one.", where: { file: "piece.yaml", line: 3 } })] };
    const wrong = show(undefined);
    expect(wrong.textContent).toContain("No length.");
    expect(wrong.textContent).toContain("piece.yaml:3");
    problem.value = undefined;
    expect(texts(show(example()), "h1")).toEqual(["Estuary bench"]);
  });

  it("says STOP for a stop and keeps quiet without", () => {
    expect(texts(show(example()), ".stop-banner")).toEqual([]);
    const p = example();
    p.findings.unshift(finding({ severity: "stop", text: "Too deep." }));
    const root = show(p);
    expect(root.querySelector(".stop-banner")?.getAttribute("role")).toBe("alert");
    expect(root.querySelector(".finding")?.className).toContain("finding-stop");
    expect(root.querySelector(".paper-stop")?.textContent).toContain("STOP");
  });

  it("shows no zeros of stages that were not computed", () => {
    const p = example();
    for (const s of p.stages) s.state = "not computed";
    openStages.value = new Set(["resin"]);
    const root = show(p);
    expect(texts(root, ".number")).toEqual([]);
    expect(root.querySelectorAll(".stage button:disabled")).toHaveLength(p.stages.length);
    expect(root.querySelector(".detail:not([hidden])")).toBeNull();
  });

  it("opens every stage without a number that is none", () => {
    openStages.value = new Set(example().stages.map((s) => s.name));
    for (const units of ["mm", "in"]) {
      const p = example();
      p.piece.units = units;
      const root = show(p);
      expect(root.querySelectorAll(".detail:not([hidden])")).toHaveLength(p.stages.length);
      expect(root.textContent).not.toMatch(/NaN|undefined|null|\[object/);
    }
  });
});

describe("key numbers", () => {
  it("begin with the resin to order, in both units", () => {
    const p = example();
    p.resin.order_l = 6.2;
    p.resin.order_imp_gal = 1.3638;
    expect(keyNumbers(p)[0]).toMatchObject({ main: "6.20 l", other: "1.64 US gal · 1.36 imp gal" });
    p.piece.units = "in";
    expect(keyNumbers(p)[0]).toMatchObject({ main: "1.64 US gal", other: "6.20 l · 1.36 imp gal" });
  });

  it("leave out what was not computed", () => {
    const p = example();
    for (const s of p.stages) if (s.name === "structure") s.state = "not computed";
    expect(keyNumbers(p).map((k) => k.id)).toEqual(expect.arrayContaining(["order", "basin", "shell", "hands"]));
    expect(keyNumbers(p).map((k) => k.stage)).not.toContain("structure");
  });
});

describe("findings", () => {
  it("that ask the same of several places stand together", () => {
    const list = [finding({ text: "1" }), finding({ text: "2" }), finding({ text: "3", remedy: "other" }), finding({ text: "4", code: "c/d" }), finding({ text: "5" })];
    expect(alike(list).map((g) => g.map((f) => f.text))).toEqual([["1", "2"], ["3"], ["4"], ["5"]]);
  });

  it("tell numbers in both units and where they stand", () => {
    expect(numbersOf(finding({ got: 25.4, limit: 40, unit: "mm" }), "mm")).toBe("found 25.4 mm (1 in), limit 40.0 mm (1 9/16 in)");
    expect(numbersOf(finding({ got: 98.7, limit: 30.7, unit: "kg" }), "mm")).toBe("found 98.7 kg, limit 30.7 kg");
    expect(numbersOf(finding({}), "mm")).toBe("");
    expect(placeText({ file: "piece.yaml", line: 3, column: 7, field: "box.length", element: "L1-A" })).toBe("piece.yaml:3:7, box.length, L1-A");
    expect(placeText({})).toBe("");
  });
});

describe("lists", () => {
  it("join batches weighed alike to the gram, and no others", () => {
    const [b] = example().concrete.batches;
    if (!b) throw new Error("no batch in the fixture");
    const other = { ...b, number: 3, parts: b.parts.map((p, i) => (i === 0 ? { ...p, mass_kg: p.mass_kg + 0.002 } : p)) };
    expect(runs([b, { ...b, number: 2 }, other]).map((r) => [r.first.number, r.last.number, r.alike])).toEqual([[b.number, 2, 2], [3, 3, 1]]);
  });

  it("say what to buy, also without packages", () => {
    const line = { name: "x", room: "resin", need: 14, unit: "l", bought: 15, left: 1, price: 0, priced: false };
    expect(buy({ ...line, buy: [{ count: 1, size: 10 }, { count: 2, size: 2.5 }] })).toBe("1 × 10 l + 2 × 2.50 l");
    expect(buy({ ...line, buy: null })).toBe("15 l, package size not stated");
  });
});

describe("problemOf", () => {
  it("reads the server's reason, and says so where there is none", () => {
    expect(problemOf({ error: "e", hint: "h" }, 422)).toEqual({ error: "e", hint: "h" });
    expect(problemOf("<html>", 502).error).toContain("502");
    expect(problemOf(undefined, 500).hint).not.toBe("");
  });
});
