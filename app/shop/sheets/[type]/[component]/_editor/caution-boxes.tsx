import { cautions } from "@/lib/evidence/cautions";
import styles from "./sheet-form.module.css";

interface Props {
  readonly title: string;
  /** Always shown with the check; nobody can take them off. */
  readonly fixed: readonly string[];
  readonly ticked: readonly string[];
  readonly onTick: (cautions: string[]) => void;
}

export function CautionBoxes({ title, fixed, ticked, onTick }: Props) {
  const more = ticked.filter((key) => !fixed.includes(key)).length;
  return (
    <details className={styles.cautions}>
      <summary>
        {title}: {fixed.length} always shown{more > 0 && `, ${more} added`}
      </summary>
      <ul>
        {Object.entries(cautions).map(([key, { text }]) => {
          const isFixed = fixed.includes(key);
          return (
            <li key={key}>
              <label>
                <input
                  type="checkbox"
                  checked={isFixed || ticked.includes(key)}
                  disabled={isFixed}
                  onChange={({ target }) =>
                    onTick(target.checked ? [...ticked, key] : ticked.filter((other) => other !== key))
                  }
                />{" "}
                {text}
              </label>
            </li>
          );
        })}
      </ul>
    </details>
  );
}
