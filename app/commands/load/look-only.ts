import { readOnly } from "@/db/client";
import { loadIntakeSetting } from "@/db/queries/intake-setting";
import { recallMatching, recallWords } from "@/db/queries/recall-matching";
import { guessMatching } from "@/lib/intake/matching/guess-matching";
import { lookAtTable } from "@/lib/intake/tables/look-at-table";
import { describeGuess } from "./describe-guess";
import { describeFileProblem } from "./describe-load";
import { writeMatchingFile } from "./matching-file";

/** How a file would be read and matched, in lines for a terminal; the guess goes to a file where one is named. */
export async function lookOnly(
  path: string,
  guessPath: string | undefined,
): Promise<{ text: string; readable: boolean }> {
  const looked = await lookAtTable(path);
  if (!looked.ok)
    return {
      text: [`${path}: it can’t be read.`, ...looked.problems.map(describeFileProblem)].join("\n"),
      readable: false,
    };
  const { look } = looked;
  const known = await readOnly(async (db) => {
    const recalled = await recallMatching(db, look.header);
    const setting = await loadIntakeSetting(db, undefined);
    const remembered = recalled.kind === "none" ? undefined : recalled.matching;
    return { ...setting, remembered, rememberedWords: await recallWords(db) };
  });
  const guess = guessMatching({ header: look.header, rows: look.sample }, known);
  const lines = describeGuess(path, look, guess);
  if (guessPath === undefined) return { text: lines.join("\n"), readable: true };
  await writeMatchingFile(guessPath, look.form, guess.matching);
  const written = `Written to ${guessPath}. Correct it, then: npm run load -- ${path} --matching ${guessPath}`;
  return { text: [...lines, written].join("\n"), readable: true };
}
