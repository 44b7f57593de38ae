import type { FileProblem } from "../parsed";
import { lookAtLines } from "./lines/look-at-lines";
import { lookAtText } from "./look-at-text";
import { recogniseContent } from "./recognise-content";
import { type RowWatch, rowCounter } from "./row-watch";
import type { SourceRow } from "./source-row";
import type { Delimiter, Encoding, TableForm } from "./table-form";
import { lookAtWorkbook } from "./workbook/look-at-workbook";

/** What a file is, as far as it says so itself, with enough of its rows to judge the guesses by. */
export interface TableLook {
  readonly form: TableForm;
  /** Why each guess was made, in one sentence each; undefined where there was nothing to guess. */
  readonly reasons: {
    readonly encoding?: string;
    readonly delimiter?: string;
    readonly headerRow?: string;
    readonly sheet?: string;
    readonly dateBase?: string;
  };
  /** What the file itself can't answer. */
  readonly questions: readonly TableQuestion[];
  /** Sheets with anything in them; empty for a file that is no workbook. */
  readonly sheets: readonly { readonly name: string; readonly rows: number }[];
  /** As in the file; the keys for JSON Lines. */
  readonly header: readonly string[];
  /** The first 20 rows, 10 by chance, the last 5; a cell of more than 1,000 characters is cut there and ends in an ellipsis. */
  readonly first: readonly SourceRow[];
  readonly random: readonly SourceRow[];
  readonly last: readonly SourceRow[];
  /** Up to 200 rows from all over the file, cut alike. */
  readonly sample: readonly SourceRow[];
  /** Rows below the header, those that cannot be split included. */
  readonly rows: number;
  /** How many of them cannot be split into cells. */
  readonly unreadRows: number;
}

export type TableQuestion =
  | {
      readonly about: "encoding";
      readonly question: string;
      /** The same pieces of the file read in two ways. */
      readonly samples: readonly { readonly utf8: string; readonly windows1252: string }[];
    }
  | { readonly about: "sheet" | "headerRow"; readonly question: string };

/** What a person has said about the form; it overrules the guess. */
export interface FormWishes {
  readonly encoding?: Encoding | undefined;
  readonly delimiter?: Delimiter | undefined;
  readonly sheet?: string | undefined;
  readonly headerRow?: number | undefined;
}

export type Looked =
  | { readonly ok: true; readonly look: TableLook }
  | { readonly ok: false; readonly problems: readonly FileProblem[] };

/** Reads the whole file: what it is, its form as guessed or wished, some of its rows, and how many there are. */
export async function lookAtTable(path: string, wishes: FormWishes = {}, watch: RowWatch = {}): Promise<Looked> {
  const onRow = rowCounter(watch);
  const content = await recogniseContent(path);
  switch (content.kind) {
    case "refused":
      return { ok: false, problems: [content.problem] };
    case "text":
      return lookAtText(path, wishes, onRow);
    case "workbook":
      return lookAtWorkbook(path, wishes, onRow);
    case "lines":
      // Its lines are gone over twice: first for the keys, whose rows are told as well, so that the page sees it move.
      return lookAtLines(path, wishes, { onRow, onLine: rowCounter(watch) });
  }
}
