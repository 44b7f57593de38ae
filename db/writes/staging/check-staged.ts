import type { Transaction } from "@/db/database-types";
import { agreeAtOnce } from "../bulk/first-load";
import type { Lanes } from "../bulk/lanes";
import { analyzeStaged } from "../bulk/rewrite-staged";
import { flagRepeats } from "./flag-rows";
import { holdWholeRows } from "./hold-whole-rows";
import { keepEdits } from "./keep-edits";
import { leaveUnnamed } from "./leave-unnamed";
import { run } from "./run";
import { settleFates } from "./settle-fates";
import { settleRowFates } from "./settle-row-fates";
import type { StagedFile } from "./staged-file";

/**
 * Checks staged rows against each other and against what is stored, and gives each its fate. `between` is called between the steps.
 * @returns the file as it is to be stored
 */
export async function checkStaged(
  tx: Transaction,
  file: StagedFile,
  lanes: Lanes,
  between: () => void = () => {},
): Promise<StagedFile> {
  for (const { staged, kind } of file.parts) {
    await analyzeStaged(tx, staged.table);
    if (!(await agreeAtOnce(tx, staged, kind, lanes))) continue;
    await keepEdits(tx, { ...file, parts: [] });
    return { ...file, parts: [{ kind, staged: { ...staged, agreed: true } }] };
  }
  if (file.rows !== undefined) await run(tx, `analyze ${file.rows.table}`);
  for (const { staged, kind } of file.parts) {
    await kind.resolve(tx, staged);
    await analyzeStaged(tx, staged.table); // what was known of its columns was that they are empty
    await leaveUnnamed(tx, staged, kind);
    between();
    await flagRepeats(tx, staged, kind);
    await kind.check(tx, staged);
    between();
  }
  await holdWholeRows(tx, file);
  for (const { staged, kind } of file.parts) await kind.place?.(tx, staged);
  await keepEdits(tx, file);
  for (const { staged, kind } of file.parts) {
    await settleFates(tx, staged, kind);
    await analyzeStaged(tx, staged.table);
    between();
  }
  await settleRowFates(tx, file);
  return file;
}
