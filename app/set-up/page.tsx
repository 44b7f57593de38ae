import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { setUpCodeNeeded } from "@/app/_people/set-up-code";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadWhetherAnybody } from "@/db/queries/people";
import { SetUpForm } from "./set-up-form";

export const metadata: Metadata = { title: "First set-up" };
export const dynamic = "force-dynamic";

/** Reachable until the owner is made, and never again. */
export default async function SetUpPage() {
  if (await readOnly(loadWhetherAnybody)) notFound();
  return (
    <Page
      title="Make the owner’s account"
      margin={
        <>
          <p>
            The owner may do everything and invites the others. This page is there until the owner is, and not
            afterwards.
          </p>
          <p>Nothing is sent by mail: the e-mail address is the name to sign in with.</p>
        </>
      }
    >
      <SetUpForm codeNeeded={setUpCodeNeeded()} />
    </Page>
  );
}
