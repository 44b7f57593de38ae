import { Table } from "@/app/_ui/table";
import type { JobsCounted, WhatIsCounted } from "@/db/queries/what-is-counted";
import type { InServiceBasis } from "@/lib/domain/unit";
import { formatCount } from "@/lib/format/format-count";
import { formatShare } from "@/lib/format/format-share";

interface Line {
  readonly name: string;
  readonly count: number;
  readonly of: number;
  readonly noun: string;
}

/** Of how many units the first day is known, and how. */
export function UnitsCounted({ counted }: { readonly counted: WhatIsCounted }) {
  const { registered, knownFromJobsOnly, neverWatched } = counted;
  const all = registered.reduce((sum, { units }) => sum + units, 0);
  const known = registered.reduce((sum, { basis, units }) => sum + (basis === undefined ? 0 : units), 0);
  const line = (name: string, count: number): Line => ({ name, count, of: all, noun: "units of the register" });
  return (
    <LineTable
      caption="Units"
      lines={[
        line("In the register", all),
        line("… with a known in-service day", known),
        ...registered.map(({ basis, units }) =>
          line(`… ${basis === undefined ? "no day at all: no unit-years" : basisNames[basis]}`, units),
        ),
        line("… gone before anything of them could be seen", neverWatched),
        { ...line("Known only from a job: no unit-years", knownFromJobsOnly), of: 0 },
      ]}
    />
  );
}

const basisNames: Readonly<Record<InServiceBasis, string>> = {
  installed: "by the day of installation",
  delivered: "by the day of delivery",
  sold: "by the day of sale",
  made: "by manufacture and grace",
};

/** Jobs that no rate counts, with the reason; one job can have several. */
export function JobsLeftOut({ jobs }: { readonly jobs: JobsCounted }) {
  const line = (name: string, count: number): Line => ({ name, count, of: jobs.closed, noun: "closed jobs" });
  return (
    <LineTable
      caption="Jobs; one can be left out for several reasons"
      lines={[
        { ...line("On record", jobs.onRecord), of: 0 },
        { ...line("Void, cancelled, estimates, duplicates", jobs.countedAsNothing), of: 0 },
        line("Closed: these are calls", jobs.closed),
        line("… failures of a component", jobs.failures),
        line("… component at fault, but none named: a call", jobs.withoutComponent),
        line("… cause not determined: a call", jobs.causeNotDetermined),
        line("… without a serial: in no rate", jobs.withoutSerial),
        line("… on a unit without unit-years, those without a serial included: in no rate", jobs.withoutExposure),
        line("… before the unit was watched: in no rate", jobs.beforeRecords),
        line("… after the unit was retired: in no rate", jobs.afterRetirement),
        { ...line("Rows of files held back and not corrected: in no number", jobs.rowsSetAside), of: 0 },
      ]}
    />
  );
}

function LineTable({ caption, lines }: { readonly caption: string; readonly lines: readonly Line[] }) {
  return (
    <Table
      caption={caption}
      columns={[
        { key: "name", head: caption.replace(/;.*/, ""), cell: ({ name }) => name },
        { key: "count", head: "Count", kind: "number", cell: ({ count }) => formatCount(count) },
        { key: "share", head: "In 100", kind: "number", cell: shareWords },
      ]}
      rows={lines}
      rowKey={({ name }) => name}
      narrow="scroll"
    />
  );
}

function shareWords({ count, of }: Line): string {
  if (of === 0) return "";
  const share = formatShare(count / of, 1);
  // Never a round 0 for something that happened.
  return count > 0 && share === formatShare(0, 1) ? "under 0.1" : share;
}
