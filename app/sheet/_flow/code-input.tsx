import { useId, useRef, useState } from "react";
import type { ReadingOutcome } from "@/lib/domain/reading";
import styles from "./sheet.module.css";

interface Props {
  /** Codes that machines of this maker have shown; any other may be typed. */
  readonly codes: readonly string[];
  readonly onTake: (outcome: ReadingOutcome) => void;
}

export function CodeInput({ codes, onTake }: Props) {
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const [text, setText] = useState("");
  const [problem, setProblem] = useState<string>();
  return (
    <form
      id="reading"
      onSubmit={(event) => {
        event.preventDefault();
        if (text.trim() !== "") return onTake({ kind: "code", code: text.trim() });
        setProblem("Type the code as the display shows it, or say that none is stored.");
        field.current?.focus(); // it may be off the screen, above the bar that was touched
      }}
    >
      <label htmlFor={id} className={styles.label}>
        Code as shown
      </label>
      {problem !== undefined && (
        <p role="alert" className={styles.problem}>
          {problem}
        </p>
      )}
      <div className={styles.line}>
        <input
          id={id}
          ref={field}
          aria-invalid={problem === undefined ? undefined : true}
          list={`${id}-codes`}
          autoComplete="off"
          autoCapitalize="characters"
          className={styles.number}
          value={text}
          maxLength={40}
          onChange={(event) => {
            setProblem(undefined);
            setText(event.target.value);
          }}
        />
        <datalist id={`${id}-codes`}>
          {codes.map((code) => (
            <option key={code} value={code} />
          ))}
        </datalist>
      </div>
      <div className={styles.choices}>
        <button type="button" className={styles.choice} onClick={() => onTake({ kind: "finding", word: "none" })}>
          None stored
        </button>
      </div>
    </form>
  );
}
