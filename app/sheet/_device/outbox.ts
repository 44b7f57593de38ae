// Sends what waits on the device, one after the other, oldest first. An item leaves only after the server has answered
// for it; whatever else happens, it stays and is sent again under the same id.
import { keepOnDevice, loadOutbox, type OutboxItem, removeFromDevice } from "./device-store";

export type SentState =
  | { readonly kind: "all sent"; readonly at: string | undefined }
  | {
      readonly kind: "waiting";
      readonly items: number;
      readonly why: "no signal" | "the server did not answer" | "sending";
    }
  | { readonly kind: "refused"; readonly items: number; readonly sentence: string };

let running = false;

/**
 * Sends until nothing is left, or until something does not go through. Only one run at a time in one page; two pages at
 * once send the same ids, of which the server keeps one.
 */
export async function sendOutbox(onSent: (item: OutboxItem) => void): Promise<SentState> {
  if (running) return await waitingState("sending");
  running = true;
  try {
    for (;;) {
      const item = (await loadOutbox()).find(({ refused }) => refused === undefined);
      if (item === undefined) return await restState();
      const outcome = await sendOne(item);
      if (outcome.kind === "later") return await waitingState(outcome.why);
      if (outcome.kind === "refused")
        await keepOnDevice([{ store: "outbox", value: { ...item, refused: outcome.sentence } }]);
      else {
        await removeFromDevice("outbox", [item.id]);
        onSent(item);
      }
    }
  } finally {
    running = false;
  }
}

type Outcome =
  | { readonly kind: "sent" }
  | { readonly kind: "later"; readonly why: "no signal" | "the server did not answer" }
  | { readonly kind: "refused"; readonly sentence: string };

async function sendOne(item: OutboxItem): Promise<Outcome> {
  let response: Response;
  try {
    response = await fetch(addressOf(item), { method: "POST", ...bodyOf(item), signal: AbortSignal.timeout(30_000) });
  } catch {
    return { kind: "later", why: navigator.onLine ? "the server did not answer" : "no signal" };
  }
  if (response.ok) return { kind: "sent" };
  if (response.status >= 500 || [401, 408, 409, 425, 429].includes(response.status))
    return { kind: "later", why: "the server did not answer" };
  const problem: unknown = await response.json().catch(() => undefined);
  return { kind: "refused", sentence: sentenceOf(problem) ?? `The server refused it (${response.status}).` };
}

function addressOf({ job, load }: OutboxItem): string {
  const place = { answer: "answers", photo: "photos", close: "close" }[load.kind];
  return `/sheet/job/${encodeURIComponent(job)}/${place}`;
}

function bodyOf({ id, load }: OutboxItem): Pick<RequestInit, "body" | "headers"> {
  const headers = { Accept: "application/json", "Idempotency-Key": id };
  if (load.kind !== "photo")
    return {
      body: JSON.stringify(load.kind === "answer" ? load.answer : load.body),
      headers: { ...headers, "Content-Type": "application/json" },
    };
  const form = new FormData();
  form.set("id", id);
  form.set("subject", load.subject);
  if (load.check !== undefined) form.set("check", load.check);
  form.set("file", new Blob([load.bytes], { type: load.type }), "photo");
  return { body: form, headers };
}

async function restState(): Promise<SentState> {
  const refused = (await loadOutbox()).filter((item) => item.refused !== undefined);
  return refused[0] === undefined
    ? { kind: "all sent", at: undefined }
    : { kind: "refused", items: refused.length, sentence: refused[0].refused ?? "" };
}

async function waitingState(why: "no signal" | "the server did not answer" | "sending"): Promise<SentState> {
  return { kind: "waiting", items: (await loadOutbox()).length, why };
}

function sentenceOf(problem: unknown): string | undefined {
  if (typeof problem !== "object" || problem === null) return undefined;
  const { detail, errors } = problem as { readonly detail?: unknown; readonly errors?: unknown }; // read below by kind
  if (Array.isArray(errors) && errors.length > 0) return errors.map((each) => String(each?.detail ?? each)).join(" ");
  return typeof detail === "string" ? detail : undefined;
}
