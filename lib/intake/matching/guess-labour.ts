import type { ColumnGuess } from "./guess-columns";
import type { Decision } from "./guess-date-order";
import { guessLabourUnit } from "./guess-labour-unit";
import type { LabourUnit } from "./matching";

/** A column called labour may hold time or money; its values say which column of ours it is. */
export function guessLabour(
  guesses: readonly ColumnGuess[],
  values: readonly (readonly string[])[],
  decimalMark: "." | ",",
): { readonly guesses: readonly ColumnGuess[]; readonly labourUnit: Decision<LabourUnit> } {
  const both = guesses.filter(({ target }) => target === "labour" || target === "labour_minutes").length === 2;
  const place = guesses.findIndex(
    ({ target, source }) => target === "labour_minutes" || (!both && target === "labour" && source.trim() !== "labour"),
  );
  const guess = guesses[place];
  if (guess === undefined)
    return { guesses, labourUnit: { value: "minutes", reason: "No column of working time is matched." } };
  const labourUnit =
    guess.source.trim() === "labour_minutes" ? ours : guessLabourUnit(guess.source, values[place] ?? [], decimalMark);
  const target = !both && "value" in labourUnit && labourUnit.value === "money" ? "labour" : "labour_minutes";
  return {
    guesses: guesses.with(place, { ...guess, target, reason: `${guess.reason} ${labourUnit.reason}` }),
    labourUnit,
  };
}

const ours: Decision<LabourUnit> = { value: "minutes", reason: "The column is ours, and holds minutes." };
