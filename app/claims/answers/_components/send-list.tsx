"use client";
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import { Notice } from "@/app/_ui/notice";
import { type Choice, SelectField } from "@/app/_ui/select-field";

interface Props {
  readonly payers: readonly string[];
  readonly currencies: readonly Choice[];
  readonly currency: string;
  readonly today: string;
}

/** A payer's list and the payment it belongs to. What was entered stays where something is to be put right. */
export function SendList({ payers, currencies, currency, today }: Props) {
  const router = useRouter();
  const [problem, setProblem] = useState<string>();
  const [waiting, setWaiting] = useState(false);

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    setWaiting(true);
    const said = await sent(new FormData(event.currentTarget));
    setWaiting(false);
    if ("address" in said) router.push(said.address);
    else setProblem(said.problem);
  }

  return (
    <form onSubmit={send} className="stack">
      <div role="status">{problem !== undefined && <Notice status="act-now" title={problem} />}</div>
      <div className="cluster">
        <SelectField label="Payer" name="payer" choices={payers.map((name) => ({ value: name, name }))} />
        <Field label="Number of the payment" name="reference" required />
        <Field label="Day of the payment" name="on" type="date" width="short" value={today} required />
        <SelectField label="Currency" name="currency" choices={currencies} value={currency} />
      </div>
      <Field
        label="The list"
        name="file"
        type="file"
        accept=".csv,.txt,.tsv,.xlsx"
        hint="CSV or XLSX with a heading. It is kept as it came; nothing is posted before you have looked."
      />
      <Button disabled={waiting}>Read the list</Button>
    </form>
  );
}

async function sent(form: FormData): Promise<{ readonly address: string } | { readonly problem: string }> {
  try {
    const answer = await fetch("/claims/answers/upload", { method: "POST", body: form });
    const { address, detail }: { address?: unknown; detail?: unknown } = await answer.json();
    if (typeof address === "string") return { address };
    return { problem: typeof detail === "string" ? detail : "The list could not be read. Send it again." };
  } catch {
    return { problem: "The list could not be sent. Check the connection and send it again." };
  }
}
