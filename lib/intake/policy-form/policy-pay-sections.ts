import type { FormSection } from "./form-field";
import { counting, keys, money, named, within } from "./form-parts";

/** The later half of the form: contract, clocks, amounts, authorization. */
export const policyPaySections: readonly FormSection[] = [
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
      {
        at: "goodwill.authorizationRequired",
        label: "Goodwill",
        kind: "answer",
        none: "not offered",
        choices: named(["yes", "Needs an authorization"], ["no", "Without an authorization"]),
      },
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
      {
        at: "clocks.filing.holidays",
        label: "Holidays of the payer",
        kind: "list",
        hint: "Days such as 2026-12-25, between commas.",
        mayBeAbsent: true,
        onlyIf: ["clocks.filing.roll", "next_business_day"],
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
      {
        at: "authorization.secondOf",
        label: "For a second one on the same unit",
        kind: "list",
        hint: keys,
        mayBeAbsent: true,
      },
      { at: "authorization.withoutProofOfPurchase", label: "Without proof of purchase", kind: "flag" },
      { at: "authorization.diagnosisOnly", label: "For a diagnosis without a repair", kind: "flag", mayBeAbsent: true },
      within("authorization.validFor", "A number holds for"),
    ],
  },
];
