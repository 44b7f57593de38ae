import Link from "next/link";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";

/** For the address of a draft that was added or dropped. */
export function DraftGone() {
  return (
    <Page
      above={<Link href="/files">Files in</Link>}
      title="This file is no longer waiting"
      margin={<p>A file waits until it is added or dropped.</p>}
    >
      <EmptyState kind="never-used" title="It was added, or dropped">
        <p>
          <Link href="/files/new">Choose it again</Link>: a file that was added already is recognised and not added
          twice.
        </p>
      </EmptyState>
    </Page>
  );
}
