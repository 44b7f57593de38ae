import { FieldNote } from "@/app/_ui/field";
import type { Choice } from "@/app/_ui/select-field";
import styles from "../coverage.module.css";

interface Shared {
  readonly label: string;
  readonly name: string;
  readonly hint?: string;
  readonly problem: string | undefined;
}

/** Any number of choices under one name. */
export function TickBoxes({
  label,
  name,
  hint,
  problem,
  choices,
  values,
}: Shared & { readonly choices: readonly Choice[]; readonly values: readonly string[] }) {
  const noteId = `note-${name}`;
  return (
    <fieldset className={styles.ticks} id={`field-${name}`} tabIndex={-1} aria-describedby={noteId}>
      <legend>{label}</legend>
      <FieldNote id={noteId} hint={hint} problem={problem} />
      <div className={styles.boxes}>
        {choices.map((choice) => (
          <label key={choice.value}>
            <input type="checkbox" name={name} value={choice.value} defaultChecked={values.includes(choice.value)} />{" "}
            {choice.name}
          </label>
        ))}
      </div>
    </fieldset>
  );
}

export function TickBox({ label, name, hint, problem, checked }: Shared & { readonly checked: boolean }) {
  const noteId = `note-${name}`;
  return (
    <div className={styles.tick}>
      <FieldNote id={noteId} hint={hint} problem={problem} />
      <label>
        <input
          type="checkbox"
          id={`field-${name}`}
          name={name}
          value="yes"
          defaultChecked={checked}
          aria-describedby={noteId}
        />{" "}
        {label}
      </label>
    </div>
  );
}
