import { expect, test } from "./piece";

test.use({ own: true });

test("an edit says what it changed, in numbers, and the page follows", async ({ open, served }) => {
  const before = await open.locator(".number-shell .number-main").innerText();
  served.edit((text) => text.replaceAll("thickness: 7.5", "thickness: 8.5").replace("thickness: 19", "thickness: 21"));
  await expect(open.locator(".news")).toContainText(/shell 19\.0 → 21\.0 mm/, { timeout: 45_000 });
  await expect(open.locator(".news")).toContainText(/concrete in the shell \d+\.\d+ → \d+\.\d+ l/);
  await expect(open.locator(".number-shell .number-main")).not.toHaveText(before);
  await open.getByRole("button", { name: "Put this line away" }).click();
  await expect(open.locator(".news p")).toHaveCount(0);
});

test("a plan with a stop says STOP and still opens the pack", async ({ open, served }) => {
  served.edit((text) => text.replace("height: 430", "height: 80"));
  await expect(open.locator(".stop-banner")).toContainText("STOP", { timeout: 45_000 });
  await expect(open.locator(".finding").first()).toHaveClass(/finding-stop/);
  await expect(open.locator(".paper-stop")).toBeVisible();
  const answer = await open.request.get(new URL("/api/pack.pdf?paper=a4", served.address).href);
  expect(answer.status()).toBe(200);
  expect(answer.headers()["content-disposition"]).toContain("STOP");
});

test("a document that cannot be read says where and keeps the plan in sight", async ({ open, served }) => {
  served.edit((text) => text.replace("name: Estuary bench", "nme: Estuary bench\nbox: ["));
  await expect(open.locator(".trouble")).toContainText(/piece\.yaml/, { timeout: 45_000 });
  await expect(open.locator(".trouble-list li").first()).toBeVisible();
  await expect(open.locator(".trouble")).toContainText("Below is the plan as it was before.");
  await expect(open.locator(".drawing")).toBeVisible();
  served.edit((text) => text.replace("nme: Estuary bench\nbox: [", "name: Estuary table"));
  await expect(open.getByRole("heading", { level: 1 })).toHaveText("Estuary table", { timeout: 45_000 });
  await expect(open.locator(".trouble")).toHaveCount(0);
});

test("without a drawing the rest still shows", async ({ open, served }) => {
  served.edit((text) => text.replace("drawing: estuary.svg", "drawing: none.svg"));
  await expect(open.locator(".stage-not-computed").first()).toBeVisible({ timeout: 45_000 });
  await expect(open.locator(".stop-banner")).toBeVisible();
  await expect(open.locator(".stage-not-computed button").first()).toBeDisabled();
  await expect(open.locator(".number-order")).toHaveCount(0);
  await expect(open.getByRole("tab", { name: "Panels" })).toBeVisible(); // the only room left with a figure
  await expect(open.locator("body")).not.toContainText(/NaN|undefined/);
});

test("inches: every main number is customary, the other metric", async ({ open, served }) => {
  served.edit((text) => text.replace("units: mm", "units: in").replace("{length: 1220, width: 410, height: 430}", "{length: 48 in, width: 16 1/8 in, height: 17 in}")
    .replace("place: page", "place: centre").replaceAll(/(thickness|nominal|measured|kerf|overfill|terrace_guard|length): ([\d.]+)([,}\n])/g, "$1: $2 mm$3"));
  await expect(open.locator(".size-main")).toHaveText("48 × 16 1/8 × 17 in", { timeout: 45_000 });
  await expect(open.locator(".number-order .number-main")).toHaveText(/US gal$/);
  await expect(open.locator(".number-flip .number-main")).toHaveText(/lb .* oz$/);
});

test("the program stops and comes back", async ({ open, served, errors }) => {
  await served.stop();
  await expect(open.locator(".trouble")).toContainText("Not connected");
  await expect(open.locator(".link")).toHaveText(/not connected|has stopped/);
  await expect(open.locator(".drawing")).toBeVisible();
  await served.start();
  await expect(open.locator(".trouble")).toHaveCount(0, { timeout: 45_000 });
  await expect(open.locator(".link")).toHaveText("follows the document");
  // The browser itself notes each try to connect while there is no program.
  const others = errors.filter((e) => !/ERR_CONNECTION_REFUSED|ERR_INCOMPLETE_CHUNKED_ENCODING/.test(e));
  errors.length = 0;
  expect(others).toEqual([]);
});

test("what is computed is stopped, and taken up again", async ({ open, served, errors }) => {
  served.edit((text) => text.replace("terrace_guard: 3", "terrace_guard: 3\n  peak_limit: 45 C"));
  const working = open.getByRole("region", { name: "Working" });
  await working.getByRole("button", { name: "Stop" }).click({ timeout: 45_000 });
  await expect(open.locator(".trouble")).toContainText("Stopped before its end", { timeout: 15_000 });
  await expect(open.locator(".drawing")).toBeVisible(); // of the plan as it was
  await open.getByRole("button", { name: "Take it up again" }).click();
  await expect(open.locator(".trouble")).toHaveCount(0);
  await expect(open.locator(".news")).toContainText("Changed", { timeout: 90_000 });
  // The browser itself notes answers that are refusals.
  expect(errors.filter((e) => !e.includes("422"))).toEqual([]);
  errors.length = 0;
});
