import { day } from "@/lib/calendar/day";
import type { AnchorDay, CountedTerm, Term } from "@/lib/calendar/term";
import { type PayItem, payItems } from "@/lib/domain/pay-item";
import type { Policy } from "@/lib/domain/policy";
import type { DecisiveEvent, StartEvent, StartPoint, StartRule } from "@/lib/domain/policy-start";
import type { ComponentClass, CoverSubject, CoverTerm } from "@/lib/domain/policy-terms";
import { type CoverageCase, group, type Loose, text } from "./coverage-case";
import { samplePolicy } from "./sample-policy";

/** Labour, trip and diagnosis go together in the cases: where labour is covered the visit is. */
const withLabour: readonly PayItem[] = ["labour", "trip", "diagnosis"];

/** The policies a case speaks of: one of the maker, and a contract where the case names one. Names are translated, no rule is added. */
export function casePolicies({ policy }: CoverageCase): readonly Policy[] {
  if (policy.waiting !== undefined) return [contractPolicy(policy)];
  const makerTerm = group(policy, "maker_term");
  if (makerTerm !== undefined || policy.contract_term !== undefined) {
    const maker = samplePolicy({
      terms: [wholeUnit(readTerm(makerTerm ?? {}))],
      anchorDay: anchorOf(makerTerm ?? {}),
      start: { from: { event: "purchase" }, fallbacks: [] },
    });
    return [maker, contractPolicy(policy)];
  }
  if (policy.regime !== undefined) return [];
  return [makerPolicy(policy)];
}

function makerPolicy(policy: Loose): Policy {
  const { terms, classes } = readTerms(policy);
  const cap = group(policy, "cap");
  const registration = group(policy, "registration");
  const goodwill = group(policy, "goodwill");
  return samplePolicy({
    start: readStart(policy),
    anchorDay: anchorOf(policy),
    decisiveEvent: decisiveOf(policy),
    terms,
    classes,
    caps:
      cap === undefined
        ? []
        : [{ from: eventsIn(String(cap.from))[0] ?? "manufacture", term: readTerm(cap) as CountedTerm }], // caps are counted
    ...(registration === undefined ? {} : { registration: readRegistration(registration) }),
    ...(goodwill === undefined ? {} : { goodwill: { authorizationRequired: goodwill.authorization === "required" } }),
    transfer: readTransfer(policy.transfer),
    ...(/\bfull\b/.test(JSON.stringify(policy).replaceAll("_", " ")) ? { designation: "full" as const } : {}),
    use: readUse(policy),
    replacementPart: readReplacementPart(policy.replacement_part),
    replacementUnit: /remainder|original/.test(String(policy.replacement_unit ?? "remainder"))
      ? "remainder_of_original"
      : "new_term",
    tolling: policy.tolling === true,
    campaigns: readCampaigns(policy),
  });
}

function readCampaigns(policy: Loose): Policy["campaigns"] {
  const campaign = group(policy, "campaign");
  if (campaign === undefined) return [];
  const ends = text(campaign, "ends");
  return [
    {
      key: "campaign",
      name: "Campaign",
      serials: [{ from: String(campaign.serial_from), to: String(campaign.serial_to) }],
      component: String(campaign.component),
      ...(ends === undefined ? {} : { endsOn: day(ends) }),
      pays: payItems.filter((item) => (campaign.pays as readonly string[]).includes(item)), // a list in every case
      sourceDocument: "Campaign notice",
    },
  ];
}

function contractPolicy(policy: Loose): Policy {
  const term = group(policy, "contract_term") ?? group(policy, "term") ?? { n: 1, unit: "year" };
  const waiting = group(policy, "waiting");
  return samplePolicy({
    key: "contract",
    name: "Service contract",
    payer: { kind: "contract", name: "Contract provider" },
    start: { from: contractStart(policy), fallbacks: [] },
    anchorDay: anchorOf(term),
    terms: [wholeUnit(readTerm(term))],
    contract: { type: "extended", ...(waiting === undefined ? {} : { waiting: readTerm(waiting) as CountedTerm }) }, // waits are counted
  });
}

function contractStart(policy: Loose): StartPoint {
  const rule = text(policy, "start_rule") ?? "contract_sale";
  const counted = /day_(\d+)_counting_purchase_as_day_1/.exec(rule);
  if (counted !== null) return { event: "purchase", plus: { n: Number(counted[1]) - 1, unit: "day" } };
  return { event: /maker/.test(rule) ? "maker_cover_end" : "contract_sale" };
}

function readStart(policy: Loose): StartRule {
  const rule = text(policy, "start_rule") ?? "purchase";
  const graceTerm = group(policy, "grace");
  const grace = graceTerm && (readTerm(graceTerm) as CountedTerm); // graces are counted
  const fallbacks = eventsIn(JSON.stringify(policy.fallback ?? policy.fallback_start ?? policy.fallbacks ?? ""));
  const [first = "purchase", ...rest] = eventsIn(rule);
  const others = [...rest, ...fallbacks, ...(first === "purchase" ? (["registration", "shipped"] as const) : [])];
  const point = (event: StartEvent): StartPoint =>
    grace !== undefined && (event === first || event === "manufacture") ? { event, plus: grace } : { event };
  return { from: point(first), fallbacks: others.filter((event) => event !== first).map(point) };
}

const eventWords: readonly (readonly [RegExp, StartEvent])[] = [
  [/purchase|sale|receipt/, "purchase"],
  [/deliver/, "delivery"],
  [/install/, "installation"],
  [/clos|occup/, "occupancy"],
  [/first_use/, "first_use"],
  [/regist/, "registration"],
  [/ship/, "shipped"],
  [/manufact|made/, "manufacture"],
];

/** Start events in the order in which a rule's name mentions them. */
function eventsIn(rule: string): readonly StartEvent[] {
  return eventWords
    .map(([word, event]) => ({ at: rule.search(word), event }))
    .filter(({ at }) => at >= 0)
    .sort((a, b) => a.at - b.at)
    .map(({ event }) => event);
}

function readTerms(policy: Loose): {
  readonly terms: readonly CoverTerm[];
  readonly classes: readonly ComponentClass[];
} {
  const listed = policy.terms;
  if (!Array.isArray(listed)) {
    return {
      terms: policy.term === undefined ? [] : [wholeUnit(readTerm(group(policy, "term") ?? {}))],
      classes: [],
    };
  }
  const classes: ComponentClass[] = [];
  const terms: CoverTerm[] = [];
  for (const entry of listed as readonly Loose[]) {
    const key = String(entry.class);
    const covers = subjectOf(key);
    if (covers.kind === "class")
      classes.push({ key, name: key, members: (entry.members as string[] | undefined) ?? [key] }); // a list where given
    const parts = group(entry, "parts");
    const labour = group(entry, "labour");
    if (parts !== undefined) terms.push({ covers, pays: ["parts"], term: readTerm(parts) });
    if (labour !== undefined) terms.push({ covers, pays: withLabour, term: readTerm(labour) });
  }
  return { terms, classes };
}

function subjectOf(key: string): CoverSubject {
  if (key === "whole_unit" || key === "adjustment" || key === "cosmetic") return { kind: key };
  return { kind: "class", class: key };
}

function wholeUnit(term: Term): CoverTerm {
  return { covers: { kind: "whole_unit" }, pays: payItems, term };
}

export function readTerm(from: Loose): Term {
  const unit = String(from.unit ?? "year").replace(/s$/, "");
  if (unit === "lifetime") return { unit };
  if (unit !== "day" && unit !== "month" && unit !== "year") throw new Error(`case has an unknown unit: ${unit}`);
  return { n: Number(from.n ?? 1), unit };
}

export function anchorOf(from: Loose): AnchorDay {
  return text(from, "anchor_day") === "include_anchor" ? "include" : "exclude";
}

function decisiveOf(policy: Loose): DecisiveEvent {
  const event = text(policy, "decisive_event") ?? "reported";
  return /visit/.test(event) ? "visit" : /complet|repair/.test(event) ? "completed" : "reported";
}

function readRegistration(from: Loose): Policy["registration"] {
  return {
    within: readTerm(group(from, "within") ?? {}) as CountedTerm, // deadlines are counted
    termIfRegistered: readTerm(group(from, "bonus") ?? {}),
    termOtherwise: readTerm(group(from, "base") ?? {}),
  };
}

function readTransfer(rule: unknown): Policy["transfer"] {
  if (typeof rule === "string") return { kind: /original/.test(rule) ? "original_purchaser_only" : "follows_unit" };
  const within = group((rule ?? {}) as Loose, "register_within"); // text was handled above
  return within === undefined
    ? { kind: "follows_unit" }
    : { kind: "register_within", within: readTerm(within) as CountedTerm };
}

function readUse(policy: Loose): Policy["use"] {
  const use = text(policy, "use");
  if (use === "commercial_term") {
    return { kind: "commercial_term", term: readTerm(group(policy, "term") ?? {}) as CountedTerm, pays: payItems };
  }
  return { kind: use !== undefined && /household|exclud/.test(use) ? "household_only" : "any" };
}

function readReplacementPart(rule: unknown): Policy["replacementPart"] {
  if (typeof rule !== "object" || rule === null) return { kind: "remainder" };
  const own = group(rule as Loose, "own_term"); // an object, checked above
  if (own === undefined) return { kind: "remainder" };
  const combine = /later|longer/.test(String((rule as Loose).combine)) ? "later_of_with_remainder" : "own_term_only";
  return { kind: "own_term", term: readTerm(own) as CountedTerm, pays: ["parts"], combine };
}
