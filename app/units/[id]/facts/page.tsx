import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { instantIn } from "@/app/_claims/instant-in";
import { mayOpen } from "@/app/_people/may-open";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { Plate } from "@/app/_ui/plate";
import { type Column, Table } from "@/app/_ui/table";
import { readOnly } from "@/db/client";
import { loadShop } from "@/db/queries/shop";
import { loadUnit } from "@/db/queries/unit";
import { loadUnitFacts, type UnitFactsOnFile } from "@/db/queries/unit-facts";
import { formatCounted } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";
import { formatMoney } from "@/lib/format/format-money";
import { dropSpan } from "./actions";
import { FactsForm } from "./facts-form";
import { registerTexts } from "./read-register-form";
import { RegisterForm } from "./register-form";
import { SpanForm } from "./span-form";

export const metadata: Metadata = { title: "Facts for cover" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export default async function UnitFactsPage({ params, searchParams }: Props) {
  await mayOpen("/units/[id]/facts");
  const { id } = await params;
  const { kept } = await searchParams;
  const found = await readOnly(async (db) => {
    const unit = await loadUnit(db, id);
    return unit && { ...unit, onFile: await loadUnitFacts(db, id), timeZone: (await loadShop(db)).timeZone };
  });
  if (found === undefined) notFound();
  const { unit, onFile, timeZone } = found;
  return (
    <Page
      above={<Link href={`/units/${id}`}>{`${unit.maker} ${unit.model}, ${unit.serial ?? "no serial"}`}</Link>}
      title="What decides the cover of this unit"
      margin={<Basis />}
    >
      {kept === "yes" && <Notice status="fine" title="Kept: it decides from now on" />}
      <Plate title="Days of the unit, use and place">
        <RegisterForm unitId={id} stored={registerTexts(unit)} key={onFile.edits.length} />
      </Plate>
      <Plate title="Owner, exchange, serial">
        <FactsForm unitId={id} stored={storedTexts(onFile)} key={onFile.edits.length} />
      </Plate>
      <Plate title="Out for repair under cover">
        {onFile.spans.map(({ fromOn, untilOn, source, enteredBy }) => (
          <form key={fromOn} action={dropSpan} className="cluster">
            <input type="hidden" name="unit" value={id} />
            <input type="hidden" name="fromOn" value={fromOn} />
            <span>
              {formatPlainDay(fromOn)} to {formatPlainDay(untilOn)}: {source} ({enteredBy})
            </span>
            <Button weight="plain">Remove</Button>
          </form>
        ))}
        <SpanForm unitId={id} key={onFile.spans.length} />
      </Plate>
      {onFile.papers.length > 0 && (
        <Table
          caption="Service contracts"
          columns={paperColumns}
          rows={onFile.papers}
          rowKey={({ contractNumber }) => contractNumber}
        />
      )}
      {onFile.edits.length > 0 && (
        <Table
          caption="Who changed what"
          columns={editColumns(timeZone)}
          rows={onFile.edits}
          rowKey={({ editId }) => String(editId)}
        />
      )}
    </Page>
  );
}

function storedTexts({ facts }: UnitFactsOnFile): Readonly<Record<string, string>> {
  if (facts === undefined) return {};
  const { firstUsedOn, acquiredOn, transferRegisteredOn, exchangedOn, exchangedSerial, serialRemoved } = facts;
  const texts = { firstUsedOn, acquiredOn, transferRegisteredOn, exchangedOn, exchangedSerial };
  const filled = Object.entries(texts).flatMap(([name, text]) => (text === null ? [] : [[name, text] as const]));
  return { ...Object.fromEntries(filled), ...(serialRemoved ? { serialRemoved: "yes" } : {}) };
}

const paperColumns: readonly Column<UnitFactsOnFile["papers"][number]>[] = [
  { key: "number", head: "Contract", cell: ({ contractNumber }) => contractNumber },
  { key: "plan", head: "Plan", cell: ({ plan }) => plan ?? "not named" },
  {
    key: "days",
    head: "Runs",
    cell: ({ startsOn, endsOn }) => `${formatPlainDay(startsOn)} to ${formatPlainDay(endsOn)}`,
  },
  {
    key: "cancelled",
    head: "Cancelled",
    cell: ({ cancelledOn }) => (cancelledOn === null ? "–" : formatPlainDay(cancelledOn)),
  },
  {
    key: "wait",
    head: "Waits",
    cell: ({ waitDays }) => (waitDays === 0 ? "as its plan" : formatCounted(waitDays, "day")),
  },
  { key: "share", head: "Holder pays", kind: "number", cell: (paper) => stated(paper.deductibleCents, paper) },
  { key: "limit", head: "Pays in all", kind: "number", cell: (paper) => stated(paper.limitCents, paper) },
];

/** What the paper leaves out its plan says. */
function stated(cents: number | null, { currency }: UnitFactsOnFile["papers"][number]): string {
  return cents === null ? "as its plan" : formatMoney({ cents, currency });
}

const editColumns = (timeZone: string): readonly Column<UnitFactsOnFile["edits"][number]>[] => [
  { key: "field", head: "Field", cell: ({ columnName }) => columnName.replaceAll("_", " ") },
  { key: "change", head: "Change", cell: ({ valueBefore, value }) => `${shown(valueBefore)} → ${shown(value)}` },
  { key: "who", head: "Who", cell: ({ by, at }) => `${by}, ${instantIn(at, timeZone)}` },
  { key: "why", head: "What shows it", cell: ({ reason }) => reason },
];

function shown(value: unknown): string {
  return value === null || value === undefined
    ? "nothing"
    : value === true
      ? "yes"
      : value === false
        ? "no"
        : String(value);
}

function Basis() {
  return (
    <>
      <p>Earlier jobs on the maker’s account add their own time out for repair, and the parts that they fitted.</p>
      <p>Blank means unknown; nothing is guessed. Every change stays on record with its name and paper.</p>
      <p>A field that was set here is not changed by a file any more; the load says where the file differs.</p>
      <p>
        Facts of many units can be loaded as <Link href="/files/columns#unit-facts">a file</Link>, and so can contracts.
      </p>
    </>
  );
}
