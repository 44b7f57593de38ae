"use client";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { ErrorSummary } from "@/app/_ui/error-summary";
import { Field } from "@/app/_ui/field";
import { type FactorState, removeFactor } from "./actions";

const untouched: FactorState = { kind: "untouched" };

export function RemoveForm() {
  const [state, send, waiting] = useActionState(removeFactor, untouched);
  const problem = state.kind === "untouched" ? state.problem : undefined;
  return (
    <form action={send} className="stack-tight">
      <ErrorSummary problems={problem === undefined ? [] : [{ field: "code", text: problem }]} />
      <p>For another phone, or new recovery codes: take this one off, then set up the next.</p>
      <Field
        label="The six digits that it shows now"
        name="code"
        inputMode="numeric"
        autoComplete="one-time-code"
        width="short"
        required
      />
      <Button weight="plain" disabled={waiting}>
        Take it off
      </Button>
    </form>
  );
}
