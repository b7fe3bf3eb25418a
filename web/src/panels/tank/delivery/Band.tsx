import { unitOf } from "../../../draw/numbers";
import { units } from "../../../state/look";
import { time } from "../../../state/player";
import { Letter } from "../../parts/Letter";
import { sidesOf } from "../../replay/view";
import { bandAt } from "./band";
import type { DropView } from "./view";

const isWord = (text: string) => /^[a-z]/.test(text);

/** The path of the vapor, cell by cell. */
export function Band({ view }: { view: DropView }) {
  const sides = sidesOf(view);
  return (
    <section class="vaporband" aria-label="Vapor path">
      <h2>
        Vapor path, tank to tanker <span class="n">{unitOf("vapor pressure", units.value)} above the air outside</span>
      </h2>
      <div class="vcells">
        {bandAt(view, time.value, units.value).map((cell) => (
          <div class="vcell" key={cell.key}>
            <b>{cell.name}</b>
            <small>{cell.note}</small>
            {cell.shown.map((text, i) => (
              <p class={isWord(text) ? "word" : ""}>
                {sides[i] && <Letter of={sides[i].letter} small />} {text}
              </p>
            ))}
          </div>
        ))}
      </div>
    </section>
  );
}
