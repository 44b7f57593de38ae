import { ratioOf } from "./evidence-of-luck";
import { luckInAYear } from "./luck";
import { type CellHistory, type Settled, type SettledQuarter, settledSum } from "./settled-quarter";

/** What is stored of a settled quarter: of its histories only those that may be wanted. */
export interface KeptQuarter {
  readonly quarter: SettledQuarter;
  /** By the cell's place. */
  readonly histories: ReadonlyMap<number, CellHistory>;
}

/** A cell whose sum luck rarely takes so high within a year may come on the list before the quarter is over. Own choice, no source. */
const mayComeUp = 0.01;

/** @param wanted  cells that are on the list now */
export function keptQuarter({ quarter, historyOf }: Settled, wanted: ReadonlySet<number>): KeptQuarter {
  const histories = new Map<number, CellHistory>();
  for (let place = 0; place < quarter.cells.line.length; place++) {
    if (!wanted.has(place) && !isRaised(quarter, place)) continue;
    const history = historyOf(place);
    if (history !== undefined) histories.set(place, history);
  }
  return { quarter, histories };
}

function isRaised(quarter: SettledQuarter, place: number): boolean {
  const { score, yearMean, yearWeeks } = settledSum(quarter, place);
  if (score === 0 || yearWeeks === 0) return false;
  const ratio = ratioOf({ madeHalf: quarter.groups[quarter.cells.group[place] ?? -1]?.madeHalf });
  return luckInAYear({ score, mean: yearMean / yearWeeks, ratio }) <= mayComeUp;
}
