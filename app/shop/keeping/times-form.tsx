"use client";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { ErrorSummary } from "@/app/_ui/error-summary";
import { Field } from "@/app/_ui/field";
import { type Choice, SelectField } from "@/app/_ui/select-field";
import { formatBytes } from "@/lib/format/format-bytes";
import { formatCounted } from "@/lib/format/format-count";
import { changeTimes } from "./actions";
import type { TimesState } from "./keeping-state";

const untouched: TimesState = { problems: [] };

export function TimesForm({ kinds }: { readonly kinds: readonly Choice[] }) {
  const [state, send, waiting] = useActionState<TimesState, FormData>(changeTimes, untouched);
  const problem = state.problems.find(({ field }) => field === "days")?.text;
  return (
    <form action={send} className="stack-tight">
      <ErrorSummary problems={state.problems} />
      {state.said !== undefined && <p role="status">{state.said}</p>}
      <SelectField label="What" name="kind" choices={kinds} value={kinds[0]?.value} />
      <Field
        label="Days"
        name="days"
        hint="Left empty, it is kept for good."
        inputMode="numeric"
        width="short"
        autoComplete="off"
        problem={problem}
      />
      <div className="cluster">
        <Button weight="plain" name="step" value="set" disabled={waiting}>
          Keep it for so long
        </Button>
        <Button weight="plain" name="step" value="try" disabled={waiting}>
          Look what is over its time now
        </Button>
      </div>
      {state.due !== undefined && (
        <ul role="status">
          {state.due.map(({ kind, rows, bytes }) => (
            <li key={kind}>
              {kind}: {rows === 0 ? "nothing" : `${formatCounted(rows, "item")}, ${formatBytes(bytes)}`}
            </li>
          ))}
        </ul>
      )}
    </form>
  );
}
