const ways: Record<string, 1 | -1> = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

/** Arrow keys in a radio group choose the next of its values, and the focus goes along. */
export const byArrows =
  <T>(values: readonly T[], now: T, choose: (value: T) => void) =>
  (event: KeyboardEvent) => {
    const way = ways[event.key];
    if (!way) return;
    event.preventDefault();
    const next = values[(values.indexOf(now) + way + values.length) % values.length];
    if (next === undefined) return;
    choose(next);
    const box = event.currentTarget as HTMLElement;
    requestAnimationFrame(() => box.querySelector<HTMLElement>("[aria-checked=true]")?.focus());
  };
