import { useState } from "preact/hooks";
import { count, sentence } from "../../draw/words";
import { freshness, useStanding } from "../../state/ask";
import { keepFlow } from "../../state/hoses";
import { sheet, units } from "../../state/look";
import { recordsRead } from "../../state/station";
import { EmptyArt } from "../parts/EmptyArt";
import type { Finding } from "../parts/finding";
import { Refusal } from "../parts/Note";
import { Seg } from "../parts/Seg";
import { StatusShape, stateWords, toneOf, type State } from "../parts/status";
import { Head, UndoButtons } from "../shell/Shell";
import { Bullet } from "./Bullet";
import { Detail } from "./Detail";
import {
  countOf,
  grouped,
  originOf,
  originsOf,
  ruleOf,
  shownOf,
  sideOf,
  sourceOf,
  states,
  subjectsOf,
  type FindingsAnswer,
  type Group,
} from "./findings";

type Filter = State | "all";

export function Checks() {
  const now = useStanding<FindingsAnswer>(() => ({
    after: recordsRead.value,
    wants: [{ study: "findings", units: units.value, ...(keepFlow.value ? { keep: keepFlow.value } : {}) }],
  }));
  const [filter, setFilter] = useState<Filter>("all");
  const [chosen, setChosen] = useState("");
  const [origin, setOrigin] = useState("");
  const answer = now.answers?.[0];
  const all = answer && "document" in answer ? answer.document.findings : [];
  const cautions = answer && "document" in answer ? answer.document.cautions : [];
  const origins = originsOf(all);
  const findings = origins.includes(origin) ? all.filter((f) => originOf(f) === origin) : all;
  const groups = grouped(findings).filter((g) => filter === "all" || g.state === filter);
  const shown = groups.find((g) => g.key === chosen) ?? groups[0];
  return (
    <>
      <Head title="Checks" about={about(findings)}>
        {findings.length > 0 && (
          <>
            <Tally findings={findings} />
            <Filters findings={findings} value={filter} onChange={setFilter} />
            {origins.length > 1 && (
              <select
                class="btn"
                aria-label="Rule set or study"
                value={origins.includes(origin) ? origin : ""}
                onChange={(e) => setOrigin(e.currentTarget.value)}
              >
                <option value="">All rule sets and studies</option>
                {origins.map((name) => (
                  <option key={name} value={name}>
                    {name}
                  </option>
                ))}
              </select>
            )}
          </>
        )}
        <span class="undo">
          <UndoButtons />
        </span>
      </Head>
      <Refusal error={now.error} old={answer !== undefined} class="failed" />
      {!answer && now.age === 2 && !now.error && <Waiting />}
      {answer && "error" in answer && (
        <None title="No check yet" text={`${sentence(answer.error)} ${sentence(answer.hint)}`} />
      )}
      {answer && "document" in answer && findings.length === 0 && (
        <None
          title="Nothing to hold the station against yet"
          text="No flow that is determined has a cap, no pump is held shut by a stronger one, no tank and no delivery is entered, and no flow to keep is asked for. Ask for a flow to keep on the Flow sheet, and each hose is held against it here."
          flow
        />
      )}
      {findings.length > 0 && (
        <div
          class={`chk aged ${freshness(now)}`}
          aria-busy={now.age === 2}
        >
          <div class="list">
            {groups.length === 0 && filter !== "all" && (
              <p class="pad none-here">No finding is in this state. {stateWords[filter]}: 0.</p>
            )}
            {states.map((state) => (
              <StateList
                key={state}
                state={state}
                groups={groups.filter((g) => g.state === state)}
                all={findings}
                chosen={shown?.key ?? ""}
                onChoose={setChosen}
              />
            ))}
            <p class="txt cautions">{cautions.join(" ")}</p>
          </div>
          {shown && <Detail key={shown.key} group={shown} side={sideOf(ofRule(findings, shown))} />}
        </div>
      )}
    </>
  );
}

const ofRule = (findings: readonly Finding[], group: Group) =>
  findings.filter((f) => ruleOf(f) === ruleOf(group.findings[0]));

function about(findings: readonly Finding[]): string {
  if (!findings.length) return "What the station is held against";
  const rules = new Set(findings.map(ruleOf)).size;
  const keep =
    keepFlow.value && findings.some((f) => f.rule === "flow-to-keep") ? `, with ${keepFlow.value} to keep` : "";
  return `${count(findings.length, "finding")} on ${count(rules, "requirement")}${keep}`;
}

function Tally(props: { findings: readonly Finding[] }) {
  const told = states.map((s) => [s, countOf(props.findings, s)] as const).filter(([, n]) => n > 0);
  return (
    <span class="tally hide-m" role="img" aria-label={told.map(([s, n]) => `${n} ${stateWords[s]}`).join(", ")}>
      {told.map(([s, n]) => (
        <i key={s} class={toneOf(s)} style={{ flex: n }} />
      ))}
    </span>
  );
}

function Filters(props: { findings: readonly Finding[]; value: Filter; onChange: (f: Filter) => void }) {
  const there = states.filter((s) => s === props.value || countOf(props.findings, s) > 0);
  return (
    <Seg<Filter>
      label="Findings by state"
      class="filters"
      value={props.value}
      onChange={props.onChange}
      options={[
        { value: "all", text: `All ${props.findings.length}` },
        ...there.map((s) => ({
          value: s,
          text: (
            <>
              <StatusShape state={s} /> {stateWords[s]} {countOf(props.findings, s)}
            </>
          ),
        })),
      ]}
    />
  );
}

function StateList(props: {
  state: State;
  groups: readonly Group[];
  all: readonly Finding[];
  chosen: string;
  onChoose: (key: string) => void;
}) {
  if (!props.groups.length) return null;
  return (
    <section>
      <h2 class="g">
        {stateWords[props.state]}{" "}
        <span>
          {countOf(props.all, props.state)}
          {props.state === "not determined" && ", never a pass"}
          {props.state === "close" && ", the limit is met by less than its uncertainty, or by under 2\u00A0%"}
        </span>
      </h2>
      {props.groups.map((group) => (
        <Row
          key={group.key}
          group={group}
          all={props.all}
          pressed={group.key === props.chosen}
          onChoose={() => props.onChoose(group.key)}
        />
      ))}
    </section>
  );
}

function Row(props: { group: Group; all: readonly Finding[]; pressed: boolean; onChoose: () => void }) {
  const { group } = props;
  const first = group.findings[0];
  const side = sideOf(ofRule(props.all, group));
  const shown = shownOf(group, side, units.value);
  const source = sourceOf(first);
  return (
    <button type="button" class="crow" aria-pressed={props.pressed} onClick={props.onChoose}>
      <StatusShape state={group.state} size={18} />
      <span>
        <b>{sentence(first.requirement).replace(/\.$/, "")}</b>
        <span class="subjects">{subjectsOf(group)}</span>
        <span class="vh">{stateWords[group.state]}</span>
      </span>
      <span class="meter">
        <span class="val fig">{shown.value}</span>
        <Bullet group={group} side={side} />
        {shown.limit && <span class="lim">{shown.limit}</span>}
      </span>
      <span class="cite">
        {source.clause}
        <em>{source.short}</em>
      </span>
    </button>
  );
}

function Waiting() {
  return (
    <div class="chk" aria-busy="true">
      <div class="list pad">
        {[0, 1, 2, 3, 4, 5].map((i) => (
          <div key={i} class="skel" />
        ))}
      </div>
    </div>
  );
}

function None(props: { title: string; text: string; flow?: boolean }) {
  const to = props.flow ? "flow" : "site";
  return (
    <div class="empty">
      <EmptyArt />
      <h2>{props.title}</h2>
      <p>{props.text}</p>
      <button type="button" class="btn go" onClick={() => (sheet.value = to)}>
        {props.flow ? "Go to Flow" : "Go to Site"}
      </button>
    </div>
  );
}
