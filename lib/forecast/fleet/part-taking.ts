/** On how many jobs on machines of one maker so many pieces of a part were taken. */
export interface Taking {
  readonly maker: string;
  readonly pieces: number;
  readonly jobs: number;
}

export interface PartTaking {
  /** The one maker on whose machines a part is used; undefined where there are several, or none. */
  readonly maker: string | undefined;
  /** How many jobs took 1, 2, 3 … pieces. */
  readonly pieces: readonly number[];
}

/** Where all but one in twenty of a part's jobs are on machines of one maker, the others are slips. Own choice, no source. */
const oneMaker = 0.95;
/** A repair that takes more is counted as one of so many: it is a slip, or the part is sold by the yard. Own choice, no source. */
const mostPieces = 200;

/** On whose machines a part is used, and how many pieces a job takes. */
export function partTaking(takings: readonly Taking[]): PartTaking {
  const makers = new Map<string, number>();
  const pieces: number[] = [];
  let all = 0;
  for (const { maker, pieces: taken, jobs } of takings) {
    makers.set(maker, (makers.get(maker) ?? 0) + jobs);
    const each = Math.min(taken, mostPieces);
    while (pieces.length < each) pieces.push(0);
    pieces[each - 1] = (pieces[each - 1] ?? 0) + jobs;
    all += jobs;
  }
  const [maker] = [...makers].find(([, jobs]) => jobs >= oneMaker * all) ?? [];
  return { maker, pieces };
}
