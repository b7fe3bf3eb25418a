/** A pressure-vacuum vent in section on top of its pipe. */
import { flowing, spring } from "./pieces";
import { box, moved, shape, svg, turned, turnedPlace, type Point } from "./ink";

const hinge: Point = [36, -10];
const swing = (inward: number) => -46 * inward;
/** Where its poppets lie, if its pipe ends at `at`. */
export const pressurePlace = ([x, y]: Point, out: number): Point => [x - 54, y - 90 - 24 * out];
export function vacuumPlace([x, y]: Point, inward: number): Point {
  const [dx, dy] = turnedPlace(swing(inward), hinge, [66, -12]);
  return [x + dx, y + dy];
}

/** `out`: how far vapor lifts the pressure poppet; `inward`: how far air swings the vacuum poppet. */
export function ventValve(at: Point, out: number, inward: number, dash: number): string {
  const lift = 24 * out;
  const walls =
    shape("metal", "M-28 0H-90V-86H-60V-78H-82V-8H-22V8H-28Z") +
    shape("metal2", "M28 8H22V-8H38V0ZM78 0V-8H82V-78H8V-86H90V0Z") +
    shape(
      "metal",
      "M-128 -60V-112Q-128 -160 -80 -160H80Q128 -160 128 -112V-60H120V-110Q120 -152 78 -152H-78Q-120 -152 -120 -110V-60Z",
    );
  const pressure =
    spring([-26, -94 - lift], [-26, -150], 30, 4) +
    moved(0, -lift, shape("moves", "M-68 -94h84v8h-84Z") + shape("moves", box(-29, -86, 6, 44)));
  const vacuum = turned(swing(inward), hinge, shape("moves", "M34 -16h52v8h-52Z"));
  return moved(
    at[0],
    at[1],
    shape("hollow", box(-86, -84, 172, 84)) +
      walls +
      pressure +
      vacuum +
      shape("pin", svg`M33 -12h6v6h-6Z`) +
      flowing(
        out,
        dash,
        [
          [-8, 40],
          [-8, -44],
          [-44, -70],
          [-50, -84 - lift / 2],
          [-92, -90 - lift / 2],
          [-106, -104],
          [-106, -44],
        ],
        "vapor-flow",
      ) +
      flowing(
        inward,
        dash,
        [
          [60, 46],
          [60, -28],
          [36, -46],
          [8, -30],
          [8, 44],
        ],
        "air-flow",
      ),
  );
}
