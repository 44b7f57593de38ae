import type { MeterMode, PowerState } from "@/lib/domain/reading";
import type { PlanStep } from "@/lib/sheets/visit-plan";
import styles from "./sheet.module.css";

interface Props {
  readonly step: PlanStep;
  /** Which of the step's readings, from 1. */
  readonly time: number;
}

/** What is measured, in which state of the machine, with what, and how long it takes. */
export function StepHead({ step: { check, minutes, times }, time }: Props) {
  return (
    <>
      <h2 className={styles.title} tabIndex={-1}>
        {check.name}
        {times > 1 && ` — ${time} of ${times}`}
      </h2>
      <p className={styles.state} data-energy={check.energy}>
        {powerWords[check.energy]} · {modeWords[check.modes[0]]} · about {minutes} min
      </p>
    </>
  );
}

export const powerWords: Readonly<Record<PowerState, string>> = {
  off: "Power off",
  powered_panels_closed: "Powered, panels closed",
  live: "Live",
};

export const modeWords: Readonly<Record<MeterMode, string>> = {
  ohm: "meter on ohms (Ω)",
  continuity: "meter on continuity",
  volt_ac: "meter on volts AC",
  volt_dc: "meter on volts DC",
  ampere: "clamp meter, amperes",
  microfarad: "meter on capacitance (µF)",
  inch: "tape measure",
  inch_water: "manometer, in w.c.",
  psi: "pressure gauge, psi",
  degree_f: "thermometer, °F",
  degree_c: "thermometer, °C",
  observation: "by eye, ear and hand",
  fault_code: "on the display",
};
