import type { TableKind } from "../file-kinds";
import type { CellSetting } from "./column-reader";
import { headerSimilarity, plainHeader } from "./header-similarity";
import type { TargetColumn } from "./matching";
import { type TargetField, targetFields } from "./target-fields";
import { type ValueFit, valueFit } from "./value-fit";

export type Confidence = "sure" | "likely" | "guess" | "not used";

export interface ColumnGuess {
  readonly source: string;
  readonly samples: readonly string[];
  /** For a guess it is only offered: the matching leaves such a column unused until a person accepts it. */
  readonly target: TargetColumn | undefined;
  readonly confidence: Confidence;
  readonly reason: string;
  readonly runnersUp: readonly { readonly target: TargetColumn; readonly score: number }[];
}

export interface SampledColumn {
  readonly source: string;
  /** At most 200 cells from all over the file, trimmed, none blank. */
  readonly values: readonly string[];
}

/** Sure is accepted unseen, likely asks for one look, less is only offered. Own choice, no source. */
const sureFrom = 0.9;
const sureRunnerUpTo = 0.6;
const likelyFrom = 0.65;
const offeredFrom = 0.35;

/** Which column is which: header similarity × fit of the values; each column of ours is given once, to whom it suits best. */
export function guessColumns(
  kind: TableKind,
  columns: readonly SampledColumn[],
  setting: CellSetting,
): readonly ColumnGuess[] {
  const candidates = columns.map((column) => candidatesOf(kind, column, setting));
  const given = assign(candidates);
  return columns.map((column, place) => judged(column, candidates[place] ?? [], given.get(place), candidates, place));
}

interface Candidate {
  readonly field: TargetField;
  readonly score: number;
  readonly fit: ValueFit;
  /** The header is our own name of the column. */
  readonly exact: boolean;
}

function candidatesOf(kind: TableKind, { source, values }: SampledColumn, setting: CellSetting): readonly Candidate[] {
  if (source.trim() === "" && values.length === 0) return [];
  const fields = targetFields(kind);
  const ofPart = plainHeader(source).some((word) => partWords.has(word));
  const found: Candidate[] = [];
  for (const field of fields) {
    const exact = source.trim() === field.target;
    const similarity = exact
      ? 1
      : headerSimilarity(source, field) * (isSecondHome(field, fields) && !ofPart ? 0.55 : 1);
    if (similarity < 0.25 && field.words.length === 0) continue;
    const fit = valueFit(field, values, setting);
    const byValues = fit.knownShare >= 0.8 && values.length >= 5 ? 0.5 * fit.knownShare : 0;
    const score = exact ? Math.max(fit.fit, 0.9) : Math.max(similarity * fit.fit, byValues * fit.fit);
    if (score >= 0.2) found.push({ field, score, fit, exact });
  }
  return found.sort((a, b) => b.score - a.score);
}

const partWords: ReadonlySet<string> = new Set(["part", "parts", "line", "piece", "item"]);

/** A part line's column that the job has too, such as its currency: without a word of parts, the job's is meant. */
function isSecondHome(field: TargetField, fields: readonly TargetField[]): boolean {
  return field.target !== field.column && fields.some(({ target }) => target === field.column);
}

/** Best score first; whoever comes second for a column of ours gets the next that is free, or none. */
function assign(candidates: readonly (readonly Candidate[])[]): ReadonlyMap<number, Candidate> {
  const all = candidates.flatMap((list, place) => list.map((candidate) => ({ place, candidate })));
  all.sort(
    (a, b) =>
      Number(b.candidate.exact) - Number(a.candidate.exact) ||
      b.candidate.score - a.candidate.score ||
      a.place - b.place,
  );
  const given = new Map<number, Candidate>();
  const taken = new Set<TargetColumn>();
  for (const { place, candidate } of all) {
    if (candidate.score < offeredFrom || given.has(place) || taken.has(candidate.field.target)) continue;
    given.set(place, candidate);
    taken.add(candidate.field.target);
  }
  return given;
}

function judged(
  { source, values }: SampledColumn,
  candidates: readonly Candidate[],
  given: Candidate | undefined,
  all: readonly (readonly Candidate[])[],
  place: number,
): ColumnGuess {
  const samples = [...new Set(values)].slice(0, 3);
  const runnersUp = candidates
    .filter((candidate) => candidate !== given)
    .slice(0, 5)
    .map(({ field, score }) => ({ target: field.target, score: Math.round(score * 100) / 100 }));
  if (given === undefined)
    return {
      source,
      samples,
      target: undefined,
      confidence: "not used",
      reason: notUsed(source, candidates),
      runnersUp,
    };
  const rival = Math.max(
    0,
    ...all.map((list, other) =>
      other === place ? 0 : (list.find(({ field }) => field.target === given.field.target)?.score ?? 0),
    ),
  );
  const runnerUp = Math.max(
    0,
    ...candidates
      .filter(({ field }) => field !== given.field && !sameThing(field, given.field))
      .map(({ score }) => score),
  );
  const sure = given.exact || (given.score >= sureFrom && runnerUp <= sureRunnerUpTo && rival < given.score - 0.1);
  const confidence = sure ? "sure" : given.score >= likelyFrom ? "likely" : "guess";
  return {
    source,
    samples,
    target: given.field.target,
    confidence,
    reason: `Header "${source.trim()}"; ${given.fit.seen}.`,
    runnersUp,
  };
}

/** Time and money for labour are one column until its values are looked at. */
function sameThing(a: TargetField, b: TargetField): boolean {
  return a.column.startsWith("labour") && b.column.startsWith("labour");
}

function notUsed(source: string, candidates: readonly Candidate[]): string {
  const [best] = candidates;
  if (best === undefined || best.score < offeredFrom)
    return `No column of ours is called anything like "${source.trim()}". It is kept in the raw row.`;
  return `Another column suits ${best.field.target} better. It is kept in the raw row.`;
}
