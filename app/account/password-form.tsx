"use client";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { ErrorSummary } from "@/app/_ui/error-summary";
import { Field } from "@/app/_ui/field";
import { type AccountState, changePassword } from "./actions";

const untouched: AccountState = { problems: [] };

export function PasswordForm({ email }: { readonly email: string }) {
  const [state, send, waiting] = useActionState(changePassword, untouched);
  const problemOf = (field: string) => state.problems.find((problem) => problem.field === field)?.text;
  return (
    <form action={send} className="stack-tight">
      <ErrorSummary problems={state.problems} />
      {state.said !== undefined && <p role="status">{state.said}</p>}
      <input type="hidden" name="username" autoComplete="username" value={email} readOnly />
      <Field
        label="Password now"
        name="current"
        type="password"
        autoComplete="current-password"
        required
        problem={problemOf("current")}
      />
      <Field
        label="New password"
        name="password"
        type="password"
        autoComplete="new-password"
        hint="15 characters or more. Other sessions end."
        required
        problem={problemOf("password")}
      />
      <Button weight="plain" disabled={waiting}>
        Change the password
      </Button>
    </form>
  );
}
