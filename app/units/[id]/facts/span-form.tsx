"use client";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { ErrorSummary } from "@/app/_ui/error-summary";
import { Field } from "@/app/_ui/field";
import { type FactsState, keepSpan } from "./actions";

export function SpanForm({ unitId }: { readonly unitId: string }) {
  const [state, act, isBusy] = useActionState<FactsState, FormData>(keepSpan, { problems: [], texts: {} });
  const problemOf = (field: string) => state.problems.find((problem) => problem.field === field)?.text;
  const shown = (name: string) => ({ name, value: state.texts[name], problem: problemOf(name) });
  return (
    <form action={act} className="stack-tight" key={JSON.stringify(state.texts)}>
      <ErrorSummary problems={state.problems} />
      <input type="hidden" name="unit" value={unitId} />
      <Field label="Out from" width="short" hint="Hand-over, YYYY-MM-DD." {...shown("fromOn")} />
      <Field label="Back on" width="short" {...shown("untilOn")} />
      <Field label="What shows it" {...shown("source")} />
      <Button weight="plain" disabled={isBusy}>
        Add this span
      </Button>
    </form>
  );
}
