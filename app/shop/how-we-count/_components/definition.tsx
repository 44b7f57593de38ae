import type { ReactNode } from "react";
import { type DefinitionKey, definitions } from "@/app/_ui/definitions";
import styles from "./definition.module.css";

interface Props {
  readonly of: DefinitionKey;
  readonly children: ReactNode;
}

/** One definition, with the anchor that numbers link to. */
export function Definition({ of, children }: Props) {
  return (
    <section id={of} className={`${styles.definition} stack-tight`} aria-labelledby={`${of}-title`}>
      <h3 id={`${of}-title`}>{definitions[of]}</h3>
      {children}
    </section>
  );
}

/** Where a method was published. */
export function Source({ children }: { readonly children: ReactNode }) {
  return <p className="small soft">{children}</p>;
}
