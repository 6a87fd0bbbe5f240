import { defineConfig } from "@playwright/test";

const asRoot = process.getuid?.() === 0;

export default defineConfig({
  testDir: "e2e",
  outputDir: "test-results",
  workers: 1,
  fullyParallel: false,
  forbidOnly: true,
  timeout: 150_000,
  expect: { timeout: 15_000 },
  reporter: [["list"]],
  use: {
    browserName: "chromium",
    launchOptions: { executablePath: "/usr/bin/chromium", args: asRoot ? ["--no-sandbox"] : [] },
  },
  projects: [
    { name: "desk", use: { viewport: { width: 1280, height: 800 } } },
    // What an edit does to the plan has no width: on the desk alone.
    { name: "phone", testIgnore: "change.spec.ts", use: { viewport: { width: 390, height: 844 }, hasTouch: true } },
  ],
});
