import type { Metadata } from "next";
import Link from "next/link";
import { mayOpen } from "@/app/_people/may-open";
import { Page } from "@/app/_ui/page";
import { type Column, Table } from "@/app/_ui/table";
import { readOnly } from "@/db/client";
import { loadOpenInvitations } from "@/db/queries/invitations";
import { loadPeople, type Person } from "@/db/queries/people";
import { loadTechnicians } from "@/db/queries/sheet-lists";
import { loadShop } from "@/db/queries/shop";
import { loadSignIns } from "@/db/queries/sign-ins";
import { instantOnClock } from "@/lib/calendar/instant";
import { formatCounted } from "@/lib/format/format-count";
import { roleKeys, roles, roleWords } from "@/lib/people/role";
import { InviteForm } from "./invite-form";
import { OpenLinks } from "./open-links";
import { PersonActs } from "./person-acts";
import { SignInTable } from "./sign-in-table";

export const metadata: Metadata = { title: "People" };
export const dynamic = "force-dynamic";

/** What one can look through at a glance; all of a year is in the table sign_ins. */
const mostSignIns = 50;

export default async function PeoplePage() {
  const self = await mayOpen("/shop/people");
  const { people, invitations, technicians, signIns, timeZone } = await readOnly(async (db) => ({
    people: await loadPeople(db),
    invitations: await loadOpenInvitations(db),
    technicians: await loadTechnicians(db),
    signIns: await loadSignIns(db, mostSignIns),
    timeZone: (await loadShop(db)).timeZone,
  }));
  const here = people.filter(({ endedAt }) => endedAt === undefined);
  return (
    <Page
      title={`${formatCounted(here.length, "person", "people")} may sign in`}
      above={<Link href="/shop">Shop</Link>}
      margin={<Basis />}
      wide
    >
      <Table
        caption="People, those who may sign in first"
        columns={columnsFor(self.id, technicians, timeZone)}
        rows={people}
        rowKey={({ id }) => id}
      />
      {invitations.length > 0 && <OpenLinks invitations={invitations} />}
      <h2>Invite somebody</h2>
      <InviteForm technicians={technicians} />
      <h2>
        {signIns.total === 0
          ? "Nobody signed in within the last 30 days"
          : `${signIns.failed} of ${formatCounted(signIns.total, "try", "tries")} of the last 30 days failed`}
      </h2>
      <SignInTable signIns={signIns.rows} timeZone={timeZone} />
    </Page>
  );
}

function columnsFor(selfId: string, technicians: readonly string[], timeZone: string): readonly Column<Person>[] {
  return [
    { key: "name", head: "Name", cell: ({ name }) => name },
    { key: "email", head: "E-mail", cell: ({ email }) => email },
    {
      key: "role",
      head: "Role",
      cell: ({ role, technician }) =>
        technician === undefined ? roles[role] : `${roles[role]}, jobs of ${technician}`,
    },
    {
      key: "second",
      head: "Second factor",
      cell: ({ hasSecondFactor }) => (hasSecondFactor ? "set up" : "none"),
      wideOnly: true,
    },
    {
      key: "seen",
      head: "Last here",
      cell: ({ seenAt }) => (seenAt === undefined ? "not signed in" : instantOnClock(seenAt, timeZone)),
      wideOnly: true,
    },
    {
      key: "acts",
      head: "Change",
      cell: (person) => (person.id === selfId ? "you" : <PersonActs person={person} technicians={technicians} />),
    },
  ];
}

function Basis() {
  return (
    <>
      <p>
        A change of role ends what somebody has open: they sign in again. Whoever is taken off keeps their name beside
        what they did.
      </p>
      <p>
        Who signed in, and who tried, is kept for a year. Of an address that is nobody's here nothing is kept, since
        people type their passwords there too.
      </p>
      <dl>
        {roleKeys.map((role) => (
          <div key={role}>
            <dt>{roles[role]}</dt>
            <dd className="small soft">{roleWords[role]}</dd>
          </div>
        ))}
      </dl>
    </>
  );
}
