import { type ReactNode, useId } from "react";
import { FieldNote, fieldId } from "./field";
import styles from "./field.module.css";

export interface Choice {
  readonly value: string;
  readonly name: string;
}

interface Props {
  readonly label: string;
  readonly name: string;
  readonly choices: readonly Choice[];
  readonly value?: string | undefined;
  /** Name of the empty choice, such as "Any"; without it one of the choices always holds. */
  readonly none?: string;
  readonly hint?: ReactNode;
  readonly problem?: string | undefined;
  /** Whose it is, where several forms of a page ask for the same. */
  readonly of?: string;
}

/** One labelled choice from a list. */
export function SelectField({ label, name, choices, value, none, hint, problem, of }: Props) {
  const id = fieldId(name, of);
  const noteId = useId();
  const noted = hint !== undefined || problem !== undefined ? noteId : undefined;
  return (
    <div className={styles.field}>
      <label htmlFor={id} className={styles.label}>
        {label}
      </label>
      <FieldNote id={noteId} hint={hint} problem={problem} />
      <select
        id={id}
        name={name}
        defaultValue={value ?? ""}
        aria-describedby={noted}
        aria-invalid={problem !== undefined || undefined}
        className={styles.input}
      >
        {none !== undefined && <option value="">{none}</option>}
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.name}
          </option>
        ))}
      </select>
    </div>
  );
}
