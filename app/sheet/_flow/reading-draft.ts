import type { OwnCheck } from "@/lib/domain/own-check";
import type { MeterMode, PowerState, Reading, ReadingOutcome } from "@/lib/domain/reading";
import type { Check } from "@/lib/evidence/check";
import { inUnit } from "@/lib/evidence/units";
import type { SheetReading } from "@/lib/sheets/sheet-answer";
import { testPoints } from "@/lib/sheets/test-points";
import { typedValue } from "@/lib/sheets/typed-value";
import { inOtherUnit } from "./noted-range";

/** Everything on the screen of one measuring step, as it stands. */
export interface ReadingDraft {
  readonly text: string;
  readonly unit: string;
  readonly mode: MeterMode;
  readonly power: PowerState;
  readonly isolated: boolean | undefined;
  readonly loadConnected: boolean | undefined;
  readonly commanded: boolean | undefined;
  readonly temperature: string;
  readonly temperatureUnit: "°C" | "°F";
  readonly sheetLow: string;
  readonly sheetHigh: string;
  readonly sheetReference: string;
  readonly cautionsRead: boolean;
}

/** As the step asks for it: the technician says where it was taken otherwise. What decides over zero volts is never assumed. */
export function emptyDraft(check: Check, commanded: boolean | undefined): ReadingDraft {
  return {
    text: "",
    unit: check.unit ?? "",
    mode: measuringMode(check),
    power: check.energy,
    isolated: check.needs.includes("isolated") ? true : undefined,
    loadConnected: undefined,
    commanded: check.needs.includes("command") ? commanded : undefined,
    temperature: "",
    temperatureUnit: "°F",
    sheetLow: "",
    sheetHigh: "",
    sheetReference: "",
    cautionsRead: check.energy !== "live",
  };
}

/** The mode in which a number is read; the first of a check that is also looked at may be the eye. */
export function measuringMode({ modes }: Check): MeterMode {
  return modes.find((mode) => mode !== "observation" && mode !== "fault_code") ?? modes[0];
}

/** The draft with this outcome as the reading that it would become. */
export function readingOf(draft: ReadingDraft, outcome: ReadingOutcome, check: Check, time: number): SheetReading {
  const isMeasured = outcome.kind !== "finding" && outcome.kind !== "code";
  const [pointA, pointB] = testPoints(check).pairs[time - 1] ?? testPoints(check).pairs[0] ?? [undefined, undefined];
  const wordMode = outcome.kind === "code" ? "fault_code" : "observation";
  // Beside a state of the meter stands no unit: the range is noted in the check's own.
  const ends = outcome.kind === "number" ? draft : inOtherUnit(draft, check.unit ?? draft.unit);
  const sheetLow = isMeasured ? numberIn(ends.sheetLow) : undefined;
  const sheetHigh = isMeasured ? numberIn(ends.sheetHigh) : undefined;
  const noted = sheetLow !== undefined || sheetHigh !== undefined;
  return {
    kind: "reading",
    mode: isMeasured ? draft.mode : wordMode,
    outcome,
    power: draft.power,
    pointA: isMeasured ? pointA : undefined,
    pointB: isMeasured ? pointB : undefined,
    isolated: isMeasured ? draft.isolated : undefined,
    loadConnected: isMeasured ? draft.loadConnected : undefined,
    commanded: isMeasured ? draft.commanded : undefined,
    temperatureC: isMeasured ? temperatureC(draft) : undefined,
    sheetLow,
    sheetHigh,
    sheetReference: noted ? draft.sheetReference.trim() || "sheet in the machine" : undefined,
    cautionsRead: draft.cautionsRead,
  };
}

/** The same as a reading of the record, for judging it before it is kept. */
export function judgedAs(reading: SheetReading, check: Check, own: OwnCheck | undefined): Reading {
  const { kind: _, cautionsRead: __, ...taken } = reading;
  return {
    ...taken,
    number: Number.MAX_SAFE_INTEGER,
    check: check.key,
    own,
    note: undefined,
    technician: undefined,
    takenAt: undefined,
  };
}

export function temperatureC({ temperature, temperatureUnit }: ReadingDraft): number | undefined {
  const value = numberIn(temperature);
  return value === undefined ? undefined : inUnit(value, temperatureUnit, "°C");
}

export function numberIn(text: string): number | undefined {
  const read = typedValue(text);
  return read.kind === "value" ? read.value : undefined;
}
