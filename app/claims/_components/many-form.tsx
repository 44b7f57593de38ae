"use client";
import Link from "next/link";
import { type FormEvent, type ReactNode, startTransition, useActionState, useRef } from "react";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import type { ManyState } from "../many-actions";

interface Props {
  readonly act: (previous: ManyState, form: FormData) => Promise<ManyState>;
  readonly button: string;
  /** Sent with the form however often it is sent, so that each row is done once. */
  readonly formKey: string;
  /** The table with its boxes. */
  readonly children: ReactNode;
  /** What is asked besides the rows. */
  readonly fields?: ReactNode;
  /** Whether all rows may be ticked at once; not where some of them should stay as they are. */
  readonly choosesAll?: boolean;
  /** What else can be done with the chosen. */
  readonly others?: ReactNode;
}

const untouched: ManyState = { done: [], failed: [] };

/** Does one thing with every chosen row, each judged by itself, and lists what went and what did not. */
export function ManyForm({ act, button, formKey, children, fields, choosesAll = true, others }: Props) {
  const [state, send, waiting] = useActionState(act, untouched);
  const form = useRef<HTMLFormElement>(null);

  function submit(event: FormEvent<HTMLFormElement>) {
    event.preventDefault(); // a form that React sends itself is emptied when it comes back
    const given = new FormData(event.currentTarget);
    startTransition(() => send(given));
  }

  function chooseAll() {
    for (const box of form.current?.querySelectorAll<HTMLInputElement>("input[name=chosen]") ?? []) box.checked = true;
  }

  return (
    <form ref={form} onSubmit={submit} className="stack">
      <div role="status">
        <Outcome state={state} />
      </div>
      <input type="hidden" name="key" value={formKey} />
      {children}
      <div className="stack-tight no-print">
        {fields}
        <div className="cluster">
          <Button disabled={waiting}>{button}</Button>
          {choosesAll && (
            <Button type="button" weight="plain" onClick={chooseAll}>
              Choose all
            </Button>
          )}
        </div>
        {others}
      </div>
    </form>
  );
}

function Outcome({ state: { problem, done, failed } }: { readonly state: ManyState }) {
  if (problem !== undefined) return <Notice status="act-now" title={problem} />;
  if (done.length + failed.length === 0) return null;
  return (
    <Notice
      status={failed.length === 0 ? "fine" : "watch"}
      title={`${done.length} of ${done.length + failed.length} went${failed.length === 0 ? "" : "; the others did not, each for its reason"}`}
    >
      <ul>
        {[...failed, ...done].map(({ row, href, sentence }) => (
          <li key={row}>
            <Link href={href}>{row}</Link>: {sentence}
          </li>
        ))}
      </ul>
    </Notice>
  );
}
