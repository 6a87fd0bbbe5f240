import { describe, expect, it } from "vitest";
import { figures, looksDown, rooms, sideOf, toView, turns, type Drawing, type Title } from "./drawing";

const LIST: Title[] = [
  { name: "plan-finished", title: "Plan, as it stands in use", room: "relief", view: "finished" },
  { name: "plan-form", title: "Plan, looking into the form", room: "relief", view: "form" },
  { name: "section", title: "Section A-A", room: "relief", view: "finished" },
  { name: "layer-1", title: "Knockout layer 1", room: "relief", view: "form" },
  { name: "layer-2-form", title: "Layer 2", room: "relief", view: "form" },
  { name: "notes", title: "Notes", room: "relief", view: "" },
];

describe("figures", () => {
  const list = figures(LIST);

  it("join the two sides of one thing", () => {
    expect(list.map((f) => [f.key, f.title])).toEqual([
      ["plan", "Plan"], ["section", "Section"], ["layer-1", "Layer 1"], ["layer-2", "Layer 2"], ["notes", "Notes"],
    ]);
    expect(list.map(turns)).toEqual([true, false, false, false, false]);
  });

  it("show the wanted side, or the only one there is, and say which", () => {
    const shown = (side: "finished" | "form") => list.map((f) => sideOf(f, side));
    expect(shown("form")[0]).toEqual({ name: "plan-form", view: "form" });
    expect(shown("finished")[0]).toEqual({ name: "plan-finished", view: "finished" });
    expect(shown("finished")[2]).toEqual({ name: "layer-1", view: "form" });
    expect(shown("form")[1]).toEqual({ name: "section", view: "finished" });
    expect(shown("form")[4]).toEqual({ name: "notes", view: "" });
    expect(sideOf({ key: "x", title: "x", room: "", names: {} }, "form")).toBeUndefined();
  });

  it("of nothing are none", () => expect(figures([])).toEqual([]));
});

describe("a place on the piece", () => {
  it("turns over about the width, never the length", () => {
    expect(toView([100, 40], "finished", "form", 1220)).toEqual([1120, 40]);
    expect(toView([100, 40], "form", "form", 1220)).toEqual([100, 40]);
    expect(toView([100, 40], "finished", "", 1220)).toEqual([100, 40]);
    expect(toView(toView([3, 4], "finished", "form", 1220), "form", "finished", 1220)).toEqual([3, 4]);
  });

  it("stands only on drawings that look down on it", () => {
    const named = (name: string, view: Drawing["view"]): Drawing => ({ name, title: name, view, box: { min: [0, 0], max: [1, 1] }, items: [] });
    expect([named("plan-form", "form"), named("layer-3", "form"), named("section", "finished"), named("panels", "form"), named("plan", "")].map(looksDown))
      .toEqual([true, true, false, false, false]);
  });
});

describe("rooms", () => {
  it("group figures in building order", () => {
    const of = (name: string, room: string) => ({ name, title: name, room, view: "" as const });
    const list = rooms(figures([of("lifts", "resin"), of("plan", "relief"), of("section", "relief"), of("odd", "yard"), of("sheet-1", "knockout")]));
    expect(list.map((r) => [r.title, r.first.key])).toEqual([["Yard", "odd"], ["Piece", "plan"], ["Knockout", "sheet-1"], ["Resin", "lifts"]]);
  });
});
