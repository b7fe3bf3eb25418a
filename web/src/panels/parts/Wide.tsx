import type { ComponentChildren } from "preact";

/** A table that scrolls sideways in its own box where there is no room for it; by keyboard too. */
export const Wide = (props: { label: string; children: ComponentChildren }) => (
  <div class="wide" role="region" aria-label={props.label} tabIndex={0}>
    {props.children}
  </div>
);
