import { createHash } from "node:crypto";
import { sql } from "drizzle-orm";
import { mostInARow, oneMoreWrong, type WrongTries, waitBeforeTry } from "@/lib/people/sign-in-delay";
import type { Transaction } from "../../database-types";
import { inTransaction } from "../../in-transaction";
import { emailKey } from "./add-person";

/** Who tries to sign in, whether such a person exists or not. */
export interface Try {
  readonly email: string;
  /** Network address that it comes from. */
  readonly address: string;
  /** Its own mark, where this person has signed in from the device before: such a one is never shut out by others. */
  readonly device: string | undefined;
}

export type TryVerdict =
  | { readonly kind: "go on" }
  | { readonly kind: "wait"; readonly ms: number }
  | { readonly kind: "only from a known device" };

/**
 * Counts one try as wrong before it is looked at, so that a thousand at once are a thousand, or says how long to wait.
 * The right password takes it back with `forgetTries`.
 */
export async function countTry(asked: Try, now: number): Promise<TryVerdict> {
  const known = asked.device !== undefined;
  return await inTransaction(async (tx) => {
    const account = await lockTries(tx, accountOf(asked.email));
    if (!known && account !== undefined && account.count >= mostInARow) return { kind: "only from a known device" };
    const place = await lockTries(tx, placeOf(asked));
    const ms = waitBeforeTry(place, now);
    if (ms > 0) return { kind: "wait", ms };
    await store(tx, placeOf(asked), oneMoreWrong(place, now));
    if (!known) await store(tx, accountOf(asked.email), { count: (account?.count ?? 0) + 1, lastAt: now });
    return { kind: "go on" };
  });
}

/** How long tries are kept that nobody adds to. Own choice. */
const keptDays = 90;

/** After the right password: what was counted of this account from here, and in a row, begins anew. */
export async function forgetTries(asked: Try, now: number): Promise<void> {
  await inTransaction(async (tx) => {
    await tx.rows(sql`delete from sign_in_tries where subject in (${placeOf(asked)}, ${accountOf(asked.email)})`);
    const before = new Date(now - keptDays * 86_400_000).toISOString();
    await tx.rows(sql`delete from sign_in_tries where last_at < ${before}`);
  });
}

/** The wrong tries of an account in a row, such as when its owner gave it a new password by a link. */
export async function forgetTriesOfAccount(tx: Transaction, email: string): Promise<void> {
  await tx.rows(sql`delete from sign_in_tries where subject = ${accountOf(email)}`);
}

const accountOf = (email: string) => hashOf(`account\n${emailKey(email)}`);

function placeOf({ email, address, device }: Try): string {
  return hashOf(
    device === undefined ? `address\n${emailKey(email)}\n${address}` : `device\n${emailKey(email)}\n${device}`,
  );
}

function hashOf(text: string): string {
  return createHash("sha256").update(text).digest("hex");
}

/** The row, held until the transaction ends; an advisory lock stands in for one that is not there yet. */
async function lockTries(tx: Transaction, subject: string): Promise<WrongTries | undefined> {
  await tx.rows(sql`select pg_advisory_xact_lock(hashtextextended(${subject}, 0))::text`);
  const [row] = await tx.rows<{ count: number; lastAt: string }>(sql`
    select count, (extract(epoch from last_at) * 1000)::bigint::text as "lastAt" from sign_in_tries where subject = ${subject}`);
  return row && { count: row.count, lastAt: Number(row.lastAt) };
}

async function store(tx: Transaction, subject: string, { count, lastAt }: WrongTries): Promise<void> {
  await tx.rows(sql`
    insert into sign_in_tries (subject, count, last_at) values (${subject}, ${count}, ${new Date(lastAt).toISOString()})
    on conflict (subject) do update set count = excluded.count, last_at = excluded.last_at`);
}
