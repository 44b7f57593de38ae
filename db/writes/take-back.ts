import { eq } from "drizzle-orm";
import type { Transaction } from "../database-types";
import { inTransaction } from "../in-transaction";
import { batches } from "../schema/intake";
import { countsAround } from "./counts-around";
import { dryTransaction } from "./dry-transaction";
import { undoJoins } from "./joining/undo-joins";
import { markUnitsOfModels, settleUnclaimed } from "./money/units-to-judge";
import { markTakenParts } from "./parts/mark-parts";
import { settleOutlooks } from "./parts/settle-outlooks";
import { refreshCounts } from "./refresh-counts";
import { rowsOf, run } from "./staging/run";
import { intakeLock } from "./store-import";
import { apply } from "./taking-back/apply";
import { takenTables } from "./taking-back/tables";
import { weigh } from "./taking-back/weigh";

/** Rows of one kind that share a fate. */
export interface TakenRows {
  readonly noun: string;
  readonly rows: number;
  /** Why they stay; empty where they do not. */
  readonly reason: string;
  /** The first of them, by name. */
  readonly examples: readonly string[];
}

export type TakeBackResult =
  | { readonly kind: "no such load" }
  | { readonly kind: "taken back before" }
  | {
      readonly kind: "taken back";
      readonly removed: readonly TakenRows[];
      readonly returned: readonly TakenRows[];
      /** Named by a later load, changed by hand since, or used in a claim. */
      readonly staying: readonly TakenRows[];
      /** Loads that brought in held rows of this one, mended. They stay, and can be taken back by themselves. */
      readonly followUps: readonly { readonly batchId: number; readonly rows: number }[];
    };

const limits = { timeoutSeconds: 3600 };

/** What taking the batch back would do, changing nothing. */
export async function previewTakeBack(batchId: number): Promise<TakeBackResult> {
  return await dryTransaction(async (tx) => {
    const refused = await refusal(tx, batchId);
    if (refused !== undefined) return refused;
    await undoJoins(tx, batchId);
    return await weighed(tx, batchId);
  }, limits);
}

/**
 * Takes a whole batch back: what it made goes, what it changed returns to what it was before, and what a later load,
 * a hand or a claim has taken up since stays. Batches can be taken back in any order.
 */
export async function takeBack(batchId: number): Promise<TakeBackResult> {
  const taken = await inTransaction<TakeBackResult>(async (tx) => {
    await run(tx, `select pg_advisory_xact_lock(${intakeLock})`);
    const refused = await refusal(tx, batchId);
    if (refused !== undefined) return refused;
    const rejoined = await undoJoins(tx, batchId);
    const result = await weighed(tx, batchId);
    const before = [...rejoined, ...(await touchedModels(tx))];
    const counts = await countsAround(tx, takenUnits);
    await markTakenParts(tx);
    await apply(tx, batchId);
    await markTakenParts(tx);
    const models = (await touchesShop(tx)) ? ("all" as const) : [...before, ...(await touchedModels(tx))];
    if (models === "all") await refreshCounts(tx, models);
    else {
      await refreshCounts(tx, rejoined);
      await counts.refresh();
    }
    await markUnitsOfModels(tx, models);
    await removeUnusedModels(tx);
    await run(tx, `update held_rows set state = 'held', mended_by = null where mended_by = ${batchId}`);
    await tx
      .update(batches)
      .set({ state: "taken_back", takenBackAt: new Date().toISOString() })
      .where(eq(batches.batchId, batchId));
    return result;
  }, limits);
  if (taken.kind === "taken back") {
    await settleUnclaimed();
    await settleOutlooks();
  }
  return taken;
}

async function refusal(tx: Transaction, batchId: number): Promise<TakeBackResult | undefined> {
  const [batch] = await tx.select({ state: batches.state }).from(batches).where(eq(batches.batchId, batchId));
  if (batch === undefined) return { kind: "no such load" };
  return batch.state === "taken_back" ? { kind: "taken back before" } : undefined;
}

async function weighed(tx: Transaction, batchId: number): Promise<TakeBackResult> {
  await weigh(tx, batchId);
  const groups = await rowsOf<{ table: string; fate: string; reason: string | null; rows: number; examples: string[] }>(
    tx,
    `select table_name as table, case when verdict in ('remove', 'restore') then verdict else 'stay' end as fate, reason,
            count(*)::integer as rows, (array_agg(label order by label))[1:20] as examples
     from taking where verdict <> 'forget' group by 1, 2, 3 order by 1, 3`,
  );
  const order = takenTables.map(({ name }) => name);
  const of = (fate: string) =>
    groups
      .filter((group) => group.fate === fate)
      .toSorted((a, b) => order.indexOf(b.table) - order.indexOf(a.table))
      .map(({ table, rows, reason, examples }) => ({
        noun: takenTables.find(({ name }) => name === table)?.noun ?? table,
        rows,
        reason: reason ?? "",
        examples,
      }));
  return {
    kind: "taken back",
    removed: of("remove"),
    returned: of("restore"),
    staying: of("stay"),
    followUps: await followUps(tx, batchId),
  };
}

async function followUps(tx: Transaction, batchId: number) {
  return await rowsOf<{ batchId: number; rows: number }>(
    tx,
    `select batch_id::integer as "batchId", rows_total as rows from batches where parent_batch = ${batchId} and state = 'added' order by 1`,
  );
}

/** A unit can return to another model, so this is asked before and after. */
const takenUnits =
  "select split_part(key, chr(31), 1)::bigint from taking where table_name in ('units', 'jobs') and verdict <> 'forget'";

async function touchedModels(tx: Transaction): Promise<readonly number[]> {
  const models = await rowsOf<{ id: number }>(
    tx,
    `select distinct model_id as id from units where unit_id in (${takenUnits})`,
  );
  return models.map(({ id }) => id);
}

async function touchesShop(tx: Transaction): Promise<boolean> {
  return (
    (await rowsOf(tx, "select from taking where table_name = 'shop' and verdict in ('remove', 'restore')")).length > 0
  );
}

/** Makers and models are made by loads only, with the first row that names them, so they go with the last. */
async function removeUnusedModels(tx: Transaction): Promise<void> {
  await run(
    tx,
    `delete from models m where not exists (select from units u where u.model_id = m.model_id) and not exists (select from expected_ranges r where r.model_id = m.model_id) and not exists (select from own_ranges o where o.model_id = m.model_id)`,
  );
  await run(
    tx,
    `delete from makers k where not exists (select from models m where m.maker_id = k.maker_id) and not exists (select from policies p where p.maker_id = k.maker_id)`,
  );
}
