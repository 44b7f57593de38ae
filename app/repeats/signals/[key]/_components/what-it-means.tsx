import { Plate } from "@/app/_ui/plate";
import type { Currency } from "@/lib/domain/money";
import { formatCounted } from "@/lib/format/format-count";
import { formatDecimal } from "@/lib/format/format-decimal";
import { formatMoney } from "@/lib/format/format-money";
import { extraWords, outlookOfSignal } from "../../signal-words";
import type { SignalView } from "../load-signal";

/** Extra failures so far and in the half-year to come, in machines, parts, money and claims. */
export function WhatItMeans({ view: { signal, jobs, campaigns } }: { readonly view: SignalView }) {
  const { extraSoFar, extraAhead } = outlookOfSignal(signal);
  const ahead = Math.max(0, extraAhead.point);
  const { partsPerJob, centsPerJob, currency, claimable } = jobs.cost;
  const share = jobs.jobs === 0 ? 0 : claimable / jobs.jobs;
  return (
    <Plate title="What it means">
      <p>
        Extra so far: {extraWords(extraSoFar)}. In the next half-year, if it goes on like this: {extraWords(extraAhead)}{" "}
        more than {formatDecimal(signal.lead.expectedAhead, 1)} that are due anyway.
      </p>
      <p>
        At {formatDecimal(partsPerJob, 1)} parts and{" "}
        {formatMoney({ cents: Math.round(centsPerJob), currency: currency as Currency })} a job so far, that is about{" "}
        {formatCounted(Math.round(ahead * partsPerJob), "part")} and{" "}
        {formatMoney({ cents: Math.round(ahead * centsPerJob), currency: currency as Currency })} of work;{" "}
        {Math.round(100 * share)} in 100 of the jobs so far ({claimable} of {jobs.jobs}) were billed to somebody other
        than the customer, which would make about {formatCounted(Math.round(ahead * share), "claim")}.
      </p>
      {campaigns.map(({ campaign, units }) => (
        <p key={campaign.key}>
          A campaign may pay: “{campaign.name}” names {formatCounted(units, "unit")} of these in service, at any age (
          {campaign.sourceDocument}). Its own wording decides.
        </p>
      ))}
      <p className="small">The count began where it turned up, so “times expected” since then errs a little upwards.</p>
    </Plate>
  );
}
