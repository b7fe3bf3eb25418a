/** One of the eleven stops, as the engine's profile band shows it. */
export interface Cell {
  stop: number;
  name: string;
  value: string;
  unit: string;
  note: string;
  /** Path of the part there, where one is listed. */
  part: string | null;
}

let parsed: { svg: string; cells: Cell[] } = { svg: "", cells: [] };

/** The cells of a section's band, read off the drawing, so that words and numbers are the same. */
export function cellsOf(svg: string): Cell[] {
  if (parsed.svg !== svg) parsed = { svg, cells: svg ? read(svg) : [] };
  return parsed.cells;
}

export const cellOf = (svg: string, stop: number): Cell | null => cellsOf(svg).find((c) => c.stop === stop) ?? null;

function read(svg: string): Cell[] {
  const root = new DOMParser().parseFromString(svg, "text/html");
  return [...root.querySelectorAll(".cell[data-stop]")].map((g) => {
    const all = (css: string) => [...g.querySelectorAll(css)].map((t) => t.textContent?.trim() ?? "");
    const unit = all(".cell-unit").join(" ");
    const whole = all(".cell-value").join(" ");
    return {
      stop: Number(g.getAttribute("data-stop")),
      name: all(".cell-name").join(" "),
      value: unit && whole.endsWith(unit) ? whole.slice(0, -unit.length).trim() : whole,
      unit,
      note: all(".cell-note").join(" "),
      part: g.getAttribute("data-part"),
    };
  });
}
