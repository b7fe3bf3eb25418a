import { expect, test } from "vitest";
import type { Judged, Meter, MeterLimit, Proving } from "../../src/panels/ledger/meters/documents";
import { lastOf, money, percent, standing, stateOf, worstOf } from "../../src/panels/ledger/meters/rows";
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
  const proved = (hose: string, fuel_by: string | null = "by its density") =>
    ({ hose, provings: [{ worst: 0, draws: [{ fuel_by }] }] }) as unknown as Meter;
  expect(stateOf(proved("D1.a"), findings)).toBe("meets");
  expect(stateOf(proved("D2.a"), findings)).toBe("falls short");
  expect(stateOf(proved("D3.a"), findings)).toBe("not determined");
  expect(stateOf(proved("D1.a", null), findings)).toBe("not determined");
  expect(stateOf(proved("D2.a", null), findings)).toBe("falls short");
});

test("a limit from memory, or not of this place, decides nothing", () => {
  const judged = (within: boolean | null) => ({ within }) as Judged;
  const limit = (known: string, applies = true) => ({ known, applies }) as MeterLimit;
  const of = (within: boolean | null, known: MeterLimit, corrected = true) => standing(judged(within), known, corrected);
  expect(of(true, limit("verified"))).toEqual({ state: "meets", words: "Meets: within" });
  expect(of(false, limit("verified"))).toEqual({ state: "falls short", words: "Falls short: beyond" });
  expect(of(true, limit("from memory, not verified")).state).toBe("not determined");
  expect(of(false, limit("verified", false)).state).toBe("does not apply");
  expect(of(null, limit("verified")).state).toBe("does not apply");
  expect(of(true, limit("verified"), false)).toEqual({
    state: "not determined",
    words: "Not determined: within, temperatures left out",
  });
  expect(of(false, limit("verified"), false).state).toBe("falls short");
});

test("money stands in the currency of its own price", () => {
  const year = (sum: number | null, currency: string | null) => ({ money: sum, currency }) as Meter["year"];
  const told = [year(1234.4, "USD"), year(-56, "EUR"), year(7, null), year(null, null)].map(money);
  expect(told).toEqual(["1\u00A0234\u00A0USD", "−56\u00A0EUR", "7", null]);
});
