import type { Metadata } from "next";
import { headers } from "next/headers";
import { redirect } from "next/navigation";
import type { AddressValues } from "@/app/_address/address-reader";
import { loadSession } from "@/app/_people/load-signed-in";
import { safeWay } from "@/app/_people/safe-way";
import { Page } from "@/app/_ui/page";
import { CodeForm } from "./code-form";

export const metadata: Metadata = { title: "Second factor" };
export const dynamic = "force-dynamic";

interface Props {
  readonly searchParams: Promise<AddressValues>;
}

export default async function CodePage({ searchParams }: Props) {
  const to = safeWay((await searchParams).to);
  const session = await loadSession(await headers());
  if (session === undefined) redirect("/sign-in");
  if (!session.half) redirect(to);
  return (
    <Page
      title="Show your second factor"
      above={<a href="/sign-in">Sign in as somebody else</a>}
      margin={
        <>
          <p>Each code is taken once. If your phone is lost, type one of your recovery codes instead.</p>
          <p>Without either, another owner gives you a new link; the only owner asks whoever keeps the server.</p>
        </>
      }
    >
      <CodeForm to={to} />
    </Page>
  );
}
