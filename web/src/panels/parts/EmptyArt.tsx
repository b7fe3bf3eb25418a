/** What is missing, as a dashed tank and line under the ground. */
export function EmptyArt() {
  return (
    <svg viewBox="0 0 220 110" fill="none" stroke="var(--ink3)" stroke-width="1.5" aria-hidden="true">
      <path d="M0 40H60M100 40H220" stroke="var(--line)" stroke-width="2.5" />
      <path d="M60 40v20a20 20 0 0 0 20 20h0a20 20 0 0 0 20-20V40" stroke-dasharray="4 4" />
      <rect x="120" y="58" width="84" height="40" rx="12" stroke-dasharray="4 4" />
    </svg>
  );
}
