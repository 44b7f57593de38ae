import type { Metadata } from "next";
import { redirect } from "next/navigation";
import type { AddressValues } from "@/app/_address/address-reader";
import { safeWay } from "@/app/_people/safe-way";
import { signedIn } from "@/app/_people/signed-in";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadPeople, loadWhetherAnybody } from "@/db/queries/people";
import { loadShop } from "@/db/queries/shop";
import { DemoPeople } from "./demo-people";
import { SignInForm } from "./sign-in-form";

export const metadata: Metadata = { title: "Sign in" };
export const dynamic = "force-dynamic";

interface Props {
  readonly searchParams: Promise<AddressValues>;
}

export default async function SignInPage({ searchParams }: Props) {
  const values = await searchParams;
  const to = safeWay(values.to);
  if ((await signedIn()) !== undefined) redirect(to);
  const { anybody, demo } = await readOnly(async (db) => ({
    anybody: await loadWhetherAnybody(db),
    demo: (await loadShop(db)).demo ? (await loadPeople(db)).filter((person) => person.demo && !person.endedAt) : [],
  }));
  if (!anybody) redirect("/set-up");
  return (
    <Page title="Sign in" margin={<Basis />}>
      {values.done === "out" && <Notice status="fine" title="You are signed out" />}
      {values.done === "password" && <Notice status="fine" title="The new password holds. Sign in with it" />}
      <SignInForm to={to} />
      {demo.length > 0 && <DemoPeople people={demo} />}
    </Page>
  );
}

function Basis() {
  return (
    <>
      <p>
        Whoever has no account gets a link from the owner. Whoever forgot the password gets a new link the same way.
      </p>
      <p>
        After some wrong tries the next one has to wait; from a device that you have used before you are never shut out
        by others.
      </p>
    </>
  );
}
