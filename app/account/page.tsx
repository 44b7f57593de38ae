import type { Metadata } from "next";
import Link from "next/link";
import { mayOpen } from "@/app/_people/may-open";
import { DefinitionList } from "@/app/_ui/definition-list";
import { Page } from "@/app/_ui/page";
import { Plate } from "@/app/_ui/plate";
import { readOnly } from "@/db/client";
import { loadSessions } from "@/db/queries/sessions";
import { loadShop } from "@/db/queries/shop";
import { formatCounted } from "@/lib/format/format-count";
import { roles, roleWords } from "@/lib/people/role";
import { PasswordForm } from "./password-form";
import { SessionTable } from "./session-table";

export const metadata: Metadata = { title: "Your account" };
export const dynamic = "force-dynamic";

export default async function AccountPage() {
  const person = await mayOpen("/account");
  const { sessions, timeZone } = await readOnly(async (db) => ({
    sessions: await loadSessions(db, person.id),
    timeZone: (await loadShop(db)).timeZone,
  }));
  return (
    <Page
      title={`You are signed in at ${formatCounted(sessions.length, "place")}`}
      margin={<p>A session ends after twelve hours; at the desk also after half an hour without a request.</p>}
    >
      <Plate title={person.name}>
        <DefinitionList
          items={[
            { term: "E-mail", detail: person.email, source: "to sign in with" },
            { term: "Role", detail: roles[person.role], source: roleWords[person.role] },
            {
              term: "Second factor",
              detail: person.hasSecondFactor ? "set up" : "none",
              source: "six digits of an authenticator program, asked for after the password",
            },
          ]}
        />
        <p>
          <Link href="/account/second-factor">
            {person.hasSecondFactor ? "New recovery codes, or another authenticator" : "Set up a second factor"}
          </Link>
        </p>
      </Plate>
      <SessionTable sessions={sessions} ownSessionId={person.sessionId} timeZone={timeZone} />
      <Plate title="Another password">
        <PasswordForm email={person.email} />
      </Plate>
    </Page>
  );
}
