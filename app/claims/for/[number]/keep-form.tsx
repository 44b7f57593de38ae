"use client";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { type KeepState, keepClaim } from "./actions";

interface Props {
  readonly jobNumber: string;
  readonly policyId: number;
}

const untouched: KeepState = { problems: [] };

export function KeepForm({ jobNumber, policyId }: Props) {
  const [state, keep, waiting] = useActionState(keepClaim, untouched);
  return (
    <form action={keep} className="no-print">
      <input type="hidden" name="job" value={jobNumber} />
      <input type="hidden" name="policy" value={policyId} />
      {state.problems.length > 0 && (
        <ul role="alert">
          {state.problems.map((problem) => (
            <li key={problem}>{problem}</li>
          ))}
        </ul>
      )}
      <Button disabled={waiting}>Keep as a draft claim</Button>
    </form>
  );
}
