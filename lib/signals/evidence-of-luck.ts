import { adjustedPValues } from "@/lib/statistics/multiplicity/adjusted-p-values";
import type { ToldCell } from "./cell-weeks";
import type { CellStanding } from "./follow-cell";
import { luckInAYear } from "./luck";
import type { DesignRatio } from "./luck-constants";
import type { CellKey } from "./signal-record";

/** One cell as it stands, with the chance that luck alone brings so high a sum about within a year. */
export interface JudgedCell {
  readonly key: CellKey;
  /** Its weeks, worked out again: only the few cells that are told of are asked for them. */
  readonly weeks: () => ToldCell;
  readonly standing: CellStanding;
  readonly chance: number;
}

/** Cells that would tell one story: one word of one maker's machines of one kind, seen as a whole, by model and by production. */
export interface Story {
  readonly cells: readonly JudgedCell[];
  /** Of the whole story. */
  readonly chance: number;
  /** The same after allowing for all stories that are followed. */
  readonly adjusted: number;
}

/** Production halves are followed for four times too much, since a defect of a few weeks is diluted in them but strong. */
export function ratioOf({ madeHalf }: { readonly madeHalf: number | undefined }): DesignRatio {
  return madeHalf === undefined ? 2 : 4;
}

export function judgeCell({ key, weeks, standing }: Omit<JudgedCell, "chance">): JudgedCell {
  const { score, weeklyMean: mean } = standing;
  return { key, weeks, standing, chance: luckInAYear({ score, mean, ratio: ratioOf(key) }) };
}

/**
 * Every story with its chance by luck, alone and among all. Half of a story's chance is spent on its models and maker, half on
 * its halves of production; within each the combined chance of dependent looks at the same failures is taken.
 * Source: Simes (1986), Biometrika 73, 751-754, within; Benjamini & Hochberg (1995), JRSS B 57, 289-300, across.
 * Checked: tests/signals/evidence-of-luck.test.ts, by hand; the whole by `npm run bench -- signals`.
 */
export function storiesOf(cells: readonly JudgedCell[]): Story[] {
  const byStory = new Map<string, JudgedCell[]>();
  for (const judged of cells) {
    const { kind, word, productType, maker } = judged.key;
    const name = [kind, word, productType, maker].join("\u001f");
    const known = byStory.get(name) ?? [];
    byStory.set(name, known);
    known.push(judged);
  }
  const stories = [...byStory.values()].map((own) => ({ cells: own, chance: chanceOfStory(own) }));
  const adjusted = adjustedPValues(
    stories.map(({ chance }) => chance),
    "benjamini-hochberg",
  );
  return stories.map((story, i) => ({ ...story, adjusted: adjusted[i] ?? 1 }));
}

function chanceOfStory(cells: readonly JudgedCell[]): number {
  const broad = cells.filter(({ key }) => key.madeHalf === undefined).map(({ chance }) => chance);
  const halves = cells.filter(({ key }) => key.madeHalf !== undefined).map(({ chance }) => chance);
  if (halves.length === 0) return simes(broad);
  return Math.min(1, 2 * Math.min(simes(broad), simes(halves)));
}

function simes(chances: readonly number[]): number {
  const ascending = [...chances].sort((a, b) => a - b);
  return ascending.reduce((least, chance, i) => Math.min(least, (chance * ascending.length) / (i + 1)), 1);
}
