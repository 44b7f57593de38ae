import { gatherRows } from "../gather-rows";
import { guessEncoding } from "../guess-encoding";
import type { FormWishes, Looked } from "../look-at-table";
import { encodingQuestions, lookOf } from "../look-of";
import { lineKeys, lineRows } from "./line-rows";

/** A look at JSON Lines: its keys, over the whole file, are the header. */
export async function lookAtLines(
  path: string,
  wishes: FormWishes,
  { onRow, onLine }: { readonly onRow: () => void; readonly onLine: () => void },
): Promise<Looked> {
  const coded = wishes.encoding === undefined ? await guessEncoding(path) : undefined;
  const encoding = wishes.encoding ?? coded?.encoding ?? "utf-8";
  const header = await lineKeys(path, encoding, onLine);
  const gathered = await gatherRows(lineRows(path, encoding, header), 0, onRow);
  return lookOf(
    { ...gathered, header },
    {
      form: { kind: "lines", encoding },
      reasons: coded === undefined ? {} : { encoding: coded.reason },
      questions: encodingQuestions(coded),
      sheets: [],
    },
  );
}
