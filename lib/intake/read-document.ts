import type { FileKind } from "./file-kinds";
import { shopSchemaName } from "./parse-shop";
import type { FileProblem } from "./parsed";

export type DocumentReading =
  /** Parts are read each by itself: the policies of a document, or the shop as its only part. */
  | { readonly ok: true; readonly kind: FileKind; readonly parts: readonly unknown[] }
  | { readonly ok: false; readonly problems: readonly FileProblem[] };

export const policiesSchemaName = "ohmsworth/policies/1";
const longestDocumentBytes = 20_000_000;

/** A JSON document of ours, recognised by its "schema". */
export function readDocument(bytes: Uint8Array, stated: FileKind | undefined): DocumentReading {
  if (bytes.length > longestDocumentBytes)
    return refuse(`The document is larger than ${longestDocumentBytes / 1_000_000} MB.`, "Split it.");
  let document: unknown;
  try {
    document = JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
  } catch (error) {
    return refuse(
      `The document is not JSON in UTF-8: ${error instanceof Error ? error.message : String(error)}.`,
      "Correct it at that place.",
    );
  }
  const { schema, policies } = document as { schema?: unknown; policies?: unknown }; // begins with a brace, so it is an object
  const kind = schema === shopSchemaName ? "shop" : schema === policiesSchemaName ? "policies" : undefined;
  if (kind === undefined)
    return refuse(
      `The document's "schema" is none of ours.`,
      `Write "schema": "${shopSchemaName}" or "${policiesSchemaName}".`,
    );
  if (stated !== undefined && stated !== kind)
    return refuse(`The document is of the kind ${kind}, not ${stated}.`, "Name the kind that it is, or none.");
  if (kind === "shop") return { ok: true, kind, parts: [document] };
  if (!Array.isArray(policies)) return refuse(`The document has no list "policies".`, `Write "policies": [ … ].`);
  return { ok: true, kind, parts: policies };
}

function refuse(problem: string, fix: string): DocumentReading {
  return { ok: false, problems: [{ problem, fix }] };
}
