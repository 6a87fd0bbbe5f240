import { render } from "preact";
import { afterEach, expect, test } from "vitest";
import { Findings, worst } from "./findings";
import type { Finding, Plan, Severity } from "./plan";

const found = (severity: Severity, text: string): Finding => ({
  code: `relief/${severity}`, severity, stage: "relief", where: { file: "piece.yaml", line: 7, field: "basin.depth" },
  text, remedy: `Settle ${text}`,
});

// show renders the findings of a plan that holds nothing else they read.
function show(findings: Finding[]): HTMLElement {
  render(<Findings plan={{ piece: { units: "mm" }, findings } as unknown as Plan} />, document.body);
  return document.body;
}

afterEach(() => render(null, document.body));

test("the worst finding stands first, whatever order the plan has", () => {
  const page = show([found("note", "a"), found("caution", "b"), found("stop", "c"), found("caution", "d")]);
  const texts = [...page.querySelectorAll(".finding-text")].map((e) => e.textContent);
  expect(texts).toEqual(["c", "b", "d", "a"]);
});

test("each finding carries its place and its remedy", () => {
  const page = show([found("caution", "the floor is thin")]);
  expect(page.querySelector(".finding-numbers")?.textContent).toBe("piece.yaml:7, basin.depth");
  expect(page.querySelector(".finding-remedy")?.textContent).toBe("Do Settle the floor is thin");
});

test("only a stop raises the banner", () => {
  expect(show([found("caution", "a")]).querySelector("[role=alert]")).toBeNull();
  expect(show([found("stop", "a")]).querySelector("[role=alert]")?.textContent).toContain("STOP");
});

test.each<[Severity[], Severity | undefined]>([
  [[], undefined], [["note"], "note"], [["note", "caution"], "caution"], [["caution", "stop", "note"], "stop"],
])("the worst of %j is %s", (list, want) => {
  expect(worst(list.map((s) => found(s, s)))).toBe(want);
});
