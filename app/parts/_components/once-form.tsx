"use client";
import Link from "next/link";
import { type FormEvent, type ReactNode, startTransition, useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { ErrorSummary, type FieldProblem } from "@/app/_ui/error-summary";

export interface OnceState {
  readonly problems: readonly FieldProblem[];
}

interface Props {
  readonly action: (previous: OnceState, form: FormData) => Promise<OnceState>;
  /** Sent with the form however often it is sent, so that it is recorded once. */
  readonly formKey: string;
  readonly submit: string;
  readonly back: string;
  readonly children: ReactNode;
}

const untouched: OnceState = { problems: [] };

/** A form that is recorded once, comes back with what is to be put right, and keeps what was entered. */
export function OnceForm({ action, formKey, submit, back, children }: Props) {
  const [state, send, waiting] = useActionState(action, untouched);

  function give(event: FormEvent<HTMLFormElement>) {
    event.preventDefault(); // what React sends itself is emptied when it comes back; before scripts run it still goes by `action`
    const form = new FormData(event.currentTarget);
    startTransition(() => send(form));
  }

  return (
    <form action={send} onSubmit={give} className="stack" noValidate>
      <ErrorSummary problems={state.problems} />
      <input type="hidden" name="key" value={formKey} />
      {children}
      <div className="cluster">
        <Button disabled={waiting}>{submit}</Button>
        <Link href={back}>Back without recording</Link>
      </div>
    </form>
  );
}
