import { mergeConfig } from "vite";
import { defineConfig } from "vitest/config";
import page from "./vite.config";

// The tests of what the page computes; those in a browser have a configuration of their own.
export default mergeConfig(page, defineConfig({ test: { include: ["tests/**/*.test.{ts,tsx}"] } }));
