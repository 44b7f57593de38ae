import "@fontsource-variable/atkinson-hyperlegible-next/index.css";
import "@fontsource-variable/atkinson-hyperlegible-mono/index.css";
import "./globals.css";
import type { Metadata, Viewport } from "next";
import { connection } from "next/server";
import type { ReactNode } from "react";
import { IllBanner } from "./_health/ill-banner";
import { SessionKeeper } from "./_people/session-keeper";
import { signedIn } from "./_people/signed-in";
import { SingleKeys } from "./_ui/single-keys";
import { SiteHeader } from "./_ui/site-header";
import { readViewSettings } from "./_ui/view-settings";
import { DemoRibbon } from "./demo-ribbon";

export const metadata: Metadata = { title: { default: "Ohmsworth", template: "%s · Ohmsworth" } };
export const viewport: Viewport = { width: "device-width", initialScale: 1 };

interface Props {
  readonly children: ReactNode;
}

export default async function Layout({ children }: Props) {
  const [settings, person] = await Promise.all([readViewSettings(), whoever()]);
  return (
    <html lang="en" data-theme={settings.theme}>
      <body>
        <a href="#main" className="skip">
          Skip to the page
        </a>
        <SiteHeader settings={settings} person={person} />
        <IllBanner />
        <DemoRibbon />
        {children}
        <SingleKeys on={settings.singleKeys} />
        {person !== undefined && <SessionKeeper personId={person.id} />}
      </body>
    </html>
  );
}

/** A page whose database cannot be reached has its own message; the strip above it then shows nobody. */
async function whoever() {
  await connection();
  try {
    return await signedIn();
  } catch {
    return undefined;
  }
}
