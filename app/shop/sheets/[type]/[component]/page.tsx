import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { mayOpen } from "@/app/_people/may-open";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadSheetDraft } from "@/db/queries/sheet-draft";
import { loadSheetModels, loadSheetRanges } from "@/db/queries/sheet-ranges";
import { loadSheetVersions } from "@/db/queries/sheet-versions";
import { loadShop } from "@/db/queries/shop";
import { instantOnClock } from "@/lib/calendar/instant";
import { componentOf } from "@/lib/domain/components";
import { productTypeKeys, productTypes } from "@/lib/domain/product-type";
import { formatCounted } from "@/lib/format/format-count";
import { loosened, looseSteps } from "@/lib/sheets/loose-sheet";
import { shippedSheet } from "@/lib/sheets/shipped-sheets";
import { SheetForm } from "./_editor/sheet-form";
import { RangesSection } from "./_ranges/ranges-section";
import { SheetPreview } from "./sheet-preview";
import { VersionList } from "./version-list";

export const metadata: Metadata = { title: "Check sheet" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly type: string; readonly component: string }>;
  readonly searchParams: Promise<{ readonly version?: string | readonly string[] }>;
}

export default async function SheetPage({ params, searchParams }: Props) {
  await mayOpen("/shop/sheets/[type]/[component]");
  const { type, component } = await params;
  const productType = productTypeKeys.find((key) => key === type);
  const shipped = productType === undefined ? undefined : shippedSheet(productType, component);
  if (shipped === undefined) notFound();
  const { versions, draft, models, ranges, timeZone } = await readOnly(async (db) => {
    const published = await loadSheetVersions(db, shipped);
    const checks = (published[0]?.sheet ?? shipped).steps.map(({ check }) => check);
    return {
      versions: published,
      draft: await loadSheetDraft(db, shipped),
      models: await loadSheetModels(db, shipped.productType),
      ranges: await loadSheetRanges(db, { productType: shipped.productType, checks }),
      timeZone: (await loadShop(db)).timeZone,
    };
  });
  const current = versions[0]?.sheet ?? shipped;
  const wanted = Number((await searchParams).version ?? current.version);
  const shown = versions.find(({ version }) => version === wanted)?.sheet ?? (wanted === 1 ? shipped : current);
  const name = componentOf(component)?.name ?? component;
  const isPast = shown.version !== current.version;
  return (
    <Page
      title={`${name}, ${productTypes[shipped.productType].toLowerCase()}: ${formatCounted(shown.steps.length, "check")}, version ${shown.version}${isPast ? `, no longer in force` : ""}`}
      above={<Link href="/shop/sheets">Check sheets</Link>}
      margin={<VersionList sheet={shipped} versions={versions} shown={shown.version} timeZone={timeZone} />}
    >
      {draft !== undefined && !isPast && (
        <Notice
          status="note"
          title={`A draft of ${draft.savedBy}, kept ${instantOnClock(draft.savedAt, timeZone)}, is not published`}
        >
          <p>
            It holds for no job. Below it is edited; the table shows version {shown.version}, which is in force.
            {draft.editedFrom < current.version &&
              ` It began from version ${draft.editedFrom}, before the present one.`}
          </p>
        </Notice>
      )}
      <SheetPreview sheet={shown} />
      {isPast ? (
        <p>
          <Link href={`/shop/sheets/${type}/${component}`}>Edit the version in force</Link>
        </p>
      ) : (
        <>
          <SheetForm
            key={`${current.version} ${draft === undefined ? "none" : "draft"}`}
            sheet={{ productType: shipped.productType, component, version: current.version }}
            kept={shipped.steps.map(({ check }) => check)}
            steps={draft === undefined ? current.steps.map(loosened) : looseSteps(draft.document)}
            revision={draft?.revision ?? 0}
          />
          <RangesSection sheet={current} models={models} ranges={ranges} timeZone={timeZone} />
        </>
      )}
    </Page>
  );
}
