// Short makers for the tables of checks: each fills in what follows from the kind of measurement.
import type { Cause } from "@/lib/domain/cause";
import type { MeterMode, PowerState, SourceMark } from "@/lib/domain/reading";
import type { CautionKey } from "../cautions";
import type { Check, Finding, GeneralRange } from "../check";

type Rest = Pick<Check, "key" | "name" | "points" | "expect" | "proves"> &
  Partial<Check> & { readonly also?: readonly CautionKey[] };

/** Something seen, felt or tried; `findings` is the closed list of its words. */
export function look(rest: Rest & { readonly findings: Readonly<Record<string, Finding>> }): Check {
  return complete("observation", "off", undefined, [], false, rest);
}

/** Resistance: power off, part disconnected. It can be repeated on the old part as long as the part is held. */
export function ohms(rest: Rest): Check {
  return complete(["ohm", "continuity"], "off", "ohm", ["isolated"], true, rest);
}

/** Resistance of a sensor: without the temperature at the part it proves nothing. */
export function sensorOhms(rest: Rest): Check {
  return complete("ohm", "off", "ohm", ["isolated", "temperature"], true, rest);
}

/** Closed contact, fuse or wire: under 1 ohm. */
export function closed(rest: Omit<Rest, "expect"> & { readonly expect?: string }): Check {
  return ohms({ ...rest, expect: rest.expect ?? "closed, under 1 ohm", general: rest.general ?? [closedRange] });
}

/** A voltage that something must send: commanded, interlocks satisfied, load connected. */
export function drivenVolts(rest: Rest): Check {
  return complete(["volt_ac", "volt_dc"], "live", "V", ["command", "load", "interlocks"], false, rest);
}

/** Any other measurement. */
export function measure(mode: MeterMode, unit: string, energy: PowerState, rest: Rest): Check {
  return complete(mode, energy, unit, [], true, rest);
}

export function good(means: string): Finding {
  return { means, state: "good" };
}

export function bad(means: string): Finding {
  return { means, state: "bad" };
}

export function outside(cause: Cause, means: string): Finding {
  return { means, state: "outside", cause };
}

/** A range that decides, with its source; `screens` gives one that does not. */
export function decides(
  low: number | undefined,
  high: number | undefined,
  unit: string,
  source: string,
  mark: SourceMark,
): GeneralRange {
  return { low, high, unit, screensOnly: false, source, mark };
}

export function screens(low: number, high: number, unit: string, source: string): GeneralRange {
  return { low, high, unit, screensOnly: true, source, mark: "common practice, no source" };
}

export const line120: GeneralRange = {
  ...decides(110, 126, "V", "utilization range A of the public voltage standard, from memory", "standard"),
  modes: ["volt_ac"],
};
export const line240: GeneralRange = { ...line120, low: 220, high: 252 };
const closedRange = decides(0, 1, "ohm", "maker sheets print under 1 ohm, or less", "common practice, no source");
/** Insulation: 1 megohm or more to ground. */
export const insulated = decides(1, undefined, "mohm", "1 megohm or more", "common practice, no source");

function complete(
  mode: MeterMode | readonly [MeterMode, ...MeterMode[]],
  energy: PowerState,
  unit: string | undefined,
  needs: Check["needs"],
  laterToo: boolean,
  { also = [], ...rest }: Rest,
): Check {
  const state = rest.energy ?? energy;
  return {
    modes: typeof mode === "string" ? [mode] : mode,
    unit,
    needs,
    findings: {},
    general: [],
    laterToo,
    ...rest,
    energy: state,
    cautions: [...cautionsOfState(state), ...also, "sheet_decides"],
  };
}

/** What every check in that state needs. */
export function cautionsOfState(energy: PowerState): readonly CautionKey[] {
  switch (energy) {
    case "live":
      return ["live_work", "de_energize", "reconnect_grounds"];
    case "off":
      return ["control_plug", "prove_dead", "reconnect_grounds"];
    case "powered_panels_closed":
      return [];
  }
}
