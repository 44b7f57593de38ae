import { z } from "zod";
import { columnsOf, tableKinds } from "../file-kinds";
import { dateOrders, labourUnits, type Matching } from "./matching";
import { targetFields } from "./target-fields";

const longest = 500;
const text = z.string().max(20_000);
const name = z.string().max(longest);

/** A matching as it comes out of storage or a form: every target exists, and no column of ours is filled twice. */
export const matchingSchema: z.ZodType<Matching> = z
  .object({
    kind: z.enum(tableKinds),
    rowIs: z.enum(["one record", "one part line"]),
    columns: z
      .array(
        z
          .object({ source: text, target: name.optional() })
          .transform(({ source, target }) => ({ source, target: target === "" ? undefined : target })),
      )
      .max(2_000),
    dateOrder: z.enum(dateOrders),
    decimalMark: z.enum([".", ","]),
    labourUnit: z.enum(labourUnits),
    words: z.record(name, z.record(text, text)),
    constants: z.record(name, text),
    dayNumbersFrom: z.union([z.literal(1900), z.literal(1904)]).optional(),
    usualLengths: z.record(name, z.int().positive()).optional(),
  })
  .superRefine((matching, context) => {
    const known = new Set(targetFields(matching.kind).map(({ target }) => target));
    const taken = new Map<string, string>();
    for (const [index, { source, target }] of matching.columns.entries()) {
      if (target === undefined) continue;
      const path = ["columns", index, "target"];
      if (!known.has(target))
        context.addIssue({
          code: "custom",
          path,
          message: `${target} is no column of ${matching.kind}. They are: ${columnsOf(matching.kind).join(", ")}.`,
        });
      const other = taken.get(target);
      if (other !== undefined)
        context.addIssue({
          code: "custom",
          path,
          message: `${source} and ${other} are both matched to ${target}. Choose one of them.`,
        });
      taken.set(target, source);
    }
    for (const target of [...Object.keys(matching.words), ...Object.keys(matching.constants)]) {
      if (!known.has(target))
        context.addIssue({ code: "custom", path: ["words"], message: `${target} is no column of ${matching.kind}.` });
    }
  });
