import { join } from "node:path";
import { defineConfig, type Plugin } from "vite";

/** Puts the script and the styles of the page into the page, so that it is one file. */
function inOnePage(): Plugin {
  return {
    name: "in-one-page",
    enforce: "post",
    generateBundle(_, bundle) {
      const files = Object.values(bundle);
      const page = files.find((f) => f.fileName.endsWith(".html"));
      if (page?.type !== "asset") throw new Error("the bundle has no page");
      const style = files.flatMap((f) => (f.type === "asset" && f.fileName.endsWith(".css") ? [String(f.source)] : []));
      const script = files.flatMap((f) => (f.type === "chunk" ? [f.code.replaceAll("</script", "<\\/script")] : []));
      const bare = String(page.source).replace(/\s*<script [^>]*src=[^>]*><\/script>|\s*<link [^>]*rel="stylesheet"[^>]*>/g, "");
      const whole = `<style>${style.join("")}</style><script type="module">${script.join("")}</script></head>`;
      page.source = bare.replace("</head>", () => whole);
      for (const f of files) if (f !== page) delete bundle[f.fileName];
    },
  };
}

/** Beside the page of the workbench. */
const out = join(process.env["FORECOURSE_WEB_OUT"] ?? "../build/release/web", "../lesson-page");

// The lesson as one page that needs no program: the engine, the station and the lesson are put into it by the program.
export default defineConfig({
  base: "./",
  publicDir: false,
  plugins: [inOnePage()],
  build: {
    outDir: out,
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 1_000_000,
    cssCodeSplit: false,
    modulePreload: false,
    rolldownOptions: { input: "lesson.html", output: { codeSplitting: false } },
  },
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
});
