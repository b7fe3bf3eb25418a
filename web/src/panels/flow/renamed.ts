/** Ids stand once in a page: those of B's drawing, and what points at them, are called after B. */
export const renamed = (svg: string, id: string) =>
  svg.replace(/(id|aria-labelledby)="[^"]*"|url\(#[^)]*\)|href="#[^"]*"/g, (place) =>
    place.replace(new RegExp(`(["# ])${id}-`, "g"), `$1b-${id}-`),
  );
