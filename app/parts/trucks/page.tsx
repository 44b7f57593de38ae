import type { Metadata } from "next";
import Link from "next/link";
import type { AddressValues } from "@/app/_address/address-reader";
import { mayOpen } from "@/app/_people/may-open";
import { EmptyState } from "@/app/_ui/empty-state";
import { Field } from "@/app/_ui/field";
import { FilterForm } from "@/app/_ui/filter-form";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { SelectField } from "@/app/_ui/select-field";
import { readOnly } from "@/db/client";
import { formatCounted } from "@/lib/format/format-count";
import { formatMoney } from "@/lib/format/format-money";
import { plainAmount } from "@/lib/format/plain-amount";
import { PartsTabs } from "../_components/parts-tabs";
import { type LoadedTruck, loadTruck, type TruckView } from "./load-truck";
import { TruckTable } from "./truck-table";
import { inHundred, trialWords, truckFinding } from "./truck-words";

export const metadata: Metadata = { title: "Trucks" };
export const dynamic = "force-dynamic";

export default async function TrucksPage({ searchParams }: { readonly searchParams: Promise<AddressValues> }) {
  await mayOpen("/parts/trucks");
  const values = await searchParams;
  const view = await readOnly((db) => loadTruck(db, values));
  return (
    <Page title={truckFinding(view)} above={<Link href="/parts">Parts</Link>} margin={<Basis view={view} />}>
      <PartsTabs current="trucks" />
      {view.notices.map((notice) => (
        <Notice key={notice} status="note" title={notice} />
      ))}
      {view.technicians.length > 0 && <Question view={view} />}
      {view.truck === undefined || view.truck.visits === 0 ? (
        <EmptyState kind="never-used" title="No visits that took parts">
          <p>What a truck should carry follows from its technician’s closed jobs of the last year.</p>
        </EmptyState>
      ) : (
        <Answer view={view} truck={view.truck} />
      )}
    </Page>
  );
}

function Question({ view }: { readonly view: TruckView }) {
  const { technicians, technician, budgetCents, fillingDays, currency } = view;
  return (
    <FilterForm
      action="/parts/trucks"
      open
      submit="Fill it"
      words={`${technician ?? "No"}’s truck, ${formatMoney({ cents: budgetCents, currency })}, filled every ${formatCounted(fillingDays, "day")}`}
    >
      <SelectField
        label="Technician"
        name="technician"
        choices={technicians.map((name) => ({ value: name, name }))}
        value={technician}
      />
      <Field
        label="Money to spend"
        name="budget"
        inputMode="decimal"
        width="short"
        unit={currency}
        value={plainAmount(budgetCents)}
      />
      <Field label="Days between fillings" name="days" inputMode="numeric" width="short" value={String(fillingDays)} />
    </FilterForm>
  );
}

function Answer({ view, truck }: { readonly view: TruckView; readonly truck: LoadedTruck }) {
  const { stock } = truck;
  if (stock.steps.length === 0)
    return (
      <EmptyState kind="nothing-due" title="No part that the money would buy completes more visits">
        <p>Raise the sum, or the truck carries already what its visits ask for.</p>
      </EmptyState>
    );
  return (
    <>
      {truck.trial !== undefined && <p>{trialWords(truck.trial, true)}</p>}
      <TruckTable view={view} truck={truck} />
      <p>
        No choice for this money could complete more than {inHundred(stock.atMost, stock.visits)} of the visits that
        need parts.
      </p>
    </>
  );
}

function Basis({ view }: { readonly view: TruckView }) {
  const { truck, technician } = view;
  return (
    <>
      {truck !== undefined && (
        <p>
          {formatCounted(truck.visits, "visit")} of {technician} in the last 365 days took parts; of those that say when
          the first visit was, {truck.atFirstVisit.done} of {truck.atFirstVisit.of} were done at it.
          {truck.leftOut > 0 &&
            ` ${formatCounted(truck.leftOut, "visit needs a part", "visits need a part")} whose cost is not known, and ${truck.leftOut === 1 ? "is" : "are"} left out.`}
        </p>
      )}
      <p>
        A visit counts as done at once when each of its parts is in the truck. The next part is always the one that
        completes most more visits per unit of money, several together where one is no use without the other.
      </p>
      <p>
        Visits come at random at last year’s pace, changed as the forecast of their parts expects. For the choice, parts
        of one visit are taken as there or not there independently of each other; the ranges come from 200 years in
        which last year’s visits, with the parts that each took together, come again in another order and number.
      </p>
    </>
  );
}
