import { Button } from "@/app/_ui/button";
import { type Column, Table } from "@/app/_ui/table";
import type { Invitation } from "@/db/queries/invitations";
import { roles } from "@/lib/people/role";
import { endLink } from "./actions";

/** Links that were made and not yet used. */
export function OpenLinks({ invitations }: { readonly invitations: readonly Invitation[] }) {
  return (
    <Table
      caption="Links that still open"
      columns={columns}
      rows={invitations}
      rowKey={({ invitationId }) => String(invitationId)}
    />
  );
}

const columns: readonly Column<Invitation>[] = [
  { key: "name", head: "For", cell: ({ name }) => name },
  { key: "email", head: "E-mail", cell: ({ email }) => email },
  {
    key: "what",
    head: "What it opens",
    cell: ({ role, personId }) => (personId === null ? `an account as ${roles[role]}` : "a new password"),
  },
  { key: "by", head: "Made by", cell: ({ madeBy }) => madeBy, wideOnly: true },
  { key: "until", head: "Opens until", cell: ({ expiresAt }) => expiresAt.slice(0, 16) },
  {
    key: "end",
    head: "State",
    cell: ({ invitationId, name }) => (
      <form action={endLink}>
        <input type="hidden" name="invitation" value={invitationId} />
        <Button weight="plain">
          Take back<span className="only-heard"> the link for {name}</span>
        </Button>
      </form>
    ),
  },
];
