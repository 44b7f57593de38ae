"use client";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { ErrorSummary } from "@/app/_ui/error-summary";
import { Field } from "@/app/_ui/field";
import { type FactsState, keepFacts } from "./actions";
import styles from "./facts.module.css";

interface Props {
  readonly unitId: string;
  readonly stored: Readonly<Record<string, string>>;
}

const days = [
  ["firstUsedOn", "First used", "Where a policy starts on first use."],
  ["acquiredOn", "Taken over by the present owner", "Where the present owner is not the first buyer."],
  ["transferRegisteredOn", "Transfer registered with the maker", undefined],
  ["exchangedOn", "Handed over in exchange for another unit", undefined],
] as const;

export function FactsForm({ unitId, stored }: Props) {
  const [state, act, isBusy] = useActionState<FactsState, FormData>(keepFacts, { problems: [], texts: stored });
  const problemOf = (field: string) => state.problems.find((problem) => problem.field === field)?.text;
  return (
    <form action={act} className="stack-tight" key={JSON.stringify(state.texts)}>
      <ErrorSummary problems={state.problems} />
      <input type="hidden" name="unit" value={unitId} />
      <div className={styles.fields}>
        {days.map(([name, label, hint]) => (
          <Field
            key={name}
            name={name}
            label={label}
            width="short"
            value={state.texts[name]}
            problem={problemOf(name)}
            {...(hint === undefined ? {} : { hint })}
          />
        ))}
        <Field
          name="exchangedSerial"
          label="Serial of the unit that was handed back"
          value={state.texts.exchangedSerial}
        />
      </div>
      <label>
        <input type="checkbox" name="serialRemoved" value="yes" defaultChecked={state.texts.serialRemoved === "yes"} />{" "}
        The serial was removed from the unit
      </label>
      <Field
        name="reason"
        label="What shows it"
        hint="Paper or record."
        value={state.texts.reason}
        problem={problemOf("reason")}
      />
      <Button disabled={isBusy}>Keep these</Button>
    </form>
  );
}
