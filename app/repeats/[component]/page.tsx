import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import type { AddressValues } from "@/app/_address/address-reader";
import { todayIn } from "@/app/_clock/today";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadShop } from "@/db/queries/shop";
import { loadComponentLife } from "../load-component-life";
import { FailureCurve } from "./_components/failure-curve";
import { FittedLife } from "./_components/fitted-life";
import { LifeBasis } from "./_components/life-basis";
import { RepeatedFailures } from "./_components/repeated-failures";
import { lifeFinding } from "./life-finding";

export const metadata: Metadata = { title: "When it fails" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly component: string }>;
  readonly searchParams: Promise<AddressValues>;
}

export default async function ComponentLifePage({ params, searchParams }: Props) {
  const { component } = await params;
  const values = await searchParams;
  const view = await readOnly(async (db) =>
    loadComponentLife(db, component, values, todayIn((await loadShop(db)).timeZone)),
  );
  if (view.kind === "unknown-component") notFound();
  const back = <Link href="/repeats">Repeats</Link>;
  if (view.kind === "no-data")
    return (
      <Page above={back} title={`${view.name}: no jobs loaded yet`} margin={<p>Rates need jobs and units.</p>}>
        {null}
      </Page>
    );
  return (
    <Page above={back} title={lifeFinding(view.name, view.life)} margin={<LifeBasis life={view.life} />}>
      {view.notices.map((notice) => (
        <Notice key={notice} status="note" title={notice} />
      ))}
      <FailureCurve life={view.life} name={view.name} csvHref={csvAddress(component, values)} />
      <FittedLife life={view.life} />
      <RepeatedFailures life={view.life} />
    </Page>
  );
}

function csvAddress(component: string, values: AddressValues): string {
  const search = new URLSearchParams();
  for (const [name, value] of Object.entries(values)) if (typeof value === "string") search.set(name, value);
  const rest = search.toString();
  return `/repeats/${component}/curve.csv${rest === "" ? "" : `?${rest}`}`;
}
