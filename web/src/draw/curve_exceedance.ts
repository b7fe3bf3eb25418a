import { ticks } from "./numbers";

/** How often more than an amount escapes, ready to be drawn. */
interface ExceedancePlan {
  path: string;
  xTicks: { x: number; value: number }[];
  yTicks: { y: number; share: number }[];
  left: number;
  right: number;
  foot: number;
}

/** `amounts` rise, `shares` fall with them; both have the same length. Amounts are in the unit shown. */
export function exceedancePlan(
  amounts: readonly number[],
  shares: readonly number[],
  width: number,
  height: number,
): ExceedancePlan {
  const [left, right, top, foot] = [44, 16, 10, 22];
  const values = ticks(Math.max(...amounts, 0), 5);
  const most = values.at(-1) ?? 1;
  const x = (value: number) => left + (value / most) * (width - left - right);
  const y = (share: number) => top + (1 - share) * (height - top - foot);
  const begin = `M${x(0).toFixed(1)} ${y(1).toFixed(1)}`;
  const rest = amounts.map((a, i) => `L${x(a).toFixed(1)} ${y(shares[i] ?? 0).toFixed(1)}`).join("");
  return {
    path: begin + rest,
    xTicks: values.map((value) => ({ x: x(value), value })),
    yTicks: [0, 0.25, 0.5, 0.75, 1].map((share) => ({ y: y(share), share })),
    left,
    right,
    foot,
  };
}
