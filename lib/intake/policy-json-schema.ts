import { z } from "zod";
import { policyDocument } from "./policy-schema";

/** The published JSON Schema of a policy document, made from the schema that reads it. */
export function policyJsonSchema(): Record<string, unknown> {
  const { $schema, ...rest } = z.toJSONSchema(policyDocument, { io: "input" });
  return {
    $schema,
    title: "Coverage policy",
    description:
      "One dated version of what one payer pays. Days are YYYY-MM-DD; amounts are whole cents of `currency`.",
    ...rest,
  };
}
