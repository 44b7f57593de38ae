"use client";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { ErrorSummary } from "@/app/_ui/error-summary";
import { Field } from "@/app/_ui/field";
import { type SignInState, signIn } from "./actions";

const untouched: SignInState = { problem: undefined, email: "" };

export function SignInForm({ to }: { readonly to: string }) {
  const [state, send, waiting] = useActionState(signIn, untouched);
  return (
    <form action={send} className="stack-tight">
      <ErrorSummary problems={state.problem === undefined ? [] : [{ field: "email", text: state.problem }]} />
      <input type="hidden" name="to" value={to} />
      <Field label="E-mail" name="email" type="email" autoComplete="username" required value={state.email} />
      <Field label="Password" name="password" type="password" autoComplete="current-password" required />
      <Button disabled={waiting}>Sign in</Button>
    </form>
  );
}
