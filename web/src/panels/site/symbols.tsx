/** Symbols of the eleven stops, after the habit of ISO 10628-2 and ISA-5.1. */
const paths: readonly string[] = [
  "M28 12H50a8 8 0 0 1 8 8v2a8 8 0 0 1-8 8H28a8 8 0 0 1-8-8v-2a8 8 0 0 1 8-8ZM6 34V20h10v14M4 34h56" +
    "M10 38a4 4 0 1 0 8 0 4 4 0 1 0-8 0M40 38a4 4 0 1 0 8 0 4 4 0 1 0-8 0M50 38a4 4 0 1 0 8 0 4 4 0 1 0-8 0",
  "M32 6v28M22 6h20M26 34l6 8 6-8",
  "M20 12H44a12 12 0 0 1 12 12v4a12 12 0 0 1-12 12H20a12 12 0 0 1-12-12v-4a12 12 0 0 1 12-12ZM9 24h46",
  "M17 26a15 15 0 1 0 30 0 15 15 0 1 0-30 0M25 13 47 26 25 39",
  "M4 20h56M4 32h56M4 26h56",
  "M12 12v30h40V12M18 36h28",
  "M18 10h28L18 42h28ZM8 26h48",
  "M17 26a15 15 0 1 0 30 0 15 15 0 1 0-30 0M17 26h30",
  "M8 16c10 24 18 24 24 8s14-16 24 2M28 22l8 8M36 22l-8 8",
  "M10 30h20l6-12h16M30 30l6 8h-8l-4-8",
  "M32 46V16M24 16h16l-8-10ZM24 22h16",
];

export function StopSymbol(props: { stop: number | null }) {
  const path = props.stop === null ? "" : (paths[props.stop - 1] ?? "");
  return (
    <svg
      viewBox="0 0 64 52"
      fill="none"
      stroke="currentColor"
      stroke-width="1.8"
      stroke-linejoin="round"
      aria-hidden="true"
    >
      <path d={path} />
      {props.stop === 8 && (
        <text x="32" y="22" text-anchor="middle" stroke="none" fill="currentColor" font-size="10">
          FQ
        </text>
      )}
    </svg>
  );
}
