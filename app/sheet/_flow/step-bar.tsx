import styles from "./sheet.module.css";

interface Props {
  readonly onBack: (() => void) | undefined;
  readonly onSkip?: () => void;
  /** Sends the form of that id; left out where the answer itself leads on. */
  readonly next?: { readonly form: string; readonly disabled: boolean } | undefined;
}

/** Within reach of a thumb, at the bottom of the screen. */
export function StepBar({ onBack, onSkip, next }: Props) {
  return (
    <div className={styles.bar}>
      <button type="button" className={styles.barButton} onClick={onBack} disabled={onBack === undefined}>
        Back
      </button>
      {onSkip !== undefined && (
        <button type="button" className={styles.barButton} onClick={onSkip}>
          Skip
        </button>
      )}
      {next !== undefined && (
        <button type="submit" form={next.form} disabled={next.disabled} className={styles.barButton} data-weight="main">
          Next
        </button>
      )}
    </div>
  );
}
