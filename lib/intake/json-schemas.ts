import { z } from "zod";
import { type FileKind, fileKindNames, isTableKind, rowSchemas } from "./file-kinds";
import { shopDocument } from "./parse-shop";

/** The published JSON Schema of one row, or of the document; made from the schema that reads it, so the two cannot part. */
export function jsonSchemaOf(kind: Exclude<FileKind, "policies">): Record<string, unknown> {
  const schema = isTableKind(kind) ? rowSchemas[kind] : shopDocument;
  const { $schema, ...rest } = z.toJSONSchema(schema, { io: "input" });
  return {
    $schema,
    title: isTableKind(kind) ? `One row of ${kind}.csv` : "shop.json",
    description: isTableKind(kind)
      ? `${fileKindNames[kind]}: each cell is text; the header row holds these names in any order. CSV by RFC 4180, UTF-8, commas. A blank cell means unknown.`
      : fileKindNames[kind],
    ...rest,
  };
}

export interface DocumentedColumn {
  readonly name: string;
  readonly needed: boolean;
  readonly description: string;
  readonly example: string;
  /** The words it may hold; empty where it is free. */
  readonly words: readonly string[];
}

/** The same as a table for people. */
export function documentedColumns(kind: Exclude<FileKind, "policies">): readonly DocumentedColumn[] {
  const { properties = {}, required = [] } = z.toJSONSchema(isTableKind(kind) ? rowSchemas[kind] : shopDocument, {
    io: "input",
  });
  return Object.entries(properties).flatMap(([name, property]) => {
    if (typeof property === "boolean") return [];
    const words = (property.enum ?? []).filter((word): word is string => typeof word === "string" && word !== "");
    const [example] = property.examples ?? [];
    return [
      {
        name,
        needed: required.includes(name),
        description: property.description ?? "",
        example: String(example ?? property.const ?? ""),
        words,
      },
    ];
  });
}
