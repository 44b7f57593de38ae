"use client";

import "./globals.css";
import { Notice } from "./_ui/notice";
import { Page } from "./_ui/page";

interface Props {
  readonly error: Error & { readonly digest?: string };
}

/** In place of everything, header included, where what stands around every page failed itself. */
export default function SiteError({ error }: Props) {
  return (
    <html lang="en">
      <body>
        <Page title="The site could not be put together" margin={<p>What was stored stands as it was.</p>}>
          <Notice status="act-now" title="What stands around every page failed.">
            <p>
              Load the page again, or <a href="/today">go to Today</a>. If it fails again, tell whoever hosts the site
              the code below.
            </p>
            {error.digest !== undefined && (
              <p>
                Code <code>{error.digest}</code>
              </p>
            )}
          </Notice>
        </Page>
      </body>
    </html>
  );
}
