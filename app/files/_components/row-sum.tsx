import { formatCount } from "@/lib/format/format-count";
import type { FileKind } from "@/lib/intake/file-kinds";
import { rowNoun } from "./row-noun";
import styles from "./row-sum.module.css";

/** Each row of the file in exactly one of these. */
export interface RowCounts {
  readonly rowsTotal: number;
  readonly rowsNew: number;
  readonly rowsChanged: number;
  readonly rowsSame: number;
  readonly rowsHeld: number;
  readonly rowsRefused: number;
}

interface Props {
  readonly counts: RowCounts;
  readonly kind: FileKind;
}

/** What becomes of every row, written as a sum that adds up to the file. */
export function RowSum({ counts, kind }: Props) {
  const { one } = rowNoun(kind);
  const parts = [
    { words: "New", rows: counts.rowsNew },
    { words: `Changes ${article(one)} ${one} on file`, rows: counts.rowsChanged },
    { words: "Already here", rows: counts.rowsSame },
    { words: "Held back", rows: counts.rowsHeld },
    { words: "Left out", rows: counts.rowsRefused },
  ];
  return (
    <table className={styles.sum}>
      <caption className="only-heard">What becomes of the rows</caption>
      <tbody>
        {parts.map(({ words, rows }) => (
          <tr key={words}>
            <th scope="row">{words}</th>
            <td className="figures">{formatCount(rows)}</td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">Rows in the file</th>
          <td className="figures">{formatCount(counts.rowsTotal)}</td>
        </tr>
      </tfoot>
    </table>
  );
}

function article(noun: string): string {
  return /^[aeio]/.test(noun) ? "an" : "a";
}
