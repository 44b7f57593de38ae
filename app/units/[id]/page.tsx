import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { mayOpen } from "@/app/_people/may-open";
import { ButtonLink } from "@/app/_ui/button-link";
import { type Definition, DefinitionList } from "@/app/_ui/definition-list";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { Plate } from "@/app/_ui/plate";
import { type Column, Table } from "@/app/_ui/table";
import { Tag } from "@/app/_ui/tag";
import { readOnly } from "@/db/client";
import { loadUnit, type UnitWithJobs } from "@/db/queries/unit";
import { type Day, daysBetween } from "@/lib/calendar/day";
import { causes } from "@/lib/domain/cause";
import { componentOf } from "@/lib/domain/components";
import { productTypes } from "@/lib/domain/product-type";
import { formatCounted } from "@/lib/format/format-count";
import { formatDay, formatPlainDay } from "@/lib/format/format-day";

export const metadata: Metadata = { title: "Unit" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly id: string }>;
}

type Row = UnitWithJobs["jobs"][number] & { readonly ageDays: number | undefined };

export default async function UnitPage({ params }: Props) {
  await mayOpen("/units/[id]");
  const { id } = await params;
  const found = await readOnly((db) => loadUnit(db, id));
  if (found === undefined) notFound();
  const { unit, jobs, inServiceOn } = found;
  const rows: Row[] = jobs.map((job) => ({
    ...job,
    ageDays: inServiceOn && daysBetween(inServiceOn, job.requestedOn ?? job.completedOn),
  }));
  return (
    <Page
      above={<Link href="/units">Units</Link>}
      title={`${unit.maker} ${unit.model}, ${unit.serial ?? "no serial"}: ${formatCounted(jobs.length, "job")}`}
      margin={<Margin found={found} />}
      actions={<ButtonLink href={`/units/${id}/facts`}>Facts for cover</ButtonLink>}
    >
      <Plate title="Rating plate">
        <DefinitionList items={plateOf(found)} />
      </Plate>
      {rows.length === 0 ? (
        <EmptyState kind="nothing-due" title="No job on this unit yet" />
      ) : (
        <Table caption="Jobs, the latest first" columns={columns} rows={rows} rowKey={(row) => row.jobNumber} />
      )}
    </Page>
  );
}

const columns: readonly Column<Row>[] = [
  {
    key: "job",
    head: "Job",
    cell: (row) => (
      <Link href={`/jobs/${encodeURIComponent(row.jobNumber)}`} className="nowrap">
        {row.jobNumber}
      </Link>
    ),
  },
  {
    key: "completed",
    head: "Completed",
    cell: (row) => <span className="nowrap">{formatPlainDay(row.completedOn)}</span>,
  },
  { key: "age", head: "Days in service", kind: "number", wideOnly: true, cell: (row) => row.ageDays ?? "–" },
  { key: "complaint", head: "Complaint", wideOnly: true, cell: (row) => row.complaint || "–" },
  {
    key: "finding",
    head: "Finding",
    cell: (row) => {
      if (row.status !== "closed") return `${row.status}: not counted`;
      const component = row.component === undefined ? undefined : (componentOf(row.component)?.name ?? row.component);
      return row.cause === "component" ? `${component ?? "no component named"} failed` : causes[row.cause].name;
    },
  },
];

function plateOf({ unit, inServiceOn, inServiceBasis }: UnitWithJobs): Definition[] {
  const day = (term: string, value: Day | undefined): Definition[] =>
    value === undefined ? [] : [{ term, detail: formatDay(value) }];
  const made: Definition[] =
    unit.madeFrom === undefined || unit.madeUntil === undefined
      ? []
      : [
          {
            term: "Made",
            detail:
              unit.madeFrom === unit.madeUntil
                ? formatDay(unit.madeFrom)
                : `between ${formatPlainDay(unit.madeFrom)} and ${formatPlainDay(unit.madeUntil)}`,
          },
        ];
  return [
    { term: "Maker", detail: unit.maker },
    { term: "Model", detail: <Tag>{unit.model}</Tag> },
    { term: "Serial", detail: unit.serial === undefined ? "not given" : <Tag>{unit.serial}</Tag> },
    { term: "Appliance", detail: productTypes[unit.productType] },
    ...made,
    ...day("Shipped", unit.shippedOn),
    ...day("Sold", unit.soldOn),
    ...day("Delivered", unit.deliveredOn),
    ...day("Installed", unit.installedOn),
    ...day("Occupied", unit.occupiedOn),
    ...day("Registered", unit.registeredOn),
    {
      term: "In service",
      detail: inServiceOn === undefined ? "not known" : formatDay(inServiceOn),
      source: inServiceBasis && `counted from the day it was ${inServiceBasis}`,
    },
    ...day("Retired", unit.retiredOn),
    { term: "Use", detail: unit.use },
    { term: "Stands in", detail: unit.territory ?? "not known" },
    ...(unit.ownerNumber > 1 ? [{ term: "Owner", detail: `number ${unit.ownerNumber}` }] : []),
  ];
}

function Margin({ found }: { readonly found: UnitWithJobs }) {
  return (
    <>
      {!found.identified && (
        <p>A placeholder: its job came without a serial. It is in no rate until the serial is known.</p>
      )}
      {found.identified && !found.inRegister && (
        <p>Known only from its jobs, so it carries no exposure and is in no rate.</p>
      )}
      {found.inRegister && found.inServiceOn === undefined && <p>No day of service is known, so it is in no rate.</p>}
      <p>Dates stand as they were loaded, or as Facts for cover sets them; a missing one is not guessed.</p>
      {found.batchId !== null && (
        <p>
          From <Link href={`/files/${found.batchId}`}>load {found.batchId}</Link>
        </p>
      )}
    </>
  );
}
