import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import type { AddressValues } from "@/app/_address/address-reader";
import { mayOpen } from "@/app/_people/may-open";
import { Field } from "@/app/_ui/field";
import { Page } from "@/app/_ui/page";
import { keptViews } from "../../kept-views";
import { ComparisonPage } from "../_components/comparison-page";

export const metadata: Metadata = { title: "Before and after a day" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly component: string }>;
  readonly searchParams: Promise<AddressValues>;
}

export default async function BeforeAfterPage({ params, searchParams }: Props) {
  await mayOpen("/repeats/[component]/before-after");
  const { component } = await params;
  const values = await searchParams;
  const view = await keptViews.comparison("before-after", component, values);
  if (view.kind === "unknown-component") notFound();
  if (view.kind === "no-data")
    return (
      <Page
        above={<Link href="/repeats">Repeats</Link>}
        title={`${view.name}: no jobs loaded yet`}
        margin={<p>Rates need jobs and units.</p>}
      >
        {null}
      </Page>
    );
  return (
    <ComparisonPage
      view={view}
      kind="before-after"
      field={<Field label="Before and after" name="on" type="date" value={view.second} />}
    />
  );
}
