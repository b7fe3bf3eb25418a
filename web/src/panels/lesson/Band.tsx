import { bandOf } from "../../state/lesson/steps";
import { act, page, shared, told } from "../../state/lesson/session";

/** The eleven stops, with a mark for each of their pages. */
export function Band() {
  const { lesson } = told.value;
  if (!lesson) return <nav class="les-band" aria-label="Stops" />;
  const at = shared.value.place.page;
  const stop = page.value?.stop_number;
  return (
    <nav class="les-band" aria-label="Stops">
      {bandOf(lesson).map((s) => {
        const [first] = s.pages;
        return (
          <button
            type="button"
            key={s.number}
            aria-current={s.number === stop ? "step" : undefined}
            aria-disabled={first === undefined}
            title={first === undefined ? "No page of this lesson" : undefined}
            onClick={() => first !== undefined && act({ do: "page", page: first })}
          >
            <span class="marks" aria-hidden="true">
              {s.pages.map((p) => (
                <i key={p} class={p === at ? "now" : p < at ? "done" : ""} />
              ))}
            </span>
            <i>{s.number}</i> {s.name}
          </button>
        );
      })}
    </nav>
  );
}
