import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import type { AddressValues } from "@/app/_address/address-reader";
import { mayOpen } from "@/app/_people/may-open";
import { FilterForm } from "@/app/_ui/filter-form";
import { Page } from "@/app/_ui/page";
import { groupWords, periodWords } from "../group-words";
import { keptViews } from "../kept-views";
import { lifeQuery } from "../life-address";
import type { DrawnLife } from "../load-component-life";
import { AddressNotices } from "./_components/address-notices";
import { AgeRates } from "./_components/age-rates";
import { ComparisonStarts } from "./_components/comparison-starts";
import { FailureCurve } from "./_components/failure-curve";
import { FittedLife } from "./_components/fitted-life";
import { GroupRows } from "./_components/group-rows";
import { LifeBasis } from "./_components/life-basis";
import { LifeFilterFields } from "./_components/life-filter-fields";
import { RepeatedFailures } from "./_components/repeated-failures";
import { lifeFinding } from "./life-finding";
import { missingWords } from "./missing-words";

export const metadata: Metadata = { title: "When it fails" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly component: string }>;
  readonly searchParams: Promise<AddressValues>;
}

export default async function ComponentLifePage({ params, searchParams }: Props) {
  await mayOpen("/repeats/[component]");
  const { component } = await params;
  const values = await searchParams;
  const view = await keptViews.life(component, values);
  if (view.kind === "unknown-component") notFound();
  const back = <Link href="/repeats">Repeats</Link>;
  if (view.kind === "no-data")
    return (
      <Page above={back} title={`${view.name}: no jobs loaded yet`} margin={<p>Rates need jobs and units.</p>}>
        {null}
      </Page>
    );
  const missing = view.missing && missingWords(view.missing, view.question);
  return (
    <Page
      above={back}
      title={missing === undefined ? lifeFinding(view.name, view.life) : `${view.name}: ${missing.finding}`}
      margin={<LifeBasis view={view} />}
    >
      <AddressNotices notices={view.notices} />
      <FilterForm
        action={`/repeats/${component}`}
        words={`${groupWords(view.question.where, view.words)}, ${periodWords(view.question)}`}
        clearHref={`/repeats/${component}`}
      >
        <LifeFilterFields {...view} />
      </FilterForm>
      {missing === undefined ? <Drawings view={view} /> : <p>{missing.wayOn}</p>}
      <ComparisonStarts view={view} />
    </Page>
  );
}

function Drawings({ view }: { readonly view: DrawnLife }) {
  const { life, name, question, cutOff } = view;
  const file = (which: string) => `/repeats/${question.component}/${which}${lifeQuery(question, cutOff)}`;
  return (
    <>
      <FailureCurve life={life} name={name} csvHref={file("curve.csv")} />
      <FittedLife life={life} csvHref={file("fitted-life.csv")} />
      <AgeRates life={life} csvHref={file("age-bands.csv")} />
      <RepeatedFailures life={life} csvHref={file("repeat-failures.csv")} />
      <GroupRows view={view} />
    </>
  );
}
