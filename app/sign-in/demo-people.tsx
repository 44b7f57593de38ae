import { Plate } from "@/app/_ui/plate";
import { Table } from "@/app/_ui/table";
import type { Person } from "@/db/queries/people";
import { demoPassword } from "@/lib/people/demo-people";
import { roles, roleWords } from "@/lib/people/role";

/** The invented company's people, one of each role. Shown, and let in, only while the data is invented. */
export function DemoPeople({ people }: { readonly people: readonly Person[] }) {
  return (
    <Plate title="People of the invented company">
      <p>
        Their common password is <code>{demoPassword}</code>. It opens nothing once a company of your own is loaded.
      </p>
      <Table
        caption="One of each role"
        captionHidden
        columns={[
          { key: "email", head: "E-mail", cell: ({ email }) => email },
          { key: "role", head: "Role", cell: ({ role }) => roles[role] },
          { key: "may", head: "What for", cell: ({ role }) => roleWords[role] },
        ]}
        rows={people}
        rowKey={({ id }) => id}
      />
    </Plate>
  );
}
