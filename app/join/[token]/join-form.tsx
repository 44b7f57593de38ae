"use client";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { ErrorSummary } from "@/app/_ui/error-summary";
import { Field } from "@/app/_ui/field";
import { type JoinState, join } from "./actions";

const untouched: JoinState = { problem: undefined };

export function JoinForm({ token, email }: { readonly token: string; readonly email: string }) {
  const [state, send, waiting] = useActionState(join, untouched);
  return (
    <form action={send} className="stack-tight">
      <ErrorSummary problems={state.problem === undefined ? [] : [{ field: "password", text: state.problem }]} />
      <input type="hidden" name="token" value={token} />
      <input type="hidden" name="username" autoComplete="username" value={email} readOnly />
      <Field
        label="Password"
        name="password"
        type="password"
        autoComplete="new-password"
        hint="15 characters or more; a few words in a row are easy to remember."
        required
        problem={state.problem}
      />
      <Button disabled={waiting}>Use this password</Button>
    </form>
  );
}
