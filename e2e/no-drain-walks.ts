// What each of the ten washers shows at every step, written by hand from the diagnosis, and where the sheet must end.
// Serials are those of the demo's no-drain jobs, whose model sheet gives the winding 12-18 ohm.

/** What is said to a step: a word of its list, a number, a state of the meter, that no code is stored, or why it is passed over. */
export type Told =
  | { readonly word: string }
  | NumberTold
  | { readonly state: "Open (OL)" | "Short" | "No reading" }
  | { readonly none: true }
  | { readonly code: string }
  | { readonly skip: string };

export interface NumberTold {
  readonly number: string;
  readonly commanded?: boolean;
  readonly load?: boolean;
  /** The part that is fitted, of those that the model came with. */
  readonly part?: RegExp;
  /** Taken with the part still connected, which proves nothing. */
  readonly stillConnected?: true;
}

export interface NoDrainWalk {
  readonly name: string;
  readonly serial: string;
  readonly readings: Readonly<Record<string, Told>>;
  /** In the heading of the finding. */
  readonly finding: string;
  /** In the heading of the closed job. */
  readonly titled: string;
  readonly isFailure: boolean;
  /** Steps without which the finding would not be shown, and steps that it makes needless. */
  readonly asked: readonly string[];
  readonly never: readonly string[];
}

const codes = "Stored fault codes";
const hose = "Drain hose";
const height = "Standpipe height";
const insertion = "Hose inside the standpipe";
const suds = "Suds";
const trap = "Trap, filter and sump";
const impeller = "Pump impeller";
const winding = "Pump winding";
const atBoard = "Pump winding at the board";
const ground = "Component to ground";
const housing = "Pump housing";
const condition = "Connector and harness condition";
const command = "Drain step in the diagnostic cycle";
const interlocks = "Interlocks";
const supply = "Supply voltage under load";
const flow = "Drain test, flow into a bucket";
const downstream = "Past the pump";
const atPump = "Voltage at the pump";
const output = "Board output";
const reseat = "Connectors unplugged, inspected, reseated";
const board = "Board, both sides";
const live = [atPump, output, supply];

const path = [hose, height, insertion, suds, trap];

/** A washer with nothing wrong but what a case says otherwise. */
const good: Readonly<Record<string, Told>> = {
  [codes]: { code: "F21" },
  [hose]: { word: "No kink, no crush" },
  [height]: { number: "36" },
  [insertion]: { number: "4" },
  [suds]: { word: "No suds" },
  [trap]: { word: "Nothing found" },
  [impeller]: { word: "Turns with magnetic steps" },
  [winding]: { number: "14,6" },
  [ground]: { state: "Open (OL)" },
  [housing]: { word: "No split" },
  [condition]: { word: "Clean and seated" },
  [command]: { word: "Drain step called for" },
  [interlocks]: { word: "All satisfied" },
  [flow]: { word: "No flow" },
  [downstream]: { word: "Water runs away" },
  [supply]: { number: "120" },
  [atPump]: { number: "119", commanded: true, load: true },
  [atBoard]: { number: "14.8" },
  [reseat]: { word: "Fault stays after reseating" },
  [output]: { number: "0", commanded: true, load: true },
  [board]: { word: "Nothing to see" },
  "Harness resistance": { state: "Open (OL)" },
};

const flows: Readonly<Record<string, Told>> = { [flow]: { word: "Steady full flow" } };
const silent: Readonly<Record<string, Told>> = { [atPump]: { number: "0", commanded: true, load: true } };
const pump = { finding: "drain pump failed", titled: "drain pump failed", isFailure: true } as const;

export const noDrainWalks: readonly NoDrainWalk[] = [
  outside("kinked hose", "B26309900001", "installation", [hose, flow], { [hose]: { word: "Hose kinked" }, ...flows }),
  outside("suds", "B26169900002", "suds or wrong detergent", [suds, flow], {
    [suds]: { word: "Suds lock the pump" },
    ...flows,
  }),
  outside("object in the trap", "B26039900003", "foreign object", [trap, flow], {
    [trap]: { word: "Object in trap" },
    ...flows,
  }),
  {
    ...pump,
    name: "broken impeller",
    serial: "B25349900004",
    readings: told({ [impeller]: { word: "Vanes cracked or worn" } }),
    asked: [impeller, housing, winding, flow, atPump],
    never: [atBoard, output, board],
  },
  {
    ...pump,
    name: "open winding",
    serial: "B25519900005",
    readings: told({ [winding]: { state: "Open (OL)" } }),
    asked: [codes, winding, ground, atPump],
    never: [downstream, atBoard, output, board],
  },
  {
    ...pump,
    name: "winding in range but seized",
    serial: "B25349900006",
    readings: told({ [impeller]: { word: "Does not turn" }, [winding]: { number: "15.1" } }),
    asked: [impeller, winding, atPump],
    never: [atBoard, output, board],
  },
  outside("hose blocked past the pump", "B26119900007", "blocked past the appliance", [flow, downstream], {
    [downstream]: { word: "Blocked past the pump" },
    ...flows,
  }),
  {
    name: "no output from the board with the load good",
    serial: "B24519900008",
    readings: told(silent),
    finding: "control board failed",
    titled: "control board failed",
    isFailure: true,
    asked: [atPump, atBoard, reseat, condition, output, board],
    never: [],
  },
  {
    name: "harness open between board and pump",
    serial: "B25409900009",
    readings: told({ ...silent, [atBoard]: { state: "Open (OL)" } }),
    finding: "wire harness or connector failed",
    titled: "wire harness or connector failed",
    isFailure: true,
    asked: [atPump, winding, atBoard, condition],
    never: [output, board],
  },
  {
    name: "nothing found",
    serial: "B26259900010",
    readings: told({ ...flows, [codes]: { none: true } }),
    finding: "No fault found",
    titled: "no fault found",
    isFailure: false,
    asked: [codes, ...path, winding, impeller, command, interlocks, flow, downstream, supply, atPump],
    never: [housing, atBoard, output, board, reseat, condition],
  },
];

function told(otherwise: Readonly<Record<string, Told>>): Readonly<Record<string, Told>> {
  return { ...good, ...otherwise };
}

/** Found with the power off: nobody is sent to live parts. */
function outside(
  name: string,
  serial: string,
  cause: string,
  asked: readonly string[],
  otherwise: Readonly<Record<string, Told>>,
): NoDrainWalk {
  return {
    name,
    serial,
    readings: told(otherwise),
    finding: `The cause lies outside the part: ${cause}`,
    titled: cause,
    isFailure: false,
    asked,
    never: [...live, atBoard, board],
  };
}
