import { Notice } from "@/app/_ui/notice";
import type { MeterMode, PowerState } from "@/lib/domain/reading";
import { cautions } from "@/lib/evidence/cautions";
import type { Proposal } from "@/lib/sheets/next-check";
import { testPoints } from "@/lib/sheets/test-points";
import type { PlanStep } from "@/lib/sheets/visit-plan";
import { Drawing } from "./drawing";
import { describeReason } from "./reason-words";
import styles from "./sheet.module.css";

interface Props {
  readonly step: PlanStep;
  /** Which of the step's readings, from 1. */
  readonly time: number;
  readonly reason: Extract<Proposal, { readonly kind: "next" }>["reason"] | undefined;
  readonly notes: readonly string[];
}

/** Before anything is typed: state of the machine, its cautions, where the leads go, and what the result will say. */
export function StepHead({ step: { check, minutes, note, branch, times }, time, reason, notes }: Props) {
  const { drawing, pairs } = testPoints(check);
  return (
    <>
      <h2 className={styles.title} tabIndex={-1}>
        {check.name}
        {times > 1 && ` — ${time} of ${times}`}
      </h2>
      <p className={styles.state} data-energy={check.energy}>
        {powerWords[check.energy]} · {modeWords[check.modes[0]]} · about {minutes} min
      </p>
      <Notice
        status={check.energy === "live" ? "act-now" : "watch"}
        title={check.energy === "live" ? "Live step" : "Caution"}
      >
        <ul className={styles.cautions}>
          {check.cautions.map((key) => (
            <li key={key}>
              {cautions[key].text} <span className="small soft">({cautions[key].basis})</span>
            </li>
          ))}
        </ul>
      </Notice>
      <Drawing kind={drawing} points={pairs[time - 1] ?? pairs[0]} />
      <p>
        <strong>Where:</strong> {check.points}.{" "}
        {branch !== undefined && <span className="soft">Asked because: {branch.words}. </span>}
      </p>
      <p>
        <strong>What it says:</strong> {check.proves}.
      </p>
      {[note, ...notes]
        .filter((words) => words !== "")
        .map((words) => (
          <p key={words} className={styles.shopNote}>
            <strong>From the shop:</strong> {words}
          </p>
        ))}
      {reason !== undefined && <p className="small soft">{describeReason(reason)}</p>}
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
