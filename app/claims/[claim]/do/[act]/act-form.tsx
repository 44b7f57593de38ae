"use client";
import Link from "next/link";
import { type FormEvent, type ReactNode, startTransition, useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { ErrorSummary } from "@/app/_ui/error-summary";
import { Field } from "@/app/_ui/field";
import { Notice } from "@/app/_ui/notice";
import { type ActState, untouched } from "./act-state";
import { recordAct } from "./actions";

interface Props {
  readonly claimNumber: string;
  readonly act: string;
  /** Version of the claim that this page shows. */
  readonly version: number;
  /** Sent with the form however often it is sent, so that it is recorded once. */
  readonly formKey: string;
  readonly title: string;
  readonly back: string;
  readonly children: ReactNode;
}

/** One act with its fields; comes back with what is to be put right, and keeps what was entered. */
export function ActForm({ claimNumber, act, version, formKey, title, back, children }: Props) {
  const [state, send, waiting] = useActionState(recordAct, untouched);

  function submit(event: FormEvent<HTMLFormElement>) {
    event.preventDefault(); // a form that React sends itself is emptied when it comes back
    const form = new FormData(event.currentTarget);
    startTransition(() => send(form));
  }

  return (
    <form onSubmit={submit} className="stack" noValidate>
      <ErrorSummary problems={state.problems} />
      {state.stale !== undefined && <Stale stale={state.stale} back={back} />}
      <input type="hidden" name="claim" value={claimNumber} />
      <input type="hidden" name="act" value={act} />
      <input type="hidden" name="key" value={formKey} />
      <input type="hidden" name="version" value={state.stale?.now.version ?? version} />
      {children}
      <Field label="Note" name="note" hint="Why, or what was said. May stay empty." />
      <div className="cluster">
        <Button disabled={waiting}>{title}</Button>
        <Link href={back}>Back without recording</Link>
      </div>
    </form>
  );
}

/** Both versions, and nothing is recorded until somebody has decided again. */
function Stale({ stale, back }: { readonly stale: NonNullable<ActState["stale"]>; readonly back: string }) {
  const { seenVersion, now } = stale;
  return (
    <div role="alert">
      <Notice status="act-now" title="Somebody recorded something meanwhile. Nothing of this form is recorded yet">
        <p>
          You opened version {seenVersion}. Version {now.version} is there now: {now.what} by {now.by}, and the claim is{" "}
          {now.state}.
        </p>
        <p>
          <Link href={back}>Look at the claim as it is now</Link>, or send this form once more to record it after that.
        </p>
      </Notice>
    </div>
  );
}
