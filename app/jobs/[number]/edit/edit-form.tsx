"use client";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { ErrorSummary } from "@/app/_ui/error-summary";
import { Field } from "@/app/_ui/field";
import { Plate } from "@/app/_ui/plate";
import { SelectField } from "@/app/_ui/select-field";
import { type EditState, setField } from "./actions";
import type { FieldInput } from "./input-of";

interface Props {
  readonly jobNumber: string;
  readonly field: string;
  readonly input: FieldInput;
  /** What it says now. */
  readonly text: string;
}

/** One field, with who sets it and what shows it. */
export function EditForm({ jobNumber, field, input: { choices, isLong, mayBeBlank, hint }, text }: Props) {
  const [state, act, isBusy] = useActionState<EditState, FormData>(setField, { problems: [], texts: { text } });
  const problemOf = (name: string) => state.problems.find((problem) => problem.field === name)?.text;
  const shared = {
    label: "What it should say",
    name: "text",
    value: state.texts.text,
    problem: problemOf("text"),
    ...(hint === undefined ? {} : { hint }),
  };
  return (
    <Plate title="Set it">
      <form action={act} className="stack-tight" key={JSON.stringify(state.texts)}>
        <ErrorSummary problems={state.problems} />
        <input type="hidden" name="job" value={jobNumber} />
        <input type="hidden" name="field" value={field} />
        {choices === undefined ? (
          <Field {...shared} type={isLong ? "textarea" : "text"} width={isLong ? "full" : "short"} />
        ) : (
          <SelectField {...shared} choices={choices} {...(mayBeBlank ? { none: "blank" } : {})} />
        )}
        <Field
          label="Why"
          name="reason"
          hint="Paper, photo or who said so."
          value={state.texts.reason}
          problem={problemOf("reason")}
        />
        <Button disabled={isBusy}>Set it</Button>
      </form>
    </Plate>
  );
}
