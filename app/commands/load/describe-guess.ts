import { fileKindNames } from "@/lib/intake/file-kinds";
import type { MatchingGuess } from "@/lib/intake/matching/guess-matching";
import type { TableLook } from "@/lib/intake/tables/look-at-table";
import { printable } from "./printable";

/** A file's form and its guessed matching, each with its reason. */
export function describeGuess(path: string, look: TableLook, guess: MatchingGuess): readonly string[] {
  const reasons = Object.values(look.reasons).filter((reason) => reason !== undefined);
  const notation = [guess.dateOrder, guess.decimalMark, guess.labourUnit].flatMap((decision) =>
    "value" in decision ? [decision.reason] : [],
  );
  const open = [
    ...look.questions.map(({ question }) => question),
    ...guess.problems.map(({ question, reason }) => `${question} ${reason}`),
  ];
  return [
    `${path}: ${look.rows} rows under ${look.header.length} columns, ${fileKindNames[guess.kind.value].toLowerCase()}.`,
    ...[...reasons, guess.kind.reason, guess.rowIs.reason, ...notation].map((reason) => `  ${printable(reason)}`),
    "Columns:",
    ...guess.columns.map(
      ({ source, target, confidence, reason }) =>
        `  ${printable(source)} → ${target ?? "not used"} (${confidence}). ${printable(reason)}`,
    ),
    ...(open.length === 0 ? [] : ["Open:", ...open.map((sentence) => `  ${printable(sentence)}`)]),
  ];
}
