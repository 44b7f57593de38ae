import type { AddressValues } from "@/app/_address/address-reader";
import type { ExposureCells } from "@/lib/failures/cells";
import { inFleet } from "@/lib/failures/groups";
import { restOfFleet } from "@/lib/failures/rest-of-fleet";
import type { LifeQuestion } from "@/lib/failures/visit-spells";
import { groupWords } from "./group-words";
import { readAgainst, secondQuestion } from "./read-comparison";
import type { AskedComparison, ReadGroups } from "./read-groups";

/** A group and what it is set against: the rest, a maker, a model, another component. */
export function twoGroups(values: AddressValues, { name, question, words, cells }: AskedComparison): ReadGroups {
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

const wholeFleet = {
  finding: "the first group is the whole fleet, so there is no rest",
  wayOn: "Choose a maker, a model or an appliance for the first group, or another component for the second.",
};
const sameGroup = {
  finding: "one group is part of the other",
  wayOn: "A group would be measured by itself. Set it against the rest, or choose two groups that share no unit.",
};
