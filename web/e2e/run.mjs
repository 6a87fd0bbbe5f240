/* oxlint-disable no-await-in-loop -- one page after the other, on purpose: the machine is small and faults must name their page */
// Opens the built program in Chromium at desk and phone width, light and dark. Fails on
// any console error, on an axe violation, on sideways scrolling, or where the view
// switch does not turn the piece over. SHOTS=folder keeps pictures.
import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { chromium } from "@playwright/test";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const faults = [];

const server = spawn("../bin/pourwright", ["serve", "../examples/estuary-bench/piece.yaml", "--address", "127.0.0.1:0"]);
const address = await new Promise((found, lost) => {
  server.stdout.on("data", (text) => { const m = /http:\S+/.exec(text); if (m) found(m[0]); });
  server.on("exit", () => lost(new Error("the program ended before it served")));
  setTimeout(() => lost(new Error("no address within 20 s")), 20000);
});

const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox", "--disable-quic", "--disable-background-networking"] });
let count = 0;
try {
  for (const [width, height] of [[1280, 900], [390, 844]]) {
    for (const colorScheme of ["light", "dark"]) {
      const name = `${width} px, ${colorScheme}`;
      const page = await browser.newPage({ viewport: { width, height }, colorScheme, reducedMotion: "reduce" });
      page.on("console", (m) => { if (m.type() === "error") faults.push(`${name}: console: ${m.text()}`); });
      page.on("pageerror", (e) => faults.push(`${name}: ${e}`));
      await page.goto(address);
      await page.waitForSelector("svg path", { timeout: 10000 });
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      if (wide > 1) faults.push(`${name}: the page is ${wide} px too wide`);
      // axe is put in by the protocol, past the page's own content policy.
      const session = await page.context().newCDPSession(page);
      await session.send("Runtime.evaluate", { expression: axe });
      const seen = await page.evaluate(() => globalThis.axe.run());
      for (const v of seen.violations) faults.push(`${name}: axe ${v.id}: ${v.help} (${v.nodes[0]?.target})`);
      if (process.env.SHOTS) await page.screenshot({ path: `${process.env.SHOTS}/${width}-${colorScheme}.png`, fullPage: true });
      await page.close();
      count += 1;
    }
  }
} finally {
  await browser.close();
  server.kill();
}
for (const f of faults) console.error(f);
console.log(`${count} page runs, ${faults.length} faults`);
process.exit(faults.length ? 1 : 0);
