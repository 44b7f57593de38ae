import { definitionHref, definitions } from "@/app/_ui/definitions";
import { definitionGroups } from "../definition-groups";
import styles from "./contents.module.css";

/** Every definition by its heading. */
export function Contents({ label }: { readonly label: string }) {
  return (
    <nav aria-label={label}>
      {definitionGroups.map(({ id, title, keys }) => (
        <div key={id} className={styles.group}>
          <a href={`#${id}`} className={styles.heading}>
            {title}
          </a>
          <ul className={styles.list}>
            {keys.map((key) => (
              <li key={key}>
                <a href={definitionHref(key)}>{definitions[key]}</a>
              </li>
            ))}
          </ul>
        </div>
      ))}
    </nav>
  );
}
