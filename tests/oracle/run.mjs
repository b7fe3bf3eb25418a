// Holds the project's steady solver against a general network library:
//   node run.mjs BUILD-FOLDER [NETWORK.json ...]
// without files: tests/data/reference_station.json. Prints a table; exit code 1 if a comparison fails.
//
// The same network is solved three ways by the project's own program and compared with the library at its open hoses:
// - copied: constants, friction formula (Swamee-Jain with the library's transition) and the conductance it leaves in
//   closed links, active limiters and pumps that stand still are those of the library. What remains is rounding and the
//   two solvers' own residuals, with limiters too.
// - plain: the same constants and formula, but a closed hose lets nothing pass and an active limiter holds its flow.
//   The library passes 1e-8 ft3/s per ft of head through each closed link and active limiter, 2.4e-8 m3/s at 26 m: up
//   to 3.3e-5 of a flow of 10 gal/min. It is taken relative to no less than such a flow.
// - exact: the project as it computes, with exact constants and Colebrook-White. The friction formulas differ by up to
//   1.4e-3 of a flow (Swamee-Jain is an approximation of Colebrook-White); this only catches gross faults.
//
// A case is left out, and said to be, where the library reports a negative flow through a pump: near its shutoff head it
// does not shut every pump, and the flows of such a case are not those of one with check valves.
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

import { loadLibrary, solveCase } from "./library_network.mjs";

const here = path.dirname(fileURLToPath(import.meta.url));
const comparisons = [
  // A hose that gets less than 1e-6 m3/s is held to that much of the flow.
  { name: "copied", method: "library_leaking", allowed: 1e-9, leastFlow: 1e-6 },
  { name: "plain", method: "library", allowed: 5e-5, leastFlow: 6.309e-4 },
  { name: "exact", method: "own", allowed: 2e-3, leastFlow: 1e-6 },
];
const backward = -1e-9; // m3/s; less than this through a pump is no rounding

/** Largest relative difference over the open hoses; NaN, which passes nothing, where a flow is missing. */
function worstDifference(openHoses, ours, theirs, leastFlow) {
  return openHoses.reduce((worst, hose) => {
    const difference = Math.abs(ours[hose] - theirs[hose]) / Math.max(Math.abs(theirs[hose]), leastFlow);
    return difference <= worst ? worst : difference;
  }, 0);
}

function caseName(wanted) {
  return `${wanted.open_hoses.length} open${wanted.limiter ? ", limited" : ""}`;
}

/** One case: { text, failed, skipped }. */
function compareCase(wanted, ours, theirs) {
  if (theirs.pumps.some((flow) => flow < backward)) {
    return { text: "  left out: the library lets a pump run backward", failed: 0, skipped: 1 };
  }
  const results = comparisons.map(({ method, allowed, leastFlow }) => {
    const { usable, hose_flow_m3s: flows } = ours[method];
    const worst = worstDifference(wanted.open_hoses, flows, theirs.hoses, leastFlow);
    return { worst, good: usable && worst <= allowed };
  });
  const text = results.map(({ worst, good }) => `${worst.toExponential(1)}${good ? " " : "!"}`.padStart(10)).join("");
  return { text, failed: results.filter(({ good }) => !good).length, skipped: 0 };
}

/** Compares every case of one file: { failed, skipped }. */
function compareFile(program, library, file) {
  const network = JSON.parse(readFileSync(file, "utf8"));
  const ours = JSON.parse(execFileSync(program, [file], { encoding: "utf8", maxBuffer: 1 << 28 }));
  console.log(`\n${path.basename(file)}`);
  console.log(`case  ${"hoses".padEnd(18)}${comparisons.map(({ name }) => name.padStart(9)).join(" ")}`);
  const results = network.cases.map((wanted, i) => {
    const result = compareCase(wanted, ours[i], solveCase(library, network, wanted));
    console.log(`${String(i).padStart(4)}  ${caseName(wanted).padEnd(18)}${result.text}`);
    return result;
  });
  const sum = (key) => results.reduce((total, result) => total + result[key], 0);
  if (sum("skipped") === results.length) throw new Error(`${file}: no case could be compared`);
  return { failed: sum("failed"), skipped: sum("skipped") };
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
const results = files.map((file) => compareFile(program, library, file));
const total = (key) => results.reduce((sum, result) => sum + result[key], 0);
const leftOut = total("skipped") > 0 ? `, ${total("skipped")} case(s) left out` : "";
console.log(`\noracle: ${total("failed")} comparison(s) fail${total("failed") > 0 ? ", marked !" : ""}${leftOut}`);
process.exitCode = total("failed") === 0 ? 0 : 1;
