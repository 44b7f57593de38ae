import { sql } from "drizzle-orm";
import type { ProductType } from "@/lib/domain/product-type";
import type { Sheet } from "@/lib/sheets/sheet";
import { sheetKey } from "@/lib/sheets/sheet";
import { parseSheetDocument } from "@/lib/sheets/sheet-document";
import { shippedSheets } from "@/lib/sheets/shipped-sheets";
import type { Reader } from "../database-types";

export interface PublishedVersion {
  readonly version: number;
  readonly publishedAt: string;
  readonly by: string;
  readonly reason: string;
  readonly sheet: Sheet;
}

/** The sheets in force for that kind of appliance: the latest that the company published, else those of the program. */
export async function loadSheets(db: Reader, productType: ProductType): Promise<readonly Sheet[]> {
  const rows = await db.rows<{ key: string; version: number; document: unknown }>(sql`
    select distinct on (sheet_key) sheet_key as key, version, document from sheet_versions
    where sheet_key like ${`${productType}/%`} order by sheet_key, version desc`);
  const own = new Map(rows.map(({ key, version, document }) => [key, { version, document }]));
  return shippedSheets()
    .filter((sheet) => sheet.productType === productType)
    .map((shipped) => {
      const edited = own.get(sheetKey(shipped));
      return edited === undefined ? shipped : sheetFrom(shipped, edited.version, edited.document);
    });
}

/** What the company published of one sheet, newest first; empty where it works by the sheet of the program. */
export async function loadSheetVersions(db: Reader, shipped: Sheet): Promise<readonly PublishedVersion[]> {
  const rows = await db.rows<{
    version: number;
    document: unknown;
    publishedAt: string;
    by: string;
    reason: string;
  }>(sql`
    select version, document, published_at::text as "publishedAt", by, reason from sheet_versions
    where sheet_key = ${sheetKey(shipped)} order by version desc`);
  return rows.map(({ document, ...row }) => ({ ...row, sheet: sheetFrom(shipped, row.version, document) }));
}

/** Latest version number of each sheet that was edited, by its key. */
export async function loadEditedSheets(db: Reader): Promise<ReadonlyMap<string, number>> {
  const rows = await db.rows<{ key: string; version: number }>(
    sql`select sheet_key as key, max(version)::integer as version from sheet_versions group by 1`,
  );
  return new Map(rows.map(({ key, version }) => [key, version]));
}

function sheetFrom(shipped: Sheet, version: number, document: unknown): Sheet {
  const read = parseSheetDocument(document);
  if (!read.ok)
    throw new Error(
      `Version ${version} of sheet ${sheetKey(shipped)} is stored wrongly: ${read.problems.map(({ sentence }) => sentence).join(" ")}`,
    );
  return { ...shipped, version, steps: read.steps };
}
