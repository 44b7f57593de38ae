"use client";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import { Notice } from "@/app/_ui/notice";
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
        <Button disabled={waiting}>Make a key</Button>
      </form>
    </>
  );
}
