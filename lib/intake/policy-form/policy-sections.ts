import { causeKeys, causes } from "@/lib/domain/cause";
import { payerKinds } from "@/lib/domain/job";
import { currencies } from "@/lib/domain/money";
import { productTypeKeys, productTypes } from "@/lib/domain/product-type";
import { sourceMarks } from "@/lib/domain/reading";
import type { FormSection } from "./form-field";
import { counting, events, keys, named, own, pays, within } from "./form-parts";
import { policyPaySections } from "./policy-pay-sections";

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
      {
        at: "designation",
        label: "The paper calls itself",
        kind: "choice",
        none: "neither",
        choices: named(["full", "A full warranty"], ["limited", "A limited warranty"]),
        hint: "United States. A full warranty follows the unit and asks for no registration.",
      },
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
          within("from.plus", "Own start, after", "Grace, usually blank."),
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
  ...policyPaySections,
];
