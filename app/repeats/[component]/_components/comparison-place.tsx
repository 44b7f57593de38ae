import Link from "next/link";
import { notFound } from "next/navigation";
import type { ReactNode } from "react";
import type { AddressValues } from "@/app/_address/address-reader";
import { Page } from "@/app/_ui/page";
import { keptViews } from "../../kept-views";
import type { ComparisonKind, LoadedComparison } from "../../load-comparison";
import { ComparisonPage } from "./comparison-page";

interface Props {
  readonly kind: ComparisonKind;
  readonly component: string;
  readonly values: AddressValues;
  /** The field that names the second group. */
  readonly field: (view: LoadedComparison) => ReactNode;
}

/** What an address of two groups asks, or what there must be before it can be answered. */
export async function ComparisonPlace({ kind, component, values, field }: Props) {
  const view = await keptViews.comparison(kind, component, values);
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
  return <ComparisonPage view={view} kind={kind} field={field(view)} />;
}
