import type { ReactNode } from "react";
import { type DefinitionKey, definitions } from "@/app/_ui/definitions";
import { Formula } from "../_maths/formula";
import { methodsUnder } from "../method-definitions";
import styles from "./definition.module.css";

interface Props {
  readonly of: DefinitionKey;
  /** In plain words; everything else is for those who want to check. */
  readonly children: ReactNode;
  readonly formula?: ReactNode | readonly ReactNode[];
  /** What the letters of the formula stand for. */
  readonly letters?: ReactNode;
  /** Figures that follow the words: from the live data, or worked from stated counts. */
  readonly example?: ReactNode;
  /** Where the method was published, or that it is this program's own choice. */
  readonly source?: ReactNode;
}

/** One definition, with the anchor that numbers link to. */
export function Definition({ of, children, formula, letters, example, source }: Props) {
  const names = methodsUnder(of);
  return (
    <section id={of} className={`${styles.definition} stack-tight`} aria-labelledby={`${of}-title`}>
      <h3 id={`${of}-title`}>{definitions[of]}</h3>
      {children}
      <dl className={styles.facts}>
        {formula !== undefined && (
          <Fact name="Formula">
            {[formula].flat().map((line, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: the lines of a formula never change places
              <Formula key={index}>{line}</Formula>
            ))}
            {letters !== undefined && <span className={styles.letters}>{letters}</span>}
          </Fact>
        )}
        {example !== undefined && <Fact name="Example">{example}</Fact>}
        {names.length > 0 && (
          <Fact name="Named">{names.map((name) => `“${name}”`).join(", ")} in tables and files</Fact>
        )}
        {source !== undefined && <Fact name="Source">{source}</Fact>}
      </dl>
    </section>
  );
}

function Fact({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    <div className={styles.fact}>
      <dt className={styles.name}>{name}</dt>
      <dd className={styles.detail}>{children}</dd>
    </div>
  );
}
