import { defineConfig } from "vitest/config";

// No plugins: the compiler turns JSX into calls of preact by itself.
export default defineConfig({
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  build: {
    outDir: "dist",
    target: "es2023",
    modulePreload: { polyfill: false },
    assetsInlineLimit: 0, // the page's policy lets nothing in that is not a file
    sourcemap: false,
  },
  server: { proxy: { "/api": process.env.POURWRIGHT_ADDRESS ?? "http://127.0.0.1:8470" } },
  // The whole page in a DOM of its own takes a while on a busy machine.
  test: { environment: "happy-dom", include: ["src/**/*.test.{ts,tsx}"], testTimeout: 60_000 },
});
