import { describe, expect, test } from "vitest";
import {
  chosen, fileName, nothingKept, readKept, wanted, withCell, withSection, usualPaper,
} from "../../src/panels/reports/choice";
import type { Choices } from "../../src/panels/reports/documents";

const section = (id: string, has_content = true) => ({
  id,
  name: id,
  has_content,
  why_not: has_content ? null : "there is nothing",
});
const choices: Choices = {
  sections: [section("findings"), section("containment", false), section("flow")],
  cells: [{ name: "client", label: "Client", when_empty: "not given", text: "" }],
  pdf: { available: true, hint: null },
};

describe("what is in the report", () => {
  test("all that has something to tell, until a section is left out", () => {
    expect(chosen(choices, nothingKept).map((s) => s.id)).toEqual(["findings", "flow"]);
    const without = withSection(nothingKept, "findings", false);
    expect(chosen(choices, without).map((s) => s.id)).toEqual(["flow"]);
    expect(chosen(choices, withSection(without, "findings", true))).toHaveLength(2);
  });

  test("leaving a section out twice is put right by ticking it once", () => {
    const twice = withSection(withSection(nothingKept, "flow", false), "flow", false);
    expect(withSection(twice, "flow", true).out).toEqual([]);
  });

  test("nothing is asked for where no section is in it", () => {
    const none = withSection(withSection(nothingKept, "flow", false), "findings", false);
    expect(wanted(choices, none, "us")).toBeNull();
  });

  test("blank cells and cells that are not there are not sent", () => {
    const kept = withCell(withCell(withCell(nothingKept, "client", "A"), "drawn", "B"), "client", "  ");
    expect(wanted(choices, kept, "us")?.cells).toEqual({});
    expect(wanted(choices, withCell(kept, "client", "A"), "us")?.cells).toEqual({ client: "A" });
  });

  test("paper goes with the units until it is chosen", () => {
    expect(usualPaper("us")).toBe("letter");
    expect(wanted(choices, nothingKept, "si")?.paper).toBe("a4");
    expect(wanted(choices, { ...nothingKept, paper: "letter" }, "si")?.paper).toBe("letter");
  });
});

describe("what is kept", () => {
  test("comes back as it was", () => {
    const kept = withCell(withSection(nothingKept, "flow", false), "client", "A");
    expect(readKept(JSON.stringify(kept))).toEqual(kept);
  });

  test.each([null, "", "{", "[]", '"x"', '{"out":3,"cells":{"client":7},"paper":"a3"}'])("%j counts as nothing", (text) => {
    expect(readKept(text)).toEqual(nothingKept);
  });
});

test("a file is named after the site", () => {
  expect(fileName("hollin-gap.toml", "pdf")).toBe("hollin-gap-report.pdf");
});
