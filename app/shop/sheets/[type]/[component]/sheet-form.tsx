"use client";
import { useActionState, useState } from "react";
import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import { type PhotoSubject, photoSubjects } from "@/lib/domain/job";
import { checkOf } from "@/lib/evidence/checks";
import type { Sheet, SheetStep } from "@/lib/sheets/sheet";
import { type PublishState, publish } from "./actions";
import styles from "./sheet-form.module.css";

const start: PublishState = { problems: [], published: undefined };

/** Order, minutes, photo and the company's own words. The whole sheet is sent as one document and becomes one version. */
export function SheetForm({ sheet }: { readonly sheet: Sheet }) {
  const [steps, setSteps] = useState<readonly SheetStep[]>(sheet.steps);
  const [{ problems, published }, submit, isSending] = useActionState(publish, start);
  const set = (at: number, part: Partial<SheetStep>) =>
    setSteps(steps.map((step, index) => (index === at ? { ...step, ...part } : step)));
  const move = (at: number, by: number) => {
    const next = [...steps];
    const [taken] = next.splice(at, 1);
    if (taken !== undefined) next.splice(at + by, 0, taken);
    setSteps(next);
  };
  return (
    <form action={submit} className="stack">
      <h2>Edit</h2>
      <input type="hidden" name="productType" value={sheet.productType} />
      <input type="hidden" name="component" value={sheet.component} />
      <input type="hidden" name="editedFrom" value={sheet.version} />
      <input type="hidden" name="document" value={JSON.stringify({ steps })} />
      {problems.length > 0 && (
        <div role="alert">
          {problems.map((problem) => (
            <p key={problem}>{problem}</p>
          ))}
        </div>
      )}
      {published !== undefined && <p role="status">Version {published} holds for jobs that are begun from now on.</p>}
      <ol className={styles.steps}>
        {steps.map((step, at) => (
          <li key={step.check} className={styles.step}>
            <StepFields step={step} onSet={(part) => set(at, part)} />
            <div className="cluster">
              <Button type="button" weight="plain" disabled={at === 0} onClick={() => move(at, -1)}>
                Earlier
              </Button>
              <Button type="button" weight="plain" disabled={at === steps.length - 1} onClick={() => move(at, 1)}>
                Later
              </Button>
            </div>
          </li>
        ))}
      </ol>
      <Field label="Why" name="reason" hint="Stands beside the version from then on." />
      <div>
        <Button disabled={isSending}>{isSending ? "Publishing" : `Publish version ${sheet.version + 1}`}</Button>
      </div>
    </form>
  );
}

interface StepProps {
  readonly step: SheetStep;
  readonly onSet: (part: Partial<SheetStep>) => void;
}

function StepFields({ step, onSet }: StepProps) {
  const name = checkOf(step.check)?.name ?? step.check;
  return (
    <fieldset className={styles.fields}>
      <legend>{name}</legend>
      <label>
        Minutes{" "}
        <input
          type="text"
          inputMode="decimal"
          className={styles.minutes}
          defaultValue={String(step.minutes)}
          onChange={(event) => onSet({ minutes: Number(event.target.value.replace(",", ".")) })}
        />
      </label>
      <label>
        Photo{" "}
        <select
          value={step.photo ?? ""}
          onChange={(event) =>
            onSet({ photo: event.target.value === "" ? undefined : (event.target.value as PhotoSubject) })
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
      <label className={styles.note}>
        Your own words{" "}
        <input
          type="text"
          maxLength={500}
          value={step.note}
          onChange={(event) => onSet({ note: event.target.value })}
        />
      </label>
    </fieldset>
  );
}
