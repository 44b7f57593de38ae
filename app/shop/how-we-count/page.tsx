import type { Metadata } from "next";
import Link from "next/link";
import { definitionHref, definitions } from "@/app/_ui/definitions";
import { Page } from "@/app/_ui/page";
import { HowRatesAreMade } from "./_components/how-rates-are-made";
import { HowRatesAreShown } from "./_components/how-rates-are-shown";
import { WhatIsCounted } from "./_components/what-is-counted";

export const metadata: Metadata = { title: "How we count" };

export default function HowWeCountPage() {
  return (
    <Page
      title="Every number here is a count over a denominator, and says how sure it is"
      above={<Link href="/shop">Shop</Link>}
      margin={<Contents />}
    >
      <WhatIsCounted />
      <HowRatesAreMade />
      <HowRatesAreShown />
    </Page>
  );
}

function Contents() {
  return (
    <nav aria-label="Definitions">
      <ul className="bare-list">
        {Object.entries(definitions).map(([key, name]) => (
          <li key={key}>
            {/* The entries are this very table's, so its keys are definition keys. */}
            <a href={definitionHref(key as keyof typeof definitions)}>{name}</a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
