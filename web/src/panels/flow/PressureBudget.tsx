import { figure, unitOf } from "../../draw/numbers";
import { chosenHose } from "../../state/hoses";
import { select, selection, units } from "../../state/look";
import { Drawing } from "../parts/Drawing";
import { shownHose } from "./answers";
import { drawn, systemIn, type Choice } from "./choice";
import { Scroll } from "../parts/Scroll";
import { Letter } from "../parts/Letter";
import { Aged, Remarks } from "./pieces";
import { budgetOf, takenBy, type Budget } from "./told/budget";
import { errorOf } from "./told/documents";

/** Where the pressure goes: bars as the engine draws them, and a table that adds up as it is shown. */
export function PressureBudget(props: { choice: Choice }) {
  const { choice } = props;
  const answer = drawn(choice, 2);
  const hose = shownHose(systemIn(choice), chosenHose.value);
  const budget = hose && budgetOf(hose.budget, units.value);
  if (errorOf(answer)) return null;
  return (
    <section class="chartbox">
      <h2>
        {choice.of && <Letter of={choice.of} />} Pressure budget{hose ? ` of ${hose.id}` : ""}
      </h2>
      <Remarks answer={answer} />
      <Aged as={choice.as}>
        <Scroll label="Drawing" class="plate">
          <Drawing answer={answer} label={budget ? budgetWords(budget) : "Pressure budget"} />
        </Scroll>
        {budget && <BudgetTable budget={budget} />}
      </Aged>
    </section>
  );
}

const budgetWords = (b: Budget) =>
  `Pressure budget in ${unitOf("pressure", units.value)}: pumps add ${b.text(b.added)}; the line takes ${b.text(takenBy(b, "line"))}, dispenser and hose ${b.text(takenBy(b, "dispenser"))}, the lift ${b.text(takenBy(b, "lift"))}.`;

function BudgetTable(props: { budget: Budget }) {
  const u = units.value;
  const { budget } = props;
  const left = budget.rows.at(-1)?.left ?? 0;
  return (
    <Scroll label="Pressure budget">
      <table class="tbl budget">
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col" class="l">
              Of
            </th>
            <th scope="col">Flow, {unitOf("flow", u)}</th>
            <th scope="col">Velocity, {unitOf("velocity", u)}</th>
            <th scope="col">Adds or takes, {unitOf("pressure", u)}</th>
            <th scope="col">Left, {unitOf("pressure", u)}</th>
          </tr>
        </thead>
        <tbody>
          {budget.rows.map((row, i) => (
            <tr key={i} class={row.stop === selection.value.stop ? "on" : ""}>
              <th scope="row">
                <button
                  type="button"
                  class="stop-name"
                  aria-pressed={row.stop === selection.value.stop}
                  onClick={() => select(row.stop)}
                >
                  {row.part}
                </button>
              </th>
              <td class="l">{row.owner}</td>
              <td>
                <span class="fig">{figure("flow", u, row.flow)}</span>
              </td>
              <td>{row.velocity ? <span class="fig">{figure("velocity", u, row.velocity)}</span> : ""}</td>
              <td>
                <span class="fig">{budget.signedText(row.change)}</span>
              </td>
              <td>
                <span class="fig">{budget.text(row.left)}</span>
              </td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" colSpan={4}>
              Pumps {budget.signedText(budget.added)} {unitOf("pressure", u)}, all other parts{" "}
              {budget.signedText(left - budget.added)} {unitOf("pressure", u)}
            </th>
            <td>{budget.signedText(left)}</td>
            <td>{budget.text(left)}</td>
          </tr>
        </tfoot>
      </table>
      <p class="cap">Rounded so that what is shown adds up.</p>
    </Scroll>
  );
}
