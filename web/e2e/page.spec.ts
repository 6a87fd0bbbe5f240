import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "@playwright/test";
import { expect, test } from "./piece";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

// violations runs axe. It is put in by the browser's own protocol, since the page's
// policy lets no foreign script in.
async function violations(page: Page): Promise<string[]> {
  const session = await page.context().newCDPSession(page);
  await session.send("Runtime.evaluate", { expression: axe });
  const result = await session.send("Runtime.evaluate", {
    awaitPromise: true, returnByValue: true,
    expression: "axe.run().then(r => ({ passes: r.passes.length, list: r.violations.map(v => v.id + ': ' + v.nodes.map(n => n.target + ' ' + n.failureSummary).join('; ')) }))",
  });
  const value = result.result.value as { passes: number; list: string[] };
  expect(value.passes, "rules that axe could apply").toBeGreaterThan(15);
  return value.list;
}

const top = async (page: Page, selector: string) => (await page.locator(selector).first().boundingBox())?.y ?? Number.NaN;

test("shows the piece: name, size, findings, numbers, figure, stages", async ({ open }) => {
  await expect(open.getByRole("heading", { level: 1 })).toHaveText("Estuary bench");
  await expect(open.locator(".size-main")).toHaveText("1220 × 410 × 430 mm");
  await expect(open.locator(".finding").first()).toBeVisible();
  await expect(open.locator(".number-order .number-main")).toHaveText(/^\d+\.\d+ l$/);
  await expect(open.locator(".stage")).toHaveCount(11);
  await expect(open.locator(".measure-list li").first()).toBeVisible();
  await expect(open.locator(".link")).toHaveText("follows the document");
});

for (const colorScheme of ["light", "dark"] as const) {
  test(`axe finds nothing, ${colorScheme}, every stage and note open`, async ({ open }) => {
    await open.emulateMedia({ colorScheme, reducedMotion: "reduce" });
    const stages = open.locator(".stage button[aria-expanded=false]:enabled");
    while ((await stages.count()) > 0) await stages.first().click();
    for (const notes of await open.locator(".notes summary").all()) await notes.click();
    await open.locator(".fit summary").click();
    expect(await violations(open)).toEqual([]);
    await open.getByRole("navigation", { name: "Drawings of" }).getByRole("button", { name: "Resin" }).click();
    await expect(open.locator(".heat")).toHaveCount(2);
    expect(await violations(open)).toEqual([]);
    const sideways = await open.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(sideways, "px of sideways scrolling").toBe(0);
  });
}

// leftEnd is where on the figure the piece's left end is written, 0 to 1; no number
// while the sheet stands edge-on and has no width.
async function leftEnd(page: Page): Promise<number> {
  const sheet = await page.locator(".drawing").boundingBox();
  const text = await page.locator(".drawing text", { hasText: "left end" }).boundingBox();
  if (!sheet || !text || sheet.width === 0) return Number.NaN;
  return (text.x + text.width / 2 - sheet.x) / sheet.width;
}

for (const reducedMotion of ["reduce", "no-preference"] as const) {
  test(`the switch turns the piece over, motion ${reducedMotion}`, async ({ open }) => {
    await open.emulateMedia({ reducedMotion });
    expect(await leftEnd(open)).toBeLessThan(0.35);
    await expect(open.locator(".stamp")).toHaveText("FINISHED VIEW");
    await open.getByLabel("Form view").check();
    await expect(open.locator(".stamp")).toHaveText("FORM VIEW");
    await expect.poll(() => leftEnd(open)).toBeGreaterThan(0.65);
    await open.getByLabel("Finished view").check();
    await expect.poll(() => leftEnd(open)).toBeLessThan(0.35);
  });
}

test("a finding's place is marked on the figure and turns with the piece", async ({ open }) => {
  await open.locator(".notes summary").click();
  const show = open.locator(".show").first();
  await show.click();
  await expect(show).toHaveAttribute("aria-pressed", "true");
  const across = async () => {
    const [sheet, ring] = [await open.locator(".drawing").boundingBox(), await open.locator(".found circle").boundingBox()];
    return sheet && ring ? (ring.x + ring.width / 2 - sheet.x) / sheet.width : Number.NaN;
  };
  const before = await across();
  await open.getByLabel("Form view").check();
  await expect.poll(async () => Math.abs((await across()) - (1 - before))).toBeLessThan(0.08);
  expect(Math.abs((await across()) - before), "the place moves to the other side").toBeGreaterThan(0.04);
  await open.getByRole("navigation", { name: "Drawings of" }).getByRole("button", { name: "Form" }).click();
  await open.getByRole("tab", { name: "Panels" }).click();
  await expect(open.locator(".found")).toHaveCount(0);
  await show.click();
  await expect(show).toHaveAttribute("aria-pressed", "false");
});

test("everything can be done from the keyboard", async ({ open }) => {
  await open.keyboard.press("Tab");
  await expect(open.locator(".skip")).toBeFocused();
  const reach = async (selector: string) => {
    for (let i = 0; i < 80; i++) {
      if (await open.locator(selector).first().evaluate((el) => el === document.activeElement)) return;
      await open.keyboard.press("Tab");
    }
    throw new Error(`80 tabs do not reach ${selector}`);
  };
  await reach(".head-paper a");
  const outline = await open.locator(".head-paper a").first().evaluate((el) => getComputedStyle(el).outlineWidth);
  expect(outline, "width of the focus ring").toBe("3px");
  await reach(".tabs [aria-selected=true]");
  await open.keyboard.press("ArrowRight");
  await expect(open.getByRole("tab", { name: "Section" })).toBeFocused();
  await expect(open.getByRole("tab", { name: "Section" })).toHaveAttribute("aria-selected", "true");
  await open.keyboard.press("Home");
  await reach(".switch input:checked");
  await open.keyboard.press("ArrowRight");
  await expect(open.locator(".stamp")).toHaveText("FORM VIEW");
  await reach(".stage button");
  await open.keyboard.press("Enter");
  await expect(open.locator("#stage-relief table").first()).toBeVisible();
  await open.keyboard.press("Enter");
  await expect(open.locator("#stage-relief table")).toHaveCount(0);
});

test("each stage opens its tables, with both units", async ({ open }) => {
  for (const stage of ["relief", "knockout", "form", "concrete", "resin", "structure", "calendar", "cost"]) {
    await open.locator(`button[aria-controls=stage-${stage}]`).click();
    await expect(open.locator(`#stage-${stage} :is(table, dl, ol)`).first()).toBeVisible();
  }
  await expect(open.locator("#stage-relief tbody tr").first()).toContainText(/24\.6 mm31\/32 in/);
  await expect(open.locator("#stage-resin")).toContainText("Scale after A");
  await expect(open.locator("#stage-concrete")).toContainText("never above");
  await expect(open.locator("body")).not.toContainText(/NaN|undefined|null|\[object/);
});

test("the pack and the drawing can be taken away", async ({ open, served }) => {
  for (const [name, kind] of [["A4", "application/pdf"], ["Letter", "application/pdf"], ["this figure as SVG", "image/svg+xml"]] as const) {
    const href = await open.getByRole("link", { name, exact: true }).getAttribute("href");
    const answer = await open.request.get(new URL(href ?? "", served.address).href);
    expect(answer.status(), name).toBe(200);
    expect(answer.headers()["content-type"], name).toBe(kind);
    expect((await answer.body()).length, name).toBeGreaterThan(1000);
  }
});

test("on the desk the figure stays in sight", async ({ open }, info) => {
  test.skip(info.project.name !== "desk", "the phone has one column");
  await open.evaluate(() => window.scrollTo(0, 1200));
  const box = await open.locator(".drawing").boundingBox();
  expect(box?.y).toBeGreaterThanOrEqual(0);
  expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThan(800);
  expect(box?.width).toBeGreaterThan(600);
});

test("on the phone: one column in order, large numbers, targets of 18 mm", async ({ open }, info) => {
  test.skip(info.project.name !== "phone", "the desk has two columns");
  const order = [];
  for (const s of [".findings", ".numbers", ".figure", ".stages", ".measure"]) order.push(await top(open, s));
  expect(order).toEqual(order.toSorted((a, b) => a - b));
  const numeral = await open.locator(".number-order b").evaluate((el) => Number.parseFloat(getComputedStyle(el).fontSize));
  expect(numeral, "px").toBeGreaterThanOrEqual(64);
  await open.locator(".notes summary").click();
  for (const s of ["button", "a:not(.skip)", "summary", ".switch label"]) {
    for (const el of await open.locator(s).all()) {
      if (!(await el.isVisible())) continue;
      const box = await el.boundingBox();
      expect(box?.height, `height of ${s} “${await el.innerText()}”`).toBeGreaterThanOrEqual(68);
    }
  }
});
