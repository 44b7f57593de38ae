import "@fontsource-variable/atkinson-hyperlegible-next/index.css";
import "@fontsource-variable/atkinson-hyperlegible-mono/index.css";
import "./globals.css";
import type { Metadata, Viewport } from "next";
import type { ReactNode } from "react";
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
  const settings = await readViewSettings();
  return (
    <html lang="en" data-theme={settings.theme}>
      <body>
        <a href="#main" className="skip">
          Skip to the page
        </a>
        <SiteHeader settings={settings} />
        <DemoRibbon />
        {children}
        <SingleKeys on={settings.singleKeys} />
      </body>
    </html>
  );
}
