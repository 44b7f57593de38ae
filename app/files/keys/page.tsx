import type { Metadata } from "next";
import Link from "next/link";
import { mayOpen } from "@/app/_people/may-open";
import { Button } from "@/app/_ui/button";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { type Column, Table } from "@/app/_ui/table";
import { readOnly } from "@/db/client";
import { type ApiKey, loadApiKeys } from "@/db/queries/api-keys";
import { formatCounted } from "@/lib/format/format-count";
import { keyScopes } from "@/lib/people/key-scope";
import { endKey } from "./actions";
import { MakeKey } from "./make-key";

export const metadata: Metadata = { title: "Keys" };
export const dynamic = "force-dynamic";

export default async function KeysPage() {
  await mayOpen("/files/keys");
  const keys = await readOnly(loadApiKeys);
  const inUse = keys.filter((key) => !isOver(key));
  return (
    <Page
      above={<Link href="/files/sending">Sending jobs</Link>}
      title={inUse.length === 0 ? "No key is in use" : `${formatCounted(inUse.length, "key is", "keys are")} in use`}
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
  { key: "may", head: "May", cell: ({ scope }) => keyScopes[scope] },
  {
    key: "made",
    head: "Made",
    cell: ({ createdAt, madeBy }) => `${minute(createdAt)}${madeBy === "" ? "" : ` by ${madeBy}`}`,
  },
  { key: "until", head: "Until", cell: ({ expiresAt }) => (expiresAt === null ? "no end" : minute(expiresAt)) },
  { key: "used", head: "Last used", cell: ({ lastUsedAt }) => (lastUsedAt === null ? "never" : minute(lastUsedAt)) },
  {
    key: "state",
    head: "State",
    cell: (key) => (isOver(key) ? overWords(key) : <EndKey keyId={key.keyId} name={key.name} />),
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

function isOver({ revokedAt, expiresAt }: ApiKey): boolean {
  return revokedAt !== null || (expiresAt !== null && new Date(expiresAt) <= new Date());
}

function overWords({ revokedAt }: ApiKey): string {
  return revokedAt === null ? "has run out" : `ended ${minute(revokedAt)}`;
}

function minute(instant: string): string {
  return instant.slice(0, 16).replace("T", " ");
}

function Basis() {
  return (
    <>
      <p>A key is shown once. Only its hash is kept: a lost key cannot be shown again, but another can be made.</p>
      <p>A key opens what it was made for until its day, or until it is ended here; what was sent with it stays.</p>
    </>
  );
}
