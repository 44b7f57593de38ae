import type { Transaction } from "@/db/database-types";
import { rowsOf, run } from "../staging/run";
import { intakeLock } from "../store-import";
import { fillingSchema } from "./filling";

/** Removes tables that a load was filling when it broke off. Those of a load that is under way are left: it holds the lock. */
export async function removeFilled(tx: Transaction): Promise<void> {
  if (!(await isThere(tx))) return;
  const [lock] = await rowsOf<{ free: boolean }>(tx, `select pg_try_advisory_xact_lock(${intakeLock}) as free`);
  if (lock?.free === true && (await isThere(tx))) await run(tx, `drop schema ${fillingSchema} cascade`);
}

async function isThere(tx: Transaction): Promise<boolean> {
  const [found] = await rowsOf<{ there: boolean }>(
    tx,
    `select exists (select from pg_namespace where nspname = '${fillingSchema}' and pg_has_role(nspowner, 'usage')) as there`,
  );
  return found?.there === true;
}
