import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { tmpdir } from "node:os";
import type { Page } from "@playwright/test";
import { expect, test } from "./piece";

async function openResin(page: Page): Promise<void> {
  await page.locator("button[aria-controls=stage-resin]").click();
  await expect(page.locator("#stage-resin .lifts > li").first()).toBeVisible();
}

// drawn is what the canvas of a map shows.
const drawn = (page: Page, n: number) => page.locator(".heat canvas").nth(n).evaluate((c) => (c as HTMLCanvasElement).toDataURL());

const atLeast = async (page: Page, selector: string, px: number) => {
  for (const el of await page.locator(selector).all()) {
    if (!(await el.isVisible())) continue;
    const box = await el.boundingBox();
    expect(box?.height, `height of ${selector} “${await el.innerText()}”`).toBeGreaterThanOrEqual(px);
  }
};

test("the maps of the cure follow the hour by keyboard, and read out places", async ({ open }) => {
  await open.getByRole("navigation", { name: "Drawings of" }).getByRole("button", { name: "Resin" }).click();
  const bar = open.getByRole("slider", { name: "Time after the first pour" });
  await bar.focus();
  await open.keyboard.press("Home");
  await expect(bar).toHaveAttribute("aria-valuetext", "At the first pour");
  const [planAtFirst, cutAtFirst] = [await drawn(open, 0), await drawn(open, 1)];
  await open.keyboard.press("ArrowRight");
  await expect(bar).toHaveAttribute("aria-valuetext", /^\d+ h after the first pour$/);
  await open.locator(".moments button", { hasText: "Peak" }).click();
  expect(await drawn(open, 0)).not.toBe(planAtFirst);
  expect(await drawn(open, 1)).not.toBe(cutAtFirst);
  await expect(open.locator(".pin").first()).toHaveText(/^\d+\.\d °C$/);
  await expect(open.locator(".iso-value").first()).toHaveText(/^\d+(\.\d)?$/);

  await open.locator(".heat").first().focus();
  await open.keyboard.press("ArrowRight");
  const said = await open.locator(".map-said").innerText();
  expect(said).toMatch(/^\d+\.\d °C, \d+ mm from the left end, \d+ mm from the near side$/);
  await open.keyboard.press("ArrowLeft");
  await expect(open.locator(".map-said")).not.toHaveText(said);
  await open.getByRole("button", { name: "Later", exact: true }).click();
  await expect(open.locator(".map-said")).toContainText("warmest");

  await open.getByLabel("Pour again").check();
  await expect(open.locator(".states li")).toHaveText(["too soft", "bonds", "sand it first"]);
  await bar.focus();
  await open.keyboard.press("Home");
  await expect(open.locator(".map-said")).toContainText("100 % too soft");
  await open.getByLabel("Hard at").check();
  await expect(bar).toHaveCount(0);
  await expect(open.locator(".pin").first()).toHaveText(/ h$/);
  await atLeast(open, ".cure button, .cure .kinds label", open.viewportSize()?.width === 390 ? 44 : 20);
});

test("a lift is moved, its consequence told, and the trial stopped", async ({ open, served }) => {
  const document = await open.request.get(new URL("/api/plan", served.address).href);
  const before = document.headers()["etag"];
  await openResin(open);
  await expect(open.locator(".ways li")).not.toHaveCount(0);
  const depth = (n: number) => open.getByLabel(`Lift ${n}, depth in mm`, { exact: true });
  const [one, two] = [Number(await depth(1).inputValue()), Number(await depth(2).inputValue())];
  await open.getByRole("button", { name: "More: Lift 1, depth in mm" }).click();
  expect(Number(await depth(1).inputValue())).toBeCloseTo(one + 1, 5);
  expect(Number(await depth(2).inputValue())).toBeCloseTo(two - 1, 5);
  await atLeast(open, ".try button, .try input", 44);

  await open.getByRole("button", { name: "See what it does" }).click();
  await open.getByRole("button", { name: "Stop", exact: true }).click();
  await expect(open.locator(".try")).toContainText("Stopped. Nothing was changed.");

  await open.getByRole("button", { name: "See what it does" }).click();
  const told = open.getByRole("region", { name: "What it does" });
  await expect(told).toBeVisible({ timeout: 60_000 });
  await expect(told.getByRole("row", { name: /^Peak/ })).toContainText("°C");
  await expect(told.getByRole("row", { name: /^Lifts/ })).toContainText((one + 1).toFixed(1));
  await expect(open.locator(".try")).toContainText(`{depth: ${one + 1} mm}`);
  expect((await open.request.get(new URL("/api/plan", served.address).href)).headers()["etag"]).toBe(before);

  await depth(1).fill("200");
  await expect(open.locator(".try-fault")).toContainText("needs a depth above 0 mm");
  await expect(open.getByRole("button", { name: "See what it does" })).toBeDisabled();
  await open.getByRole("button", { name: "As planned" }).click();
  await expect(depth(1)).toHaveValue(one.toFixed(1));
});

test("a resin is estimated from its sheet and from a logger's file", async ({ open, errors }) => {
  await openResin(open);
  await open.locator(".fit summary").click();
  await open.getByRole("button", { name: "Estimate" }).click();
  await expect(open.locator(".fit-wrong")).toContainText(/pot life/, { timeout: 30_000 });
  expect(errors.filter((e) => !e.includes("422"))).toEqual([]);
  errors.length = 0; // the browser notes an answer that is a refusal

  await open.locator(".fit input[name=pot_life]").fill("4.5 h");
  await open.getByRole("button", { name: "Estimate" }).click();
  await expect(open.locator(".fit-peak")).toContainText(/between \d+ °C and \d+ °C/, { timeout: 60_000 });
  await expect(open.locator(".fit-next li").first()).toContainText("thermocouple");

  const log = join(tmpdir(), `logger-${test.info().project.name}-${process.pid}.csv`);
  writeFileSync(log, "hours;C\n0;22\n2;23,4\n4;26\n6;31\n8;39\n10;46\n12;45\n16;37\n24;28\n");
  await open.locator(".fit input[type=file]").setInputFiles(log);
  await expect(open.locator(".fit-wide output")).toHaveText("9 readings, 0 to 24 h; warmest 46 °C at 10 h.");
  await open.locator(".fit input[name=test_depth]").fill("40 mm");
  await open.getByRole("button", { name: "Estimate" }).click();
  const rows = open.getByRole("region", { name: "How well the estimate meets what was given" }).locator("tbody tr");
  await expect(rows.filter({ hasText: "test pour" })).toContainText(/sd/, { timeout: 60_000 });
  await open.locator(".fit textarea").fill(`${readFileSync(log, "utf8")}20;30\n`);
  await expect(open.locator(".fit-wide output")).toHaveText("Line 11: 20 h does not come after 24 h.");
});
