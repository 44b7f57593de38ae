import { readOnly } from "@/db/client";
import { loadKnownThings } from "@/db/queries/known-things";
import { fingerprint } from "@/db/writes/file-fingerprint";
import { findBatch } from "@/db/writes/find-batch";
import type { LoadResult } from "@/db/writes/load-result";
import { loadRows } from "@/db/writes/load-rows";
import { type LoadTableRequest, matchedRows } from "@/db/writes/load-table";
import { translator } from "@/lib/intake/matching/translate-row";
import { readRows } from "@/lib/intake/tables/read-rows";
import { correctRow } from "../_draft/correct-row";
import type { Correction } from "../_draft/corrections";

/** A load by its matching, with what a person wrote over some cells. The rows stay as the file has them; each correction is noted beside its raw cell. */
export async function loadCorrected(
  request: LoadTableRequest,
  corrections: readonly Correction[],
): Promise<LoadResult> {
  const { path, fileName, form, matching } = request;
  const print = await fingerprint(path);
  const before = await readOnly((db) => findBatch(db, matching.kind, print.sha256));
  if (before !== undefined) return before;
  const known = await readOnly(loadKnownThings, { timeoutSeconds: 60 });
  const rows = matchedRows(matching);
  return await loadRows(
    {
      ...request,
      ...rows,
      file: { fileName, ...print, form, matching },
      translatorOf: (setting) => {
        const translate = translator(matching, rows.header, { ...setting, known });
        return (row) => {
          const { corrected, notes } = correctRow(row, rows.header, corrections);
          const translation = translate(corrected);
          return translation.kind === "rows"
            ? { ...translation, notes: [...translation.notes, ...notes] }
            : translation;
        };
      },
    },
    () => readRows(path, form),
  );
}
