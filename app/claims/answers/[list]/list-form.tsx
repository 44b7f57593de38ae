"use client";
import { type FormEvent, type ReactNode, startTransition, useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { confirmColumns, decide, type ListState, nameReason, postList, takeBackList } from "./actions";

const acts = { columns: confirmColumns, post: postList, decide, reason: nameReason, undo: takeBackList } as const;

interface Props {
  readonly does: keyof typeof acts;
  readonly list: number;
  readonly button: string;
  readonly weight?: "main" | "plain";
  /** Sent with the form, such as the row that is meant. */
  readonly hidden?: Readonly<Record<string, string | number>>;
  readonly children?: ReactNode;
}

const untouched: ListState = { problems: [] };

/** One act on a list; comes back with what is to be put right, and keeps what was entered. */
export function ListForm({ does, list, button, weight = "main", hidden = {}, children }: Props) {
  const [state, send, waiting] = useActionState(acts[does], untouched);

  function submit(event: FormEvent<HTMLFormElement>) {
    event.preventDefault(); // a form that React sends itself is emptied when it comes back
    const form = new FormData(event.currentTarget);
    startTransition(() => send(form));
  }

  return (
    <form onSubmit={submit} className="stack-tight no-print">
      <div role="status">
        {state.problems.map((problem) => (
          <Notice key={problem} status="act-now" title={problem} />
        ))}
        {state.said !== undefined && <Notice status="fine" title={state.said} />}
      </div>
      <input type="hidden" name="list" value={list} />
      {Object.entries(hidden).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      {children}
      <div>
        <Button disabled={waiting} weight={weight}>
          {button}
        </Button>
      </div>
    </form>
  );
}
