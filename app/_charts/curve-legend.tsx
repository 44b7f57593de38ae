import styles from "./curve-lines.module.css";

export type CurveStroke = "steps" | "second" | "model";

interface Props {
  readonly entries: readonly { readonly stroke: CurveStroke; readonly name: string; readonly mark?: string }[];
}

/** Which stroke is which, with a piece of each. */
export function CurveLegend({ entries }: Props) {
  return (
    <ul className={styles.legend}>
      {entries.map(({ stroke, name, mark }) => (
        <li key={stroke} className={styles.entry}>
          <svg width="44" height="14" aria-hidden="true">
            <path d="M0 7H44" className={styles[stroke]} />
          </svg>
          <span>
            {mark !== undefined && <b>{mark} </b>}
            {name}
          </span>
        </li>
      ))}
    </ul>
  );
}
