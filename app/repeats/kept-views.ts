import type { AddressValues } from "@/app/_address/address-reader";
import { keptAnswers } from "./kept-answers";
import { type ComparisonKind, type ComparisonView, readComparison } from "./load-comparison";
import { type LifeView, readComponentLife } from "./load-component-life";
import { type RatesView, readFailureRates } from "./load-failure-rates";

const [rates, lives, comparisons] = [
  keptAnswers<RatesView>(),
  keptAnswers<LifeView>(),
  keptAnswers<ComparisonView>(),
] as const;

/** Answers to addresses of Repeats as of today: the one path of pages and files, each worked out once while the data stand. */
export const keptViews = {
  rates: (values: AddressValues) => rates(values, (db, today) => readFailureRates(db, values, today)),
  life: (component: string, values: AddressValues) =>
    lives([component, values], (db, today) => readComponentLife(db, component, values, today)),
  comparison: (kind: ComparisonKind, component: string, values: AddressValues) =>
    comparisons([kind, component, values], (db, today) => readComparison(db, kind, { component, values, today })),
} as const;
