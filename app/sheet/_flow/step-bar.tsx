import type { ReactNode } from "react";
import styles from "./sheet.module.css";

interface Props {
  readonly onBack: (() => void) | undefined;
  readonly onSkip?: () => void;
  readonly isSkipping?: boolean;
  /** Sends the form of that id; left out where the answer itself leads on. */
  readonly next?: { readonly form: string; readonly disabled: boolean } | undefined;
  /** What leads on where no form does. */
  readonly main?: { readonly words: string; readonly onClick: () => void };
  /** What a button of the bar opens, and what went wrong: above the buttons, where the thumb and the eye are. */
  readonly children?: ReactNode;
}

/** Within reach of a thumb, at the bottom of the screen. */
export function StepBar({ onBack, onSkip, isSkipping = false, next, main, children }: Props) {
  return (
    <div className={styles.bar}>
      {children}
      <div className={styles.barButtons}>
        <button type="button" className={styles.barButton} onClick={onBack} disabled={onBack === undefined}>
          Back
        </button>
        {onSkip !== undefined && (
          <button type="button" className={styles.barButton} aria-expanded={isSkipping} onClick={onSkip}>
            Skip
          </button>
        )}
        {next !== undefined && (
          <button
            type="submit"
            form={next.form}
            disabled={next.disabled}
            className={styles.barButton}
            data-weight="main"
          >
            Next
          </button>
        )}
        {main !== undefined && (
          <button type="button" className={styles.barButton} data-weight="main" onClick={main.onClick}>
            {main.words}
          </button>
        )}
      </div>
    </div>
  );
}
