"use client";
import { type ReactNode, useActionState } from "react";
import { ErrorSummary } from "@/app/_ui/error-summary";
import type { MarkState } from "../actions";

interface Props {
  readonly action: (previous: MarkState, form: FormData) => Promise<MarkState>;
  /** Fields that are sent without being shown. */
  readonly hidden: Readonly<Record<string, string>>;
  /** Field that a problem belongs to. */
  readonly field: string;
  readonly children: ReactNode;
}

/** A form whose act answers with what was wrong, or with one sentence of what was done. */
export function ActForm({ action, hidden, field, children }: Props) {
  const [state, act] = useActionState<MarkState, FormData>(action, { problems: [] });
  return (
    <form action={act} className="stack-tight">
      <ErrorSummary problems={state.problems.map((text) => ({ field, text }))} />
      {Object.entries(hidden).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      {children}
      {state.said !== undefined && <p role="status">{state.said}</p>}
    </form>
  );
}
