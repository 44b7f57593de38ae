import { readOnly } from "@/db/client";
import { type ChainHead, checkChangeChain } from "@/db/queries/change-chain";
import { findRowsNotAsLogged } from "@/db/queries/rows-not-as-logged";
import { type Found, noteRun } from "@/db/writes/note-run";

const hours = 60 * 60;

export interface CheckedLog extends Found {
  readonly state: { readonly links: number; readonly head: ChainHead | undefined };
}

/** Checks the change log and keeps what was found for the Health page: first of all the place where the chain breaks. */
export async function checkLog(heads: readonly ChainHead[]): Promise<CheckedLog> {
  let state: CheckedLog["state"] = { links: 0, head: undefined };
  const found = await noteRun(
    "check-log",
    () => new Date(),
    async () => {
      const chain = await readOnly((db) => checkChangeChain(db, heads), { timeoutSeconds: hours });
      if (chain.kind === "whole") state = chain;
      const rows = await readOnly((db) => findRowsNotAsLogged(db), { timeoutSeconds: hours });
      const all = [...(chain.kind === "broken" ? [chain.sentence] : []), ...rows];
      return { found: all.length, first: all.slice(0, 20) };
    },
  );
  return { ...found, state };
}
