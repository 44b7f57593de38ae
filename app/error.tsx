"use client";

import { usePathname } from "next/navigation";
import { useState } from "react";
import { lastTyped } from "./_people/last-typed";
import { Button } from "./_ui/button";
import { DefinitionList } from "./_ui/definition-list";
import { Notice } from "./_ui/notice";
import { Page } from "./_ui/page";

interface Props {
  readonly error: Error & { readonly digest?: string };
  readonly retry: () => void;
}

/** What could not be shown, what still works, and a code to quote. Never mistaken for an empty list. */
export default function PageError({ error, retry }: Props) {
  const path = usePathname();
  const [typed] = useState(() => lastTyped(path));
  return (
    <Page
      title="This page could not be put together"
      margin={
        <p>
          What was stored stands as it was. A change that was just sent is stored whole or not at all: look before
          sending it again.
        </p>
      }
    >
      <Notice status="act-now" title="The data exists, but fetching or reckoning it failed.">
        <p>The other places still work. Try again; if it fails again, quote the code below.</p>
        {error.digest !== undefined && (
          <p>
            Code <code>{error.digest}</code>
          </p>
        )}
      </Notice>
      {typed.length > 0 && (
        <>
          <h2>What stood in the form that you sent last</h2>
          <p>It is kept nowhere else. Copy what you need before you leave this page.</p>
          <DefinitionList items={typed.map(({ label, text }) => ({ term: label, detail: text }))} />
        </>
      )}
      <Button type="button" onClick={retry}>
        Try again
      </Button>
    </Page>
  );
}
