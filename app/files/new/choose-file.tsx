"use client";
import { useRouter } from "next/navigation";
import { type DragEvent, type FormEvent, useRef, useState } from "react";
import { Button } from "@/app/_ui/button";
import { classNames } from "@/app/_ui/class-names";
import { Field } from "@/app/_ui/field";
import { formatBytes } from "@/lib/format/format-bytes";
import { ProgressLine } from "../_components/progress-line";
import styles from "./choose-file.module.css";
import { sendFile } from "./send-file";

interface Props {
  readonly mostBytes: number;
}

type State =
  | { readonly kind: "ready" }
  | { readonly kind: "refused"; readonly sentence: string }
  | { readonly kind: "sending"; readonly name: string; readonly done: number; readonly total: number };

/** Takes a file, by choosing or by dropping, sends it as it is, and goes to where it is looked at. */
export function ChooseFile({ mostBytes }: Props) {
  const router = useRouter();
  const form = useRef<HTMLFormElement>(null);
  const stop = useRef<AbortController>(null);
  const [over, setOver] = useState(false);
  const [state, setState] = useState<State>({ kind: "ready" });

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const file = new FormData(event.currentTarget).get("file");
    const problem = problemOf(file, mostBytes);
    if (problem !== undefined || !(file instanceof File)) return setState({ kind: "refused", sentence: problem ?? "" });
    const { name, size } = file;
    stop.current = new AbortController();
    setState({ kind: "sending", name, done: 0, total: size });
    const sent = await sendFile(file, {
      onProgress: (done) => setState({ kind: "sending", name, done, total: size }),
      signal: stop.current.signal,
    });
    if (sent.kind === "here") return router.push(sent.address);
    setState(sent.kind === "stopped" ? { kind: "ready" } : sent);
  }

  function drop(event: DragEvent) {
    event.preventDefault();
    setOver(false);
    const field = form.current?.elements.namedItem("file");
    if (!(field instanceof HTMLInputElement)) return;
    if (event.dataTransfer.files.length > 1)
      return setState({ kind: "refused", sentence: "These are several files. Drop one at a time." });
    field.files = event.dataTransfer.files;
    setState({ kind: "ready" });
  }

  return (
    <form
      ref={form}
      onSubmit={send}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
      className={classNames(styles.tray, "stack")}
      data-over={over || undefined}
    >
      <Field
        label="File"
        name="file"
        type="file"
        hint="Choose it, or drop it here."
        accept=".csv,.tsv,.txt,.json,.jsonl,.ndjson,.xlsx"
        problem={state.kind === "refused" ? state.sentence : undefined}
      />
      {state.kind === "sending" ? (
        <>
          <ProgressLine words={`Sending ${state.name}`} done={state.done} total={state.total} amount={formatBytes} />
          <Button type="button" weight="plain" onClick={() => stop.current?.abort()}>
            Stop
          </Button>
        </>
      ) : (
        <Button>Check rows</Button>
      )}
    </form>
  );
}

/** What can be told before sending. */
function problemOf(file: FormDataEntryValue | null, mostBytes: number): string | undefined {
  if (!(file instanceof File) || file.name === "") return "Choose a file first.";
  if (file.size === 0) return `${file.name} is empty. Choose the file that holds the rows.`;
  if (file.size > mostBytes)
    return `${file.name} has ${formatBytes(file.size)}; up to ${formatBytes(mostBytes)} can be sent here. Use npm run load, or split it.`;
  return undefined;
}
