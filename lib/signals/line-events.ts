import type { WeeklyJobs } from "./signal-record";

/**
 * What lines of words look at of jobs, column by column, those of one line, model and half-year beside each other. A large
 * company has millions of such entries, and each is looked at some ten times: as objects strewn over the memory they took
 * most of a run.
 */
export interface EventColumns {
  readonly inServiceWeek: Int32Array;
  readonly failedWeek: Int32Array;
  readonly knownWeek: Int32Array;
  readonly jobs: Int32Array;
  /** Place in `components`; -1: no component failed. */
  readonly failed: Int32Array;
  readonly components: readonly string[];
}

/** A run of entries: up to but not including `until`. */
export interface Events {
  readonly columns: EventColumns;
  readonly from: number;
  readonly until: number;
}

/** Entries of one line and model, and of each half-year of production among them. */
export interface ModelEvents extends Events {
  readonly halves: ReadonlyMap<number | undefined, Events>;
}

/** Takes jobs in two rounds: first all are counted, then each is put where its own begin. */
export class EventSorter {
  private readonly lines: Map<number, Map<number, number>>[] = [];
  /** Of each run of entries: how many there are. */
  private readonly counts: number[] = [];
  /** Of each entry in the order in which they came: its run, and its job. */
  private readonly runs: number[] = [];
  private readonly rows: number[] = [];

  constructor(private readonly jobs: readonly WeeklyJobs[]) {}

  /** @returns number of a new line */
  line(): number {
    return this.lines.push(new Map()) - 1;
  }

  /** @param row  of the job */
  add(line: number, row: number): void {
    const [models, job] = [this.lines[line], this.jobs[row]];
    if (models === undefined || job === undefined) throw new RangeError(`no such line or row: ${line}, ${row}`);
    const halves = models.get(job.model) ?? new Map<number, number>();
    if (halves.size === 0) models.set(job.model, halves);
    const half = job.madeHalf ?? unknownHalf;
    const run = halves.get(half) ?? this.counts.push(0) - 1;
    if (this.counts[run] === 0) halves.set(half, run);
    this.counts[run] = (this.counts[run] ?? 0) + 1;
    this.runs.push(run);
    this.rows.push(row);
  }

  /** @returns by line, the entries of each model that has any; nothing can be added afterwards */
  sorted(): ReadonlyMap<number, ModelEvents>[] {
    const starts = this.starts();
    const columns = this.columns(starts.slice());
    return this.lines.map((models) => {
      const events = new Map<number, ModelEvents>();
      for (const [model, halves] of models) {
        const ranges = [...halves].map(([half, run]) => {
          const from = starts[run] ?? 0;
          const range: Events = { columns, from, until: from + (this.counts[run] ?? 0) };
          return [half === unknownHalf ? undefined : half, range] as const;
        });
        const [from, until] = [ranges[0]?.[1].from ?? 0, ranges.at(-1)?.[1].until ?? 0];
        events.set(model, { columns, from, until, halves: new Map(ranges) });
      }
      return events;
    });
  }

  /** Where each run begins, if those of one line, and of one model in it, lie beside each other. */
  private starts(): Int32Array {
    const starts = new Int32Array(this.counts.length);
    let end = 0;
    for (const models of this.lines)
      for (const halves of models.values())
        for (const run of halves.values()) {
          starts[run] = end;
          end += this.counts[run] ?? 0;
        }
    return starts;
  }

  /** @param next  where the next entry of each run goes; moved on */
  private columns(next: Int32Array): EventColumns {
    const column = () => new Int32Array(this.rows.length);
    const [inServiceWeek, failedWeek, knownWeek, jobs, failed] = [column(), column(), column(), column(), column()];
    const codes = new Map<string, number>();
    for (let entry = 0; entry < this.rows.length; entry++) {
      const [run, job] = [this.runs[entry] ?? 0, this.jobs[this.rows[entry] ?? 0]];
      if (job === undefined) continue;
      const at = next[run] ?? 0;
      next[run] = at + 1;
      inServiceWeek[at] = job.inServiceWeek;
      failedWeek[at] = job.failedWeek;
      knownWeek[at] = job.knownWeek;
      jobs[at] = job.jobs;
      failed[at] = codeOf(codes, job.failed);
    }
    return { inServiceWeek, failedWeek, knownWeek, jobs, failed, components: [...codes.keys()] };
  }
}

const unknownHalf = -1;

function codeOf(codes: Map<string, number>, component: string | undefined): number {
  if (component === undefined) return -1;
  const known = codes.get(component);
  if (known !== undefined) return known;
  codes.set(component, codes.size);
  return codes.size - 1;
}
