import Link from "next/link";
import type { ReactNode } from "react";
import { FilterForm } from "@/app/_ui/filter-form";
import { Page } from "@/app/_ui/page";
import { capitalised } from "@/lib/format/capitalised";
import { comparisonFinding } from "../../comparison-words";
import { groupWords, periodWords } from "../../group-words";
import { lifeQuery } from "../../life-address";
import type { ComparisonKind, LoadedComparison } from "../../load-comparison";
import { missingWords } from "../missing-words";
import { AddressNotices } from "./address-notices";
import { ComparisonAges } from "./comparison-ages";
import { ComparisonBasis } from "./comparison-basis";
import { ComparisonCurves } from "./comparison-curves";
import { ComparisonRates } from "./comparison-rates";
import { ComparisonRepeats } from "./comparison-repeats";
import { LifeFilterFields } from "./life-filter-fields";

interface Props {
  readonly view: LoadedComparison;
  readonly kind: ComparisonKind;
  /** The field that names the second group. */
  readonly field: ReactNode;
}

/** Two groups of one component's failures, or what is missing to have two. */
export function ComparisonPage({ view, kind, field }: Props) {
  const { name, question, cutOff, outcome, words, second } = view;
  const { finding, wayOn } = findingOf(view);
  const more = kind === "compare" ? { with: second } : { on: second };
  const file = (which: string) => `/repeats/${question.component}/${kind}/${which}${lifeQuery(question, cutOff, more)}`;
  // Two groups name themselves; the two sides of a day share theirs.
  const subject = kind === "compare" ? name : `${name}, ${groupWords(question.where, words)}`;
  const back = (
    <>
      <Link href="/repeats">Repeats</Link>,{" "}
      <Link href={`/repeats/${question.component}${lifeQuery(question, cutOff)}`}>{name}</Link>
    </>
  );
  return (
    <Page
      above={back}
      title={`${subject}. ${capitalised(finding)}`}
      margin={<ComparisonBasis view={view} kind={kind} />}
    >
      <AddressNotices notices={view.notices} />
      <FilterForm
        action={`/repeats/${question.component}/${kind}`}
        words={`First group: ${groupWords(question.where, words)}, ${periodWords(question)}`}
        open={outcome.kind !== "compared"}
        submit="Compare these"
      >
        <LifeFilterFields {...view} />
        {field}
      </FilterForm>
      {wayOn !== undefined && <p>{wayOn}</p>}
      {outcome.kind === "compared" && (
        <>
          <ComparisonRates comparison={outcome.comparison} csvHref={file("rates.csv")} />
          <ComparisonCurves comparison={outcome.comparison} csvHref={file("curves.csv")} />
          <ComparisonAges comparison={outcome.comparison} />
          <ComparisonRepeats comparison={outcome.comparison} csvHref={file("repeats.csv")} />
        </>
      )}
    </Page>
  );
}

function findingOf({ outcome }: LoadedComparison): { readonly finding: string; readonly wayOn?: string } {
  switch (outcome.kind) {
    case "compared":
      return { finding: comparisonFinding(outcome.comparison, outcome.verdict) };
    case "not-two":
      return outcome;
    case "missing": {
      const { finding, wayOn } = missingWords(outcome.missing, outcome.side.question);
      return { finding: `${outcome.side.name}: ${finding}`, wayOn };
    }
  }
}
