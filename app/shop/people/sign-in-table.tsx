import { type Column, Table } from "@/app/_ui/table";
import type { SignIn } from "@/db/queries/sign-ins";
import { instantOnClock } from "@/lib/calendar/instant";
import { signInOutcomes } from "@/lib/people/sign-in-outcome";

interface Props {
  readonly signIns: readonly SignIn[];
  readonly timeZone: string;
}

/** Who signed in, who tried, and from where, the latest first. */
export function SignInTable({ signIns, timeZone }: Props) {
  return (
    <Table
      caption="Who signed in or tried, the latest first"
      columns={columnsFor(timeZone)}
      rows={signIns}
      rowKey={({ id }) => id}
    />
  );
}

function columnsFor(timeZone: string): readonly Column<SignIn>[] {
  return [
    { key: "at", head: "When", cell: ({ at }) => instantOnClock(at, timeZone) },
    { key: "who", head: "Who", cell: ({ name }) => name ?? "an address that is nobody's here" },
    { key: "what", head: "What came of it", cell: ({ outcome }) => signInOutcomes[outcome] },
    { key: "from", head: "From", cell: ({ cameFrom }) => cameFrom },
    { key: "device", head: "Device", cell: ({ knownDevice }) => (knownDevice ? "used before" : "new"), wideOnly: true },
  ];
}
