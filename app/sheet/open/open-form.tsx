"use client";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import { SelectField } from "@/app/_ui/select-field";
import { payerKinds } from "@/lib/domain/job";
import { symptoms } from "@/lib/domain/symptoms";
import { capitalised } from "@/lib/format/capitalised";
import { type OpenState, submitOpenJob } from "./actions";

interface Props {
  readonly technicians: readonly string[];
  readonly today: string;
}

const start: OpenState = { values: {}, problems: {} };

export function OpenForm({ technicians, today }: Props) {
  const [{ values, problems }, submit, isSending] = useActionState(submitOpenJob, start);
  return (
    <form action={submit} className="stack" noValidate>
      {problems.form !== undefined && <p role="alert">{problems.form}</p>}
      <Field label="Job number" name="jobNumber" value={values.jobNumber} problem={problems.jobNumber} width="short" />
      <Field
        label="Serial"
        name="serial"
        hint="As on the rating plate; the unit must be on file."
        value={values.serial}
        problem={problems.serial}
      />
      <SelectField
        label="What the customer notices"
        name="symptom"
        none="Choose"
        value={values.symptom}
        problem={problems.symptom}
        choices={symptoms.map(({ key, name }) => ({ value: key, name }))}
      />
      <Field
        label="Complaint in the customer’s words"
        name="complaint"
        type="textarea"
        value={values.complaint}
        problem={problems.complaint}
      />
      <Field
        label="Asked for on"
        name="requestedOn"
        type="date"
        value={values.requestedOn ?? today}
        problem={problems.requestedOn}
        width="short"
      />
      <SelectField
        label="Technician"
        name="technician"
        none="Nobody yet"
        value={values.technician}
        choices={technicians.map((name) => ({ value: name, name }))}
      />
      <SelectField
        label="Meant to be paid by"
        name="payer"
        value={values.payer ?? "maker"}
        choices={payerKinds.map((kind) => ({ value: kind, name: capitalised(kind.replaceAll("_", " ")) }))}
      />
      <Field
        label="Returns to job (optional)"
        name="callbackOf"
        hint="Number of the earlier job on this unit."
        value={values.callbackOf}
        problem={problems.callbackOf}
        width="short"
      />
      <div>
        <Button disabled={isSending}>{isSending ? "Opening" : "Open the job"}</Button>
      </div>
    </form>
  );
}
