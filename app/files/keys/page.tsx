import type { Metadata } from "next";
import Link from "next/link";
import { Button } from "@/app/_ui/button";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { type Column, Table } from "@/app/_ui/table";
import { readOnly } from "@/db/client";
import { type ApiKey, loadApiKeys } from "@/db/queries/api-keys";
import { formatCounted } from "@/lib/format/format-count";
import { endKey } from "./actions";
import { MakeKey } from "./make-key";

export const metadata: Metadata = { title: "Keys" };
export const dynamic = "force-dynamic";

export default async function KeysPage() {
  const keys = await readOnly(loadApiKeys);
  const inUse = keys.filter(({ revokedAt }) => revokedAt === null);
  return (
    <Page
      above={<Link href="/files/sending">Sending jobs</Link>}
      title={
        inUse.length === 0
          ? "No other program may send jobs"
          : `${formatCounted(inUse.length, "key")} for programs that send jobs`
      }
      margin={<Basis />}
    >
      <MakeKey />
      {keys.length === 0 ? (
        <EmptyState kind="never-used" title="No key has been made" />
      ) : (
        <Table caption="Keys, the latest first" columns={columns} rows={keys} rowKey={({ keyId }) => String(keyId)} />
      )}
    </Page>
  );
}

const columns: readonly Column<ApiKey>[] = [
  { key: "name", head: "For", cell: ({ name }) => name },
  { key: "made", head: "Made", cell: ({ createdAt }) => minute(createdAt) },
  { key: "used", head: "Last used", cell: ({ lastUsedAt }) => (lastUsedAt === null ? "never" : minute(lastUsedAt)) },
  {
    key: "state",
    head: "State",
    cell: ({ keyId, name, revokedAt }) =>
      revokedAt === null ? <EndKey keyId={keyId} name={name} /> : `ended ${minute(revokedAt)}`,
  },
];

function EndKey({ keyId, name }: { readonly keyId: number; readonly name: string }) {
  return (
    <form action={endKey}>
      <input type="hidden" name="key" value={keyId} />
      <Button weight="plain">
        End<span className="only-heard"> the key for {name}</span>
      </Button>
    </form>
  );
}

function minute(instant: string): string {
  return instant.slice(0, 16).replace("T", " ");
}

function Basis() {
  return (
    <>
      <p>A key is shown once. Only its hash is kept: a lost key cannot be shown again, but another can be made.</p>
      <p>
        There is no sign-in yet. The site listens on this computer only, so whoever can use this computer can make and
        end keys.
      </p>
    </>
  );
}
