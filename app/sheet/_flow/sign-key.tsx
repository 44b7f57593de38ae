import styles from "./sheet.module.css";

interface Props {
  readonly text: string;
  readonly onChange: (text: string) => void;
}

/** Some phones' number pads have no minus. */
export function SignKey({ text, onChange }: Props) {
  return (
    <button
      type="button"
      aria-label="Change the sign"
      className={styles.sign}
      onClick={() => onChange(text.startsWith("-") ? text.slice(1) : `-${text}`)}
    >
      ±
    </button>
  );
}
