import { columnsOf } from "../file-kinds";
import { jsonSchemaOf } from "../json-schemas";
import { listsOfJobs, type RecordKind } from "./read-job-records";

type Schema = Readonly<Record<string, unknown>>;

/** The published JSON Schema of what `readJobRecords` takes; its columns come from the schemas that read them. */
export function jobRecordsSchema(mostJobs: number): Schema {
  const lists = Object.entries(listsOfJobs).map(([name, { kind, numbered }]) => [
    name,
    { type: ["array", "null"], items: rowSchema(kind, [numbered, "job_number"]) },
  ]);
  const job = rowSchema("jobs", []);
  return {
    $schema: "https://json-schema.org/draft/2020-12/schema",
    title: "Closed jobs with their part lines and readings",
    description:
      "Every value may be a text. Numbers may be numbers, yes and no may be true and false, and null is a blank: unknown. Days are YYYY-MM-DD.",
    type: "object",
    properties: {
      jobs: {
        type: "array",
        minItems: 1,
        maxItems: mostJobs,
        items: { ...job, properties: { ...(job.properties as Schema), ...Object.fromEntries(lists) } }, // made by rowSchema below
      },
    },
    required: ["jobs"],
    additionalProperties: false,
  };
}

/** @param given columns that the sender may leave out because they follow from the place of the row */
function rowSchema(kind: RecordKind, given: readonly string[]): Schema {
  const { properties, required } = jsonSchemaOf(kind) as {
    properties: Record<string, Schema>;
    required: readonly string[];
  }; // every row schema is an object with both
  return {
    type: "object",
    properties: Object.fromEntries(columnsOf(kind).map((column) => [column, looser(properties[column] ?? {})])),
    required: required.filter((column) => !given.includes(column)),
    additionalProperties: false,
  };
}

function looser({ description, examples, ...text }: Schema): Schema {
  return { description, examples, anyOf: [text, { type: ["number", "boolean", "null"] }] };
}
