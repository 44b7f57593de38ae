"use client";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { ErrorSummary } from "@/app/_ui/error-summary";
import { Field } from "@/app/_ui/field";
import { type CodeState, showCode } from "../actions";

const untouched: CodeState = { problem: undefined };

export function CodeForm({ to }: { readonly to: string }) {
  const [state, send, waiting] = useActionState(showCode, untouched);
  return (
    <form action={send} className="stack-tight">
      <ErrorSummary problems={state.problem === undefined ? [] : [{ field: "code", text: state.problem }]} />
      <input type="hidden" name="to" value={to} />
      <Field
        label="Code"
        name="code"
        hint="The six digits that your authenticator shows now, or a recovery code."
        autoComplete="one-time-code"
        width="short"
        required
      />
      <Button disabled={waiting}>Go on</Button>
    </form>
  );
}
