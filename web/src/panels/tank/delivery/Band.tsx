import { unitOf } from "../../../draw/numbers";
import { units } from "../../../state/look";
import { time } from "../../../state/player";
import { Letter } from "../../parts/Letter";
import { Seg } from "../../parts/Seg";
import { Wide } from "../../parts/Wide";
import { sidesOf } from "../../replay/view";
import { bandAt, spacesOf } from "./band";
import { chosenSpace } from "./state";
import type { DropView } from "./view";

const isWord = (text: string) => /^[a-z]/.test(text);

/** The path of the vapor, cell by cell; where there are several vapor spaces, that of one of them. */
export function Band({ view }: { view: DropView }) {
  const sides = sidesOf(view);
  const spaces = spacesOf(view);
  const space = spaces.find((s) => s === chosenSpace.value) ?? spaces[0];
  if (space === undefined) return null;
  return (
    <section class="vaporband" aria-label="Vapor path">
      <div class="vhead">
        <h2>
          Vapor path, vehicle to tanker <span class="n">{unitOf("vapor pressure", units.value)} above the air outside</span>
        </h2>
        {spaces.length > 1 && (
          <Seg
            label="Vapor space of"
            value={space}
            onChange={(of) => (chosenSpace.value = of)}
            options={spaces.map((s) => ({ value: s, text: s }))}
          />
        )}
      </div>
      <Wide label="Vapor path, cells">
        <div class="vcells">
          {bandAt(view, space, time.value, units.value).map((cell) => (
            <div class="vcell" key={cell.key}>
              <b>{cell.name}</b>
              <small>{cell.note}</small>
              {cell.shown.map((text, i) => (
                <p class={isWord(text) ? "word" : ""}>
                  {sides[i] && <Letter of={sides[i].letter} small />} <span>{text}</span>
                </p>
              ))}
            </div>
          ))}
        </div>
      </Wide>
    </section>
  );
}
