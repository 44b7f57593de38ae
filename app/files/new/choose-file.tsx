"use client";
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";

type Sending =
  | { readonly kind: "ready" }
  | { readonly kind: "sending"; readonly name: string }
  | { readonly kind: "refused"; readonly sentence: string };

/** Sends the chosen file as it is and goes to the page that checks its rows. */
export function ChooseFile() {
  const router = useRouter();
  const [state, setState] = useState<Sending>({ kind: "ready" });

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const file = new FormData(event.currentTarget).get("file");
    if (!(file instanceof File) || file.name === "")
      return setState({ kind: "refused", sentence: "Choose a file first." });
    if (file.size === 0)
      return setState({ kind: "refused", sentence: `${file.name} is empty. Choose the file that holds the rows.` });
    setState({ kind: "sending", name: file.name });
    const answer = await fetch(`/files/upload?name=${encodeURIComponent(file.name)}`, {
      method: "POST",
      body: file,
    }).catch(() => undefined);
    const told: { check?: string; detail?: string } = (await answer?.json().catch(() => ({}))) ?? {};
    if (told.check !== undefined) return router.push(told.check);
    setState({
      kind: "refused",
      sentence: told.detail ?? "The file could not be sent. Check the connection and send it again.",
    });
  }

  return (
    <form onSubmit={send} className="stack">
      <Field
        label="File"
        name="file"
        type="file"
        accept=".csv,.json,text/csv,application/json"
        problem={state.kind === "refused" ? state.sentence : undefined}
      />
      <div className="cluster">
        <Button disabled={state.kind === "sending"}>Check rows</Button>
        <span role="status">{state.kind === "sending" ? `Sending ${state.name} and checking its rows…` : ""}</span>
      </div>
    </form>
  );
}
