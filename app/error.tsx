"use client";

import { Button } from "./_ui/button";
import { Notice } from "./_ui/notice";
import { Page } from "./_ui/page";

interface Props {
  readonly error: Error & { readonly digest?: string };
  readonly retry: () => void;
}

/** What could not be shown, what still works, and a code to quote. Never mistaken for an empty list. */
export default function PageError({ error, retry }: Props) {
  return (
    <Page
      title="This page could not be put together"
      margin={
        <p>
          What was stored stands as it was. A change that was just sent is stored whole or not at all: look before
          sending it again. What was typed and not sent has to be typed again.
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
      <Button type="button" onClick={retry}>
        Try again
      </Button>
    </Page>
  );
}
