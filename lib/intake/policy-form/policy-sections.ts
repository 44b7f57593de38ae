import { causeKeys, causes } from "@/lib/domain/cause";
import { payerKinds } from "@/lib/domain/job";
import { currencies } from "@/lib/domain/money";
import { type PayItem, payItems } from "@/lib/domain/pay-item";
import { startEventKeys, startEvents } from "@/lib/domain/policy-start";
import { productTypeKeys, productTypes } from "@/lib/domain/product-type";
import { sourceMarks } from "@/lib/domain/reading";
import type { FormChoice, FormField, FormSection } from "./form-field";

const itemNames: Readonly<Record<PayItem, string>> = {
  parts: "Parts",
  labour: "Labour",
  trip: "Trip",
  diagnosis: "Diagnosis",
};

function named(...pairs: readonly (readonly [value: string, name: string])[]): readonly FormChoice[] {
  return pairs.map(([value, name]) => ({ value, name }));
}

const events = startEventKeys.map((value) => ({ value, name: startEvents[value] }));
const items = payItems.map((value) => ({ value, name: itemNames[value] }));
const own = (words: readonly string[]) => words.map((value) => ({ value, name: value.replaceAll("_", " ") }));
const counting = named(
  ["exclude", "The first day is day 0 (“from”)"],
  ["include", "The first day is day 1 (“beginning with”)"],
);
const lengths = "In the unit that the terms use: 12 months, 1 year, 90 days.";
const keys = "Keys of the catalogue, between commas, such as drain_pump.";

const pays: FormField = { at: "pays", label: "Pays", kind: "set", choices: items };
const within = (at: string, label: string, hint = lengths): FormField => ({ at, label, kind: "term", hint });
const money = (at: string, label: string, hint?: string): FormField => ({
  at,
  label,
  kind: "money",
  ...(hint === undefined ? {} : { hint }),
});

/** The form, section by section, in the order in which a decision asks. */
export const policySections: readonly FormSection[] = [
  {
    key: "paper",
    title: "Payer, paper and sales it governs",
    parts: [
      { at: "name", label: "Name of the policy", kind: "text" },
      { at: "key", label: "Key", kind: "text", hint: "The same in every version: small letters, digits, _ and -." },
      { at: "payer.kind", label: "Who pays", kind: "choice", choices: own(payerKinds) },
      { at: "payer.name", label: "Name of the payer", kind: "text" },
      { at: "maker", label: "Maker of the units", kind: "text", hint: "Blank where any maker’s units are covered." },
      {
        at: "effectiveFrom",
        label: "First sale day",
        kind: "day",
        hint: "Units sold on this day or later, YYYY-MM-DD.",
      },
      { at: "effectiveTo", label: "Last sale day", kind: "day", hint: "Blank while no later version is known." },
      { at: "sourceDocument", label: "Document with the terms", kind: "text", hint: "Title, edition and page." },
      { at: "sourceMark", label: "Kind of source", kind: "choice", choices: own(sourceMarks) },
      { at: "approvedBy", label: "Approved by", kind: "text" },
      { at: "approvedOn", label: "Approved on", kind: "day" },
      { at: "currency", label: "Currency", kind: "choice", choices: own(currencies) },
    ],
  },
  {
    key: "scope",
    title: "Units",
    hint: "What is left blank does not narrow.",
    parts: [
      {
        at: "appliesTo.productTypes",
        label: "Appliances",
        kind: "set",
        choices: productTypeKeys.map((value) => ({ value, name: productTypes[value] })),
      },
      { at: "appliesTo.models", label: "Models", kind: "list", hint: "Beginnings of model numbers, between commas." },
      { at: "appliesTo.serials", label: "Serials", kind: "serials", hint: "One range a line: A1000000 to A1499999." },
      { at: "territories", label: "Where it holds", kind: "list", hint: "Countries or states, such as US or US-CA." },
    ],
  },
  {
    key: "start",
    title: "Start, counting and the day that decides",
    parts: [
      { at: "start.from.event", label: "Starts on", kind: "choice", choices: events },
      within("start.from.plus", "After", "A grace that is added once, such as 3 months; usually blank."),
      {
        list: "start.fallbacks",
        row: "Where that day is not known",
        fields: [
          { at: "event", label: "Starts on", kind: "choice", choices: events, none: "no further day" },
          within("plus", "After", "Grace, usually blank."),
        ],
      },
      { at: "anchorDay", label: "Counting", kind: "choice", choices: counting },
      {
        at: "decisiveEvent",
        label: "Decisive day",
        kind: "choice",
        choices: named(["reported", "Day of the report"], ["visit", "First visit"], ["completed", "Completion"]),
      },
      { at: "tolling", label: "The term stands still while the unit is out for repair", kind: "flag" },
    ],
  },
  {
    key: "classes",
    title: "Classes of parts",
    hint: "Membership is this list, never a judgement.",
    parts: [
      {
        list: "classes",
        row: "Class",
        fields: [
          { at: "key", label: "Key", kind: "text" },
          { at: "name", label: "Name", kind: "text" },
          { at: "members", label: "Members", kind: "list", hint: keys },
        ],
      },
    ],
  },
  {
    key: "terms",
    title: "Terms",
    hint: "One line for each thing covered and each length. Of several lines the best one decides.",
    parts: [
      {
        list: "terms",
        row: "Line",
        fields: [
          { at: "covers", label: "Covers", kind: "covers", none: "nothing yet" },
          pays,
          within("term", "For", "Such as 2 years, 90 days, or lifetime."),
          { at: "from.event", label: "Own start", kind: "choice", choices: events, none: "as the policy" },
          { at: "anchorDay", label: "Own counting", kind: "choice", choices: counting, none: "as the policy" },
        ],
      },
      {
        list: "caps",
        row: "Limit from another day; the earlier end governs",
        fields: [
          { at: "from", label: "From", kind: "choice", choices: events, none: "no limit" },
          within("term", "For"),
        ],
      },
      within("registration.within", "Registration asked within", "Blank where cover does not hang on registering."),
      within("registration.termIfRegistered", "Whole unit, if registered in time"),
      within("registration.termOtherwise", "Whole unit, otherwise"),
    ],
  },
  {
    key: "limits",
    title: "Use, owners, replaced parts and units",
    parts: [
      {
        at: "use.kind",
        label: "Use",
        kind: "choice",
        choices: named(
          ["any", "Any use"],
          ["household_only", "Households only"],
          ["commercial_term", "Commercial use has a term of its own"],
        ),
      },
      { ...within("use.term", "Term of commercial use"), onlyIf: ["use.kind", "commercial_term"] },
      { ...pays, at: "use.pays", label: "Commercial use pays", onlyIf: ["use.kind", "commercial_term"] },
      {
        at: "transfer.kind",
        label: "A later owner",
        kind: "choice",
        choices: named(
          ["follows_unit", "Cover follows the unit"],
          ["original_purchaser_only", "First buyer only"],
          ["register_within", "Is covered once registered in time"],
        ),
      },
      { ...within("transfer.within", "Registered within"), onlyIf: ["transfer.kind", "register_within"] },
      {
        at: "replacementPart.kind",
        label: "A part fitted under this cover",
        kind: "choice",
        choices: named(["remainder", "Remainder of the unit’s term"], ["own_term", "A term of its own"]),
      },
      { ...within("replacementPart.term", "Its own term"), onlyIf: ["replacementPart.kind", "own_term"] },
      {
        ...pays,
        at: "replacementPart.pays",
        label: "Its own term pays",
        onlyIf: ["replacementPart.kind", "own_term"],
      },
      {
        at: "replacementPart.combine",
        label: "Beside the remainder",
        kind: "choice",
        choices: named(["later_of_with_remainder", "The later end governs"], ["own_term_only", "Its own term alone"]),
        onlyIf: ["replacementPart.kind", "own_term"],
      },
      {
        at: "replacementUnit",
        label: "A unit given in exchange",
        kind: "choice",
        choices: named(["remainder_of_original", "Keeps the first unit’s dates"], ["new_term", "Starts anew"]),
      },
      {
        at: "excludedCauses",
        label: "Causes left out",
        kind: "set",
        choices: causeKeys.filter((key) => key !== "component").map((value) => ({ value, name: causes[value].name })),
      },
      { at: "excludedComponents", label: "Components left out", kind: "list", hint: keys },
    ],
  },
  {
    key: "campaigns",
    title: "Campaigns",
    hint: "A named fix on a range of serials, at any age of the unit.",
    parts: [
      {
        list: "campaigns",
        row: "Campaign",
        fields: [
          { at: "key", label: "Key", kind: "text" },
          { at: "name", label: "Name", kind: "text" },
          { at: "serials", label: "Serials", kind: "serials", hint: "One range a line: A1000000 to A1499999." },
          { at: "component", label: "Component", kind: "text", hint: "Key of the catalogue." },
          { at: "startsOn", label: "First day", kind: "day" },
          { at: "endsOn", label: "Last day", kind: "day", hint: "Blank: no end." },
          pays,
          { at: "sourceDocument", label: "Bulletin", kind: "text" },
        ],
      },
    ],
  },
  {
    key: "contract",
    title: "Service contract and goodwill",
    parts: [
      {
        at: "contract.type",
        label: "Service contract",
        kind: "choice",
        none: "not a service contract",
        choices: named(["extended", "Extended cover of one appliance"], ["home_service", "Home service"]),
      },
      within("contract.waiting", "Waiting period", "From the day of sale; blank where there is none."),
      money("contract.deductibleCents", "Deductible"),
      money("contract.perClaimLimitCents", "Limit of one claim"),
      within("goodwill.within", "Goodwill may be asked for within", "After the last covered day."),
      { at: "goodwill.authorizationRequired", label: "Goodwill needs an authorization", kind: "flag" },
    ],
  },
  {
    key: "clocks",
    title: "Clocks",
    parts: [
      within("clocks.filing.within", "File within", "Of completion."),
      { at: "clocks.filing.anchorDay", label: "Counting", kind: "choice", choices: counting },
      {
        at: "clocks.filing.by",
        label: "Counts",
        kind: "choice",
        choices: named(["sending", "Our sending"], ["receipt", "The payer’s receipt"]),
      },
      {
        at: "clocks.filing.roll",
        label: "Last day on a weekend or holiday",
        kind: "choice",
        choices: named(["none", "Stays"], ["next_business_day", "Moves to the next working day"]),
      },
      within("clocks.resubmission.within", "Correct within", "Of a rejection."),
      { at: "clocks.resubmission.times", label: "Corrections allowed", kind: "number" },
      within("clocks.partHold.within", "Keep the failed part for"),
      {
        at: "clocks.partHold.from",
        label: "Counted from",
        kind: "choice",
        choices: named(["filed", "Filing"], ["paid", "Payment"]),
      },
      within("repeat.within", "A repeat within", "Of the previous completion is the servicer’s cost; blank: no rule."),
      {
        at: "repeat.same",
        label: "A repeat is the same",
        kind: "choice",
        none: "no rule",
        choices: named(
          ["component", "Component"],
          ["complaint", "Complaint"],
          ["component_or_complaint", "Component or complaint"],
        ),
      },
    ],
  },
  {
    key: "pay",
    title: "Pay",
    hint: "Amounts in the policy’s currency, such as 65.00.",
    parts: [
      {
        at: "pay.labour.kind",
        label: "Labour",
        kind: "choice",
        choices: named(
          ["schedule", "Flat by class of job"],
          ["hours", "Hours × rate"],
          ["cost", "What the job charged"],
        ),
      },
      {
        list: "pay.labour.jobClasses",
        row: "Class of job",
        onlyIf: ["pay.labour.kind", "schedule"],
        fields: [
          { at: "name", label: "Name", kind: "text" },
          { at: "components", label: "Components", kind: "list", hint: keys },
          money("cents", "Pays"),
        ],
      },
      { ...money("pay.labour.otherwiseCents", "Any other job pays"), onlyIf: ["pay.labour.kind", "schedule"] },
      {
        list: "pay.labour.entries",
        row: "Hours",
        onlyIf: ["pay.labour.kind", "hours"],
        fields: [
          { at: "component", label: "Component", kind: "text" },
          { at: "hours", label: "Hours", kind: "number" },
        ],
      },
      { ...money("pay.labour.centsPerHour", "Rate an hour"), onlyIf: ["pay.labour.kind", "hours"] },
      {
        at: "pay.labour.otherwiseHours",
        label: "Hours of any other job",
        kind: "number",
        onlyIf: ["pay.labour.kind", "hours"],
      },
      { at: "pay.labour.capHours", label: "Most hours", kind: "number", onlyIf: ["pay.labour.kind", "hours"] },
      { ...money("pay.labour.capCents", "Most for labour"), onlyIf: ["pay.labour.kind", "cost"] },
      {
        at: "pay.trip.kind",
        label: "Trip",
        kind: "choice",
        choices: named(["included", "Included"], ["flat", "Flat"], ["cost", "What the job charged"]),
      },
      { ...money("pay.trip.cents", "Flat for the trip"), onlyIf: ["pay.trip.kind", "flat"] },
      { ...money("pay.trip.capCents", "Most for the trip"), onlyIf: ["pay.trip.kind", "cost"] },
      { at: "pay.parts.handlingPercent", label: "Handling on parts, percent", kind: "number" },
      money("pay.parts.capCents", "Most for parts"),
      {
        at: "pay.diagnosis.kind",
        label: "Diagnosis without repair",
        kind: "choice",
        choices: named(["none", "Not paid"], ["flat", "Flat"]),
      },
      { ...money("pay.diagnosis.cents", "Flat for a diagnosis"), onlyIf: ["pay.diagnosis.kind", "flat"] },
      money("pay.claimCapCents", "Most for one claim"),
    ],
  },
  {
    key: "authorization",
    title: "Authorization before the repair",
    parts: [
      money("authorization.partsOverCents", "Where parts cost more than"),
      money("authorization.claimOverCents", "Where the claim comes to more than"),
      { at: "authorization.components", label: "For these components", kind: "list", hint: keys },
      { at: "authorization.withoutProofOfPurchase", label: "Without proof of purchase", kind: "flag" },
      within("authorization.validFor", "A number holds for"),
    ],
  },
];
