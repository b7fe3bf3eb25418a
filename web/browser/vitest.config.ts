import { defineConfig } from "vitest/config";

// The workbench in a browser: one test file at a time, since each starts a program and a browser.
export default defineConfig({
  test: {
    include: ["browser/**/*.test.ts"],
    fileParallelism: false,
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
});
