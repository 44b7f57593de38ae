import type { Transaction } from "@/db/database-types";
import type { FileKind } from "@/lib/intake/file-kinds";
import type { IntakeSetting } from "@/lib/intake/intake-setting";
import type { Parsed } from "@/lib/intake/parsed";
import type { Cells } from "@/lib/intake/row-problems";
import type { Filling } from "../bulk/filling";
import type { FirstLoad } from "../bulk/first-load";

export type StagedValue = string | number | boolean | null | undefined;

export interface StagedColumn {
  /** Name in the staging table and, unless it only helps to find things, in the table that the row goes to. */
  readonly name: string;
  readonly type: string;
  /** Column of the file that it comes from. A column that the file lacks leaves stored values alone. */
  readonly from: string;
  /** help: stays in staging. once: stored with a new row and never changed by a later file. value: what a later file may change. */
  readonly use: "help" | "once" | "value";
}

export interface ReadColumn<T> extends StagedColumn {
  readonly value: (row: T) => StagedValue;
}

/** Rows of somebody's own file, each of which may hold records of several kinds. */
export interface StagedRows {
  readonly table: string;
  /** By kind and column of ours (`jobs.serial`): the header of the column in the file. */
  readonly headers: Readonly<Record<string, string>>;
  /** Rows are staged without what stands in them; those for which this SQL is true of `r` get it now. */
  readonly fill: (tx: Transaction, which: string) => Promise<void>;
}

/** A staging table that is filled, and which columns its file had. */
export interface Staged {
  readonly table: string;
  readonly present: ReadonlySet<string>;
  /** A row may lack a column that another has: only what its own cells name is said. */
  readonly sparse?: boolean | undefined;
  /** Staging tables of other kinds whose rows came with the same file, such as the jobs beside their part lines. */
  readonly beside?: ReadonlyMap<FileKind, string>;
  /** The table has the columns of `eitherColumns` (../bulk/first-load). */
  readonly either?: boolean;
  /** Nothing was on file, and all rows agree: they are stored the way of `first`. */
  readonly agreed?: boolean;
  /** Rows were staged without their cells, as most are never asked for them. */
  readonly bare?: boolean;
  /** Of a file in our own columns whose rows are bare: reads the cells of the wanted rows from it. */
  readonly readCells?:
    | ((wanted: ReadonlySet<number>, take: (row: number, cells: Cells) => Promise<void>) => Promise<void>)
    | undefined;
  /** The file's own rows, where they are not records of ours. */
  readonly rows?: StagedRows;
}

/** To be stored. Of the tables that its rows go to some may be bare while they are filled: they take rows in whatever order. */
export interface Filled extends Staged {
  readonly filling: Filling;
}

/** How the rows of one kind of file are staged, checked against each other and against what is stored, and merged. */
export interface StagedKind {
  readonly kind: FileKind;
  /** One row in; its staging columns in order, or every problem of the row, out. `folder` is where the file lies. */
  readonly read: (
    cells: Cells,
    setting: IntakeSetting,
    folder: string,
  ) => Parsed<readonly StagedValue[]> | Promise<Parsed<readonly StagedValue[]>>;
  readonly columns: readonly StagedColumn[];
  /** Further staging columns, as DDL; made by the database or by `resolve`. */
  readonly derived: readonly string[];
  readonly target: {
    readonly table: string;
    readonly key: readonly string[];
    /** SQL for columns of the key under which the row is still stored, where the merge moves it first. */
    readonly storedKey?: Readonly<Record<string, string>>;
    /** Columns that the file does not hold: on insert (from staging row `s`), and on update (of row `t` from `s`). */
    readonly onInsert: Readonly<Record<string, string>>;
    readonly onUpdate?: (present: ReadonlySet<string>) => Readonly<Record<string, string>>;
    /** SQL that is true where row `t` must change although all its values agree. */
    readonly alsoDiffers?: string;
    /** Left out of a before-image: generated, or never changed. */
    readonly notRestored?: readonly string[];
  };
  /** What names a row to people: the file's column, and that column in staging. */
  readonly named: { readonly column: string; readonly noun: string };
  /** Finds the stored rows that the staged ones speak of. */
  readonly resolve: (tx: Transaction, staged: Staged) => Promise<void>;
  /** Adds problems to rows that contradict others or what is stored. */
  readonly check: (tx: Transaction, staged: Staged) => Promise<void>;
  /** A shorter way while nothing is on file. Whatever the steps below look at, `agree` must ask too, or must refuse. */
  readonly first?: FirstLoad;
  /** Completes the keys of rows that the file leaves without, such as the numbers of part lines. */
  readonly place?: (tx: Transaction, staged: Staged) => Promise<void>;
  /** Stores what new rows need first, such as their models. */
  readonly prepare?: (tx: Transaction, staged: Staged, batchId: number) => Promise<void>;
  /** Stores what comes after the rows. */
  readonly finish?: (tx: Transaction, staged: Staged, batchId: number) => Promise<void>;
  /** What must be counted anew: units of the staged `unit_id`s, everything, or nothing. */
  readonly recounts: "staged units" | "all" | "nothing";
}

export interface KindPlan<T> extends Omit<StagedKind, "read" | "columns"> {
  readonly parse: (cells: Cells, setting: IntakeSetting, folder: string) => Parsed<T> | Promise<Parsed<T>>;
  readonly columns: readonly ReadColumn<T>[];
}

/** Joins parser and columns, so that whoever stages and merges need not know what a row is. */
export function stagedKind<T>({ parse, columns, ...plan }: KindPlan<T>): StagedKind {
  const staged = (parsed: Parsed<T>): Parsed<readonly StagedValue[]> =>
    parsed.ok ? { ok: true, value: columns.map((column) => column.value(parsed.value)) } : parsed;
  return {
    ...plan,
    columns,
    read(cells, setting, folder) {
      const parsed = parse(cells, setting, folder);
      return parsed instanceof Promise ? parsed.then(staged) : staged(parsed); // only pictures have to be waited for
    },
  };
}
