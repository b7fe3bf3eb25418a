// States a second of the solver in lanes against a general network library (npm), in one run:
//   node against_library.mjs BUILD-FOLDER [ROUNDS]
// The same invented stations of 16, 32 and 48 hoses, the same random sets of open hoses, each from a fresh start. The
// library has them as its own reduced network (parts in series as one pipe, a pump with its leg as one curve) and part by
// part, at equal accuracy (relative flow change 1e-3 and head error 1e-8 m); setting the links and solving are timed,
// reading the flows is not. It knows no loss linear in flow, so the stations here have none. A limiter is a flow control
// valve. Both are timed in CPU seconds of one thread, in turns; each ratio is the median of those of the rounds.
import { execFileSync } from "node:child_process";
import { createRequire } from "node:module";
import path from "node:path";
import { fileURLToPath } from "node:url";

const here = path.dirname(fileURLToPath(import.meta.url));
// The library is installed for the tests that hold the solver against it.
const { FlowUnits, HeadLossType, InitHydOption, LinkProperty, LinkType, NodeProperty, NodeType, Option, Project,
  Workspace } = createRequire(path.join(here, "../tests/oracle/run.mjs"))("epanet-js");

const goals = { "AVX-512": { reduced: 24, elements: 90 }, AVX2: { reduced: 15, elements: 54 } };
const everySetGoal = 0.15; // s
const foot = 0.3048; // m
const viscosityUnit = 1.1e-5; // ft2/s
const secondsARound = 0.3;
// Friction formulas and constants differ, by up to 1.4e-3 of a flow, and a pump's leg is in its curve.
const agreement = 5e-3;

/** A network in the library, with the links of its hoses. */
function build(workspace, network, viscosity) {
  const model = new Project(workspace);
  model.init("report.txt", "", FlowUnits.LPS, HeadLossType.DW);
  model.setOption(Option.SpViscos, viscosity / (viscosityUnit * foot * foot));
  model.setOption(Option.Trials, 500);
  model.setOption(Option.Accuracy, 1e-3);
  model.setOption(Option.HeadError, 1e-8);
  for (let n = 0; n < network.nodes; n += 1) {
    const head = network.fixed_head_m[n];
    const index = model.addNode(`N${n}`, head === undefined ? NodeType.Junction : NodeType.Reservoir);
    if (head !== undefined) model.setNodeValue(index, NodeProperty.Elevation, head);
  }
  const hoses = [];
  network.links.forEach((link, i) => {
    const type = { pump: LinkType.Pump, pipe: LinkType.Pipe, limiter: LinkType.FCV }[link.kind];
    const index = model.addLink(`L${i}`, type, `N${link.from}`, `N${link.to}`);
    if (link.kind === "pump") {
      model.addCurve(`C${i}`);
      const curve = model.getCurveIndex(`C${i}`);
      model.setCurve(curve, link.points.map(([flow]) => 1000 * flow), link.points.map(([, head]) => head));
      model.setHeadCurveIndex(index, curve);
    } else if (link.kind === "pipe") {
      model.setPipeData(index, link.L, 1000 * link.D, 1000 * link.roughness, link.K);
    } else {
      model.setLinkValue(index, LinkProperty.Diameter, 50);
      model.setLinkValue(index, LinkProperty.MinorLoss, 0.1);
      model.setLinkValue(index, LinkProperty.InitSetting, 1000 * link.limit);
    }
    if (link.hose !== undefined) hoses[link.hose] = index;
  });
  model.openH();
  return { model, hoses, now: "1".repeat(hoses.length), failed: 0 };
}

/** Solves one set of open hoses; only links that change are set. */
function solve(built, bits) {
  const { model, hoses } = built;
  for (let h = 0; h < hoses.length; h += 1) {
    if (bits[h] !== built.now[h]) model.setLinkValue(hoses[h], LinkProperty.InitStatus, Number(bits[h]));
  }
  built.now = bits;
  model.initH(InitHydOption.NoSave);
  try {
    model.runH();
  } catch {
    built.failed += 1;
  }
}

function rateOf(built, sets) {
  const begin = process.cpuUsage();
  const seconds = () => {
    const { user, system } = process.cpuUsage(begin);
    return (user + system) / 1e6;
  };
  let count = 0;
  do {
    for (let i = 0; i < 16; i += 1, count += 1) solve(built, sets[count % sets.length]);
  } while (seconds() < secondsARound);
  return count / seconds();
}

/** Largest relative difference in the flow of an open hose, over the sets whose flows were written. */
function differenceOf(built, sets, flows) {
  let worst = 0;
  flows.forEach((ours, s) => {
    solve(built, sets[s]);
    built.hoses.forEach((link, h) => {
      if (sets[s][h] === "0") return;
      const theirs = built.model.getLinkValue(link, LinkProperty.Flow) / 1000;
      worst = Math.max(worst, Math.abs(theirs - ours[h]) / ours[h]);
    });
  });
  return worst;
}

function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)];
}

const thousands = (value) => `${(value / 1000).toFixed(value < 1e5 ? 1 : 0)}k`;

const [folder, roundsWanted] = process.argv.slice(2);
if (!folder) {
  console.error("usage: node against_library.mjs BUILD-FOLDER [ROUNDS]");
  process.exit(2);
}
const rounds = Number(roundsWanted ?? 5);
const program = path.join(path.resolve(folder), "bench", "library_rate");
const call = (...words) => JSON.parse(execFileSync(program, words.map(String), { encoding: "utf8", maxBuffer: 1 << 28 }));
console.warn = () => {};
const workspace = new Workspace();
await workspace.loadModule();
console.log("states a second of CPU time, medians; ratio: median over the rounds of random sets against random sets");
console.log("hoses limited network   library  set        random  neighbors   goal  ratio");
const everySet = {};
let met = true;
for (const hoses of [16, 32, 48]) {
  for (const limited of [0, 1]) {
    const station = call("write", hoses, limited);
    const networks = ["reduced", "elements"].map((name) => {
      const built = build(workspace, station[name], station.kinematic_viscosity_m2_s);
      const difference = differenceOf(built, station.sets, station.flows);
      if (!(difference < agreement)) throw new Error(`${hoses} hoses, ${name}: flows differ by ${difference}`);
      return { name, built, rates: [] };
    });
    const ours = [];
    for (let round = 0; round < rounds; round += 1) {
      ours.push(call("time", hoses, limited));
      for (const { built, rates } of networks) rates.push(rateOf(built, station.sets));
    }
    for (const { name, built, rates } of networks) {
      for (const set of Object.keys(ours[0])) {
        const ratio = median(ours.map((one, i) => one[set].random / rates[i]));
        const goal = goals[set]?.[name];
        if (goal) met &&= ratio >= goal;
        const verdict = goal === undefined ? "" : ratio >= goal ? "met" : "missed";
        console.log(`${String(hoses).padStart(5)} ${limited ? "yes" : "no "}     ${name.padEnd(8)} ` +
          `${thousands(median(rates)).padStart(8)}  ${set.padEnd(8)} ` +
          `${thousands(median(ours.map((one) => one[set].random))).padStart(8)}   ` +
          `${thousands(median(ours.map((one) => one[set].neighbors))).padStart(8)} ${String(goal ?? "-").padStart(6)} ` +
          `${ratio.toFixed(1).padStart(6)} ${verdict}`);
        if (hoses === 16) (everySet[set] ??= []).push(...ours.map((one) => one[set].every_set_s));
      }
      if (built.failed > 0) console.log(`      (${built.failed} solves of the library ended with an error)`);
      built.model.closeH();
      built.model.close();
    }
  }
}
console.log(`\nall 65,536 sets of 16 hoses, goal ${everySetGoal} s on one core:`);
for (const [set, seconds] of Object.entries(everySet)) {
  const time = median(seconds);
  const judged = set === "AVX-512";
  if (judged) met &&= time < everySetGoal;
  console.log(`  ${set.padEnd(8)} ${time.toFixed(3)} s${judged ? (time < everySetGoal ? " met" : " missed") : ""}`);
}
console.log(met ? "\nall goals met" : "\na goal was missed; the machine may be busy");
