import { basename } from "node:path";
import { readOnly } from "@/db/client";
import { recallMatching } from "@/db/queries/recall-matching";
import { kindOfFile } from "@/db/writes/kind-of-file";
import { loadFile } from "@/db/writes/load-file";
import type { LoadResult } from "@/db/writes/load-result";
import { loadTable } from "@/db/writes/load-table";
import { rememberMatching } from "@/db/writes/remember-matching";
import { lookAtTable } from "@/lib/intake/tables/look-at-table";
import { isSameForm } from "@/lib/intake/tables/same-form";
import { shownProblems } from "./describe-load";
import { readMatchingFile } from "./matching-file";
import type { LoadArguments } from "./read-arguments";

export interface LoadedOne {
  /** Undefined where it was not tried. */
  readonly result: LoadResult | undefined;
  readonly said: readonly string[];
}

/** One file in: of our own columns, or by a matching that is given or remembered for its header. */
export async function loadOne(path: string, { mode, kind, matching: given }: LoadArguments): Promise<LoadedOne> {
  const request = { path, fileName: basename(path), mode, problemLimit: shownProblems };
  if (given === undefined && (kind !== undefined || (await kindOfFile(path, kind)) !== undefined))
    return { result: await loadFile({ ...request, kind }), said: [] };
  const stated = given === undefined ? undefined : await readMatchingFile(given);
  const looked = await lookAtTable(path, stated?.wishes);
  if (!looked.ok) return { result: { kind: "unreadable", problems: looked.problems }, said: [] };
  const { form, header, questions } = looked.look;
  if (stated !== undefined) {
    const { matching } = stated;
    const result = await loadTable({ ...request, form, matching });
    if (result.kind === "added") await rememberMatching({ form, matching });
    return { result, said: [] };
  }
  const recalled = await readOnly((db) => recallMatching(db, header));
  if (recalled.kind !== "same" || (questions.length > 0 && !isSameForm(recalled.form, form)))
    return { result: undefined, said: [unmatched(path)] };
  const said = [`${path}: read by the matching of the last file with this header.`];
  return { result: await loadTable({ ...request, form, matching: recalled.matching }), said };
}

function unmatched(path: string): string {
  return [
    `${path}: its columns are not ours, and no file with this header was matched before. Nothing was added.`,
    "Open the page /files/new and match its columns there once; the next file with this header then needs nothing.",
    `Or write the guess to a file, correct it, and load by it: npm run load -- --look ${path} --guess matching.json`,
  ].join("\n");
}
