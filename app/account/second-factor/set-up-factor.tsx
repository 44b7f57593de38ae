"use client";
import { startTransition, useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { ErrorSummary } from "@/app/_ui/error-summary";
import { Field } from "@/app/_ui/field";
import { Notice } from "@/app/_ui/notice";
import { beginFactor, confirmFactor, type FactorState } from "./actions";
import { QrPicture } from "./qr-picture";
import styles from "./second-factor.module.css";

const untouched: FactorState = { kind: "untouched" };

/** Picture, first code, recovery codes. */
export function SetUpFactor() {
  const [state, send, waiting] = useActionState<FactorState, FormData | undefined>(
    (previous, form) => (form === undefined ? beginFactor() : confirmFactor(previous, form)),
    untouched,
  );
  if (state.kind === "done") return <RecoveryCodes codes={state.recoveryCodes} />;
  if (state.kind === "untouched")
    return (
      <p>
        <Button type="button" disabled={waiting} onClick={() => startTransition(() => send(undefined))}>
          Show the picture to read
        </Button>
      </p>
    );
  return (
    <form action={send} className="stack-tight">
      <ErrorSummary problems={state.problem === undefined ? [] : [{ field: "code", text: state.problem }]} />
      <p>Read this picture with your authenticator, or type the letters into it.</p>
      <QrPicture text={state.address} />
      <p className={styles.secret}>{state.secret}</p>
      <Field
        label="The six digits that it shows now"
        name="code"
        inputMode="numeric"
        autoComplete="one-time-code"
        width="short"
        required
      />
      <Button disabled={waiting}>Ask for it from now on</Button>
    </form>
  );
}

function RecoveryCodes({ codes }: { readonly codes: readonly string[] }) {
  return (
    <div role="status">
      <Notice status="fine" title="It is asked for from now on. Keep these codes: they are not shown again">
        <p>Each opens once, for the day on which your phone is lost. Print them, or write them down.</p>
        <ul className={styles.codes}>
          {codes.map((code) => (
            <li key={code}>{code}</li>
          ))}
        </ul>
      </Notice>
    </div>
  );
}
