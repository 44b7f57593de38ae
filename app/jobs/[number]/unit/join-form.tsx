"use client";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { ErrorSummary } from "@/app/_ui/error-summary";
import { Field } from "@/app/_ui/field";
import { type JoinState, joinUnit } from "./actions";

interface Offered {
  readonly unitId: string;
  readonly maker: string;
  readonly model: string;
  readonly serial: string;
  readonly jobs: number;
  /** Its model is the one that the job names. */
  readonly fits: boolean;
}

interface Props {
  readonly jobNumber: string;
  readonly caption: string;
  readonly units: readonly Offered[];
}

/** One of the units that were found, with who says so and what shows it. */
export function JoinForm({ jobNumber, caption, units }: Props) {
  const [state, act, isBusy] = useActionState<JoinState, FormData>(joinUnit, { problems: [], texts: {} });
  const problemOf = (name: string) => state.problems.find((problem) => problem.field === name)?.text;
  return (
    <form action={act} className="stack" key={JSON.stringify(state.texts)}>
      <ErrorSummary problems={state.problems} />
      <input type="hidden" name="job" value={jobNumber} />
      <fieldset className="stack-tight" id="field-unit">
        <legend>{caption}</legend>
        {units.map(({ unitId, maker, model, serial, jobs, fits }) => (
          <label key={unitId}>
            <input
              type="radio"
              name="unit"
              value={JSON.stringify([maker, serial])}
              defaultChecked={state.texts.unit === JSON.stringify([maker, serial])}
            />{" "}
            <span className="figures">{serial}</span>, {maker} {model}
            {!fits && " (another model)"}, {jobs === 1 ? "1 job" : `${jobs} jobs`}
          </label>
        ))}
      </fieldset>
      <Field
        label="What shows it"
        name="reason"
        hint="Paper, photo or who said so."
        value={state.texts.reason}
        problem={problemOf("reason")}
      />
      <Button disabled={isBusy}>Join the job to this unit</Button>
    </form>
  );
}
