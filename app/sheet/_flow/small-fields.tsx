import { useId } from "react";
import styles from "./sheet.module.css";

interface ChooseProps {
  readonly label: string;
  readonly value: string;
  readonly none?: string;
  readonly choices: readonly (readonly [string, string])[];
  readonly onChoose: (value: string) => void;
}

/** Fields of the phone's screens: as high as a thumb, and their state is the screen's own. */
export function Choose({ label, value, none, choices, onChoose }: ChooseProps) {
  const id = useId();
  return (
    <div>
      <label htmlFor={id} className={styles.label}>
        {label}
      </label>
      <select id={id} className={styles.select} value={value} onChange={(event) => onChoose(event.target.value)}>
        {none !== undefined && <option value="">{none}</option>}
        {choices.map(([key, name]) => (
          <option key={key} value={key}>
            {name}
          </option>
        ))}
      </select>
    </div>
  );
}

interface TypeProps {
  readonly label: string;
  readonly value: string;
  readonly onType: (value: string) => void;
  readonly short?: boolean;
  readonly mode?: "text" | "decimal" | "numeric";
}

export function Type({ label, value, onType, short = false, mode = short ? "numeric" : "text" }: TypeProps) {
  const id = useId();
  return (
    <div>
      <label htmlFor={id} className={styles.label}>
        {label}
      </label>
      <input
        id={id}
        type="text"
        inputMode={mode}
        autoComplete="off"
        className={short ? styles.short : styles.wide}
        value={value}
        onChange={(event) => onType(event.target.value)}
      />
    </div>
  );
}

interface WriteProps {
  readonly label: string;
  readonly value: string;
  readonly onWrite: (value: string) => void;
}

export function Write({ label, value, onWrite }: WriteProps) {
  const id = useId();
  return (
    <div>
      <label htmlFor={id} className={styles.label}>
        {label}
      </label>
      <textarea
        id={id}
        className={styles.wide}
        rows={Math.min(12, 3 + Math.floor(value.length / 60))}
        value={value}
        onChange={(event) => onWrite(event.target.value)}
      />
    </div>
  );
}
