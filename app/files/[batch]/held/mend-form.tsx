"use client";
import { type FormEvent, type ReactNode, startTransition, useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { formatCounted } from "@/lib/format/format-count";
import { mend } from "./actions";
import type { MendState } from "./mend-state";

interface Props {
  /** Fields that say what is changed. */
  readonly children: ReactNode;
  readonly words: string;
}

const untouched: MendState = { kind: "untouched" };

/** Shows what a correction would do, and then takes the rows in. */
export function MendForm({ children, words }: Props) {
  const [state, send, waiting] = useActionState(mend, untouched);

  function submit(event: FormEvent<HTMLFormElement>) {
    event.preventDefault(); // a form that React sends itself is emptied when it comes back
    const { submitter } = event.nativeEvent as SubmitEvent; // what a submit event is
    const form = new FormData(event.currentTarget, submitter);
    startTransition(() => send(form));
  }

  return (
    <form onSubmit={submit} className="stack-tight">
      {children}
      <div className="cluster">
        <Button weight="plain" name="mode" value="dry run" disabled={waiting}>
          {words}
        </Button>
        {state.kind === "seen" && state.good > 0 && (
          <Button name="mode" value="add" disabled={waiting}>
            Take in {formatCounted(state.good, "row")}
          </Button>
        )}
      </div>
      <div role="status">
        {state.kind === "refused" && <p>{state.sentence}</p>}
        {state.kind === "seen" && <Seen state={state} />}
      </div>
    </form>
  );
}

function Seen({ state: { sentence, problems } }: { readonly state: MendState & { kind: "seen" } }) {
  return (
    <>
      <p>{sentence}</p>
      <ul>
        {problems.map(({ row, column, value, problem, fix }) => (
          <li key={`${row} ${column} ${problem}`}>
            Row {row}: {column === "" ? "the row" : column} {value !== "" && `“${value.slice(0, 60)}” `}
            {problem}. {fix}
          </li>
        ))}
      </ul>
    </>
  );
}
