import { dayWords, daysIn, monthWords, shortDay } from "../../src/draw/days";
import { describe, expect, test } from "vitest";
import type { Explained, LedgerBook, LedgerRow } from "../../src/panels/ledger/documents";
import { axisOf, dipWords, endsTheBook, fallsOf, limitAhead, periodOf, rowOf } from "../../src/panels/ledger/rows";

const gallon = 3.785411784e-3;
const inch = 0.0254;
const row = (day: string, more: Partial<LedgerRow> = {}): LedgerRow => ({
  day,
  opening_m3: 20,
  delivered_m3: 0,
  deliveries: 0,
  sold_m3: 1000 * gallon,
  measured_m3: 16,
  over_short_m3: 0,
  running_m3: 0,
  limit_m3: 150 * gallon,
  depth_m: 1,
  outside: false,
  ...more,
});
const next = {
  day: "2026-11-03",
  time: "23:00",
  business_day: "2026-11-03",
  delivered_m3: 0,
  deliveries: 0,
  sold_m3: 0,
  sales: 0,
  book_m3: 10,
  depth_m: 1,
};
const book = (more: Partial<LedgerBook> = {}): LedgerBook => ({
  name: "T1",
  product: "regular",
  tanks: ["T1"],
  joined: null,
  problem: null,
  rows: [row("2026-10-31"), row("2026-11-01"), row("2026-11-02")],
  months: [],
  period: { from_row: 1, to_row: 3 },
  explained: null,
  loss: null,
  next,
  answer: [],
  what_next: [],
  not_parted: [],
  ...more,
});

describe("days and months", () => {
  test("as they are said", () => {
    expect(dayWords("2026-11-05")).toBe("5 Nov 2026");
    expect(monthWords("2026-02")).toBe("February 2026");
  });
  test("a day of the next month with its month", () => {
    expect(shortDay("2026-11-01", "2026-10-31")).toBe("1 Nov");
    expect(shortDay("2026-11-02", "2026-11-01")).toBe("2");
  });
  test("a leap year's February", () => {
    expect([daysIn("2028-02"), daysIn("2026-02"), daysIn("2026-12")]).toEqual([29, 28, 31]);
  });
  test("those of the period", () => {
    expect(periodOf(book()).map((r) => r.day)).toEqual(["2026-11-01", "2026-11-02"]);
    expect(endsTheBook(book())).toBe(true);
    expect(endsTheBook(book({ period: { from_row: 0, to_row: 1 } }))).toBe(false);
  });
});

describe("the limit ahead", () => {
  test("opens with the mean of what was sold", () => {
    const ahead = limitAhead([row("2026-11-09"), row("2026-11-10", { limit_m3: 230 * gallon })]);
    expect(ahead?.date).toBe(30);
    expect((ahead?.limit_m3 ?? 0) / gallon).toBeCloseTo(230 + 0.01 * 1000 * 20, 9);
  });
  test("is none when the month is over", () => {
    expect(limitAhead([row("2026-11-30")])).toBeNull();
    expect(limitAhead([])).toBeNull();
  });
});

describe("the waterfall", () => {
  const explained: Explained = {
    over_short_m3: -497.4 * gallon,
    terms: [
      { cause: "meters", volume_m3: -228.4 * gallon, standard_error_m3: 38 * gallon, words: "" },
      { cause: "deliveries", volume_m3: -169.4 * gallon, standard_error_m3: null, words: "" },
      { cause: "evaporation", volume_m3: null, standard_error_m3: null, words: "enter it" },
    ],
    unexplained_m3: -99.6 * gallon,
    standard_error_m3: 61 * gallon,
  };
  const falls = fallsOf(explained, 28 * gallon, "us");
  test("ends in the sum, and what is shown adds up", () => {
    const figures = falls.map((f) => Number(f.words.replace("−", "-").split(" ")[0]));
    expect(figures.slice(0, -1).reduce((a, b) => a + b, 0)).toBe(figures.at(-1));
    expect(figures.at(-1)).toBe(-497);
    expect(falls.at(-2)?.to).toBeCloseTo(-497.4, 9);
  });
  test("leaves out what is not known, and says no error where there is none", () => {
    expect(falls.map((f) => f.name)).toEqual(["meters", "deliveries", "not explained", "over or short"]);
    expect(falls.map((f) => f.words.includes("±"))).toEqual([true, false, true, true]);
  });
});

test("an axis holds zero and both ends in round steps", () => {
  expect(axisOf(-497, -20, 5)).toEqual([-500, -400, -300, -200, -100, 0]);
  expect(axisOf(-3.2, 5.1, 4)).toEqual([-5, -2.5, 0, 2.5, 5, 7.5]);
});

test("a dip is shown as a stick shows it", () => {
  expect(dipWords(71.125 * inch, "us")).toBe("71.125");
  expect(dipWords(60 * inch, "us")).toBe("60");
  expect(dipWords(0.5 * inch, "us")).toBe("0.5");
  expect(dipWords(60.3 * inch, "us")).toBe("60.30");
  expect(dipWords(1.5, "si")).toBe("1\u00A0500");
  expect(dipWords(null, "us")).toBe("");
});

describe("a row for the store", () => {
  test("takes day, time and tank from the book", () => {
    expect(rowOf("dip", book(), "71 1/8 in")).toEqual({
      kind: "dips",
      values: { day: "2026-11-03", time: "23:00", tank: "T1", depth: "71 1/8 in" },
    });
  });
  test("sales and deliveries go to the day of business", () => {
    const morning = book({ next: { ...next, time: "07:00", business_day: "2026-11-02", deliveries: 1 } });
    expect(rowOf("sold", morning, "2500 gal")).toEqual({
      kind: "sales",
      values: { day: "2026-11-02", tank: "T1", volume: "2500 gal" },
    });
    expect(rowOf("delivered", morning, "8000 gal")?.values["ticket"]).toBe("entered 2");
  });
  test("is none for a book of several tanks", () => {
    expect(rowOf("dip", book({ tanks: ["T1", "T2"] }), "1 in")).toBeNull();
  });
});
