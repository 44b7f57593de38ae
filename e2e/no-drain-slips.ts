// What is first said otherwise on a walk and then put right, by “Back” or in the review: so every way out of every step of the
// sheet is taken on the phone, and no slip stays in what is found. tests/sheets/no-drain-branches.test.ts knows the ways.
import type { Told } from "./no-drain-walks";

export interface Slip {
  readonly step: string;
  readonly told: Told;
  /** Heading that it leads to; left out where the next step is asked. */
  readonly finding?: string;
}

const outside = (cause: string) => `The cause lies outside the part: ${cause}`;
const undecided = "The readings do not decide it yet";
const first = "Something must be put right first";

/** By the walk's name, in the order in which one step's slips are made. */
export const slips: Readonly<Record<string, readonly Slip[]>> = {
  "nothing found": [
    { step: "Drain hose", told: { word: "Hose crushed" } },
    { step: "Standpipe height", told: { number: "20" } },
    { step: "Hose inside the standpipe", told: { number: "8" } },
    { step: "Pump impeller", told: { word: "Spins free" } },
    { step: "Pump impeller", told: { word: "Vanes damaged by" } },
    { step: "Drain step in the diagnostic cycle", told: { word: "Drain step was not" }, finding: first },
    { step: "Interlocks", told: { word: "One is not satisfied" }, finding: first },
    { step: "Drain test, flow into a bucket", told: { word: "Slow flow" } },
    { step: "Supply voltage under load", told: { number: "90" }, finding: outside("power, water or gas supply") },
  ],
  "open winding": [
    { step: "Pump winding", told: { number: "14.6", stillConnected: true } },
    { step: "Pump winding", told: { state: "Short" } },
    { step: "Component to ground", told: { state: "Short" } },
    {
      step: "Voltage at the pump",
      told: { number: "0", commanded: true, load: true },
      finding: "Replace the drain pump first",
    },
  ],
  "broken impeller": [
    { step: "Pump housing", told: { word: "Seal leaks" } },
    { step: "Pump housing", told: { word: "Split by frost" } },
  ],
  "no output from the board with the load good": [
    {
      step: "Connectors unplugged, inspected, reseated",
      told: { word: "Fault gone" },
      finding: "The fault went when the connectors were reseated",
    },
    { step: "Connector and harness condition", told: { word: "Loose" } },
    { step: "Connector and harness condition", told: { word: "Burnt pin" } },
    { step: "Connector and harness condition", told: { word: "Corroded" }, finding: outside("liquid or pests") },
    { step: "Board output", told: { number: "118", commanded: true, load: true }, finding: undecided },
    { step: "Board output", told: { number: "0", commanded: true, load: false }, finding: undecided },
    { step: "Board, both sides", told: { word: "Burnt relay" }, finding: "The readings show: control board failed" },
    { step: "Board, both sides", told: { word: "Surge" }, finding: outside("surge or lightning") },
    { step: "Board, both sides", told: { word: "Insects" }, finding: outside("liquid or pests") },
    { step: "Board, both sides", told: { word: "Liquid" }, finding: outside("liquid or pests") },
  ],
};

/** Said otherwise only when all is answered, by “Change” in the review. */
export const changedInReview: Readonly<Record<string, Slip>> = {
  "nothing found": {
    step: "Drain test, flow into a bucket",
    told: { word: "No flow" },
  },
};
