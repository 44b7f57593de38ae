import type { MeterMode, PowerState } from "@/lib/domain/reading";
import { inUnit } from "@/lib/evidence/units";

/** The unit that each meter mode reads in; none where nothing is measured. */
const unitOfMode: Readonly<Record<MeterMode, string | undefined>> = {
  ohm: "ohm",
  continuity: "ohm",
  volt_ac: "V",
  volt_dc: "V",
  ampere: "A",
  microfarad: "µF",
  inch: "in",
  inch_water: "in w.c.",
  psi: "psi",
  degree_f: "°F",
  degree_c: "°C",
  observation: undefined,
  fault_code: undefined,
};

export function usualUnit(mode: MeterMode): string | undefined {
  return unitOfMode[mode];
}

/** Whether a value in that unit is what the mode measures: kΩ belongs to ohms, psi does not. */
export function unitBelongs(unit: string | undefined, mode: MeterMode): boolean {
  const usual = unitOfMode[mode];
  if (usual === undefined || unit === undefined) return usual === unit;
  return inUnit(1, unit, usual) !== undefined;
}

/** What keeps a mode from being used in that state of the machine; undefined where nothing does. */
export function stateAgainstMode(power: PowerState, mode: MeterMode): string | undefined {
  const isOhms = mode === "ohm" || mode === "continuity" || mode === "microfarad";
  if (isOhms && power !== "off")
    return "resistance, continuity and capacitance are measured with the power off: with power on they prove nothing and harm the meter";
  const isLive = mode === "volt_ac" || mode === "volt_dc" || mode === "ampere";
  if (isLive && power === "off") return "volts and amperes are not there with the power off";
  if (mode.startsWith("volt") && power !== "live")
    return "volts are read at open terminals, which is live work: it needs the state “live” with its cautions";
  return undefined;
}
