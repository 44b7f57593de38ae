import { readOnly } from "../../client";
import { copyInto } from "../../copy-into";
import { copyLine } from "../../copy-line";
import { inTransaction } from "../../in-transaction";
import { loadMoneyCases, type MoneyCases } from "../../queries/money-cases";
import type { UnitScope } from "../../queries/money-units";
import { judgeUnclaimed, type UnclaimedRow } from "./judge-unclaimed";
import { loadYardstick } from "./load-yardstick";
import { MissingLists, storeMissingLists } from "./missing-lists";
import { unclaimedColumns } from "./unclaimed-columns";

/** Which units are judged here: of `runs` runs of equal length every `shares`-th, from `share` on. */
export interface JudgingShare {
  readonly table: string;
  readonly runs: number;
  readonly share: number;
  readonly shares: number;
}

const timeoutSeconds = 3600;

/** @returns how many rows were copied into the table */
export async function judgeShare(share: JudgingShare): Promise<number> {
  return await copyInto({ table: share.table, columns: names }, linesOf(share), { timeoutSeconds });
}

async function* linesOf(share: JudgingShare): AsyncGenerator<string> {
  const yardstick = await readOnly((db) => loadYardstick(db));
  const missing = new MissingLists();
  const read = (scope: UnitScope) =>
    readOnly((db) => loadMoneyCases(db, scope, yardstick.policies), { timeoutSeconds });
  let next: Promise<MoneyCases> | undefined;
  const scopes = scopesOf(share);
  for (const [place, scope] of scopes.entries()) {
    const cases = await (next ?? read(scope));
    const following = scopes[place + 1];
    next = following === undefined ? undefined : read(following); // the server reads on while this run is judged
    next?.catch(() => {}); // told when its turn comes
    const lines = judgeUnclaimed(cases, yardstick)
      .map((row) => lineOf(row, missing.keyOf(row.missing)))
      .join("");
    await inTransaction((tx) => storeMissingLists(tx, missing.takeAdded()));
    if (lines !== "") yield lines;
  }
}

/** One more than the highest key. Keys are hashes, so runs of equal length hold about as many units. */
const keys = 2n ** 63n;

function scopesOf({ runs, share, shares }: JudgingShare): readonly UnitScope[] {
  const end = (run: number) => String((keys * BigInt(run)) / BigInt(runs) - 1n);
  const all = Array.from({ length: runs }, (_, run): UnitScope => {
    const after = run === 0 ? undefined : end(run);
    return { kind: "run", after, until: run === runs - 1 ? undefined : end(run + 1) };
  });
  return all.filter((_, run) => run % shares === share);
}

const names = unclaimedColumns.map(({ name }) => name);

function lineOf(row: UnclaimedRow, missingKey: string | null): string {
  const values: Readonly<Record<string, string | number | null | readonly string[]>> = row;
  return copyLine(
    names.map((name) => {
      const value = name === "missing_key" ? missingKey : values[name];
      return typeof value === "string" || typeof value === "number" ? value : null; // the list goes by its key
    }),
  );
}
