import { emptyPart, type PartDraft } from "./closing-draft";
import styles from "./sheet.module.css";
import { Type } from "./small-fields";

interface Props {
  readonly parts: readonly PartDraft[];
  readonly onChange: (parts: readonly PartDraft[]) => void;
}

/** What was fitted. A price is asked only where none is on file, which the server says. */
export function PartFields({ parts, onChange }: Props) {
  const set = (at: number, part: Partial<PartDraft>) =>
    onChange(parts.map((each, index) => (index === at ? { ...each, ...part } : each)));
  return (
    <fieldset className={styles.parts}>
      <legend className={styles.label}>Parts fitted</legend>
      {parts.map((part, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a part is its place in the list until it has a number
        <div key={at} className={styles.part}>
          <Type label="Part number" value={part.partNumber} onType={(partNumber) => set(at, { partNumber })} />
          <div className={styles.line}>
            <Type label="Quantity" value={part.quantity} onType={(quantity) => set(at, { quantity })} short />
            <Type label="Cost, if new" value={part.cost} onType={(cost) => set(at, { cost })} short mode="decimal" />
            <Type label="Invoice" value={part.invoice} onType={(invoice) => set(at, { invoice })} short mode="text" />
          </div>
        </div>
      ))}
      <button type="button" className={styles.choice} onClick={() => onChange([...parts, emptyPart])}>
        {parts.length === 0 ? "Add a part" : "Add another part"}
      </button>
    </fieldset>
  );
}
