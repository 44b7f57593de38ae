// What the company's own closed jobs say about a symptom before anything is measured: the shares of what was behind it,
// for this model and age, drawn towards those of all models of the kind as far as few jobs ask for it.
import { shrunkenShares } from "@/lib/statistics/multiplicity/shrunken-shares";

export interface SheetBasis {
  /** Closed jobs of this symptom on this kind of appliance. */
  readonly jobs: number;
  /** Of them, on this model and in this band of age. */
  readonly ownJobs: number;
  readonly shares: readonly BasisShare[];
}

export interface BasisShare {
  /** component:drain_pump or cause:foreign_object. */
  readonly of: string;
  readonly jobs: number;
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

/** How many closed jobs one cell of model and age has of each class. */
export interface SymptomCell {
  readonly modelId: number;
  readonly ageBand: AgeBand;
  readonly of: string;
  readonly jobs: number;
}

export const ageBands = ["first year", "second and third", "fourth to sixth", "older", "age not known"] as const;
export type AgeBand = (typeof ageBands)[number];

/** Lower ends of the bands in years of 365.25 days; a unit without an in-service day has none. */
export function ageBandOf(days: number | undefined): AgeBand {
  if (days === undefined || days < 0) return "age not known";
  const years = days / 365.25;
  return years < 1 ? "first year" : years < 3 ? "second and third" : years < 6 ? "fourth to sixth" : "older";
}

/** Level of the intervals that the phone and the symptom page show beside shares. */
export const basisLevel = 0.9;

/** Undefined where there is no closed job with this symptom. */
export function sheetBasis(
  cells: readonly SymptomCell[],
  { modelId, ageBand }: Pick<SymptomCell, "modelId" | "ageBand">,
): SheetBasis | undefined {
  const jobs = cells.reduce((sum, cell) => sum + cell.jobs, 0);
  const classes = [...new Set(cells.map((cell) => cell.of))].sort();
  if (jobs === 0 || classes.length < 2) return undefined;
  const own = `${modelId}/${ageBand}`;
  const names = [...new Set([own, ...cells.map(nameOf)])];
  const groups = names.map((name) =>
    classes.map((of) =>
      cells.reduce((sum, cell) => sum + (nameOf(cell) === name && cell.of === of ? cell.jobs : 0), 0),
    ),
  );
  const { shares } = shrunkenShares({ groups, group: 0, confidence: basisLevel });
  return {
    jobs,
    ownJobs: (groups[0] ?? []).reduce((sum, count) => sum + count, 0),
    shares: classes
      .map((of, k) => {
        const { point: share, low, high } = shares[k] ?? { point: 0, low: 0, high: 1 };
        return { of, jobs: groups[0]?.[k] ?? 0, share, low, high };
      })
      .sort((a, b) => b.share - a.share),
  };
}

function nameOf({ modelId, ageBand }: Pick<SymptomCell, "modelId" | "ageBand">): string {
  return `${modelId}/${ageBand}`;
}
