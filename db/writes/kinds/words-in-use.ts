import type { Transaction } from "@/db/database-types";
import { noteUsed } from "../staging/merge-staged";
import { rowsOf } from "../staging/run";

/**
 * Notes that the batch uses components which another batch brought. `rows` gives component and kind of appliance.
 * What comes with the program has no batch and needs no note.
 */
export async function noteWords(
  tx: Transaction,
  { rows, batchId }: { readonly rows: string; readonly batchId: number },
): Promise<void> {
  const [own] = await rowsOf<{ any: boolean }>(
    tx,
    `select exists (select from components where batch_id is not null) or exists (select from component_uses where batch_id is not null) as any`,
  );
  if (own?.any !== true) return;
  await noteUsed(tx, {
    table: "components",
    select: `select distinct c.key from (${rows}) as used(component, kind) join components c on c.key = used.component where c.batch_id is not null`,
    batchId,
  });
  await noteUsed(tx, {
    table: "component_uses",
    select: `select distinct c.component || chr(31) || c.product_type from (${rows}) as used(component, kind)
             join component_uses c on c.component = used.component and c.product_type = used.kind where c.batch_id is not null`,
    batchId,
  });
}
