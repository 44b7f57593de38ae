"use client";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { ErrorSummary } from "@/app/_ui/error-summary";
import { Field } from "@/app/_ui/field";
import { SelectField } from "@/app/_ui/select-field";
import type { Person } from "@/db/queries/people";
import { roleKeys, roles } from "@/lib/people/role";
import { changeSomebody } from "./actions";
import { LinkMade } from "./link-made";
import { type PeopleState, untouched } from "./people-state";

interface Props {
  readonly person: Person;
  readonly technicians: readonly string[];
}

/** What the owner can do about one person: role, link to a new password, second factor, taking off. */
export function PersonActs({ person }: Props) {
  const [state, send, waiting] = useActionState<PeopleState, FormData>(changeSomebody, untouched);
  const isHere = person.endedAt === undefined;
  return (
    <details>
      <summary>
        {isHere ? "Change" : "Taken off"}
        <span className="only-heard"> {person.name}</span>
      </summary>
      <LinkMade made={state.made} />
      {state.said !== undefined && <p role="status">{state.said}</p>}
      <form action={send} className="stack-tight">
        <ErrorSummary problems={state.problems} />
        <input type="hidden" name="person" value={person.id} />
        {isHere && (
          <>
            <SelectField
              label="Role"
              name="role"
              of={person.id}
              value={person.role}
              choices={roleKeys.map((value) => ({ value, name: roles[value] }))}
            />
            <Field label="Name on jobs" name="technician" of={person.id} value={person.technician} autoComplete="off" />
            <Button weight="plain" name="act" value="role" disabled={waiting}>
              Give this role
            </Button>
          </>
        )}
        <Button weight="plain" name="act" value="link" disabled={waiting}>
          {isHere ? "Link to a new password" : "Link to come back"}
        </Button>
        {isHere && person.hasSecondFactor && (
          <Button weight="plain" name="act" value="factor" disabled={waiting}>
            Take the second factor off
          </Button>
        )}
        {isHere && (
          <Button weight="plain" name="act" value="sessions" disabled={waiting}>
            Sign out everywhere
          </Button>
        )}
        {isHere && (
          <Button weight="plain" name="act" value="off" disabled={waiting}>
            Take off
          </Button>
        )}
      </form>
    </details>
  );
}
