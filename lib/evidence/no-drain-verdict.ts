// The front-load washer that will not drain: the decision table of the diagnosis, row by row. The order of the checks is
// published by makers; the table as a whole is common practice, no source.
import type { Cause } from "@/lib/domain/cause";
import type { ExpectedRange, Reading } from "@/lib/domain/reading";
import { checkOf } from "./checks";
import { type Condition, holds } from "./condition";
import { currentReadings, type JudgedReading, judgeReadings } from "./current-readings";
import { absent, all, any, bad, decided, good, not, open, saw } from "./entries/make-entry";

export const noDrainKinds = [
  "external",
  "suds",
  "pump_electrical",
  "pump_mechanical",
  "no_fault_found",
  "recheck_downstream",
  "board",
  "harness",
  "interlocks_first",
  "pump_first_then_board",
  "not_enough_readings",
] as const;
export type NoDrainKind = (typeof noDrainKinds)[number];

export interface NoDrainVerdict {
  readonly kind: NoDrainKind;
  /** What the verdict says the job's cause and component are; undefined where it condemns nothing yet. */
  readonly cause: Cause | undefined;
  readonly component: string | undefined;
  readonly why: string;
  /** Numbers of the readings that decide the row. */
  readonly by: readonly number[];
}

/** @param ranges  the model's; without one for pump_winding only its own sheet range, or an open or short, decides */
export function noDrainVerdict(readings: readonly Reading[], ranges: readonly ExpectedRange[] = []): NoDrainVerdict {
  const current = currentReadings(judgeReadings(readings, ranges, "front_load_washer"));
  for (const row of rows) {
    const by = holds(row.when, current);
    if (by !== undefined) return { kind: row.kind, cause: row.cause, component: row.component, why: row.why, by };
  }
  return { kind: "not_enough_readings", cause: undefined, component: undefined, why: nextStep(current), by: [] };
}

interface Row {
  readonly kind: NoDrainKind;
  readonly when: Condition;
  readonly cause: Cause | undefined;
  readonly component: string | undefined;
  readonly why: string;
}

const clearPath = all(
  good("hose"),
  good("trap"),
  not(bad("standpipe_height")),
  not(bad("hose_insertion")),
  good("suds"),
);
const badWinding = any(bad("pump_winding"), bad("winding_to_ground"));
/** No voltage where the pump or the board should have it, proven: commanded, interlocks passed, load connected. */
const silentBoard = any(absent("pump_voltage"), absent("board_output"));
const lineAtPump = good("pump_voltage");
const freeImpeller = saw("impeller", "free");

/** The first row that holds decides. Outside causes come first: whatever else reads, the job is then no claim. */
const rows: readonly Row[] = [
  external(
    "foreign_object",
    "an object was in the drain path",
    any(saw("trap", "object"), saw("impeller", "object_damage")),
  ),
  external(
    "installation",
    "the hose is kinked, crushed or over-inserted, or the standpipe is out of range",
    any(saw("hose", "kinked", "crushed"), bad("standpipe_height"), bad("hose_insertion")),
  ),
  external("freeze", "the pump is split by frost", saw("pump_housing", "frost_split")),
  {
    kind: "suds",
    when: saw("suds", "present"),
    cause: "suds_detergent",
    component: "drain_path",
    why: "suds lock the pump: it runs, nothing flows",
  },
  external("supply", "the supply voltage is out of range", bad("supply_voltage")),
  external("blockage_downstream", "the way is blocked past the pump", saw("downstream", "blocked")),
  {
    kind: "interlocks_first",
    when: any(saw("interlocks", "fail"), saw("drain_command", "not_commanded")),
    cause: undefined,
    component: undefined,
    why: "an interlock is not satisfied or the drain step is not commanded: find that first",
  },
  pump(
    "pump_electrical",
    "line voltage at the pump, winding open, shorted or out of the sheet's range",
    all(clearPath, lineAtPump, badWinding),
  ),
  pump(
    "pump_mechanical",
    "line voltage at the pump, winding in range, impeller seized, loose or cracked",
    all(clearPath, lineAtPump, good("pump_winding"), saw("impeller", "seized", "loose", "cracked")),
  ),
  {
    kind: "no_fault_found",
    when: all(clearPath, lineAtPump, good("pump_winding"), freeImpeller, saw("flow_test", "normal")),
    cause: "no_fault_found",
    component: undefined,
    why: "line voltage, winding in range, impeller free, flow normal",
  },
  {
    kind: "recheck_downstream",
    when: all(clearPath, lineAtPump, good("pump_winding"), freeImpeller, saw("flow_test", "none", "slow")),
    cause: undefined,
    component: undefined,
    why: "pump and board are good and nothing flows: look again past the pump",
  },
  {
    kind: "pump_first_then_board",
    when: all(clearPath, silentBoard, badWinding),
    cause: undefined,
    component: "drain_pump",
    why: "no voltage and a bad winding: replace the pump, and condemn the board only if it still gives none with a good load",
  },
  {
    kind: "harness",
    when: all(
      clearPath,
      silentBoard,
      good("pump_winding"),
      open("pump_winding_at_board"),
      not(saw("connector_reseat", "cured")),
    ),
    cause: "component",
    component: "wire_harness",
    why: "winding in range at the pump, open at the board connector",
  },
  {
    kind: "board",
    when: all(
      clearPath,
      silentBoard,
      good("pump_winding_at_board"),
      good("interlocks"),
      saw("connector_reseat", "no_change"),
    ),
    cause: "component",
    component: "control_board",
    why: "no output with a good load at the board connector, interlocks passed, reseating no help",
  },
];

function external(cause: Cause, why: string, when: Condition): Row {
  return { kind: "external", when, cause, component: "drain_path", why };
}

function pump(kind: "pump_electrical" | "pump_mechanical", why: string, when: Condition): Row {
  return { kind, when, cause: "component", component: "drain_pump", why };
}

/** The order in which a technician works the fault down. */
const inOrder = [
  "fault_code",
  "hose",
  "standpipe_height",
  "hose_insertion",
  "suds",
  "trap",
  "impeller",
  "supply_voltage",
  "drain_command",
  "interlocks",
  "pump_voltage",
  "pump_winding",
  "pump_winding_at_board",
  "connector_reseat",
  "board_output",
  "flow_test",
] as const;

function nextStep(current: readonly JudgedReading[]): string {
  const next = inOrder.find((check) => holds(decided(check), current) === undefined);
  if (next === undefined) return "the readings fit no row of the table: read again";
  return `not enough readings that prove something; next: ${checkOf(next)?.name ?? next}`;
}
