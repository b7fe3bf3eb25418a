// Holds the project's steady solver against a general network library:
//   node run.mjs BUILD-FOLDER [NETWORK.json ...]
// without files: tests/data/reference_station.json. Prints a table; exit code 1 if a comparison fails.
//
// The same network is solved three ways by the project's own program and compared with the library at its open hoses:
// - copied: constants, friction formula (Swamee-Jain with the library's transition) and the conductance it leaves in
//   closed links are those of the library. What remains is rounding and the two solvers' own residuals.
// - plain: the same constants and formula, but a closed hose lets nothing pass and an active limiter holds its flow.
//   The library passes about 2.4e-8 m3/s through each closed link: up to 3.3e-5 of a flow.
// - exact: the project as it computes, with exact constants and Colebrook-White. The friction formulas differ by up to
//   1.4e-3 of a flow (Swamee-Jain is an approximation of Colebrook-White); this only catches gross faults.
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

import { loadLibrary, solveCase } from "./library_network.mjs";

const here = path.dirname(fileURLToPath(import.meta.url));
const comparisons = [
  { name: "copied", method: "library_leaking", allowed: () => 1e-9 },
  { name: "plain", method: "library", allowed: () => 5e-5 },
  { name: "exact", method: "own", allowed: () => 2e-3 },
];

/** Largest relative difference over the open hoses; NaN, which passes nothing, where a flow is missing. */
function worstDifference(openHoses, ours, theirs) {
  return openHoses.reduce((worst, hose) => {
    const difference = Math.abs(ours[hose] / theirs[hose] - 1);
    return difference <= worst ? worst : difference;
  }, 0);
}

function caseName(wanted) {
  return `${wanted.open_hoses.length} open${wanted.limiter ? ", limited" : ""}`;
}

/** Compares every case of one file; returns the number of failed comparisons. */
function compareFile(program, library, file) {
  const network = JSON.parse(readFileSync(file, "utf8"));
  const ours = JSON.parse(execFileSync(program, [file], { encoding: "utf8", maxBuffer: 1 << 28 }));
  console.log(`\n${path.basename(file)}`);
  console.log(`case  ${"hoses".padEnd(18)}${comparisons.map(({ name }) => name.padStart(10)).join("")}`);
  let failed = 0;
  network.cases.forEach((wanted, i) => {
    const theirs = solveCase(library, network, wanted);
    const cells = comparisons.map(({ method, allowed }) => {
      const answer = ours[i][method];
      const worst = worstDifference(wanted.open_hoses, answer.hose_flow_m3s, theirs.hoses);
      const good = answer.usable && worst <= allowed(wanted);
      failed += good ? 0 : 1;
      return `${worst.toExponential(1)}${good ? " " : "!"}`.padStart(10);
    });
    console.log(`${String(i).padStart(4)}  ${caseName(wanted).padEnd(18)}${cells.join("")}`);
  });
  return failed;
}

const [build, ...files] = process.argv.slice(2);
if (!build) {
  console.error("usage: node run.mjs BUILD-FOLDER [NETWORK.json ...]");
  process.exit(2);
}
if (files.length === 0) files.push(path.join(here, "../data/reference_station.json"));
const program = path.join(path.resolve(build), "tests", "oracle_reference");
const library = await loadLibrary();
console.log(`network library ${library.version}; largest relative difference in the flow of an open hose`);
const failed = files.reduce((sum, file) => sum + compareFile(program, library, file), 0);
console.log(failed === 0 ? "\noracle: all comparisons hold" : `\noracle: ${failed} comparison(s) fail, marked !`);
process.exitCode = failed === 0 ? 0 : 1;
