// Sends what waits on the device, oldest first. An item leaves only after the server has answered for it; whatever else
// happens, it stays and is sent again under the same id. A job is closed only after everything else of it has gone.
import { keepOnDevice, loadOutbox, type OutboxItem, removeFromDevice } from "./device-store";
import { sendItem, type WhyLater } from "./send-item";

export type WaitingFor = WhyLater | "sending";

export type SentState =
  | { readonly kind: "all sent"; readonly at: string | undefined }
  | { readonly kind: "waiting"; readonly items: number; readonly why: WaitingFor }
  /** Somebody must say what becomes of them; `waiting` are closings that wait for that. */
  | { readonly kind: "refused"; readonly refused: readonly OutboxItem[]; readonly waiting: number };

let running = false;
/** Somebody asked while a run was on its way: what was kept meanwhile may have been missed. */
let askedAgain = false;
/** Refusals that the device had no room to note. */
const refusedHere = new Map<string, string>();

/**
 * Sends until nothing is left that may go. Only one run at a time in one page; two pages at once send the same ids, of
 * which the server keeps one.
 */
export async function sendOutbox(onSent: (item: OutboxItem) => void): Promise<SentState> {
  if (running) {
    askedAgain = true;
    return await waitingState("sending");
  }
  running = true;
  try {
    let state: SentState;
    do {
      askedAgain = false;
      state = await sendAll(onSent);
    } while (askedAgain);
    return state;
  } finally {
    running = false;
  }
}

async function sendAll(onSent: (item: OutboxItem) => void): Promise<SentState> {
  const tried = new Set<string>();
  let why: WaitingFor | undefined;
  for (;;) {
    const item = nextToSend(await loadWaiting(), tried);
    if (item === undefined) break;
    tried.add(item.id);
    const outcome = await sendItem(item);
    if (outcome.kind === "sent") {
      await removeFromDevice("outbox", [item.id]);
      onSent(item);
    } else if (outcome.kind === "refused") await noteRefusal(item, outcome.sentence);
    else {
      why = outcome.why;
      if (outcome.isLineDown) break;
    }
  }
  return why === undefined ? await restState() : await waitingState(why);
}

/** The oldest that was not tried in this run. What fails at the server holds up nothing but the closing of its own job. */
export function nextToSend(waiting: readonly OutboxItem[], tried: ReadonlySet<string>): OutboxItem | undefined {
  return waiting.find(
    (item) =>
      item.refused === undefined &&
      !tried.has(item.id) &&
      (item.load.kind !== "close" || !waiting.some((other) => other.job === item.job && other.load.kind !== "close")),
  );
}

/** To be sent again as it is. */
export async function sendAgain(item: OutboxItem): Promise<void> {
  refusedHere.delete(item.id);
  await keepOnDevice([{ store: "outbox", value: { ...item, refused: undefined } }]);
}

async function loadWaiting(): Promise<readonly OutboxItem[]> {
  return (await loadOutbox()).map((item) => ({ ...item, refused: item.refused ?? refusedHere.get(item.id) }));
}

async function noteRefusal(item: OutboxItem, sentence: string): Promise<void> {
  refusedHere.set(item.id, sentence);
  await keepOnDevice([{ store: "outbox", value: { ...item, refused: sentence } }]).catch(() => {}); // noted in this page at least
}

async function restState(): Promise<SentState> {
  const left = await loadWaiting();
  const refused = left.filter((item) => item.refused !== undefined);
  if (refused.length > 0) return { kind: "refused", refused, waiting: left.length - refused.length };
  return left.length === 0
    ? { kind: "all sent", at: undefined }
    : { kind: "waiting", items: left.length, why: "sending" };
}

async function waitingState(why: WaitingFor): Promise<SentState> {
  return { kind: "waiting", items: (await loadOutbox()).length, why };
}
