"use client";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { ErrorSummary } from "@/app/_ui/error-summary";
import { Field } from "@/app/_ui/field";
import { Notice } from "@/app/_ui/notice";
import { forgetCustomer } from "./actions";
import { ErasedList } from "./erased-list";
import type { ErasureState } from "./keeping-state";

const untouched: ErasureState = { problems: [], texts: {} };

/** Words, jobs and a reason; a trial that changes nothing; then for good. */
export function ErasureForm() {
  const [state, send, waiting] = useActionState<ErasureState, FormData>(forgetCustomer, untouched);
  const problemOf = (field: string) => state.problems.find((problem) => problem.field === field)?.text;
  return (
    <form action={send} className="stack-tight">
      <ErrorSummary problems={state.problems} />
      {state.done !== undefined && (
        <Notice status="fine" title="The customer is forgotten">
          <ErasedList {...state.done} />
          <p>Backups from before still hold it. Restoring one erases it again; let them expire within 35 days.</p>
        </Notice>
      )}
      <Field
        label="Names, numbers, addresses"
        name="words"
        type="textarea"
        hint="One to a line, as they are written in full. In the customer's own jobs each word of them goes as well."
        value={state.texts.words}
        problem={problemOf("words")}
      />
      <Field
        label="Jobs done for the customer"
        name="jobs"
        type="textarea"
        hint="Job numbers, one to a line."
        value={state.texts.jobs}
        problem={problemOf("jobs")}
      />
      <Field
        label="Why"
        name="reason"
        hint="Without the customer's name: it stays."
        value={state.texts.reason}
        problem={problemOf("reason")}
        autoComplete="off"
      />
      <Button weight="plain" name="step" value="try" disabled={waiting}>
        Look what would go
      </Button>
      {state.tried !== undefined && (
        <Notice status="watch" title="This would be erased; nothing has been yet">
          <ErasedList {...state.tried} />
          <p>
            <label>
              <input type="checkbox" name="sure" value="yes" /> It cannot be brought back. I have looked through the
              photos of these jobs myself, since pictures are not read.
            </label>
          </p>
          <Button name="step" value="erase" disabled={waiting}>
            Erase for good
          </Button>
        </Notice>
      )}
    </form>
  );
}
