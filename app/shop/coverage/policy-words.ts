import { termInWords } from "@/lib/calendar/day-words";
import { causes } from "@/lib/domain/cause";
import { componentOf } from "@/lib/domain/components";
import type { PayItem } from "@/lib/domain/pay-item";
import type { Policy } from "@/lib/domain/policy";
import { type StartPoint, startEvents } from "@/lib/domain/policy-start";
import type { CoverSubject } from "@/lib/domain/policy-terms";
import { productTypes } from "@/lib/domain/product-type";
import { formatPlainDay } from "@/lib/format/format-day";

export interface WordsOfPolicy {
  readonly title: string;
  readonly sentences: readonly string[];
}

/** What a policy says, section by section, in sentences; amounts are in pay-words.ts. */
export function policyWords(policy: Policy): readonly WordsOfPolicy[] {
  return [
    { title: "Units", sentences: unitsWords(policy) },
    { title: "Start and counting", sentences: startWords(policy) },
    { title: "Limits", sentences: limitWords(policy) },
    { title: "Left out", sentences: exclusionWords(policy) },
    { title: "Campaigns", sentences: campaignWords(policy) },
    { title: "Contract, goodwill and repeats", sentences: besideWords(policy) },
  ].filter(({ sentences }) => sentences.length > 0);
}

export function subjectWords(covers: CoverSubject, policy: Policy): string {
  switch (covers.kind) {
    case "whole_unit":
      return "Whole unit";
    case "adjustment":
      return "Adjustments";
    case "cosmetic":
      return "Looks";
    case "class":
      return policy.classes.find(({ key }) => key === covers.class)?.name ?? covers.class;
  }
}

export function itemWords(items: readonly PayItem[]): string {
  return listed(items);
}

export function componentWords(keys: readonly string[]): string {
  return listed(keys.map((key) => (componentOf(key)?.name ?? key.replaceAll("_", " ")).toLowerCase()));
}

/** "a", "a and b", "a, b and c". */
export function listed(words: readonly string[]): string {
  const last = words.at(-1);
  return words.length < 2 || last === undefined ? words.join("") : `${words.slice(0, -1).join(", ")} and ${last}`;
}

function unitsWords({ maker, appliesTo, territories }: Policy): readonly string[] {
  const { productTypes: types, models, serials } = appliesTo;
  return [
    `Units of ${maker ?? "any maker"}${types.length === 0 ? "" : `: ${listed(types.map((type) => productTypes[type].toLowerCase()))}`}.`,
    ...(models.length === 0 ? [] : [`Models that begin with ${listed(models)}.`]),
    ...(serials.length === 0 ? [] : [`Serials ${listed(serials.map(({ from, to }) => `${from} to ${to}`))}.`]),
    territories.length === 0 ? "Wherever the unit stands." : `Where the unit stands in ${listed(territories)}.`,
  ];
}

function startWords(policy: Policy): readonly string[] {
  const { start, anchorDay, decisiveEvent, tolling, caps } = policy;
  const fallbacks = start.fallbacks.map(pointWords);
  return [
    `The term starts on ${pointWords(start.from)}${fallbacks.length === 0 ? "" : `; where that is not known, on ${fallbacks.join(", else on ")}`}.`,
    anchorDay === "exclude"
      ? "The first day is not counted, so a year ends on the same day of the next year."
      : "The first day is counted, so a year ends on the day before that day of the next year.",
    decisiveWords[decisiveEvent],
    ...caps.map(
      ({ from, term }) => `It ends at the latest ${termInWords(term)} after ${startEvents[from].toLowerCase()}.`,
    ),
    ...(tolling ? ["It stands still while the unit is out for a repair under it."] : []),
  ];
}

const decisiveWords: Readonly<Record<Policy["decisiveEvent"], string>> = {
  reported: "The day of the report decides.",
  visit: "The day of the first visit decides.",
  completed: "The day of completion decides.",
};

function pointWords({ event, plus }: StartPoint): string {
  const name = startEvents[event].toLowerCase();
  return plus === undefined ? name : `${name} and ${termInWords(plus)}`;
}

function limitWords(policy: Policy): readonly string[] {
  const { use, transfer, replacementPart, replacementUnit, registration, designation } = policy;
  return [
    ...(designation === undefined ? [] : [designationWords[designation]]),
    use.kind === "any"
      ? "Any use is covered."
      : use.kind === "household_only"
        ? "Only households are covered."
        : `Commercial use is covered for ${termInWords(use.term)}: ${listed(use.pays)}.`,
    transfer.kind === "follows_unit"
      ? "Cover follows the unit to a later owner."
      : transfer.kind === "original_purchaser_only"
        ? "Only the first buyer is covered."
        : `A later owner is covered who registers within ${termInWords(transfer.within)} of taking the unit over.`,
    ...(registration === undefined
      ? []
      : [
          `Registered within ${termInWords(registration.within)} the whole unit has ${termInWords(registration.termIfRegistered)}, otherwise ${termInWords(registration.termOtherwise)}.`,
        ]),
    replacementPart.kind === "remainder"
      ? "A part fitted under this cover has the remainder of the unit’s term."
      : `A part fitted under this cover has ${termInWords(replacementPart.term)} of its own for ${listed(replacementPart.pays)}${replacementPart.combine === "own_term_only" ? "" : "; the later end governs"}.`,
    replacementUnit === "new_term"
      ? "A unit given in exchange starts anew."
      : "A unit given in exchange keeps the first unit’s dates.",
  ];
}

const designationWords: Readonly<Record<NonNullable<Policy["designation"]>, string>> = {
  full: "A full warranty: in the United States it follows the unit and does not hang on registering, whatever stands below.",
  limited: "A limited warranty.",
};

function exclusionWords({ excludedCauses, excludedComponents }: Policy): readonly string[] {
  return [
    ...(excludedCauses.length === 0
      ? []
      : [`Causes: ${listed(excludedCauses.map((cause) => causes[cause].name.toLowerCase()))}.`]),
    ...(excludedComponents.length === 0 ? [] : [`Components: ${componentWords(excludedComponents)}.`]),
  ];
}

function campaignWords({ campaigns }: Policy): readonly string[] {
  return campaigns.map(({ name, serials, component, startsOn, endsOn, pays, sourceDocument }) => {
    const from = startsOn === undefined ? "" : ` from ${formatPlainDay(startsOn)}`;
    const until = endsOn === undefined ? ", with no last day" : ` until ${formatPlainDay(endsOn)}`;
    const ranges = listed(serials.map((range) => `${range.from} to ${range.to}`));
    return `${name}: ${listed(pays)} for ${componentWords([component])} of serials ${ranges}, at any age${from}${until} (${sourceDocument}).`;
  });
}

function besideWords({ contract, goodwill, repeat }: Policy): readonly string[] {
  return [
    ...(contract === undefined
      ? []
      : [
          `A ${contract.type === "extended" ? "contract of extended cover" : "home-service contract"}${contract.waiting === undefined ? ", without a waiting period" : `; the first ${termInWords(contract.waiting)} after its sale do not pay`}.`,
        ]),
    ...(goodwill === undefined
      ? []
      : [
          `Goodwill may be asked for${goodwill.within === undefined ? "" : ` within ${termInWords(goodwill.within)} of the last covered day`}${goodwill.authorizationRequired ? ", with an authorization" : ""}; it is never cover.`,
        ]),
    ...(repeat === undefined
      ? []
      : [
          `A repair of the same ${repeat.same.replaceAll("_", " ")} within ${termInWords(repeat.within)} of the one before is the servicer’s cost.`,
        ]),
  ];
}
