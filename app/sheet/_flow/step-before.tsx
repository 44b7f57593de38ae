import { Notice } from "@/app/_ui/notice";
import { cautions } from "@/lib/evidence/cautions";
import { testPoints } from "@/lib/sheets/test-points";
import type { PlanStep } from "@/lib/sheets/visit-plan";
import { Drawing } from "./drawing";
import styles from "./sheet.module.css";

interface Props {
  readonly step: PlanStep;
  /** Which of the step's readings, from 1. */
  readonly time: number;
  readonly notes: readonly string[];
}

/** Before anything is typed: the step's cautions, where the leads go, and what the result will say. */
export function StepBefore({ step: { check, note, branch }, time, notes }: Props) {
  const { drawing, pairs } = testPoints(check);
  const points = pairs[time - 1] ?? pairs[0];
  return (
    <div className={styles.before}>
      <Notice
        status={check.energy === "live" ? "act-now" : "watch"}
        title={check.energy === "live" ? "Live step" : "Caution"}
      >
        <ul>
          {check.cautions.map((key) => (
            <li key={key}>
              {cautions[key].text} <span className="small soft">({cautions[key].basis})</span>
            </li>
          ))}
        </ul>
      </Notice>
      <div className={styles.where} data-leads={points !== undefined}>
        <Drawing kind={drawing} points={points} />
        <p>
          <strong>Where:</strong> {check.points}.{" "}
          {branch !== undefined && <span className="soft">Asked because: {branch.words}. </span>}
        </p>
      </div>
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
    </div>
  );
}
