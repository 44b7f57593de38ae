import { Notice } from "@/app/_ui/notice";
import { cautions } from "@/lib/evidence/cautions";
import { testPoints } from "@/lib/sheets/test-points";
import type { PlanStep } from "@/lib/sheets/visit-plan";
import type { Settles } from "@/lib/sheets/what-it-settles";
import { Drawing } from "./drawing";
import styles from "./sheet.module.css";

interface Props {
  readonly step: PlanStep;
  /** Which of the step's readings, from 1. */
  readonly time: number;
  readonly notes: readonly string[];
  /** Undefined for a check that is asked for by itself, of which no search depends. */
  readonly settles: Settles | undefined;
}

/** Before anything is typed: the step's cautions, where the leads go, and what the result will say. */
export function StepBefore({ step: { check, note, branch }, time, notes, settles }: Props) {
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
        <strong>What it says:</strong> {check.proves}. {settles !== undefined && <SettlesWords {...settles} />}
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

function SettlesWords({ good, notGood, leavesOpen }: Settles) {
  const rest = good.length + notGood.length > 0 ? "The rest stays open." : "By itself it rules out nothing.";
  return (
    <span className="small soft">
      {good.length > 0 && `As it should be, it rules out: ${good.join("; ")}. `}
      {notGood.length > 0 && `Otherwise it rules out: ${notGood.join("; ")}. `}
      {leavesOpen && rest}
    </span>
  );
}
