import type { FileProblem } from "../parsed";
import { guessHeaderRow, type HeaderGuess } from "./guess-header-row";
import { KeepSome, type KeptRows } from "./keep-some";
import type { SourceItem } from "./source-row";

export interface Gathered extends KeptRows {
  /** 0: there is none, and the columns are named by their places in the first row. */
  readonly headerRow: number;
  /** Undefined where a person has named the row. */
  readonly guess: HeaderGuess | undefined;
  /** Undefined where the header row has no cells. */
  readonly header: readonly string[] | undefined;
  /** Rows below the header that cannot be split; `rows` counts them too. */
  readonly unreadRows: number;
  /** Rows of the whole table, what stands above the header included. */
  readonly allRows: number;
  readonly problem: FileProblem | undefined;
}

const rowsToGuessFrom = 100;

/** One pass over a table: finds its header among the first rows, and keeps what is shown of those below. */
export async function gatherRows(
  items: AsyncIterable<SourceItem>,
  wished: number | undefined,
  onRow: () => void,
): Promise<Gathered> {
  const gathering = new Gathering(wished);
  let beginning: SourceItem[] | undefined = [];
  let problem: FileProblem | undefined;
  for await (const item of items) {
    onRow();
    if (item.kind === "problem") problem = item.problem;
    else if (beginning === undefined) gathering.add(item);
    else if (beginning.push(item) === rowsToGuessFrom) {
      gathering.begin(beginning);
      beginning = undefined;
    }
  }
  if (beginning !== undefined) gathering.begin(beginning);
  return { ...gathering.gathered(), problem };
}

class Gathering {
  private headerRow = 1;
  private guess: HeaderGuess | undefined;
  private header: readonly string[] | undefined;
  private unreadRows = 0;
  private allRows = 0;
  private readonly kept = new KeepSome();
  private readonly wished: number | undefined;

  constructor(wished: number | undefined) {
    this.wished = wished;
  }

  begin(beginning: readonly SourceItem[]): void {
    if (this.wished === undefined) this.guess = guessHeaderRow(beginning.filter((item) => item.kind === "row"));
    this.headerRow = this.wished ?? this.guess?.headerRow ?? 1;
    for (const item of beginning) this.add(item);
  }

  add(item: SourceItem): void {
    if (item.kind === "problem") return;
    this.allRows++;
    if (this.headerRow === 0 && this.header === undefined && item.kind === "row")
      this.header = item.cells.map((_, place) => `Column ${place + 1}`);
    if (item.row < this.headerRow) return;
    if (item.row === this.headerRow) this.header = item.kind === "row" ? item.cells : undefined;
    else if (item.kind === "unread") this.unreadRows++;
    else {
      const { kind: _, ...row } = item;
      this.kept.add(row);
    }
  }

  gathered(): Omit<Gathered, "problem"> {
    const { headerRow, guess, header, unreadRows, allRows } = this;
    const kept = this.kept.kept();
    return { ...kept, rows: kept.rows + unreadRows, headerRow, guess, header, unreadRows, allRows };
  }
}
