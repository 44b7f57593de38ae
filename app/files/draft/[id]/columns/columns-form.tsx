"use client";
import { type FormEvent, type ReactNode, startTransition, useActionState } from "react";
import { ErrorSummary } from "@/app/_ui/error-summary";
import { type ColumnsState, keepColumns } from "./actions";

const untouched: ColumnsState = { problems: [] };

/** Sends the matching; where it contradicts itself, says where and keeps what was chosen. */
export function ColumnsForm({ children }: { readonly children: ReactNode }) {
  const [state, keep] = useActionState(keepColumns, untouched);

  function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault(); // a form that React sends itself is emptied when it comes back
    const form = new FormData(event.currentTarget);
    startTransition(() => keep(form));
  }

  return (
    <>
      <ErrorSummary problems={state.problems} />
      <form onSubmit={send} className="stack">
        {children}
      </form>
    </>
  );
}
