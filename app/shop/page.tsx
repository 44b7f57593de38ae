import type { Metadata } from "next";
import { connection } from "next/server";
import { mayOpen } from "@/app/_people/may-open";
import { ButtonLink } from "@/app/_ui/button-link";
import { DefinitionList } from "@/app/_ui/definition-list";
import { EmptyState } from "@/app/_ui/empty-state";
import { HowCounted } from "@/app/_ui/how-counted";
import { Page } from "@/app/_ui/page";
import { Plate } from "@/app/_ui/plate";
import { readOnly } from "@/db/client";
import { loadShop } from "@/db/queries/shop";
import { may } from "@/lib/people/permissions";
import { shopFacts } from "./shop-facts";

export const metadata: Metadata = { title: "Shop" };

export default async function ShopPage() {
  const person = await mayOpen("/shop");
  await connection();
  const shop = await readOnly(loadShop);
  return (
    <Page
      title={shop.name === "" ? "This shop has not been set up" : `How ${shop.name} is set up`}
      margin={<Basis />}
      actions={
        <>
          <ButtonLink href="/shop/coverage">Coverage</ButtonLink>
          <ButtonLink href="/shop/sheets">Check sheets</ButtonLink>
          <ButtonLink href="/shop/how-we-count">How we count</ButtonLink>
          <ButtonLink href="/shop/reporting-delay">How late jobs come in</ButtonLink>
          {may(person.role, "health.see") && <ButtonLink href="/shop/health">Health</ButtonLink>}
          {may(person.role, "customers.erase") && <ButtonLink href="/shop/keeping">Erasing and keeping</ButtonLink>}
          {may(person.role, "people.keep") && <ButtonLink href="/shop/people">People</ButtonLink>}
        </>
      }
    >
      {shop.name === "" ? (
        <EmptyState kind="never-used" title="No settings have been loaded">
          <p>
            Until they are, money is in {shop.currency} and days are days in {shop.timeZone}.
          </p>
        </EmptyState>
      ) : (
        <Plate title={shop.name}>
          <DefinitionList items={shopFacts(shop)} />
        </Plate>
      )}
    </Page>
  );
}

function Basis() {
  return (
    <p>
      These settings decide the <HowCounted of="in-service-day" /> of units without better dates, the{" "}
      <HowCounted of="window">time watched</HowCounted>, and which calendar day it is.
    </p>
  );
}
