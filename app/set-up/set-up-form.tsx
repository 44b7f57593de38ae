"use client";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { ErrorSummary } from "@/app/_ui/error-summary";
import { Field } from "@/app/_ui/field";
import { type SetUpState, setUp } from "./actions";

const untouched: SetUpState = { problems: [], name: "", email: "" };

export function SetUpForm({ codeNeeded }: { readonly codeNeeded: boolean }) {
  const [state, send, waiting] = useActionState(setUp, untouched);
  const problemOf = (field: string) => state.problems.find((problem) => problem.field === field)?.text;
  return (
    <form action={send} className="stack-tight">
      <ErrorSummary problems={state.problems} />
      {codeNeeded && (
        <Field
          label="Set-up code"
          name="code"
          hint="The server printed it when it started, since others can reach this page too."
          width="short"
          autoComplete="off"
          problem={problemOf("code")}
        />
      )}
      <Field
        label="Your name"
        name="name"
        autoComplete="name"
        required
        value={state.name}
        problem={problemOf("name")}
      />
      <Field
        label="E-mail"
        name="email"
        type="email"
        autoComplete="username"
        required
        value={state.email}
        problem={problemOf("email")}
      />
      <Field
        label="Password"
        name="password"
        type="password"
        autoComplete="new-password"
        hint="15 characters or more; a few words in a row are easy to remember."
        required
        problem={problemOf("password")}
      />
      <Button disabled={waiting}>Make the owner</Button>
    </form>
  );
}
