import type { Metadata } from "next";
import Link from "next/link";
import type { AddressValues } from "@/app/_address/address-reader";
import { mayOpen } from "@/app/_people/may-open";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadSecondFactor } from "@/db/queries/second-factor";
import { formatCounted } from "@/lib/format/format-count";
import { RemoveForm } from "./remove-form";
import { SetUpFactor } from "./set-up-factor";

export const metadata: Metadata = { title: "Second factor" };
export const dynamic = "force-dynamic";

interface Props {
  readonly searchParams: Promise<AddressValues>;
}

export default async function SecondFactorPage({ searchParams }: Props) {
  const person = await mayOpen("/account/second-factor");
  const stored = await readOnly((db) => loadSecondFactor(db, person.id));
  const isFirst = (await searchParams).first === "yes" && !person.hasSecondFactor;
  return (
    <Page
      title={person.hasSecondFactor ? "A second factor is asked for after your password" : "Set up a second factor"}
      above={<Link href="/account">Your account</Link>}
      margin={<Basis />}
    >
      {isFirst && (
        <Notice status="note" title="What you wanted to open needs one">
          <p>
            People, coverage rules, keys, and files that may name customers are opened to you with a second factor only.
          </p>
        </Notice>
      )}
      {person.hasSecondFactor ? (
        <>
          <p>{formatCounted(stored?.recoveryCodesLeft ?? 0, "recovery code is left", "recovery codes are left")}.</p>
          <RemoveForm />
        </>
      ) : (
        <SetUpFactor />
      )}
    </Page>
  );
}

function Basis() {
  return (
    <>
      <p>
        An authenticator is a program on your phone that shows six digits, other ones each half minute (RFC 6238). Any
        will do.
      </p>
      <p>
        Whoever learns your password then still cannot sign in. Nothing is sent anywhere: phone and server each work the
        digits out.
      </p>
    </>
  );
}
