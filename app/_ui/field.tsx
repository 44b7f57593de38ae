import { type HTMLInputAutoCompleteAttribute, type ReactNode, useId } from "react";
import styles from "./field.module.css";

interface Props {
  readonly label: string;
  readonly name: string;
  /** What to type and in which form, above the input where it is read before typing. */
  readonly hint?: ReactNode;
  /** What is wrong and what to do. */
  readonly problem?: string | undefined;
  readonly value?: string | undefined;
  /** Numbers are text with a decimal keypad: a number input drops what it cannot read. */
  readonly type?: "text" | "search" | "date" | "file" | "textarea" | "email" | "password";
  readonly inputMode?: "text" | "decimal" | "numeric";
  /** Printed after the input, such as Ω. */
  readonly unit?: string;
  readonly width?: "short" | "full";
  readonly required?: boolean;
  readonly accept?: string;
  readonly autoComplete?: HTMLInputAutoCompleteAttribute;
  /** Whose it is, where several forms of a page ask for the same: an id stands on a page once. */
  readonly of?: string;
}

/** One labelled input. Its id is `field-` and its name, which is where an `ErrorSummary` links to. */
export function Field(props: Props) {
  const { label, name, hint, problem, value, type = "text", unit, width = "full", of, ...rest } = props;
  const id = fieldId(name, of);
  const noteId = useId();
  const noted = hint !== undefined || problem !== undefined ? noteId : undefined;
  const shared = {
    id,
    name,
    defaultValue: value,
    "aria-describedby": noted,
    "aria-invalid": problem !== undefined || undefined,
    className: styles.input,
    "data-width": width,
  };
  return (
    <div className={styles.field}>
      <label htmlFor={id} className={styles.label}>
        {label}
      </label>
      <FieldNote id={noteId} hint={hint} problem={problem} />
      <span className={styles.line}>
        {type === "textarea" ? <textarea {...shared} rows={4} /> : <input {...shared} {...rest} type={type} />}
        {unit !== undefined && <span>{unit}</span>}
      </span>
    </div>
  );
}

export function fieldId(name: string, of: string | undefined): string {
  return of === undefined ? `field-${name}` : `field-${name}-${of}`;
}

interface NoteProps {
  readonly id: string;
  readonly hint: ReactNode;
  readonly problem: string | undefined;
}

/** Hint and problem of a field, which are read out with it. */
export function FieldNote({ id, hint, problem }: NoteProps) {
  if (hint === undefined && problem === undefined) return null;
  return (
    <span id={id} className={styles.note}>
      {hint !== undefined && <span className={styles.hint}>{hint}</span>}
      {problem !== undefined && (
        <span className={styles.problem}>
          <span className="only-heard">Error: </span>
          {problem}
        </span>
      )}
    </span>
  );
}
