import type { ReactNode } from "react";
import styles from "./questions.module.css";

interface Choice {
  readonly value: string;
  readonly name: ReactNode;
}

interface Props {
  readonly name: string;
  readonly question: string;
  readonly choices: readonly Choice[];
  /** Undefined until a person has answered: nothing is chosen beforehand where the file can't tell. */
  readonly answer: string | undefined;
}

/** What the file itself can't tell, and what is therefore asked. */
export function Question({ name, question, choices, answer }: Props) {
  return (
    <fieldset className={styles.question} id={`field-${name}`}>
      <legend className={styles.legend}>{question}</legend>
      {choices.map(({ value, name: words }) => (
        <label key={value} className={styles.choice}>
          <input type="radio" name={name} value={value} defaultChecked={answer === value} required />
          <span>{words}</span>
        </label>
      ))}
    </fieldset>
  );
}
