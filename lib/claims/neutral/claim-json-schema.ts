import { z } from "zod";
import { neutralClaimDocument, neutralClaimVersion } from "./neutral-claim-document";

/** The published JSON Schema of a neutral claim; made from the schema that types the builder, so the two cannot part. */
export function claimJsonSchema(): Record<string, unknown> {
  const { $schema, ...rest } = z.toJSONSchema(neutralClaimDocument);
  return {
    $schema,
    $id: `urn:${neutralClaimVersion.replaceAll("/", ":")}`,
    title: "A service claim",
    description:
      "One claim with its evidence, independent of any payer. Days are calendar days at the service address, money is whole hundredths of its currency, attachments are named by the SHA-256 of their bytes. null says that something was not stated.",
    ...rest,
  };
}
