import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import type { AddressValues } from "@/app/_address/address-reader";
import { mayOpen } from "@/app/_people/may-open";
import { Page } from "@/app/_ui/page";
import { readDay } from "@/lib/calendar/day";
import { formatDay } from "@/lib/format/format-day";
import { formatDecimal } from "@/lib/format/format-decimal";
import { cellWords, onsetWords, outlookOfSignal, ratioWords, signalName } from "../signal-words";
import { AgeComparison } from "./_components/age-comparison";
import { AtRisk } from "./_components/at-risk";
import { Behind } from "./_components/behind";
import { ByProduction } from "./_components/by-production";
import { MarkForms } from "./_components/mark-forms";
import { NoteForm } from "./_components/note-form";
import { Quarters } from "./_components/quarters";
import { SignalBasis } from "./_components/signal-basis";
import { WhatItMeans } from "./_components/what-it-means";
import { loadSignal } from "./load-signal";

export const metadata: Metadata = { title: "Worth a look" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly key: string }>;
  readonly searchParams: Promise<AddressValues>;
}

export default async function SignalPage({ params, searchParams }: Props) {
  await mayOpen("/repeats/signals/[key]");
  const { key } = await params;
  const { as } = await searchParams;
  const view = await loadSignal(decodeURIComponent(key), typeof as === "string" ? readDay(as) : undefined);
  if (view === undefined) notFound();
  const { signal, run, past } = view;
  const { ratio } = outlookOfSignal(signal);
  return (
    <Page
      above={<Link href={past ? `/repeats?as=${run.asOf}` : "/repeats"}>Repeats</Link>}
      title={`${signalName(signal)} — ${ratioWords(ratio)} what their ages predict`}
      margin={<SignalBasis view={view} />}
    >
      <p>
        {signal.observed} counted where units of the same kind and age elsewhere in the fleet would have had{" "}
        {formatDecimal(signal.expected, 1)}, {onsetWords(signal)}, as of {formatDay(run.asOf)}.
        {signal.within.length > 0 &&
          ` Also standing out: ${signal.within.map(({ key: cell }) => cellWords(cell)).join("; ")}.`}
      </p>
      {!past && <MarkForms signal={signal} asOf={run.asOf} />}
      <WhatItMeans view={view} />
      <Quarters signal={signal} />
      <AgeComparison signal={signal} />
      <ByProduction view={view} />
      <Behind view={view} />
      <AtRisk view={view} />
      <NoteForm view={view} />
    </Page>
  );
}
