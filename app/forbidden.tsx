import type { Metadata } from "next";
import { Page } from "./_ui/page";
import { WhoMay } from "./who-may";

export const metadata: Metadata = { title: "Another role may" };

/** For whoever is signed in with a role that may not: who may, and nothing of what would be there. */
export default function Forbidden() {
  return (
    <Page
      title="Your role does not open this"
      margin={<p>Roles are given by the owner, under Shop and there under People.</p>}
    >
      <WhoMay />
      <p>Nothing was changed. The other places are open to you as before.</p>
    </Page>
  );
}
