"use client";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { ErrorSummary } from "@/app/_ui/error-summary";
import { Field } from "@/app/_ui/field";
import { SelectField } from "@/app/_ui/select-field";
import { roleKeys, roles } from "@/lib/people/role";
import { inviteSomebody } from "./actions";
import { LinkMade } from "./link-made";
import { type PeopleState, untouched } from "./people-state";

/** Makes a link and shows it, this once: there is no mail server to send it. */
export function InviteForm({ technicians }: { readonly technicians: readonly string[] }) {
  const [state, send, waiting] = useActionState<PeopleState, FormData>(inviteSomebody, untouched);
  const problemOf = (field: string) => state.problems.find((problem) => problem.field === field)?.text;
  return (
    <>
      <LinkMade made={state.made} />
      <form action={send} className="stack-tight">
        <ErrorSummary problems={state.problems} />
        <Field
          label="Name"
          name="name"
          autoComplete="off"
          required
          value={state.texts.name}
          problem={problemOf("name")}
        />
        <Field
          label="E-mail"
          name="email"
          type="email"
          autoComplete="off"
          required
          value={state.texts.email}
          problem={problemOf("email")}
        />
        <SelectField
          label="Role"
          name="role"
          value={state.texts.role ?? "technician"}
          choices={roleKeys.map((value) => ({ value, name: roles[value] }))}
        />
        <TechnicianField technicians={technicians} value={state.texts.technician} problem={problemOf("technician")} />
        <Button disabled={waiting}>Make a link</Button>
      </form>
    </>
  );
}

interface TechnicianProps {
  readonly technicians: readonly string[];
  readonly value: string | undefined;
  readonly problem: string | undefined;
}

function TechnicianField({ technicians, value, problem }: TechnicianProps) {
  const known = technicians.length === 0 ? "" : ` On file: ${technicians.slice(0, 12).join(", ")}.`;
  return (
    <Field
      label="Name on jobs"
      name="technician"
      autoComplete="off"
      hint={`For technicians: as their closed jobs name them.${known}`}
      value={value}
      problem={problem}
    />
  );
}
