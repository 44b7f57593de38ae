// Ten front-load washers that will not drain, worked down check by check, one for each way it can end. Maker, model,
// serial and dates are the caller's; the winding's sheet range (12-18 ohm) is invented for the demo.
import type { Cause, CountedAs } from "@/lib/domain/cause";
import type { PhotoSubject } from "@/lib/domain/job";
import type { Reading } from "@/lib/domain/reading";
import {
  clearHose,
  clearPath,
  code,
  lineAtPump,
  openWinding,
  seen,
  silentPump,
  toGround,
  volts,
  winding,
  windingAtBoard,
  worked,
} from "./no-drain-readings";

export interface NoDrainCase {
  readonly name: string;
  readonly symptom: "will_not_drain";
  readonly cause: Cause;
  readonly component: string | undefined;
  readonly failureMode: string | undefined;
  readonly complaint: string;
  readonly causeNote: string;
  readonly correction: string;
  readonly readings: readonly Reading[];
  readonly photos: readonly PhotoSubject[];
  /** Component of the part that was fitted; undefined where none was. */
  readonly fitted: string | undefined;
  readonly expectedVerdict: string;
  readonly expectedCountedAs: CountedAs;
  readonly expectedClaimable: boolean;
}

const complaint = "Will not drain, stops with water in the drum, every load.";
const partPhotos = [
  "plate",
  "fault_code",
  "drain_path",
  "failed_part",
  "part_labels",
  "receipt",
  "part_invoice",
  "signature",
] as const;
const callPhotos = ["plate", "fault_code", "signature"] as const;

/** A call without a failed part. */
const call = {
  symptom: "will_not_drain",
  complaint,
  failureMode: undefined,
  fitted: undefined,
  expectedCountedAs: "call",
  expectedClaimable: false,
} as const;
/** A failure that a part cured. */
const failure = {
  symptom: "will_not_drain",
  complaint,
  cause: "component",
  expectedCountedAs: "failure",
  expectedClaimable: true,
} as const;

export const noDrainCases: readonly NoDrainCase[] = [
  {
    ...call,
    name: "Kinked hose",
    cause: "installation",
    component: "drain_path",
    failureMode: "installed_wrong",
    causeNote: "Drain hose kinked behind the machine. Pump, board and path good.",
    correction: "Straightened the hose, drain test normal, code cleared.",
    readings: worked([
      code(),
      seen("hose", "kinked"),
      seen("suds", "none"),
      seen("trap", "clear"),
      seen("impeller", "free"),
      seen("flow_test", "normal", "powered_panels_closed"),
    ]),
    photos: [...callPhotos, "kinked_hose"],
    expectedVerdict: "external",
  },
  {
    ...call,
    name: "Suds",
    cause: "suds_detergent",
    component: "drain_path",
    failureMode: "blocked",
    causeNote: "Suds lock: drum and pump full of suds, ordinary detergent in use.",
    correction: "Rinsed twice without detergent, drain test normal. Advised low-suds detergent and the dose.",
    readings: worked([
      code(),
      ...clearHose(),
      seen("suds", "present"),
      seen("trap", "clear"),
      seen("impeller", "free"),
      seen("flow_test", "normal", "powered_panels_closed"),
    ]),
    photos: [...callPhotos, "suds"],
    expectedVerdict: "suds",
  },
  {
    ...call,
    name: "Object in the trap",
    cause: "foreign_object",
    component: "drain_path",
    failureMode: "blocked",
    causeNote: "Coin and hair pin in the trap, impeller held. Turns free after removal, no damage.",
    correction: "Removed the objects, drain test normal.",
    readings: worked([
      code(),
      ...clearHose(),
      seen("suds", "none"),
      seen("trap", "object"),
      seen("impeller", "free"),
      seen("flow_test", "normal", "powered_panels_closed"),
    ]),
    photos: [...callPhotos, "drain_path", "foreign_object"],
    expectedVerdict: "external",
  },
  {
    ...failure,
    name: "Broken impeller",
    component: "drain_pump",
    failureMode: "impeller_cracked",
    causeNote:
      "Impeller vanes cracked, shaft turns in the hub. No object in trap, sump or pump. 119 V AC at the pump in the drain test, winding 14.6 ohm, sheet 12-18.",
    correction: "Replaced the drain pump, drain test pass, code cleared, two cycles.",
    readings: worked([
      code(),
      ...clearPath(),
      seen("impeller", "cracked"),
      ...lineAtPump(),
      winding(14.6),
      seen("flow_test", "none", "powered_panels_closed"),
    ]),
    photos: partPhotos,
    fitted: "drain_pump",
    expectedVerdict: "pump_mechanical",
  },
  {
    ...failure,
    name: "Open winding",
    component: "drain_pump",
    failureMode: "winding_open",
    causeNote:
      "Drain pump winding open, OL at the pump terminals, sheet 12-18 ohm; 119 V AC at the pump in the drain test; trap and impeller clear.",
    correction: "Replaced the drain pump, drain test pass, code cleared, two cycles.",
    readings: worked([code(), ...clearPath(), seen("impeller", "free"), ...lineAtPump(), openWinding(), toGround()]),
    photos: partPhotos,
    fitted: "drain_pump",
    expectedVerdict: "pump_electrical",
  },
  {
    ...failure,
    name: "Winding in range but seized",
    component: "drain_pump",
    failureMode: "impeller_seized",
    causeNote:
      "Pump hums with 120 V AC in the drain test, winding 15.1 ohm, sheet 12-18; impeller does not turn by hand, no object.",
    correction: "Replaced the drain pump, drain test pass, code cleared, two cycles.",
    readings: worked([
      code(),
      ...clearPath(),
      seen("impeller", "seized"),
      ...lineAtPump(),
      winding(15.1),
      seen("flow_test", "none", "powered_panels_closed"),
    ]),
    photos: partPhotos,
    fitted: "drain_pump",
    expectedVerdict: "pump_mechanical",
  },
  {
    ...call,
    name: "Hose blocked past the pump",
    cause: "blockage_downstream",
    component: "drain_path",
    failureMode: "blocked",
    causeNote: "Pump, board and trap good, no flow at the standpipe: house drain blocked past the appliance.",
    correction: "Showed the blocked drain with the bucket test, normal flow into a bucket. Customer to call a plumber.",
    readings: worked([
      code(),
      ...clearPath(),
      seen("impeller", "free"),
      ...lineAtPump(),
      winding(14.9),
      seen("downstream", "blocked"),
      seen("flow_test", "normal", "powered_panels_closed"),
    ]),
    photos: [...callPhotos, "drain_path"],
    expectedVerdict: "external",
  },
  {
    ...failure,
    name: "No output from the board, load good",
    component: "control_board",
    failureMode: "no_output",
    causeNote:
      "0 V at the pump and at the board output in the drain test, load connected, interlocks pass. Pump 14.8 ohm through the harness at the board connector, sheet 12-18. Connectors reseated, no change. No mark of surge, liquid or pests.",
    correction: "Replaced the control board, drain test pass, code cleared, two cycles.",
    readings: worked([
      code(),
      ...clearPath(),
      seen("impeller", "free"),
      ...silentPump(),
      winding(14.7),
      windingAtBoard(14.8),
      seen("connector_reseat", "no_change"),
      volts("board_output", 0),
      seen("board_condition", "clean"),
    ]),
    photos: [...partPhotos, "board_front", "board_back"],
    fitted: "control_board",
    expectedVerdict: "board",
  },
  {
    ...failure,
    name: "Harness open between board and pump",
    component: "wire_harness",
    failureMode: "harness_open",
    causeNote:
      "0 V at the pump in the drain test, interlocks pass. Pump 14.5 ohm at its terminals, OL at the board connector: one wire broken at the tub clamp. Reseating no change.",
    correction: "Replaced the pump harness, drain test pass, code cleared, two cycles.",
    readings: worked([
      code(),
      ...clearPath(),
      seen("impeller", "free"),
      ...silentPump(),
      winding(14.5),
      { ...openWinding(), check: "pump_winding_at_board", pointA: "board connector P", pointB: "board connector N" },
      seen("connector_reseat", "no_change"),
    ]),
    photos: [...partPhotos, "connector"],
    fitted: "wire_harness",
    expectedVerdict: "harness",
  },
  {
    ...call,
    name: "Nothing found",
    cause: "no_fault_found",
    component: undefined,
    causeNote:
      "No code stored. Line voltage at the pump, winding 14.6 ohm, sheet 12-18, impeller free, full flow in three drain tests.",
    correction: "No part replaced, machine drains.",
    readings: worked([
      seen("fault_code", "none", "powered_panels_closed"),
      ...clearPath(),
      seen("impeller", "free"),
      ...lineAtPump(),
      winding(14.6),
      seen("downstream", "clear"),
      seen("flow_test", "normal", "powered_panels_closed"),
    ]),
    photos: ["plate", "drain_path", "signature"],
    expectedVerdict: "no_fault_found",
  },
];
