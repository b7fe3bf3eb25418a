import { expect, test } from "vitest";
import {
  amount,
  amountSpan,
  apportion,
  decimalsApart,
  digits,
  figure,
  readFlow,
  shownChange,
  signed,
  span,
  ticks,
  timeSpan,
  withUnit,
} from "../../src/draw/numbers";

const gpm = 3.785411784e-3 / 60;
const psi = 6894.757293168361;

test("a minus is a true minus, and nothing has none", () => {
  expect(digits(-3.94, 1)).toBe("−3.9");
  expect(digits(-0.04, 1)).toBe("0.0");
  expect(digits(NaN, 1)).toBe("–");
});

test("thousands are parted by a no-break space", () => {
  expect(digits(1234567, 0)).toBe("1\u00A0234\u00A0567");
  expect(digits(1234.5, 1)).toBe("1\u00A0234.5");
});

test("flows in both systems", () => {
  expect(withUnit("flow", "us", 10 * gpm)).toBe("10.0\u00A0gpm");
  expect(withUnit("flow", "si", 10 * gpm)).toBe("37.9\u00A0L/min");
  expect(figure("pressure", "us", 22 * psi)).toBe("22.0");
  expect(figure("pressure", "us", null)).toBe("–");
  expect(withUnit("temperature", "us", 288.705555)).toBe("60.0\u00A0°F");
});

test("a value that misses its limit is told apart from it", () => {
  expect(decimalsApart("flow", "us", 9.98 * gpm, 10 * gpm)).toBe(2);
  expect(decimalsApart("flow", "us", 9.5 * gpm, 10 * gpm)).toBe(1);
  expect(decimalsApart("flow", "us", 10 * gpm, 10 * gpm)).toBe(1);
});

test("a range that shows as one number is one", () => {
  expect(span("flow", "us", 9.2 * gpm, 10 * gpm)).toBe("9.2 to 10.0");
  expect(span("flow", "us", 9.98 * gpm, 10.01 * gpm)).toBe("10.0");
});

test("a change agrees with the two numbers shown", () => {
  const [from, to] = [9.94 * gpm, 10.06 * gpm];
  expect(figure("flow", "us", from)).toBe("9.9");
  expect(figure("flow", "us", to)).toBe("10.1");
  expect(signed(shownChange("flow", "us", from, to), 1)).toBe("+0.2");
});

test("parts are rounded so that they add up", () => {
  expect(apportion([1.4, 1.4, 1.2], 4)).toEqual([2, 1, 1]);
  expect(apportion([1.6, 1.6], 3)).toEqual([2, 1]);
  expect(apportion([2.2, 0.1], 1).reduce((a, b) => a + b)).toBe(1);
});

test("ticks step by 1, 2, 2.5 or 5 and reach the most", () => {
  expect(ticks(9.7)).toEqual([0, 2.5, 5, 7.5, 10]);
  expect(ticks(0)).toEqual([0, 1]);
  for (const most of [0.03, 1, 12.8, 33.3, 410]) expect(ticks(most).at(-1)).toBeGreaterThanOrEqual(most);
});

test("times as said", () => {
  expect(timeSpan(0.08)).toBe("0.08\u00A0s");
  expect(timeSpan(12.4)).toBe("12.4\u00A0s");
  expect(timeSpan(168)).toBe("2.8\u00A0min");
});

test("a flow as typed", () => {
  expect(readFlow("8", "us")).toEqual({ si: expect.closeTo(8 * gpm, 12) });
  expect(readFlow("8", "si")).toEqual({ si: expect.closeTo(8e-3 / 60, 12) });
  expect(readFlow("30 L/min", "us")).toEqual({ si: expect.closeTo(30e-3 / 60, 12) });
  expect(readFlow("8 fet", "us")).toHaveProperty("problem");
  expect(readFlow("0 gpm", "us")).toHaveProperty("problem");
  expect(readFlow("", "us")).toHaveProperty("problem");
});

test("an amount has no more than three digits that count, two decimals under ten, none lost over a hundred", () => {
  const gallon = 3.785411784e-3;
  expect([0.004, 0.54, 9.99, 9.996, 18.84, 99.96, 236.58, 2346.65].map((v) => amount("us", v * gallon))).toEqual([
    "0.00", "0.54", "9.99", "10.0", "18.8", "100", "237", "2\u00A0347",
  ]);
  expect(amountSpan("us", 0.46 * gallon, 591.99 * gallon)).toBe("0.46 to 592");
  expect(amountSpan("us", gallon, gallon)).toBe("1.00");
});
