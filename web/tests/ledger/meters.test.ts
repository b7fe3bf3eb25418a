import { expect, test } from "vitest";
import type { Judged, Meter, MeterLimit, Proving } from "../../src/panels/ledger/meters/documents";
import { lastOf, money, percent, standing, stateOf, worstAgainst, worstOf } from "../../src/panels/ledger/meters/rows";
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

const limit = (name: string, known = "verified", applies = true) => ({ name, known, applies }) as MeterLimit;
const found = (subject: string, of: string, state: string) => ({ subject, rule: `meter-error, ${of}`, state }) as Finding;

test("a meter has the worst state of the limits that decide something", () => {
  const limits = [limit("a"), limit("b"), limit("c", "from memory, not verified")];
  const findings = [
    found("D1.a", "a", "meets"),
    found("D1.a", "b", "does not apply"),
    found("D1.a", "c", "not determined"),
    found("D2.a", "a", "falls short"),
    found("D2.a", "b", "not determined"),
    found("D3.a", "a", "meets"),
    found("D3.a", "b", "not determined"),
    found("D4.a", "a", "does not apply"),
  ];
  const states = ["D1.a", "D2.a", "D3.a", "D4.a", "D5.a"].map((hose) => stateOf(hose, findings, limits));
  expect(states).toEqual(["meets", "falls short", "not determined", "not determined", "not determined"]);
});

test("a limit stands as its finding does, and says why", () => {
  const of = (within: boolean | null, one: MeterLimit, state: string, corrected = true) =>
    standing({ hose: "D1.a", judged: { within } as Judged, limit: one, corrected }, [found("D1.a", one.name, state)]);
  expect(of(true, limit("a"), "meets")).toEqual({ state: "meets", words: "Meets: within" });
  expect(of(true, limit("a"), "close")).toEqual({ state: "close", words: "Close: within" });
  expect(of(false, limit("a"), "falls short")).toEqual({ state: "falls short", words: "Falls short: beyond" });
  expect(of(true, limit("a"), "not determined", false)).toEqual({
    state: "not determined",
    words: "Not determined: within, temperatures left out",
  });
  const told = (...args: Parameters<typeof of>) => of(...args).words;
  expect(told(true, limit("a", "from memory, not verified"), "not determined")).toBe("Not determined: within, the limit is from memory");
  expect(told(false, limit("a", "verified", false), "does not apply")).toBe("Does not apply: beyond, not a rule here");
  expect(told(null, limit("a"), "does not apply")).toBe("Does not apply: for another draft");
  expect(told(false, limit("a"), "falls short", false)).toBe("Falls short: beyond");
});

test("each limit takes the draw that the program found worst against it", () => {
  const judged = (n: number) => ({ limit: n });
  const draws = [
    { draw: "1", limits: [judged(0), judged(1)] },
    { draw: "2", limits: [judged(0), judged(1)] },
    { draw: "3", limits: [judged(1)] },
  ];
  const against = [
    { draw: 1, limit: 0 },
    { draw: 2, limit: 1 },
    { draw: 2, limit: 0 },
  ];
  expect(worstAgainst({ draws, against } as unknown as Proving).map(({ draw, judged: j }) => [draw.draw, j.limit])).toEqual([
    ["2", 0],
    ["3", 1],
  ]);
  expect(worstAgainst(undefined)).toEqual([]);
});

test("money stands in the currency of its own price", () => {
  const year = (sum: number | null, currency: string | null) => ({ money: sum, currency }) as Meter["year"];
  const told = [year(1234.4, "USD"), year(-56, "EUR"), year(7, null), year(null, null)].map(money);
  expect(told).toEqual(["1\u00A0234\u00A0USD", "−56\u00A0EUR", "7", null]);
});
