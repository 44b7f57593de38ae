"use client";
import { useActionState, useState } from "react";
import { Button } from "@/app/_ui/button";
import { ErrorSummary } from "@/app/_ui/error-summary";
import { Field } from "@/app/_ui/field";
import type { ProductType } from "@/lib/domain/product-type";
import type { LooseStep } from "@/lib/sheets/loose-sheet";
import { type EditState, editSheet } from "../actions";
import { AddCheck } from "./add-check";
import styles from "./sheet-form.module.css";
import { StepRow } from "./step-row";

interface Props {
  readonly sheet: { readonly productType: ProductType; readonly component: string; readonly version: number };
  /** Checks that the rules of evidence ask for: they stay. */
  readonly kept: readonly string[];
  readonly steps: readonly LooseStep[];
  /** Of the draft that is shown; 0 where there is none. */
  readonly revision: number;
}

const start: EditState = { problems: [], done: undefined };

/** The whole sheet is sent as one document: kept as a draft, or published as a version. */
export function SheetForm({ sheet, kept, steps: given, revision }: Props) {
  const [steps, setSteps] = useState(given);
  const [{ problems, done }, submit, isSending] = useActionState(editSheet, start);
  const set = (at: number, part: Partial<LooseStep>) =>
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
      <input type="hidden" name="revision" value={revision} />
      <input type="hidden" name="document" value={JSON.stringify({ steps })} />
      <ErrorSummary problems={problems.map((text) => ({ text }))} />
      {done !== undefined && <p role="status">{done}</p>}
      <ol className={styles.steps}>
        {steps.map((step, at) => (
          <li key={step.check} className={styles.step}>
            <StepRow
              step={step}
              steps={steps}
              at={at}
              isKept={kept.includes(step.check)}
              onSet={(part) => set(at, part)}
              onMove={(by) => move(at, by)}
              onTakeOff={() => setSteps(steps.filter((_, index) => index !== at))}
            />
          </li>
        ))}
      </ol>
      <AddCheck steps={steps} onAdd={(step) => setSteps([...steps, step])} />
      <Field label="Why" name="reason" hint="Needed for publishing; stands beside the version from then on." />
      <div className="cluster">
        <Button name="act" value="publish" disabled={isSending}>
          {isSending ? "Sending" : `Publish version ${sheet.version + 1}`}
        </Button>
        <Button name="act" value="save" weight="plain" disabled={isSending}>
          Keep as a draft
        </Button>
        {revision > 0 && (
          <Button name="act" value="drop" weight="plain" disabled={isSending}>
            Drop the draft
          </Button>
        )}
      </div>
    </form>
  );
}
