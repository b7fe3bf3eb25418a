import { defineConfig } from "vitest/config";

// The workbench in a browser: one test file at a time, since each starts a program and a browser. A browser on a busy
// machine may lose a page through no fault of the program: what fails is tried once more, and that is told.
export default defineConfig({
  test: {
    include: ["browser/**/*.test.ts"],
    fileParallelism: false,
    testTimeout: 60_000,
    hookTimeout: 60_000,
    retry: 1,
  },
});
