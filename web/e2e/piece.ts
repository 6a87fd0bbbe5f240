// What every page test stands on: the built program serving a copy of the example,
// and a page on which a console error is a failure.

import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test as base, expect, type Page } from "@playwright/test";

const BINARY = join(import.meta.dirname, "../../bin/pourwright");
const EXAMPLE = join(import.meta.dirname, "../../examples/estuary-bench");

export interface Served {
  address: string;
  edit(change: (text: string) => string): void;
  stop(): Promise<void>;
  start(): Promise<void>;
}

interface Fixtures {
  own: boolean; // a program of the test's own, whose document it may change
  served: Served;
  errors: string[];
  open: Page;
}

interface Shared { shared: Served }

function addressFrom(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let text = "";
    child.stdout?.on("data", (chunk: Buffer) => {
      text += chunk.toString();
      const found = /http:\/\/\S+/.exec(text);
      if (found) resolve(found[0]);
    });
    child.on("exit", (code) => reject(new Error(`the program ended with ${code} before it served: ${text}`)));
  });
}

// serving starts the program on a copy of the example, and ends it after use.
async function serving(use: (s: Served) => Promise<void>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "piece-"));
  cpSync(EXAMPLE, folder, { recursive: true });
  const piece = join(folder, "piece.yaml");
  let child: ChildProcess | undefined;
  const served: Served = {
    address: "",
    edit: (change) => writeFileSync(piece, change(readFileSync(piece, "utf8"))),
    async start() {
      const port = served.address === "" ? "0" : new URL(served.address).port;
      child = spawn(BINARY, ["serve", piece, "--address", `127.0.0.1:${port}`]);
      served.address = await addressFrom(child);
    },
    async stop() {
      const running = child;
      if (!running || running.exitCode !== null) return;
      const ended = once(running, "exit");
      running.kill("SIGTERM");
      await ended;
    },
  };
  await served.start();
  await use(served);
  await served.stop();
  rmSync(folder, { recursive: true });
}

const untouched = (): never => {
  throw new Error("this program is shared: say test.use({ own: true }) in the file that changes it");
};

export const test = base.extend<Fixtures, Shared>({
  own: [false, { option: true }],

  // Working the example out takes seconds; tests that only look share one program.
  // The fixture needs none of the others.
  // oxlint-disable-next-line no-empty-pattern
  shared: [async ({}, use) => {
    await serving((s) => use({ address: s.address, edit: untouched, start: untouched, stop: untouched }));
  }, { scope: "worker", timeout: 120_000 }],

  served: async ({ own, shared }, use) => {
    if (own) await serving(use);
    else await use(shared);
  },

  // Kept in every test. One that provokes errors on purpose empties the list before it ends.
  errors: [async ({ page }, use) => {
    const errors: string[] = [];
    page.on("console", (m) => {
      if (m.type() === "error" || m.type() === "warning") errors.push(m.text());
    });
    page.on("pageerror", (e) => errors.push(String(e)));
    await use(errors);
    expect(errors, "errors on the console").toEqual([]);
  }, { auto: true }],

  open: async ({ page, served }, use) => {
    await page.emulateMedia({ reducedMotion: "reduce" });
    await page.goto(served.address);
    await expect(page.locator(".drawing")).toBeVisible({ timeout: 90_000 });
    await use(page);
  },
});

export { expect };
