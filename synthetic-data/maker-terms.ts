// What each invented maker promises, in short; policies.ts writes it out as policy documents, and cover-check.ts asks it
// when a job is filed. Lengths are of the kinds that published terms use; every number is invented for the demo.
import type { Day } from "@/lib/calendar/day";
import { day } from "@/lib/calendar/day";
import type { AnchorDay } from "@/lib/calendar/term";
import type { StartEvent } from "@/lib/domain/policy-start";
import type { MakerKey } from "./models";

export const componentClasses = {
  electronics: ["control_board", "main_or_inverter_board", "oven_control", "user_interface"],
  motors_and_pumps: [
    "drive_motor",
    "drive_motor_and_capacitor",
    "drain_pump",
    "circulation_pump",
    "evaporator_fan_motor",
    "condenser_fan_motor",
  ],
  sealed_system: ["compressor", "sealed_system"],
} as const satisfies Record<string, readonly string[]>;
export type ClassKey = keyof typeof componentClasses;

export interface MakerTerms {
  readonly version: number;
  readonly effectiveFrom: Day;
  readonly effectiveTo: Day | undefined;
  readonly wholeUnitYears: number;
  readonly classYears: Readonly<Partial<Record<ClassKey, { readonly parts: number; readonly labour: number }>>>;
}

export interface MakerPromise {
  readonly start: readonly StartEvent[];
  readonly anchorDay: AnchorDay;
  readonly filingDays: number;
  readonly filingBy: "sending" | "receipt";
  readonly versions: readonly MakerTerms[];
}

export const makerPromises: Readonly<Record<MakerKey, MakerPromise>> = {
  brackenhall: {
    start: ["purchase", "delivery", "installation"],
    anchorDay: "exclude",
    filingDays: 30,
    filingBy: "sending",
    versions: [
      terms(1, "2000-01-01", "2022-12-31", 1, {
        electronics: [5, 1],
        motors_and_pumps: [10, 1],
        sealed_system: [5, 5],
      }),
      terms(2, "2023-01-01", undefined, 1, { electronics: [2, 1], motors_and_pumps: [5, 1], sealed_system: [5, 5] }),
    ],
  },
  veltrane: {
    start: ["delivery", "purchase", "installation"],
    anchorDay: "include",
    filingDays: 45,
    filingBy: "receipt",
    versions: [
      terms(1, "2000-01-01", "2021-06-30", 2, { electronics: [5, 2], sealed_system: [10, 5] }),
      terms(2, "2021-07-01", undefined, 2, { electronics: [3, 2], sealed_system: [5, 5] }),
    ],
  },
  dunmorrow: {
    start: ["installation", "delivery", "purchase"],
    anchorDay: "exclude",
    filingDays: 60,
    filingBy: "sending",
    versions: [
      terms(1, "2000-01-01", undefined, 1, { electronics: [2, 1], motors_and_pumps: [5, 1], sealed_system: [5, 1] }),
    ],
  },
};

function terms(
  version: number,
  from: string,
  to: string | undefined,
  wholeUnitYears: number,
  classes: Readonly<Partial<Record<ClassKey, readonly [parts: number, labour: number]>>>,
): MakerTerms {
  const classYears: Partial<Record<ClassKey, { parts: number; labour: number }>> = {};
  for (const [key, [parts, labour]] of Object.entries(classes)) {
    classYears[key as ClassKey] = { parts, labour }; // Object.entries loses the key type
  }
  return {
    version,
    effectiveFrom: day(from),
    effectiveTo: to === undefined ? undefined : day(to),
    wholeUnitYears,
    classYears,
  };
}
