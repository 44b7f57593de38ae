import Link from "next/link";
import styles from "./steps.module.css";

const steps = [
  { key: "choose", name: "Choose" },
  { key: "look", name: "Look" },
  { key: "columns", name: "Match columns" },
  { key: "rows", name: "Check rows" },
  { key: "add", name: "Add" },
  { key: "back", name: "Take back" },
] as const;
export type StepKey = (typeof steps)[number]["key"];

interface Props {
  readonly at: StepKey;
  /** Where each step can be gone to from here; a step without an address is still to come, or past mending. */
  readonly hrefs: Readonly<Partial<Record<StepKey, string>>>;
}

/** Where a file stands on its way in. Every step before the adding can be gone back to. */
export function Steps({ at, hrefs }: Props) {
  const now = steps.findIndex(({ key }) => key === at);
  return (
    <nav aria-label="Steps of a file" className="no-print">
      <ol className={styles.steps}>
        {steps.map(({ key, name }, index) => {
          const href = hrefs[key];
          return (
            <li
              key={key}
              className={styles.step}
              data-state={index === now ? "now" : index < now ? "done" : "ahead"}
              aria-current={index === now ? "step" : undefined}
            >
              <span className={styles.number}>{index + 1}</span>
              {href === undefined || index === now ? <span>{name}</span> : <Link href={href}>{name}</Link>}
            </li>
          );
        })}
      </ol>
    </nav>
  );
}
