import type { Metadata } from "next";
import { mayOpen } from "@/app/_people/may-open";
import { Page } from "@/app/_ui/page";

export const metadata: Metadata = { title: "Signed in again" };
export const dynamic = "force-dynamic";

/** Where somebody comes who signed in again beside a form that was left open. */
export default async function BackPage() {
  const person = await mayOpen("/account/back");
  return (
    <Page
      title={`You are signed in again, ${person.name}`}
      margin={<p>A session ends after twelve hours; at the desk also after half an hour without a request.</p>}
    >
      <p>Go back to the page with what you typed, and send it there. This one can be closed.</p>
    </Page>
  );
}
