import { Field } from "@/app/_ui/field";
import type { ClaimStanding } from "@/lib/claims/life/claim-standing";
import { plainAmount } from "@/lib/format/plain-amount";
import styles from "./line-amounts.module.css";

type Line = ClaimStanding["lines"][number];

interface Props {
  readonly caption: string;
  readonly standing: ClaimStanding;
  /** Cents that stand in the field to begin with. */
  readonly value: (line: Line) => number;
}

/** One amount for each line of the claim. */
export function LineAmounts({ caption, standing, value }: Props) {
  return (
    <fieldset className={styles.lines}>
      <legend className={styles.caption}>{caption}</legend>
      {standing.lines.map((line) => (
        <Field
          key={line.line}
          label={`Line ${line.line}, ${line.item}`}
          name={`line-${line.line}`}
          inputMode="decimal"
          width="short"
          hint={`asked ${plainAmount(line.askedCents)}${line.paidCents === 0 ? "" : `, paid ${plainAmount(line.paidCents)}`}`}
          value={plainAmount(value(line))}
          autoComplete="off"
        />
      ))}
    </fieldset>
  );
}
