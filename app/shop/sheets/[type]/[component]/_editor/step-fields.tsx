import { type PhotoSubject, photoSubjects } from "@/lib/domain/job";
import { checkOf } from "@/lib/evidence/checks";
import type { LooseStep } from "@/lib/sheets/loose-sheet";
import { BranchFields } from "./branch-fields";
import { CautionBoxes } from "./caution-boxes";
import { nameOfStep } from "./loose-names";
import { OwnCheckFields } from "./own-check-fields";
import styles from "./sheet-form.module.css";

interface Props {
  readonly step: LooseStep;
  readonly steps: readonly LooseStep[];
  readonly onSet: (part: Partial<LooseStep>) => void;
}

/** What may be changed of one step; the check itself where the company wrote it. */
export function StepFields({ step, steps, onSet }: Props) {
  const check = checkOf(step.check);
  return (
    <fieldset className={styles.fields}>
      <legend className="only-heard">{nameOfStep(step)}</legend>
      {step.own !== undefined && <OwnCheckFields own={step.own} onSet={(own) => onSet({ own })} />}
      <label>
        Minutes{" "}
        <input
          type="text"
          inputMode="decimal"
          className={styles.minutes}
          value={step.minutes}
          onChange={(event) => onSet({ minutes: event.target.value })}
        />
      </label>
      <label>
        Readings{" "}
        <input
          type="text"
          inputMode="numeric"
          className={styles.minutes}
          value={step.times}
          onChange={(event) => onSet({ times: event.target.value })}
        />
      </label>
      <label>
        Photo{" "}
        <select
          value={step.photo ?? ""}
          onChange={
            ({ target }) => onSet({ photo: target.value === "" ? undefined : (target.value as PhotoSubject) }) // the choices are its keys
          }
        >
          <option value="">None</option>
          {Object.entries(photoSubjects).map(([key, words]) => (
            <option key={key} value={key}>
              {words}
            </option>
          ))}
        </select>
      </label>
      <BranchFields step={step} steps={steps} onSet={(after) => onSet({ after })} />
      <label className={styles.note}>
        Your own words{" "}
        <input
          type="text"
          maxLength={500}
          value={step.note}
          onChange={(event) => onSet({ note: event.target.value })}
        />
      </label>
      {step.own === undefined && (
        <CautionBoxes
          title="Further cautions"
          fixed={check?.cautions ?? []}
          ticked={step.cautions}
          onTick={(cautions) => onSet({ cautions })}
        />
      )}
    </fieldset>
  );
}
