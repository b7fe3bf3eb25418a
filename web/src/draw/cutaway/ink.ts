/** What a cutaway is made of: paths, the paints of a technical section, words with a leader. All are text of SVG. */

const short = (value: number | string) =>
  typeof value === "number" ? String(Math.round(value * 10) / 10 || 0) : value;
/** Text in which numbers are short. */
export const svg = (text: TemplateStringsArray, ...values: (number | string)[]) =>
  String.raw({ raw: text }, ...values.map(short));

export type Point = readonly [x: number, y: number];

export const box = (x: number, y: number, width: number, height: number) =>
  svg`M${x} ${y}h${width}v${Math.max(0, height)}h${-width}Z`;
export function round(x: number, y: number, width: number, height: number, r: number): string {
  const [w, h] = [width - 2 * r, height - 2 * r];
  const corner = (dx: number, dy: number) => svg`a${r} ${r} 0 0 1 ${dx} ${dy}`;
  return svg`M${x + r} ${y}h${w}${corner(r, r)}v${h}${corner(-r, r)}h${-w}${corner(-r, -r)}v${-h}${corner(r, -r)}Z`;
}
export const disc = (x: number, y: number, r: number) =>
  svg`M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;
export const way = (...points: Point[]) => points.map(([x, y], i) => svg`${i ? "L" : "M"}${x} ${y}`).join("");

/** A smooth way between two places, by two places that draw it. */
export function curve(from: Point, one: Point, two: Point, to: Point, steps = 14): Point[] {
  return Array.from({ length: steps + 1 }, (_, i): Point => {
    const [t, r] = [i / steps, 1 - i / steps];
    const of = (k: 0 | 1) => r * r * r * from[k] + 3 * r * r * t * one[k] + 3 * r * t * t * two[k] + t * t * t * to[k];
    return [of(0), of(1)];
  });
}

/** Paints with a hatch: cut metal in its two directions, rubber, concrete, earth, liquids and vapor. */
const hatches: Record<string, readonly [size: number, body: string]> = {
  metal: [8, '<path class="thin" d="M-1 9L9 -1M-1 1L1 -1M7 9L9 7"/>'],
  metal2: [8, '<path class="thin" d="M-1 -1L9 9M7 -1L9 1M-1 7L1 9"/>'],
  rubber: [6, '<path class="thin" d="M0 6L6 0M0 0L6 6"/>'],
  concrete: [
    26,
    '<path class="thin" d="M5 7l4 -2l1 4ZM18 19l4 1l-3 3Z"/><path class="dot" d="M15 5h2M3 18h2M11 23h2M22 10h2M12 13h2"/>',
  ],
  earth: [34, '<path class="thin" d="M3 13l8 -8M8 14l8 -8M20 31l7 -7M25 32l7 -7"/>'],
  liquid: [22, '<path class="wet" d="M1 5h10M12 14h8"/>'],
  water: [18, '<path class="wet" d="M0 9q4.500 -5 9 0t9 0"/>'],
  vapor: [22, '<path class="dot" d="M4 5h2.500M15 16h2.500"/>'],
};

const fill = (kind: string) => (kind in hatches ? ` fill="url(#${kind})"` : "");
/** A shape in one of the paints above, or in a plain one of the style sheet. */
export const shape = (kind: string, path: string, more = "") =>
  `<path class="${kind}" d="${path}"${fill(kind)}${more}/>`;

/** What is drawn only within a shape; `name`: of that shape in this picture. */
export const inside = (name: string, path: string, body: string) =>
  `<clipPath id="${name}"><path d="${path}" clip-rule="evenodd"/></clipPath><g clip-path="url(#${name})">${body}</g>`;

/** Liquid in a vessel up to y, with its surface. */
export const filled = (name: string, vessel: string, y: number, kind = "liquid") =>
  inside(
    name,
    vessel,
    shape("hollow", box(0, y, 640, 420 - y)) +
      shape(kind, box(0, y, 640, 420 - y)) +
      shape("surface", svg`M0 ${y}H640`),
  );

export const turned = (angle: number, [x, y]: Point, body: string) =>
  svg`<g transform="rotate(${angle} ${x} ${y})">${body}</g>`;
/** Where a place comes to lie that is turned about another, as `turned` draws it; degrees. */
export function turnedPlace(angle: number, [aboutX, aboutY]: Point, [x, y]: Point): Point {
  const [sin, cos] = [Math.sin((angle * Math.PI) / 180), Math.cos((angle * Math.PI) / 180)];
  const [dx, dy] = [x - aboutX, y - aboutY];
  return [aboutX + dx * cos - dy * sin, aboutY + dx * sin + dy * cos];
}
export const moved = (x: number, y: number, body: string) => svg`<g transform="translate(${x} ${y})">${body}</g>`;

/** A part of the drawing made larger, about a place that comes to lie at another. */
export function enlarged(by: number, [x, y]: Point, [toX, toY]: Point) {
  return {
    drawing: (body: string) => svg`<g transform="translate(${toX - by * x} ${toY - by * y}) scale(${by})">${body}</g>`,
    place: ([px, py]: Point): Point => [toX + by * (px - x), toY + by * (py - y)],
  };
}

const letter = 16;
/** Width of a word as it is estimated. */
export const wordWidth = (text: string) => 0.6 * letter * text.length;

const word = (x: number, y: number, text: string, anchor: string, kind: string) =>
  svg`<text x="${x}" y="${y}" text-anchor="${anchor}" class="${kind}">${text}</text>`;

const leader = (from: Point, to: Point) => shape("leader", way(from, to)) + shape("tip", disc(to[0], to[1], 2.6));

/** Words of a label as they stand: one line, or a second one under it. */
interface Lines {
  left: number;
  right: number;
  /** Base line of the first. */
  y: number;
  /** Ends of the second line, if there is one. */
  below: readonly [left: number, right: number] | null;
}

/** Where the leader of a label begins: beside its first line; beside the second, if it would run through that; above or
 * below, if the place lies so. */
function begin({ left, right, y, below }: Lines, [toX, toY]: Point): Point {
  const down = toY > y;
  const [least, most] = below && down ? [Math.min(left, below[0]), Math.max(right, below[1])] : [left, right];
  const beside = toX > most + 10 ? 1 : toX < least - 10 ? -1 : 0;
  if (!beside) return [Math.min(Math.max(toX, least + 8), most - 8), down ? y + (below ? 26 : 7) : y - 15];
  const from: Point = [beside > 0 ? right + 5 : left - 5, y - 5];
  if (!below) return from;
  const far = beside > 0 ? below[1] + 5 : below[0] - 5;
  const share = (far - from[0]) / (toX - from[0]);
  const through = share > 0 && from[1] + share * (toY - from[1]) > y + 2;
  return through ? [far, y + 14] : from;
}

/** A part's word at a place, with a leader to it; under the word its state. `side`: the end of the text at `x`. */
export function label(
  text: string,
  x: number,
  y: number,
  to: Point,
  state: string | false = "",
  side: "left" | "right" = "left",
): string {
  const ends = (word: string) =>
    (side === "left" ? [x, x + wordWidth(word)] : [x - wordWidth(word), x]) as [number, number];
  const [left, right] = ends(text);
  const below = state ? ends(state) : null;
  const anchor = side === "left" ? "start" : "end";
  return (
    leader(begin({ left, right, y, below }, to), to) +
    word(x, y, text, anchor, "name") +
    (state ? word(x, y + 19, state, anchor, "state") : "")
  );
}

/** A word without a leader. */
export const note = (
  text: string,
  x: number,
  y: number,
  anchor: "start" | "middle" | "end" = "middle",
  kind = "name",
) => word(x, y, text, anchor, kind);

/** Heights of labels in one column: near the wanted ones, apart, and within the picture. */
export function stacked(wanted: readonly number[], gap = 42, last = 394): number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]! - wanted[b]!);
  const at = [...wanted];
  let least = -Infinity;
  for (const i of order) least = (at[i] = Math.max(at[i]!, least)) + gap;
  let most = last;
  for (const i of order.reverse()) most = (at[i] = Math.min(at[i]!, most)) - gap;
  return at;
}

function pattern(kind: string): string {
  const [size, marks] = hatches[kind]!;
  return (
    `<pattern id="${kind}" width="${size}" height="${size}" patternUnits="userSpaceOnUse">` +
    `<path class="${kind}-ground" d="${box(0, 0, size, size)}"/><g class="${kind}-marks">${marks}</g></pattern>`
  );
}

/** The drawing as an SVG of its own; `id`: begins every id in it, so that several stand in one page. */
export function framed(body: string, words: string, id: string): string {
  const patterns = Object.keys(hatches)
    .filter((kind) => body.includes(`url(#${kind})`))
    .map(pattern);
  const own = (patterns.length ? `<defs>${patterns.join("")}</defs>` : "") + body;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" class="cutaway" viewBox="0 0 640 420" role="img"><title>${words}</title>` +
    `${own.replace(/( id="|url\(#)/g, `$1${id}-`)}</svg>`
  );
}
