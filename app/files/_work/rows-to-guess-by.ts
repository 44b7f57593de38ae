import { readRows } from "@/lib/intake/tables/read-rows";
import type { SourceRow } from "@/lib/intake/tables/source-row";
import type { TableForm } from "@/lib/intake/tables/table-form";
import type { WorkLine } from "./do-task";

const mostRows = 20_000;
const reportedEvery = 1_000;

/** All rows of a file that has few; of a long one every so many-th, so that memory stays bounded and all of it is seen. */
export async function rowsToGuessBy(
  path: string,
  form: TableForm,
  total: number,
  { onProgress, signal }: WorkLine,
): Promise<readonly SourceRow[]> {
  const step = Math.max(1, Math.ceil(total / mostRows));
  const rows: SourceRow[] = [];
  let done = 0;
  for await (const item of readRows(path, form)) {
    if (item.kind === "row" && done % step === 0) rows.push(item);
    if (++done % reportedEvery !== 0) continue;
    signal.throwIfAborted();
    onProgress({ words: "Looking through the columns", done, total });
  }
  return rows;
}
