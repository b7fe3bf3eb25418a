import { defineConfig } from "vite";

// The program serves what is built here from the folder `web` beside it; ./run sets FORECOURSE_WEB_OUT.
export default defineConfig({
  base: "/",
  build: {
    outDir: process.env["FORECOURSE_WEB_OUT"] ?? "../build/release/web",
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
});
