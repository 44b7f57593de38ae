// What each of the ten no-drain jobs must show, written by hand from the diagnosis, not read from the program's tables.
// Days and serials follow from the demo's last day, 31 Oct 2026, and the dates told in synthetic-data/no-drain-jobs.ts.

/** Check, what was found, what it shows: as the table of readings words them. */
type ReadingShown = readonly [check: string, found: string, shows: string];

export interface NoDrainExpected {
  readonly name: string;
  readonly job: string;
  readonly titled: string;
  readonly completed: string;
  readonly isFailure: boolean;
  readonly hasLiveStep: boolean;
  /** The readings that decide the case. */
  readonly readings: readonly ReadingShown[];
  /** Why it cannot be claimed; undefined where it can. */
  readonly blocked: RegExp | undefined;
  readonly packet: PacketExpected | undefined;
}

export interface PacketExpected {
  readonly serial: string;
  readonly sold: string;
  readonly reported: string;
  /** In words of the evidence check. */
  readonly proven: string;
  /** As the packet words values with their units. */
  readonly values: readonly string[];
  /** What is covered and what is not. */
  readonly coverage: readonly string[];
}

const lineAtPump: ReadingShown = ["Voltage at the pump", "119 V", "Inside its range"];
const covered = ["Parts: covered by Brackenhall", "Labour: covered by Brackenhall"];

export const noDrainExpected: readonly NoDrainExpected[] = [
  outside({
    name: "kinked hose",
    job: "J-10001",
    titled: "installation",
    completed: "22 Oct 2026",
    hasLiveStep: false,
    readings: [
      ["Drain hose", "kinked", "hose kinked"],
      ["Drain test, flow into a bucket", "normal", "steady full flow"],
    ],
    blocked: /cause lies outside the part: Installation\. Usually borne by: installer or customer/,
  }),
  outside({
    name: "suds",
    job: "J-10002",
    titled: "suds or wrong detergent",
    completed: "17 Oct 2026",
    hasLiveStep: false,
    readings: [["Suds", "present", "suds"]],
    blocked: /cause lies outside the part: Suds or wrong detergent\. Usually borne by: customer/,
  }),
  outside({
    name: "object in the trap",
    job: "J-10003",
    titled: "foreign object",
    completed: "20 Oct 2026",
    hasLiveStep: false,
    readings: [["Trap, filter and sump", "object", "object"]],
    blocked: /cause lies outside the part: Foreign object\. Usually borne by: customer/,
  }),
  failure("broken impeller", "J-10004", "drain pump", "25 Oct 2026", {
    readings: [["Pump impeller", "cracked", "crack"], lineAtPump, ["Pump winding", "14.6 Ω", "Inside its range"]],
    packet: {
      serial: "B25349900004",
      sold: "23 Oct 2025",
      reported: "23 Oct 2026",
      proven: "impeller loose, worn or seized with no foreign object",
      values: ["119 V", "120 V", "14.6 Ω", "12–18 Ω", "36 in", "4 in"],
      coverage: [...covered, "inside, on the last day"],
    },
  }),
  failure("open winding", "J-10005", "drain pump", "21 Oct 2026", {
    readings: [
      lineAtPump,
      ["Pump winding", "Open (OL)", "Open"],
      ["Component to ground", "Open (OL)", "as it should be"],
    ],
    packet: {
      serial: "B25519900005",
      sold: "18 Feb 2026",
      reported: "18 Oct 2026",
      proven: "winding open",
      values: ["119 V", "120 V", "Open (OL)", "12–18 Ω"],
      coverage: covered,
    },
  }),
  failure("winding in range but seized", "J-10006", "drain pump", "23 Oct 2026", {
    readings: [["Pump impeller", "seized", "turn"], lineAtPump, ["Pump winding", "15.1 Ω", "Inside its range"]],
    packet: {
      serial: "B25349900006",
      sold: "20 Oct 2025",
      reported: "21 Oct 2026",
      proven: "impeller loose, worn or seized with no foreign object",
      values: ["119 V", "120 V", "15.1 Ω", "12–18 Ω"],
      coverage: ["Parts: covered by Brackenhall", "Labour: not covered"],
    },
  }),
  outside({
    name: "hose blocked past the pump",
    job: "J-10007",
    titled: "blocked past the appliance",
    completed: "11 Oct 2026",
    hasLiveStep: true,
    readings: [lineAtPump, ["Pump winding", "14.9 Ω", "Inside its range"], ["Past the pump", "blocked", "blocked"]],
    blocked: /cause lies outside the part: Blocked past the appliance\. Usually borne by: customer/,
  }),
  failure("no output from the board with the load good", "J-10008", "control board", "19 Oct 2026", {
    readings: [
      ["Voltage at the pump", "0 V", "Below its range"],
      ["Pump winding at the board", "14.8 Ω", "Inside its range"],
      ["Board output", "0 V", "Below its range"],
      ["Board, both sides", "clean", ""],
    ],
    packet: {
      serial: "B24519900008",
      sold: "15 Feb 2025",
      reported: "15 Oct 2026",
      proven: "is proven",
      values: ["0 V", "120 V", "14.7 Ω", "14.8 Ω"],
      coverage: ["Parts: covered by Brackenhall", "Labour: not covered"],
    },
  }),
  failure("harness open between board and pump", "J-10009", "wire harness or connector", "1 Oct 2026", {
    readings: [
      ["Voltage at the pump", "0 V", "Below its range"],
      ["Pump winding", "14.5 Ω", "Inside its range"],
      ["Pump winding at the board", "Open (OL)", "Open"],
    ],
    packet: {
      serial: "B25409900009",
      sold: "28 Nov 2025",
      reported: "28 Sep 2026",
      proven: "is proven",
      values: ["0 V", "120 V", "14.5 Ω", "Open (OL)"],
      coverage: [...covered, "31 Oct 2026"],
    },
  }),
  outside({
    name: "nothing found",
    job: "J-10010",
    titled: "no fault found",
    completed: "15 Oct 2026",
    hasLiveStep: true,
    readings: [
      ["Stored fault codes", "none", ""],
      lineAtPump,
      ["Pump winding", "14.6 Ω", "Inside its range"],
      ["Drain test, flow into a bucket", "normal", "steady full flow"],
    ],
    blocked: /No fault was found, and this policy pays no visit without a repair/,
  }),
];

function outside(told: Omit<NoDrainExpected, "isFailure" | "packet">): NoDrainExpected {
  return { ...told, titled: `${told.titled}, not a failure of a part`, isFailure: false, packet: undefined };
}

function failure(
  name: string,
  job: string,
  component: string,
  completed: string,
  told: Pick<NoDrainExpected, "readings"> & { readonly packet: PacketExpected },
): NoDrainExpected {
  const titled = `${component} failed`;
  return { name, job, titled, completed, isFailure: true, hasLiveStep: true, blocked: undefined, ...told };
}
