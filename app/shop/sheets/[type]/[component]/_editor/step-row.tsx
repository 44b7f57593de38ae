import { useState } from "react";
import { Button } from "@/app/_ui/button";
import { photoSubjects } from "@/lib/domain/job";
import type { LooseStep } from "@/lib/sheets/loose-sheet";
import { nameOfStep } from "./loose-names";
import styles from "./sheet-form.module.css";
import { StepFields } from "./step-fields";

interface Props {
  readonly step: LooseStep;
  readonly steps: readonly LooseStep[];
  readonly at: number;
  /** The rules of evidence ask for it. */
  readonly isKept: boolean;
  readonly onSet: (part: Partial<LooseStep>) => void;
  readonly onMove: (by: number) => void;
  readonly onTakeOff: () => void;
}

/** One line of the sheet: what it is and its place; what may be changed unfolds below. */
export function StepRow({ step, steps, at, isKept, onSet, onMove, onTakeOff }: Props) {
  const name = nameOfStep(step);
  // A new one begins unfolded, and stays so while its name is typed.
  const [beginsOpen] = useState(step.own?.name === "");
  return (
    <div className={styles.row}>
      <details className={styles.fold} open={beginsOpen}>
        <summary>
          <strong>{name}</strong> <span className="small soft">{summaryOf(step, steps)}</span>
        </summary>
        <StepFields step={step} steps={steps} onSet={onSet} />
        {isKept ? (
          <p className="small soft">The rules of evidence ask for it: it stays on the sheet.</p>
        ) : (
          <Button type="button" weight="plain" onClick={onTakeOff}>
            Take off<span className="only-heard">: {name}</span>
          </Button>
        )}
      </details>
      <div className={styles.moves}>
        <Button type="button" weight="plain" disabled={at === 0} onClick={() => onMove(-1)}>
          Earlier<span className="only-heard">: {name}</span>
        </Button>
        <Button type="button" weight="plain" disabled={at === steps.length - 1} onClick={() => onMove(1)}>
          Later<span className="only-heard">: {name}</span>
        </Button>
      </div>
    </div>
  );
}

function summaryOf(
  { minutes, times, photo, after, note, cautions, own }: LooseStep,
  steps: readonly LooseStep[],
): string {
  const waited = steps.find(({ check }) => check === after?.check);
  return [
    `${minutes} min`,
    times === "1" ? "" : `${times} readings`,
    own === undefined ? "" : "your own",
    after === undefined ? "" : `only after ${waited === undefined ? after.check : nameOfStep(waited).toLowerCase()}`,
    photo === undefined ? "" : `photo: ${photoSubjects[photo].toLowerCase()}`,
    cautions.length === 0 ? "" : `${cautions.length} more cautions`,
    note === "" ? "" : "with your words",
  ]
    .filter((part) => part !== "")
    .join(", ");
}
