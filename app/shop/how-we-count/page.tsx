import type { Metadata } from "next";
import Link from "next/link";
import { connection } from "next/server";
import type { ReactNode } from "react";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { Comparisons } from "./_components/comparisons";
import { Contents } from "./_components/contents";
import contents from "./_components/contents.module.css";
import { HowItIsShown } from "./_components/how-it-is-shown";
import { Lives } from "./_components/lives";
import { ManyGroups } from "./_components/many-groups";
import { Rates } from "./_components/rates";
import { Shares } from "./_components/shares";
import { WhatIsCounted } from "./_components/what-is-counted";
import { WhatIsMissing } from "./_components/what-is-missing";
import { type DefinitionGroup, definitionGroups } from "./definition-groups";
import { exampleWords } from "./example-words";
import { type CountedView, loadCountedView } from "./load-counted-view";

export const metadata: Metadata = { title: "How we count" };

export default async function HowWeCountPage() {
  await connection();
  const sections = groupSections(await readOnly(loadCountedView));
  return (
    <Page
      title="Every number here is a count over a denominator, and says how sure it is"
      above={<Link href="/shop">Shop</Link>}
      margin={
        <div className={contents.beside}>
          <Contents label="Definitions" />
        </div>
      }
    >
      <details className={contents.above}>
        <summary>Contents</summary>
        <Contents label="Contents" />
      </details>
      {definitionGroups.map(({ id, title }) => (
        <section key={id} aria-labelledby={id} className="stack">
          <h2 id={id}>{title}</h2>
          {sections[id]}
        </section>
      ))}
    </Page>
  );
}

function groupSections(view: CountedView): Readonly<Record<DefinitionGroup["id"], ReactNode>> {
  const examples = exampleWords(view);
  return {
    "what-is-counted": <WhatIsCounted view={view} />,
    "what-is-missing": <WhatIsMissing view={view} />,
    rates: <Rates examples={examples} />,
    comparisons: <Comparisons />,
    shares: <Shares />,
    lives: <Lives examples={examples} />,
    many: <ManyGroups />,
    shown: <HowItIsShown />,
  };
}
