import type { Metadata } from "next";
import Link from "next/link";
import { connection } from "next/server";
import { mayOpen } from "@/app/_people/may-open";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { Contents } from "./_components/contents";
import contents from "./_components/contents.module.css";
import { definitionGroups } from "./definition-groups";
import { groupSections } from "./group-sections";
import { loadCountedView } from "./load-counted-view";

export const metadata: Metadata = { title: "How we count" };

export default async function HowWeCountPage() {
  await mayOpen("/shop/how-we-count");
  await connection();
  const sections = groupSections(await readOnly(loadCountedView));
  return (
    <Page
      title="Every number here is a count over a denominator, and says how sure it is"
      above={<Link href="/shop">Shop</Link>}
      margin={
        <div className={contents.beside}>
          <p className={contents.basis}>
            Examples that name a model are worked from this company’s own data as they stand now; the others from the
            counts that they state.
          </p>
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
