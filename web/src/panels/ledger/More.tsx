import { digits, figure, unitOf, type Quantity } from "../../draw/numbers";
import { capital } from "../../draw/words";
import { units } from "../../state/look";
import { Wide } from "../parts/Wide";
import type { FreeTerm, LedgerBook } from "./documents";

const quantities: Record<string, Quantity> = { "m3/s": "leak", m: "bore" };

/** A coefficient in a unit that people read; a loss is told positive. */
function free(term: FreeTerm, value: number | null): string {
  const quantity = quantities[term.unit];
  if (value === null) return "cannot be told";
  if (!quantity) return `${digits(100 * value, 3)}\u00A0%`;
  return `${figure(quantity, units.value, value, quantity === "leak" ? 3 : 2)}\u00A0${unitOf(quantity, units.value)}`;
}

/** The free regression beside the fixed corrections. */
export function More({ book }: { book: LedgerBook }) {
  const loss = book.loss;
  if (!loss || loss.problem !== null || !loss.free.length) return null;
  return (
    <section class="cell bt" aria-label="Free fit">
      <details>
        <summary>All causes fitted freely, beside the corrections above</summary>
        <Wide label="Free fit, table">
          <table class="tbl">
            <thead>
              <tr>
                <th scope="col">Cause</th>
                <th scope="col">Value</th>
                <th scope="col">Standard error</th>
                <th scope="col" class="l">Told from zero</th>
              </tr>
            </thead>
            <tbody>
              {loss.free.map((term) => (
                <tr key={term.cause}>
                  <th scope="row">{capital(term.cause)}</th>
                  <td>{free(term, term.value === null ? null : (term.unit === "m3/s" ? -1 : 1) * term.value)}</td>
                  <td>{term.standard_error === null ? "" : free(term, term.standard_error)}</td>
                  <td class="l">{term.told_from_zero ? "yes" : "no"}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Wide>
      </details>
    </section>
  );
}
