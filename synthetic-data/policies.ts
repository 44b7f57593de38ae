// The makers' promises as policy documents in the intake's form. Every number is invented for the demo.

import { day } from "@/lib/calendar/day";
import type { Policy } from "@/lib/domain/policy";
import type { LabourClass } from "@/lib/domain/policy-pay";
import type { CoverTerm } from "@/lib/domain/policy-terms";
import { componentProfiles } from "./component-profiles";
import { type ClassKey, componentClasses, type MakerPromise, type MakerTerms, makerPromises } from "./maker-terms";
import { type MakerKey, makers } from "./models";
import { pumpCampaign } from "./pump-campaign";

/** Every version of every maker's policy. */
export function makerPolicies(): readonly Policy[] {
  const promises = Object.entries(makerPromises) as [MakerKey, MakerPromise][]; // Object.entries loses the key type
  return promises.flatMap(([maker, promise]) => promise.versions.map((version) => policyOf(maker, promise, version)));
}

function policyOf(maker: MakerKey, promise: MakerPromise, version: MakerTerms): Policy {
  const { name } = makers[maker];
  const [first = "purchase", ...fallbacks] = promise.start;
  return {
    key: `${maker}_household`,
    version: version.version,
    name: `${name} household warranty`,
    maker: name,
    payer: { kind: "maker", name },
    appliesTo: { productTypes: [], models: [], serials: [] },
    effectiveFrom: version.effectiveFrom,
    ...(version.effectiveTo === undefined ? {} : { effectiveTo: version.effectiveTo }),
    sourceDocument: `Invented terms of ${name}, version ${version.version}`,
    sourceMark: "invented for the demo",
    approvedBy: "Demo",
    approvedOn: day("2026-01-05"),
    currency: "USD",
    start: { from: { event: first }, fallbacks: fallbacks.map((event) => ({ event })) },
    anchorDay: promise.anchorDay,
    decisiveEvent: "reported",
    classes: classesOf(version),
    terms: termsOf(version),
    caps: [],
    transfer: { kind: "follows_unit" },
    use: { kind: "household_only" },
    territories: ["US"],
    replacementPart: {
      kind: "own_term",
      term: { n: 90, unit: "day" },
      pays: ["parts"],
      combine: "later_of_with_remainder",
    },
    replacementUnit: "remainder_of_original",
    tolling: false,
    excludedCauses: [
      "foreign_object",
      "suds_detergent",
      "installation",
      "supply",
      "surge_lightning",
      "freeze",
      "liquid_pest",
      "commercial_use",
      "consumable",
      "maintenance",
      "misuse_accident",
      "modified_other_repair",
      "blockage_downstream",
      "education",
      "act_of_god",
      "transit",
      "no_fault_found",
    ],
    excludedComponents: ["drain_filter"],
    campaigns: maker === "brackenhall" ? [campaign] : [],
    repeat: { within: { n: 30, unit: "day" }, same: "component_or_complaint" },
    goodwill: { authorizationRequired: true, within: { n: 6, unit: "month" } },
    clocks: {
      filing: {
        within: { n: promise.filingDays, unit: "day" },
        anchorDay: "exclude",
        by: promise.filingBy,
        roll: "none",
      },
      resubmission: { within: { n: 30, unit: "day" }, times: 2 },
      partHold: { within: { n: 60, unit: "day" }, from: "filed" },
    },
    pay: {
      labour: { kind: "schedule", jobClasses: labourClasses, otherwiseCents: 6500 },
      trip: { kind: "flat", cents: 2500 },
      parts: { handlingPercent: maker === "veltrane" ? 10 : 5, capCents: 60_000 },
      diagnosis: maker === "dunmorrow" ? { kind: "flat", cents: 4500 } : { kind: "none" },
      claimCapCents: 90_000,
    },
    authorization: {
      partsOverCents: 30_000,
      components: ["compressor", "sealed_system"],
      withoutProofOfPurchase: true,
      validFor: { n: 60, unit: "day" },
    },
  };
}

const campaign = {
  key: pumpCampaign.key,
  name: pumpCampaign.name,
  serials: [pumpCampaign.serials],
  component: pumpCampaign.component,
  startsOn: pumpCampaign.startsOn,
  pays: ["parts", "labour", "trip"],
  sourceDocument: "Invented service bulletin 26-03",
} as const;

function classesOf({ classYears }: MakerTerms): Policy["classes"] {
  return classKeys(classYears).map((key) => ({ key, name: classNames[key], members: componentClasses[key] }));
}

const classNames: Readonly<Record<ClassKey, string>> = {
  electronics: "Electronics",
  motors_and_pumps: "Motors and pumps",
  sealed_system: "Sealed system",
};

function termsOf({ wholeUnitYears, classYears }: MakerTerms): readonly CoverTerm[] {
  const years = (n: number) => ({ n, unit: "year" }) as const;
  const whole: CoverTerm = {
    covers: { kind: "whole_unit" },
    pays: ["parts", "labour", "trip", "diagnosis"],
    term: years(wholeUnitYears),
  };
  const ofClasses = classKeys(classYears).flatMap((key): readonly CoverTerm[] => {
    const length = classYears[key];
    if (length === undefined) return [];
    const covers = { kind: "class", class: key } as const;
    const parts: CoverTerm = { covers, pays: ["parts"], term: years(length.parts) };
    return length.labour > wholeUnitYears
      ? [parts, { covers, pays: ["labour", "trip"], term: years(length.labour) }]
      : [parts];
  });
  const short: readonly CoverTerm[] = [
    { covers: { kind: "adjustment" }, pays: ["labour"], term: { n: 90, unit: "day" } },
    {
      covers: { kind: "cosmetic" },
      pays: ["parts", "labour"],
      term: { n: 30, unit: "day" },
      from: { event: "delivery" },
    },
  ];
  return [whole, ...ofClasses, ...short];
}

function classKeys(years: MakerTerms["classYears"]): readonly ClassKey[] {
  return Object.keys(years) as ClassKey[]; // Object.keys loses the key type
}

/** Minor up to 45 minutes, major up to 100, heavy above; the sealed system stands alone. */
const labourClasses: readonly LabourClass[] = [
  { name: "Minor repair", components: componentsBetween(0, 45), cents: 6500 },
  { name: "Major repair", components: componentsBetween(46, 100), cents: 9000 },
  { name: "Heavy repair", components: componentsBetween(101, 200), cents: 16_500 },
  { name: "Sealed system", components: ["compressor", "sealed_system"], cents: 29_500 },
];

function componentsBetween(least: number, most: number): readonly string[] {
  return Object.entries(componentProfiles)
    .filter(
      ([key, { minutes }]) => minutes >= least && minutes <= most && key !== "compressor" && key !== "sealed_system",
    )
    .map(([key]) => key);
}
