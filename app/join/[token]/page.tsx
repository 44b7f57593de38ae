import type { Metadata } from "next";
import { DefinitionList } from "@/app/_ui/definition-list";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { findInvitation } from "@/db/queries/invitations";
import { roles, roleWords } from "@/lib/people/role";
import { JoinForm } from "./join-form";

export const metadata: Metadata = { title: "Your account", referrer: "no-referrer" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly token: string }>;
}

/** Where a link leads that the owner handed over. One that was used, ended or grew old tells nothing but that. */
export default async function JoinPage({ params }: Props) {
  const { token } = await params;
  const invitation = await readOnly((db) => findInvitation(db, token));
  if (invitation === undefined)
    return (
      <Page title="This link no longer opens" margin={<p>A link opens once, and for a week.</p>}>
        <EmptyState kind="nothing-due" title="It was used, was taken back, or is too old">
          <p>Ask the owner for another.</p>
        </EmptyState>
      </Page>
    );
  const { name, email, role, personId } = invitation;
  return (
    <Page
      title={personId === null ? `Welcome, ${name}` : `A new password for ${name}`}
      margin={<p>The link opens once. Nobody else learns the password: only a hash of it is kept.</p>}
    >
      <DefinitionList
        items={[
          { term: "E-mail", detail: email, source: "to sign in with" },
          { term: "Role", detail: roles[role], source: roleWords[role] },
        ]}
      />
      <JoinForm token={token} email={email} />
    </Page>
  );
}
