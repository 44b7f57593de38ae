// What somebody's file seems to say, with a reason for every guess, before anything is read from it. Nothing is decided
// that the file itself does not decide: what is open is listed, and has to be answered by a person.
import type { Day } from "@/lib/calendar/day";
import type { TableKind } from "../file-kinds";
import type { Catalogue } from "../intake-setting";
import type { SourceRow } from "../tables/source-row";
import { mayLieAhead, noLimit } from "./column-reader";
import { type ColumnGuess, guessColumns } from "./guess-columns";
import { type Decision, guessDateOrder } from "./guess-date-order";
import { guessDayNumbers } from "./guess-day-numbers";
import { guessDecimalMark } from "./guess-decimal-mark";
import { guessKind } from "./guess-kind";
import { guessLabour } from "./guess-labour";
import { guessRowIs } from "./guess-row-is";
import { guessWords, type WordGuess } from "./guess-words";
import { rememberedColumns } from "./header-fingerprint";
import type { CatalogueNames } from "./known-words";
import type { DateOrder, LabourUnit, Matching } from "./matching";
import { nonRecord } from "./non-record";
import { type OpenQuestion, openQuestions } from "./open-questions";
import { type FieldSort, targetFields } from "./target-fields";
import { usualLengths } from "./usual-lengths";

/** What is looked at: the header, and rows from all over the file; the more, the surer. */
export interface Look {
  readonly header: readonly string[];
  readonly rows: readonly SourceRow[];
}

export interface KnownForGuessing {
  readonly catalogue: Catalogue;
  readonly today: Day;
  readonly kind?: TableKind | undefined;
  readonly names?: CatalogueNames | undefined;
  /** The matching that was accepted for this header, or for one much like it. */
  readonly remembered?: Matching | undefined;
  readonly rememberedWords?: Matching["words"] | undefined;
}

export interface MatchingGuess {
  readonly matching: Matching;
  readonly kind: { readonly value: TableKind; readonly reason: string };
  readonly columns: readonly ColumnGuess[];
  readonly dateOrder: Decision<DateOrder>;
  readonly decimalMark: Decision<"." | ",">;
  readonly labourUnit: Decision<LabourUnit>;
  /** Where day numbers of text cells count from; undefined where there are none. */
  readonly dayNumbersFrom: Decision<1900 | 1904> | undefined;
  readonly rowIs: { readonly value: Matching["rowIs"]; readonly reason: string };
  readonly words: readonly WordGuess[];
  /** What must be answered before rows can be checked. */
  readonly problems: readonly OpenQuestion[];
}

export function guessMatching(given: Look, known: KnownForGuessing): MatchingGuess {
  const look = recordsOnly(given);
  const kind = guessKind(look.header, known.kind ?? known.remembered?.kind);
  const values = sampledValues(look);
  const fresh = guessColumns(
    kind.value,
    look.header.map((source, place) => ({ source, values: values[place] ?? [] })),
    known,
  );
  const columns = recalled(fresh, look.header, kind.value, known.remembered);
  return decided(look, known, kind, columns, values);
}

/** Totals rows and repeated headers would only mislead the guesses. */
function recordsOnly({ header, rows }: Look): Look {
  const isNone = nonRecord([], header);
  return { header, rows: rows.filter(({ cells }) => isNone(cells) === undefined) };
}

function decided(
  look: Look,
  known: KnownForGuessing,
  kind: MatchingGuess["kind"],
  fresh: readonly ColumnGuess[],
  values: readonly (readonly string[])[],
): MatchingGuess {
  const mark = guessDecimalMark(values.flat().filter((value) => /^[^\p{L}]*$/u.test(value)));
  const { guesses, labourUnit } = guessLabour(fresh, values, valueOr(mark, "."));
  const accepted = guesses.map(({ source, target, confidence }) => ({
    source,
    target: confidence === "guess" ? undefined : target,
  }));
  const cells = (...sorts: readonly FieldSort[]) => cellsOf(kind.value, accepted, look, sorts);
  const decimalMark = guessDecimalMark(cells("money", "number", "count"));
  const lastDay = accepted.some(({ target }) => mayLieAhead.has(target ?? "")) ? noLimit : known.today;
  const dateOrder = guessDateOrder(cells("day", "made"), lastDay);
  const dayNumbersFrom = guessDayNumbers(cells("day", "made"), lastDay);
  const base = { kind: kind.value, columns: accepted };
  const rowIs = guessRowIs(base, look.rows);
  const words = guessWords(base, look.rows, { ...known, remembered: known.rememberedWords ?? known.remembered?.words });
  const lengths = usualLengths(accepted, (at) => values[at] ?? []);
  const matching: Matching = {
    ...base,
    rowIs: rowIs.value,
    dateOrder: valueOr(dateOrder, known.remembered?.dateOrder ?? "year first"),
    decimalMark: valueOr(decimalMark, known.remembered?.decimalMark ?? "."),
    labourUnit: valueOr(labourUnit, known.remembered?.labourUnit ?? "minutes"),
    words: acceptedWords(words, known.remembered),
    constants: known.remembered?.constants ?? {},
    ...(dayNumbersFrom !== undefined && "value" in dayNumbersFrom ? { dayNumbersFrom: dayNumbersFrom.value } : {}),
    ...(Object.keys(lengths).length > 0 ? { usualLengths: lengths } : {}),
  };
  const problems = openQuestions({
    matching,
    columns: guesses,
    words,
    decisions: { dateOrder, decimalMark, labourUnit, dayNumbersFrom },
  });
  return {
    matching,
    kind,
    columns: guesses,
    dateOrder,
    decimalMark,
    labourUnit,
    dayNumbersFrom,
    rowIs,
    words,
    problems,
  };
}

/** Columns that were matched before keep what was accepted; only the others are guessed. */
function recalled(
  fresh: readonly ColumnGuess[],
  header: readonly string[],
  kind: TableKind,
  remembered: Matching | undefined,
): readonly ColumnGuess[] {
  if (remembered === undefined || remembered.kind !== kind) return fresh;
  const { kept } = rememberedColumns(header, remembered);
  const taken = new Set([...kept.values()].filter((target) => target !== undefined));
  return fresh.map((guess, place) => {
    if (kept.has(place)) {
      const target = kept.get(place);
      return {
        ...guess,
        target,
        confidence: target === undefined ? "not used" : "sure",
        reason: "Matched so for an earlier file with this column.",
      };
    }
    if (guess.target === undefined || !taken.has(guess.target)) return guess;
    return {
      ...guess,
      target: undefined,
      confidence: "not used",
      reason: `Another column was matched to ${guess.target} before.`,
    };
  });
}

const mostSampled = 200;

/** Up to 200 cells of each column, spread over the rows that were handed in; trimmed, none blank. */
function sampledValues({ header, rows }: Look): readonly (readonly string[])[] {
  return header.map((_, place) => {
    const filled = rows.flatMap(({ cells }) => {
      const cell = (cells[place] ?? "").trim();
      return cell === "" ? [] : [cell];
    });
    const step = Math.max(1, filled.length / mostSampled);
    return Array.from(
      { length: Math.min(filled.length, mostSampled) },
      (_each, index) => filled[Math.floor(index * step)] ?? "",
    );
  });
}

function* cellsOf(
  kind: TableKind,
  columns: Matching["columns"],
  { rows }: Look,
  sorts: readonly FieldSort[],
): Generator<string> {
  const sortOf = new Map(targetFields(kind).map(({ target, sort }) => [target, sort]));
  const places = columns.flatMap(({ target }, place) => {
    const sort = target === undefined ? undefined : sortOf.get(target);
    return sort !== undefined && sorts.includes(sort) ? [place] : [];
  });
  for (const { cells, marks } of rows) {
    for (const place of places) {
      const cell = cells[place] ?? "";
      if (cell !== "" && marks?.get(place) === undefined) yield cell;
    }
  }
}

function valueOr<Value>(decision: Decision<Value>, otherwise: Value): Value {
  return "value" in decision ? decision.value : otherwise;
}

/** Words that are sure or likely are filled in; guesses wait to be accepted. */
function acceptedWords(words: readonly WordGuess[], remembered: Matching | undefined): Matching["words"] {
  const accepted: Record<string, Record<string, string>> = {};
  for (const [target, list] of Object.entries(remembered?.words ?? {})) accepted[target] = { ...list };
  for (const { target, word, suggestion, confidence } of words) {
    if (suggestion === undefined || confidence === "guess" || word === suggestion) continue;
    const list = accepted[target] ?? {};
    list[word.toLowerCase()] = suggestion;
    accepted[target] = list;
  }
  return accepted;
}
