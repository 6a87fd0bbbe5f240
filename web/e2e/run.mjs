// Runs the page tests against the built program, or says clearly why it does not.
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";

const missing = [
  ["/usr/bin/chromium", "install Debian's chromium"],
  ["../bin/pourwright", "build the program first"],
].find(([file]) => !existsSync(file));

if (missing) {
  const [file, remedy] = missing;
  process.stdout.write(`SKIPPED: page tests in a browser (${file} absent; ${remedy})\n`);
} else {
  const run = spawnSync("npx", ["playwright", "test", ...process.argv.slice(2)], { stdio: "inherit" });
  process.exitCode = run.status ?? 1;
}
