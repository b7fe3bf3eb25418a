import { signal } from "@preact/signals";
import { expect, test, vi } from "vitest";
import type { Station } from "../../src/api/types";

vi.stubGlobal("location", { hash: "" });
vi.stubGlobal("sessionStorage", { getItem: () => null });
vi.stubGlobal("matchMedia", () => ({ matches: false, addEventListener: () => undefined }));
const { keepForStation, readAs } = await import("../../src/state/kept");
const { station } = await import("../../src/state/station");

const open = (file: string) => (station.value = { file } as Station);

test("what is chosen is kept at once, and is each station's own", () => {
  const kept = new Map<string, string>([["sheet b.toml", '{"flow":"5 gpm"}']]);
  const store = {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => void kept.set(key, text),
  } as Storage;
  const flow = signal("");
  keepForStation("sheet", store, () => ({ flow: flow.value }), (text) => {
    flow.value = readAs<{ flow: string }>(text).flow ?? "";
  });
  open("a.toml");
  flow.value = "8 gpm";
  expect(kept.get("sheet a.toml")).toBe('{"flow":"8 gpm"}');
  open("b.toml");
  expect(flow.value).toBe("5 gpm");
  open("c.toml");
  expect(flow.value).toBe("");
  open("a.toml");
  expect(flow.value).toBe("8 gpm");
});

test.each([null, "", "{"])("%j was nothing", (text) => {
  expect(readAs(text)).toEqual({});
});
