"use client";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { ErrorSummary } from "@/app/_ui/error-summary";
import { Field } from "@/app/_ui/field";
import { SelectField } from "@/app/_ui/select-field";
import { type FactsState, keepRegister } from "./actions";
import styles from "./facts.module.css";
import { registerDays } from "./register-days";

interface Props {
  readonly unitId: string;
  readonly stored: Readonly<Record<string, string>>;
}

const uses = [
  { value: "household", name: "Household" },
  { value: "commercial", name: "Commercial" },
];

/** Days and circumstances of the unit itself, as a paper that came later shows them. */
export function RegisterForm({ unitId, stored }: Props) {
  const [state, act, isBusy] = useActionState<FactsState, FormData>(keepRegister, { problems: [], texts: stored });
  const problemOf = (field: string) => state.problems.find((problem) => problem.field === field)?.text;
  const shown = (name: string) => ({ name, value: state.texts[name], problem: problemOf(name) });
  return (
    <form action={act} className="stack-tight" key={JSON.stringify(state.texts)}>
      <ErrorSummary problems={state.problems} />
      <input type="hidden" name="unit" value={unitId} />
      <input type="hidden" name="shown" value={JSON.stringify(stored)} />
      <div className={styles.fields}>
        {registerDays.map(({ field, label, hint }) => (
          <Field key={field} label={label} width="short" {...shown(field)} {...(hint === undefined ? {} : { hint })} />
        ))}
        <SelectField label="Use" choices={uses} {...shown("use")} />
        <Field
          label="Where it stands"
          width="short"
          hint="Country or state, such as US or US-CA."
          {...shown("territory")}
        />
        <Field
          label="Owner"
          width="short"
          inputMode="numeric"
          hint="1 for the first buyer, 2 after one transfer."
          {...shown("ownerNumber")}
        />
      </div>
      <Field label="What shows it" hint="Paper or record." {...shown("registerReason")} />
      <Button disabled={isBusy}>Keep these</Button>
    </form>
  );
}
