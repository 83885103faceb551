import { it } from "vitest";
import fc from "fast-check";
import { near } from "./mutate";
import { corpus } from "./corpus";
import { checkPaste } from "./paste";
import { paste } from "../../../www/src/table/paste";
import { lines } from "../../../www/src/table/grid";
import { chosenUnits } from "../../../www/src/units";
import { catalogue, example } from "../wasm";
it("x", () => {
  const seeds = corpus("paste").map(({text}) => text);
  const t = performance.now();
  const r = fc.check(fc.property(near(seeds), fc.maxSafeNat(), checkPaste), { numRuns: 1e9, interruptAfterTimeLimit: 10000 });
  console.log(r.failed && r.errorInstance ? String((r.errorInstance as Error).stack).slice(0,800) : "", JSON.stringify(r.counterexample)?.slice(0,500), r.numRuns, performance.now() - t);
}, 600000);
it("y", () => {
  const units = chosenUnits(undefined, 101325);
  const study = example("v8_lid"); const sheet = { study, drafts: {} }; const book = { catalogue, units };
  const time = (name: string, act: () => unknown) => { let best = 1e9; for (let i = 0; i < 5; i++) { const t = performance.now(); act(); best = Math.min(best, performance.now() - t);} console.log(name, best.toFixed(1)); };
  for (const n of [250, 500]) {
    const all = lines("branches", sheet, catalogue);
    time(`rows ${n}`, () => paste(sheet, { table: "branches", all, selection: null, block: Array.from({length:n}, (_, i) => [`b${i}`, "lid", "port 1"]), copied: null }, book));
    time(`rows with losses ${n}`, () => paste(sheet, { table: "branches", all, selection: null, block: Array.from({length:n}, (_, i) => [`b${i}`, "lid", "port 1", "duct", "1000", "", "100", "0.001"]), copied: null }, book));
    time(`bad losses ${n}`, () => paste(sheet, { table: "branches", all, selection: null, block: Array.from({length:n}, (_, i) => [`b${i}`, "lid", "port 1", "duct", "x", "y", "z", "q", "duct","x","y","z","q"]), copied: null }, book));
    time(`losses ${n}`, () => paste(sheet, { table: "branches", all, selection: null, block: Array.from({length:n}, (_, i) => i ? ["", "duct", "1000", "", "100", "0.001"] : ["x","lid","p"]), copied: null }, book));
    time(`bad numbers in cells ${n}`, () => paste(sheet, { table: "branches", all, selection: { anchor: "network.branches.0.id", head: "network.branches.0.id", rows: false }, block: Array.from({length:n}, (_, i) => [`b${i}`, "lid", "port 1","q", "r"]), copied: null }, book));
    time(`nodes ${n}`, () => paste(sheet, { table: "nodes", all: lines("nodes", sheet, catalogue), selection: null, block: Array.from({length:n}, (_, i) => [`b${i}`, "plenum"]), copied: null }, book));
    time(`unknown kinds ${n}`, () => paste(sheet, { table: "nodes", all: lines("nodes", sheet, catalogue), selection: null, block: Array.from({length:n}, (_, i) => [`b${i}`, "zzz"]), copied: null }, book));
  }
  time("wide", () => paste(sheet, { table: "branches", all: lines("branches", sheet, catalogue), selection: { anchor: "network.branches.0.id", head: "network.branches.0.id", rows: false }, block: [Array(10000).fill("1")], copied: null }, book));
}, 600000);
