import { SelectField } from "@/app/_ui/select-field";
import type { Decision } from "@/lib/intake/matching/guess-date-order";
import type { MatchingGuess } from "@/lib/intake/matching/guess-matching";
import type { DraftNotes } from "../../../_draft/draft-notes";
import { Question } from "./questions";

interface Props {
  readonly guess: MatchingGuess;
  readonly notes: DraftNotes;
}

interface Notation {
  readonly name: "dateOrder" | "decimalMark" | "labourUnit" | "dayNumbersFrom";
  readonly label: string;
  readonly decision: Decision<string | number> | undefined;
  readonly choices: readonly { readonly value: string; readonly name: string }[];
}

/** How days, amounts and working time are written; each decided by the whole column, or asked. */
function notations(guess: MatchingGuess): readonly Notation[] {
  const labour = guess.matching.columns.some(({ target }) => target === "labour_minutes");
  return [
    {
      name: "dateOrder",
      label: "Days such as 3/4/25",
      decision: guess.dateOrder,
      choices: [
        { value: "day first", name: "day first: 3 April" },
        { value: "month first", name: "month first: March 4" },
        { value: "year first", name: "year first" },
      ],
    },
    {
      name: "decimalMark",
      label: "Decimal mark",
      decision: guess.decimalMark,
      choices: [
        { value: ".", name: "point: 1.5" },
        { value: ",", name: "comma: 1,5" },
      ],
    },
    {
      name: "labourUnit",
      label: "Working time is in",
      decision: labour ? guess.labourUnit : undefined,
      choices: ["hours", "minutes", "money"].map((value) => ({ value, name: value })),
    },
    {
      name: "dayNumbersFrom",
      label: "Day numbers such as 45717 count from",
      decision: guess.dayNumbersFrom,
      choices: ["1900", "1904"].map((value) => ({ value, name: value })),
    },
  ];
}

/** Notation that is guessed with its reason. */
export function NotationFields({ guess, notes: { said } }: Props) {
  return notations(guess).map(({ name, label, decision, choices }) =>
    decision === undefined || "question" in decision ? null : (
      <SelectField
        key={name}
        label={label}
        name={name}
        hint={decision.reason}
        value={String(said[name] ?? decision.value)}
        choices={choices}
      />
    ),
  );
}

/** Notation that the file can't tell. */
export function AskedNotation({ guess, notes: { said } }: Props) {
  return notations(guess).map(({ name, decision, choices }) =>
    decision === undefined || !("question" in decision) ? null : (
      <Question
        key={name}
        name={name}
        question={`${decision.question} ${decision.reason}`}
        answer={said[name] === undefined ? undefined : String(said[name])}
        choices={choices}
      />
    ),
  );
}
