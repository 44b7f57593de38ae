"use client";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { ErrorSummary } from "@/app/_ui/error-summary";
import { Field } from "@/app/_ui/field";
import { type Choice, SelectField } from "@/app/_ui/select-field";
import type { SheetModel } from "@/db/queries/sheet-ranges";
import { sourceMarks } from "@/lib/domain/reading";
import { type RangeState, setRange } from "./actions";
import styles from "./ranges.module.css";

interface Props {
  readonly path: string;
  readonly models: readonly SheetModel[];
  readonly checks: readonly (Choice & { readonly unit: string })[];
}

const start: RangeState = { problems: [], texts: {}, done: undefined };

/** One range of one model, with its source and mark, who set it and why. It goes before what files say. */
export function RangeForm({ path, models, checks }: Props) {
  const [{ problems, texts, done }, act, isBusy] = useActionState(setRange, start);
  const of = (field: string) => ({ value: texts[field], problem: problems.find((each) => each.field === field)?.text });
  return (
    <form action={act} className="stack-tight" key={JSON.stringify(texts)}>
      <h3>Set a range</h3>
      <ErrorSummary problems={problems} />
      {done !== undefined && <p role="status">{done}</p>}
      <input type="hidden" name="path" value={path} />
      <div className={styles.fields}>
        <SelectField
          label="Model"
          name="model"
          none="Choose"
          choices={models.map(({ modelId, name }) => ({ value: String(modelId), name }))}
          {...of("model")}
        />
        <SelectField
          label="Check"
          name="check"
          none="Choose"
          choices={checks.map(({ value, name, unit }) => ({ value, name: `${name} (${unit})` }))}
          {...of("check")}
        />
        <Field label="Good from" name="low" inputMode="decimal" width="short" {...of("low")} />
        <Field label="Good to" name="high" inputMode="decimal" width="short" {...of("high")} />
        <Field label="Unit" name="unit" width="short" {...of("unit")} />
        <Field
          label="Holds for"
          name="condition"
          hint="Blank for the model; else the part that may be fitted, such as “pump P-100”, or a sensor’s temperature, such as “at 25 °C”."
          {...of("condition")}
        />
        <Field label="Source" name="source" hint="Where it is printed, with its page." {...of("source")} />
        <SelectField
          label="Mark"
          name="mark"
          none="Choose"
          choices={sourceMarks.map((mark) => ({ value: mark, name: mark }))}
          {...of("mark")}
        />
        <Field label="Why" name="setWhy" {...of("setWhy")} />
      </div>
      <Button disabled={isBusy} weight="plain">
        Set the range
      </Button>
    </form>
  );
}
