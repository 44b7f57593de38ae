import { AddressReader, type AddressValues } from "@/app/_address/address-reader";
import type { Reader } from "@/db/database-types";
import { loadExposureCells } from "@/db/queries/exposure-cells";
import { type CatalogueWords, loadCatalogueWords } from "@/db/queries/known-words";
import { addDays, type Day } from "@/lib/calendar/day";
import { dayFromNumber, dayNumber } from "@/lib/calendar/day-number";
import type { ExposureCells } from "@/lib/failures/cells";
import { type ComparedGroup, compareGroups, type GroupComparison } from "@/lib/failures/compare-groups";
import { type ComparisonVerdict, comparisonVerdict } from "@/lib/failures/comparison-verdict";
import { inFleet } from "@/lib/failures/groups";
import { type MissingAnswer, missingAnswer } from "@/lib/failures/missing-answer";
import { restOfFleet } from "@/lib/failures/rest-of-fleet";
import type { LifeQuestion } from "@/lib/failures/visit-spells";
import { formatPlainDay } from "@/lib/format/format-day";
import { groupWords } from "./group-words";
import { readLifeAddress } from "./life-address";
import { readAgainst, secondQuestion } from "./read-comparison";

export type ComparisonKind = "compare" | "before-after";

export type ComparisonView =
  | { readonly kind: "unknown-component" }
  | { readonly kind: "no-data"; readonly name: string }
  | LoadedComparison;

export interface LoadedComparison {
  readonly kind: "loaded";
  readonly name: string;
  readonly words: CatalogueWords;
  readonly cutOff: Day;
  readonly notices: readonly string[];
  /** The first group as the address narrows it, over the whole period. */
  readonly question: LifeQuestion;
  /** What the address says of the second: `with` as text, or the day. */
  readonly second: string | undefined;
  readonly outcome: ComparisonOutcome;
}

export type ComparisonOutcome =
  | { readonly kind: "compared"; readonly comparison: GroupComparison; readonly verdict: ComparisonVerdict }
  /** There is no second group, or it is not another one. */
  | { readonly kind: "not-two"; readonly finding: string; readonly wayOn: string }
  /** One side has nothing to count. */
  | { readonly kind: "missing"; readonly side: ComparedGroup; readonly missing: MissingAnswer };

/** Two groups, or one group before and after a day, from the address to the answer. */
export async function loadComparison(
  db: Reader,
  kind: ComparisonKind,
  { component, values, today }: { readonly component: string; readonly values: AddressValues; readonly today: Day },
): Promise<ComparisonView> {
  const words = await loadCatalogueWords(db, today);
  const name = words.components.find((entry) => entry.key === component)?.name;
  if (name === undefined) return { kind: "unknown-component" };
  const { cutOff } = words;
  if (cutOff === undefined) return { kind: "no-data", name };
  const own = kind === "compare" ? "with" : "on";
  const { question, notices } = readLifeAddress(component, values, { words, cutOff, own: [own] });
  const cells = await loadExposureCells(db, {});
  const asked = { name, question, words, cells };
  const read = kind === "compare" ? twoGroups(values, asked) : beforeAfter(values, asked);
  return {
    kind: "loaded",
    name,
    words,
    cutOff,
    question,
    notices: [...notices, ...read.notices],
    second: read.second,
    outcome: "groups" in read ? outcomeOf(read.groups) : { kind: "not-two", ...read.notTwo },
  };
}

interface Asked {
  readonly name: string;
  readonly question: LifeQuestion;
  readonly words: CatalogueWords;
  readonly cells: ExposureCells;
}

type ReadGroups = { readonly notices: readonly string[]; readonly second: string | undefined } & (
  | { readonly groups: readonly [ComparedGroup, ComparedGroup] }
  | { readonly notTwo: { readonly finding: string; readonly wayOn: string } }
);

function twoGroups(values: AddressValues, { name, question, words, cells }: Asked): ReadGroups {
  const { against, text, notices } = readAgainst(values, words);
  const other = secondQuestion(question, against, words);
  const read = { notices, second: text };
  const { maker, model, productType } = question.where;
  if (against.kind === "rest") {
    if (maker === undefined && model === undefined && productType === undefined) return { ...read, notTwo: wholeFleet };
    const { productType: kind, symptom } = other.where;
    const narrowed = kind === undefined && symptom === undefined ? "" : `, ${groupWords(other.where, words)}`;
    const rest = {
      name: `all other units${narrowed}`,
      cells: restOfFleet(cells, { maker, model, productType }),
      question: other,
    };
    return { ...read, groups: [{ name: groupWords(question.where, words), cells, question }, rest] };
  }
  if (against.kind === "component") {
    if (against.value === question.component) return { ...read, notTwo: sameGroup };
    const otherName = words.components.find(({ key }) => key === against.value)?.name ?? against.value;
    const units = groupWords(question.where, words);
    return {
      ...read,
      groups: [
        { name: `${name}, ${units}`, cells, question },
        { name: `${otherName}, ${units}`, cells, question: other },
      ],
    };
  }
  if (overlap(cells, question, other)) return { ...read, notTwo: sameGroup };
  return {
    ...read,
    groups: [
      { name: groupWords(question.where, words), cells, question },
      { name: groupWords(other.where, words), cells, question: other },
    ],
  };
}

/** A group that is part of the other would be measured by itself. */
function overlap(cells: ExposureCells, first: LifeQuestion, second: LifeQuestion): boolean {
  return cells.models.some((model) => inFleet(cells, model, first) && inFleet(cells, model, second));
}

function beforeAfter(values: AddressValues, { question, cells }: Asked): ReadGroups {
  const address = new AddressReader({ on: values.on }, ["on"]);
  const on = address.dayOf("on");
  const read = { notices: address.notices, second: on };
  if (on === undefined) return { ...read, notTwo: noDay };
  const day = dayNumber(on);
  if (day >= question.until || (question.from !== undefined && day <= question.from)) {
    const last = formatPlainDay(addDays(dayFromNumber(question.until), -1));
    return {
      ...read,
      notTwo: {
        finding: `${formatPlainDay(on)} does not part the days of this view`,
        wayOn: `They ${question.from === undefined ? "" : `begin on ${formatPlainDay(dayFromNumber(question.from))} and `}end on ${last}; choose a day between.`,
      },
    };
  }
  return {
    ...read,
    groups: [
      { name: `the time from ${formatPlainDay(on)} on`, cells, question: { ...question, from: day } },
      { name: "the time before", cells, question: { ...question, until: day } },
    ],
  };
}

function outcomeOf([first, second]: readonly [ComparedGroup, ComparedGroup]): ComparisonOutcome {
  for (const side of [first, second]) {
    const missing = missingAnswer(side.cells, side.question);
    if (missing !== undefined && missing.kind !== "before-first-failure") return { kind: "missing", side, missing };
  }
  const comparison = compareGroups(first, second);
  return { kind: "compared", comparison, verdict: comparisonVerdict(comparison) };
}

const wholeFleet = {
  finding: "the first group is the whole fleet, so there is no rest",
  wayOn: "Choose a maker, a model or an appliance for the first group, or another component for the second.",
};
const sameGroup = {
  finding: "one group is part of the other",
  wayOn: "A group would be measured by itself. Set it against the rest, or choose two groups that share no unit.",
};
const noDay = {
  finding: "before and after which day?",
  wayOn: "Choose the day from which something was different, such as the first day of a changed part.",
};
