import styles from "./choose-row.module.css";

interface Props {
  readonly value: string;
  readonly label: string;
}

/** A box to choose a row for what is done with many at once. */
export function ChooseRow({ value, label }: Props) {
  return (
    <label className={styles.choose}>
      <input type="checkbox" name="chosen" value={value} />
      <span className="only-heard">Choose {label}</span>
    </label>
  );
}
