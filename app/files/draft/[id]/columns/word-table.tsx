import fieldStyles from "@/app/_ui/field.module.css";
import { type Choice, SelectField } from "@/app/_ui/select-field";
import { type Column, Table } from "@/app/_ui/table";
import { formatCount } from "@/lib/format/format-count";
import { anyOtherWord } from "@/lib/intake/matching/matching";
import { fieldName } from "../../../_components/field-name";
import styles from "./match.module.css";
import { unsettled, wordField } from "./word-field";

/** What the words of one column mean. */
export interface WordList {
  readonly target: string;
  /** Our words, in the order in which they are offered. */
  readonly choices: readonly Choice[];
  readonly lines: readonly WordLine[];
  /** What every word becomes that has no line of its own; undefined: such rows are held. */
  readonly rest: string | undefined;
}

export interface WordLine {
  readonly word: string;
  readonly rows: number;
  /** Ours; empty: left blank; undefined: not settled, so such rows are held. */
  readonly meaning: string | undefined;
  readonly reason: string;
}

interface Props {
  readonly list: WordList;
}

/** Their words with how often each stands there, and the word of ours that it means. */
export function WordTable({ list: { target, choices, lines, rest } }: Props) {
  const columns: readonly Column<WordLine>[] = [
    { key: "word", head: "Their word", cell: ({ word }) => <span className={styles.word}>{word}</span> },
    { key: "rows", head: "Rows", kind: "number", cell: ({ rows }) => formatCount(rows) },
    {
      key: "meaning",
      head: "Means",
      cell: ({ word, meaning }) => (
        <select
          name={wordField(target, word)}
          aria-label={`${word} means`}
          defaultValue={meaning === undefined ? unsettled : meaning}
          className={fieldStyles.input}
        >
          <MeaningOptions choices={choices} />
        </select>
      ),
    },
    { key: "reason", head: "Why", wideOnly: true, cell: ({ reason }) => <span className="small soft">{reason}</span> },
  ];
  return (
    <section className="stack-tight" id={`words-${target}`}>
      <h3>{fieldName(target)}</h3>
      <Table
        caption={`Words of ${fieldName(target)}`}
        captionHidden
        columns={columns}
        rows={lines}
        rowKey={({ word }) => word}
      />
      <SelectField
        label="All the rest"
        name={wordField(target, anyOtherWord)}
        value={rest === undefined ? unsettled : rest}
        choices={[
          { value: unsettled, name: "held back, to be looked at" },
          { value: "", name: "left blank" },
          ...choices,
        ]}
      />
    </section>
  );
}

function MeaningOptions({ choices }: { readonly choices: readonly Choice[] }) {
  return (
    <>
      <option value={unsettled}>not settled: held back</option>
      <option value="">left blank</option>
      {choices.map(({ value, name }) => (
        <option key={value} value={value}>
          {name}
        </option>
      ))}
    </>
  );
}
