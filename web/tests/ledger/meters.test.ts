import { expect, test } from "vitest";
import type { Judged, Meter, MeterLimit, Proving } from "../../src/panels/ledger/meters/documents";
import { lastOf, percent, standing, stateOf, worstOf } from "../../src/panels/ledger/meters/rows";
import type { Finding } from "../../src/panels/parts/finding";

test("the worst draw of the last proving is told", () => {
  const draw = { error: 0.002 };
  const proving = { worst: 1, draws: [{}, draw] } as unknown as Proving;
  expect(worstOf(lastOf({ provings: [{ worst: 0, draws: [{}] }, proving] } as unknown as Meter))).toBe(draw);
  expect(worstOf({ worst: null, draws: [] } as unknown as Proving)).toBeUndefined();
  expect(worstOf(undefined)).toBeUndefined();
  expect(percent(0.0022441)).toBe("0.224");
  expect(percent(null)).toBe("–");
});

test("a meter has the worst state that is determined", () => {
  const found = (subject: string, state: string) => ({ subject, state }) as Finding;
  const findings = [found("D1.a", "not determined"), found("D1.a", "meets"), found("D2.a", "falls short"), found("D2.a", "meets")];
  expect(stateOf("D1.a", findings)).toBe("meets");
  expect(stateOf("D2.a", findings)).toBe("falls short");
  expect(stateOf("D3.a", findings)).toBe("not determined");
});

test("a limit from memory, or not of this place, decides nothing", () => {
  const judged = (within: boolean | null) => ({ within }) as Judged;
  const limit = (known: string, applies = true) => ({ known, applies }) as MeterLimit;
  expect(standing(judged(true), limit("verified"))).toEqual({ state: "meets", words: "Within" });
  expect(standing(judged(false), limit("verified"))).toEqual({ state: "falls short", words: "Beyond" });
  expect(standing(judged(true), limit("from memory, not verified")).state).toBe("not determined");
  expect(standing(judged(false), limit("verified", false)).state).toBe("does not apply");
  expect(standing(judged(null), limit("verified")).state).toBe("does not apply");
});
