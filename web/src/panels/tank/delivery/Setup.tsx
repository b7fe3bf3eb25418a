import { capital } from "../../../draw/words";
import { unquoted } from "../../../state/entry";
import { narrow, station } from "../../../state/station";
import { Entry } from "../../incident/ask/Entry";
import type { DeliveryRun } from "./documents";
import { ask, asked, type Asked } from "./state";

/** What can be left out, as the engine calls it. */
const parts = ["vapor-return", "vent", "vent-valve", "overfill-valve", "overfill-alarm", "driver"];
const plain = (part: string) => part.replaceAll("-", " ");

const entries: { key: "volume" | "rate" | "stop_at"; label: string; none: string; hint: string }[] = [
  {
    key: "volume",
    label: "Brought",
    none: "as the file says",
    hint: "What the first compartment brings, as 3000 gal or 11 m3.",
  },
  {
    key: "rate",
    label: "Given rate",
    none: "computed",
    hint: "Of each drop in place of the computed one, as 380 gpm.",
  },
  { key: "stop_at", label: "Truck shut at", none: "at its end", hint: "A time, as 5 min." },
];

/** The tanks that a delivery of the file has something for. */
function tanksOf(delivery: string): string[] {
  const fields = station.value?.parts.find((p) => p.kind === "delivery" && p.id === delivery)?.fields ?? [];
  const named = fields.filter((f) => /^compartment\..*\.tank$/.test(f.key)).flatMap((f) => f.text ?? []);
  return [...new Set(named.map(unquoted))];
}

/** What the delivery is asked with. On a phone in words. */
export function Setup({ run }: { run: DeliveryRun | undefined }) {
  const deliveries = station.value?.parts.filter((p) => p.kind === "delivery").map((p) => p.id) ?? [];
  const a = asked.value;
  if (narrow.value) return <SetupWords />;
  const tanks = tanksOf(a.delivery || (deliveries[0] ?? ""));
  return (
    <>
      <SetupWords onPaper />
      <div class="setup">
        {deliveries.length > 1 && (
          <Pick
            label="Delivery"
            value={a.delivery || (deliveries[0] ?? "")}
            options={deliveries}
            onPick={(delivery) => ask({ delivery, tank: "" })}
          />
        )}
        {tanks.length > 1 && (
          <Pick label="Into" value={a.tank} none="all of them" options={tanks} onPick={(tank) => ask({ tank })} />
        )}
        {entries.map(({ key, label, none, hint }) => (
          <Entry
            key={key}
            label={label}
            value={a[key]}
            placeholder={none}
            hint={hint}
            onCommit={(text) => ask({ [key]: text })}
          />
        ))}
        <Several
          label="Leave out"
          none="nothing"
          of={parts}
          words={plain}
          chosen={a.without}
          onChoose={(without) => ask({ without })}
        />
        <Several
          label="Vents blocked"
          none="none"
          of={[...new Set([...(run?.ullages.flatMap((u) => u.tanks) ?? []), ...a.blocked])]}
          words={(tank) => `of ${tank}`}
          chosen={a.blocked}
          onChoose={(blocked) => ask({ blocked })}
        />
      </div>
    </>
  );
}

interface PickProps {
  label: string;
  value: string;
  none?: string;
  options: readonly string[];
  onPick: (id: string) => void;
}

const Pick = ({ label, value, none, options, onPick }: PickProps) => (
  <label class="entry">
    <span>{label}</span>
    <select class="btn" value={value} onChange={(e) => onPick(e.currentTarget.value)}>
      {none && <option value="">{none}</option>}
      {options.map((id) => (
        <option value={id} key={id}>
          {id}
        </option>
      ))}
    </select>
  </label>
);

interface SeveralProps {
  label: string;
  none: string;
  of: readonly string[];
  words: (one: string) => string;
  chosen: readonly string[];
  onChoose: (chosen: string[]) => void;
}

function Several({ label, none, of, words, chosen, onChoose }: SeveralProps) {
  const toggle = (one: string) => onChoose(chosen.includes(one) ? chosen.filter((c) => c !== one) : [...chosen, one]);
  return (
    <details class="entry hoses-open">
      <summary>
        <span>{label}</span>
        <span class="btn">{chosen.length ? chosen.map(words).join(", ") : none}</span>
      </summary>
      <div class="pop" role="group" aria-label={label}>
        {of.map((one) => (
          <label key={one}>
            <input type="checkbox" checked={chosen.includes(one)} onChange={() => toggle(one)} />
            {capital(words(one))}
          </label>
        ))}
      </div>
    </details>
  );
}

const askedWords = (a: Asked) =>
  [
    ...(a.tank ? [`only into ${a.tank}`] : []),
    ...entries.flatMap(({ key, label }) => (a[key] ? [`${label.toLowerCase()} ${a[key]}`] : [])),
    ...a.without.map((part) => `without ${plain(part)}`),
    ...a.blocked.map((tank) => `vents of ${tank} blocked`),
  ].join("; ");

function SetupWords(props: { onPaper?: boolean }) {
  const a = asked.value;
  const said = askedWords(a);
  return (
    <p class={`setup-words${props.onPaper ? " on-paper" : ""}`}>
      {a.delivery ? `Delivery ${a.delivery}` : "The delivery of the file"}, {said || "as entered"}.
    </p>
  );
}
