import Link from "next/link";
import { type DefinitionKey, definitionHref, definitions } from "./definitions";

interface Props {
  readonly of: DefinitionKey;
  /** Words of the place; the definition's own name where absent. */
  readonly children?: string;
}

/** From a number to the words that define it. */
export function HowCounted({ of, children }: Props) {
  return <Link href={definitionHref(of)}>{children ?? definitions[of]}</Link>;
}
