"use client";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import { Notice } from "@/app/_ui/notice";
import { SelectField } from "@/app/_ui/select-field";
import { keyDays, keyScopeKeys, keyScopes } from "@/lib/people/key-scope";
import { type KeyState, makeKey } from "./actions";
import styles from "./make-key.module.css";

const untouched: KeyState = { kind: "untouched" };

/** Makes a key and shows it, this once. */
export function MakeKey() {
  const [state, make, waiting] = useActionState(makeKey, untouched);
  return (
    <>
      <div role="status">
        {state.kind === "made" && (
          <Notice status="fine" title={`The key for ${state.name}. Copy it now: it is not shown again`}>
            <p className={styles.key}>{state.key}</p>
            <p>With it a program may {state.may}, and nothing else.</p>
          </Notice>
        )}
      </div>
      <form action={make} className="stack-tight">
        <Field
          label="Which program the key is for"
          name="name"
          required
          autoComplete="off"
          problem={state.kind === "refused" ? state.sentence : undefined}
        />
        <SelectField
          label="What it may do"
          name="scope"
          value="jobs"
          choices={keyScopeKeys.map((value) => ({ value, name: keyScopes[value] }))}
        />
        <SelectField
          label="For how long"
          name="days"
          value="365"
          choices={keyDays.map((days) => ({ value: String(days), name: `${days} days` }))}
        />
        <Button disabled={waiting}>Make a key</Button>
      </form>
    </>
  );
}
