import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadSheetVersions } from "@/db/queries/sheet-versions";
import { componentOf } from "@/lib/domain/components";
import { productTypeKeys, productTypes } from "@/lib/domain/product-type";
import { formatCounted } from "@/lib/format/format-count";
import { shippedSheet } from "@/lib/sheets/shipped-sheets";
import { SheetForm } from "./sheet-form";
import { SheetPreview } from "./sheet-preview";

export const metadata: Metadata = { title: "Check sheet" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly type: string; readonly component: string }>;
}

export default async function SheetPage({ params }: Props) {
  const { type, component } = await params;
  const productType = productTypeKeys.find((key) => key === type);
  const shipped = productType === undefined ? undefined : shippedSheet(productType, component);
  if (shipped === undefined) notFound();
  const versions = await readOnly((db) => loadSheetVersions(db, shipped));
  const sheet = versions[0]?.sheet ?? shipped;
  const name = componentOf(component)?.name ?? component;
  return (
    <Page
      title={`${name}, ${productTypes[shipped.productType].toLowerCase()}: ${formatCounted(sheet.steps.length, "check")}, version ${sheet.version}`}
      above={<Link href="/shop/sheets">Check sheets</Link>}
      margin={
        <>
          <p>
            What a check measures, between which points, its range, cautions and what it proves stand in the catalogue
            and cannot be edited away. The order within a tier of safety, minutes, the photo and your own words can.
          </p>
          {versions.length === 0 ? (
            <p>Nobody has edited this sheet.</p>
          ) : (
            <ul>
              {versions.map(({ version, publishedAt, by, reason }) => (
                <li key={version}>
                  Version {version}, {publishedAt.slice(0, 10)}, {by}: {reason}
                </li>
              ))}
            </ul>
          )}
        </>
      }
    >
      <SheetPreview sheet={sheet} />
      <SheetForm sheet={sheet} />
    </Page>
  );
}
