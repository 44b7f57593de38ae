import { randomUUID } from "node:crypto";
import { sql } from "drizzle-orm";
import type { Transaction } from "../database-types";
import { inTransaction } from "../in-transaction";

export interface OnceRequest {
  readonly route: string;
  /** The sender's own key of this request. */
  readonly key: string;
  readonly bodyHash: string;
}

export interface StoredAnswer {
  readonly status: number;
  readonly body: unknown;
}

export type OnceAnswer =
  /** `repeated`: the answer that an earlier request with this key got. */
  | { readonly kind: "answered"; readonly answer: StoredAnswer; readonly repeated: boolean }
  /** The first request with this key is not done yet; ask again later. */
  | { readonly kind: "running"; readonly retryAfterSeconds: number }
  /** The key came before with another body. */
  | { readonly kind: "other body" };

/** Stores the answer in the transaction that does the work, so that there is either both or neither. */
export type StoreAnswer = (tx: Transaction, answer: StoredAnswer) => Promise<void>;

/** A run that takes longer has died: requests are cut to a size that takes seconds. One that would end much later than any that begins now began before the clock was put back. */
const runSeconds = 120;
/** At least; they go by night (db/retention), and not here, where a clock that is wrong for a minute would forget all. */
const keptHours = 24;

/**
 * Does what a request asks once, however often it comes. `run` must call `store` within the transaction that makes its
 * change, as the last thing it does there. Where it changes nothing it may leave that out, and runs anew the next time.
 */
export async function answerOnce(
  request: OnceRequest,
  run: (store: StoreAnswer) => Promise<StoredAnswer>,
): Promise<OnceAnswer> {
  const id = randomUUID();
  const before = await begin(request, id);
  if (before !== undefined) return before;
  try {
    const answer = await run((tx, given) => store(tx, request, id, given));
    await release(request, id);
    return { kind: "answered", answer, repeated: false };
  } catch (error) {
    await release(request, id).catch(() => {}); // what `run` met says more; the run ends by its time otherwise
    throw error;
  }
}

/** Takes the key for this run; or says what is known of it. */
async function begin({ route, key, bodyHash }: OnceRequest, run: string): Promise<OnceAnswer | undefined> {
  return await inTransaction(async (tx) => {
    const taken = await tx.rows(sql`
      insert into idempotency_keys (route, key, request_sha256, state, run, run_until, expires_at)
      values (${route}, ${key}, ${bodyHash}, 'running', ${run}, now() + make_interval(secs => ${runSeconds}), now() + make_interval(hours => ${keptHours}))
      on conflict (route, key) do update set run = excluded.run, run_until = excluded.run_until
        where idempotency_keys.state = 'running' and idempotency_keys.request_sha256 = excluded.request_sha256
          and (idempotency_keys.run_until < now() or idempotency_keys.run_until > now() + make_interval(secs => ${2 * runSeconds}))
      returning key`);
    if (taken.length > 0) return undefined;
    const [known] = await tx.rows<{ hash: string; state: string; status: number; answer: unknown; left: number }>(sql`
      select request_sha256 as hash, state, status, answer, ceil(greatest(1, extract(epoch from run_until - now())))::integer as left
      from idempotency_keys where route = ${route} and key = ${key}`);
    if (known === undefined) return { kind: "running", retryAfterSeconds: 1 }; // given up between the two statements
    if (known.hash !== bodyHash) return { kind: "other body" };
    if (known.state === "running") return { kind: "running", retryAfterSeconds: Math.min(known.left, 5) };
    return { kind: "answered", answer: { status: known.status, body: known.answer }, repeated: true };
  });
}

/** @throws where another run has taken over meanwhile: then this one must not happen */
async function store(tx: Transaction, { route, key }: OnceRequest, run: string, answer: StoredAnswer): Promise<void> {
  const stored = await tx.rows(sql`
    update idempotency_keys set state = 'done', status = ${answer.status}, answer = ${JSON.stringify(answer.body ?? null)}::jsonb
    where route = ${route} and key = ${key} and run = ${run} and state = 'running' returning key`);
  if (stored.length === 0) throw new Error("Another request with the same key has taken over.");
}

/** A run that stored no answer gives its key back. */
async function release({ route, key }: OnceRequest, run: string): Promise<void> {
  await inTransaction(
    async (tx) =>
      void (await tx.execute(
        sql`delete from idempotency_keys where route = ${route} and key = ${key} and run = ${run} and state = 'running'`,
      )),
  );
}
