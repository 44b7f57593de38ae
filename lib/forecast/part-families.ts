import { pooledHistories, type Supersession } from "./supersession";

export interface PartFamilies {
  /** The number under which a number's use is counted: its latest successor. */
  readonly currentOf: (part: string) => string;
  /** Links that hold. */
  readonly links: readonly Supersession[];
  /** Sentences on links that were left out, by the numbers they name. */
  readonly problems: readonly { readonly parts: readonly string[]; readonly sentence: string }[];
}

/**
 * Which numbers are one part, from what the catalogue says took the place of what. Where that leads in a circle or two
 * ways, its links are left out and named: each number then stands for itself, and all other parts are as they were.
 * @param nameOf a number as people write it
 */
export function partFamilies(links: readonly Supersession[], nameOf: (part: string) => string): PartFamilies {
  const problems: { readonly parts: readonly string[]; readonly sentence: string }[] = [];
  let left = links;
  for (;;) {
    const pooled = pooledHistories(new Map(), left);
    if (pooled.kind === "pooled") return { currentOf: pooled.currentOf, links: left, problems };
    const parts = pooled.kind === "circle" ? pooled.parts : [pooled.part, ...pooled.successors];
    problems.push({ parts, sentence: sentenceOf(pooled, nameOf) });
    left =
      pooled.kind === "circle"
        ? left.filter(({ from, to }) => !(parts.includes(from) && parts.includes(to)))
        : left.filter(({ from }) => from !== pooled.part);
  }
}

type Refusal = Exclude<ReturnType<typeof pooledHistories>, { kind: "pooled" }>;

function sentenceOf(refusal: Refusal, nameOf: (part: string) => string): string {
  if (refusal.kind === "circle") {
    const [first = ""] = refusal.parts;
    const round = [...refusal.parts, first].map(nameOf).join(" → ");
    return `These numbers supersede each other in a circle: ${round}. Each is forecast from its own use until the catalogue says which is the newest.`;
  }
  const successors = refusal.successors.map(nameOf).join(" and ");
  return `${nameOf(refusal.part)} is superseded by ${successors}, which cannot both be. It is forecast from its own use until the catalogue names one.`;
}
