import { detached } from "../detached";
import type { SourceRow } from "./source-row";

export interface KeptRows {
  readonly first: readonly SourceRow[];
  readonly random: readonly SourceRow[];
  readonly last: readonly SourceRow[];
  readonly sample: readonly SourceRow[];
  readonly rows: number;
}

const firstRows = 20;
const randomRows = 10;
const lastRows = 5;
const sampledRows = 200;

/** Keeps what is shown of a file and what guesses are made from, whatever its length. The same file gives the same rows. */
export class KeepSome {
  private rows = 0;
  private readonly first: SourceRow[] = [];
  private last: SourceRow[] = [];
  private readonly random: SourceRow[] = [];
  private readonly sample: SourceRow[] = [];
  private readonly chance = seededChance(20);

  add(row: SourceRow): void {
    this.rows++;
    this.spread(this.sample, sampledRows, this.rows, row);
    if (this.first.length < firstRows) {
      this.first.push(keptRow(row));
      return;
    }
    this.last.push(row);
    const [leaving] = this.last;
    if (this.last.length <= lastRows || leaving === undefined) return;
    this.last.shift();
    this.spread(this.random, randomRows, this.rows - firstRows - lastRows, leaving);
  }

  kept(): KeptRows {
    const inOrder = (rows: readonly SourceRow[]) => rows.toSorted((a, b) => a.row - b.row);
    const { first, last, rows } = this;
    return { first, random: inOrder(this.random), last: last.map(keptRow), sample: inOrder(this.sample), rows };
  }

  /** Each row seen so far is kept with the same chance. Source: Vitter (1985), ACM TOMS 11, 37-57, algorithm R. */
  private spread(kept: SourceRow[], most: number, seen: number, row: SourceRow): void {
    if (kept.length < most) kept.push(keptRow(row));
    else {
      const place = Math.floor(this.chance() * seen);
      if (place < most) kept[place] = keptRow(row);
    }
  }
}

/** What is shown of a cell; a look at a file does not need a whole report in one cell. */
const shownCharacters = 1_000;

function keptRow(row: SourceRow): SourceRow {
  return { ...row, cells: row.cells.map((cell) => (cell === "" ? "" : detached(shownCell(cell)))) };
}

function shownCell(cell: string): string {
  return cell.length <= shownCharacters ? cell : `${cell.slice(0, shownCharacters)}…`;
}

/** Numbers in [0, 1) from a seed (mulberry32, public domain). */
function seededChance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
