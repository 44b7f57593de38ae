"use client";
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import { type Choice, SelectField } from "@/app/_ui/select-field";
import { formatBytes } from "@/lib/format/format-bytes";

interface Props {
  readonly jobNumber: string;
  readonly subjects: readonly Choice[];
  readonly mostBytes: number;
  readonly limits: string;
}

type State =
  | { readonly kind: "ready"; readonly said: string }
  | { readonly kind: "sending" }
  | { readonly kind: "refused"; readonly field: "file" | "subject" | "caption"; readonly sentence: string };

/** One photo or paper at a time, since each must say what it shows. Works as a plain form where no program runs. */
export function AddPhoto({ jobNumber, subjects, mostBytes, limits }: Props) {
  const router = useRouter();
  const [state, setState] = useState<State>({ kind: "ready", said: "" });
  const address = `/jobs/${encodeURIComponent(jobNumber)}/photos`;

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const element = event.currentTarget;
    const form = new FormData(element);
    const problem = problemOf(form, mostBytes);
    if (problem !== undefined) return setState(problem);
    setState({ kind: "sending" });
    const outcome = await post(address, form);
    setState(outcome);
    if (outcome.kind !== "ready") return;
    element.reset();
    router.refresh();
  }

  const problemIn = (field: string) => (state.kind === "refused" && state.field === field ? state.sentence : undefined);
  return (
    <form onSubmit={send} action={address} method="post" encType="multipart/form-data" className="stack no-print">
      <h3>Add a photo or paper</h3>
      <SelectField
        label="What it shows"
        name="subject"
        none="Choose"
        choices={subjects}
        problem={problemIn("subject")}
      />
      <Field
        label="Photo or paper"
        name="file"
        type="file"
        hint={limits}
        accept="image/jpeg,image/png,image/webp,image/heic,image/heif,.heic,application/pdf"
        problem={problemIn("file")}
      />
      <Field label="Caption (optional)" name="caption" problem={problemIn("caption")} />
      <div>
        <Button weight="plain" disabled={state.kind === "sending"}>
          {state.kind === "sending" ? "Sending" : "Add"}
        </Button>
      </div>
      <p role="status">{state.kind === "ready" ? state.said : ""}</p>
    </form>
  );
}

/** What can be told before sending. */
function problemOf(form: FormData, mostBytes: number): State | undefined {
  const file = form.get("file");
  if (form.get("subject") === "") return refused("subject", "Choose what the picture shows.");
  if (!(file instanceof File) || file.name === "") return refused("file", "Choose a photo first.");
  if (file.size === 0) return refused("file", `${file.name} is empty. Take it from the camera again.`);
  if (file.size > mostBytes)
    return refused(
      "file",
      `${file.name} has ${formatBytes(file.size)}, more than ${formatBytes(mostBytes)}. Send a smaller one.`,
    );
  return undefined;
}

async function post(address: string, form: FormData): Promise<State> {
  try {
    const response = await fetch(address, { method: "POST", body: form, headers: { Accept: "application/json" } });
    const answer: { said?: unknown; detail?: unknown } = await response.json();
    if (response.ok && typeof answer.said === "string") return { kind: "ready", said: answer.said };
    return refused(
      "file",
      typeof answer.detail === "string" ? answer.detail : "The photo could not be taken in. Send it again.",
    );
  } catch {
    return refused("file", "The photo could not be sent. Check the connection and send it again.");
  }
}

function refused(field: "file" | "subject" | "caption", sentence: string): State {
  return { kind: "refused", field, sentence };
}
