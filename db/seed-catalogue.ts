import { sql } from "drizzle-orm";
import { components as componentList } from "@/lib/domain/components";
import { productTypes as typeNames } from "@/lib/domain/product-type";
import { symptoms as symptomList } from "@/lib/domain/symptoms";
import { inTransaction } from "./in-transaction";
import { components, componentUses, productTypes, symptoms, symptomUses } from "./schema/catalogue";

/**
 * Puts the words that come with the program into the database, after a migration. Does nothing where they are there,
 * gives a renamed one its new name, and never touches what the company added.
 */
export async function seedCatalogue(): Promise<void> {
  const name = { name: sql`excluded.name` };
  await inTransaction(async (tx) => {
    await tx
      .insert(productTypes)
      .values(Object.entries(typeNames).map(([key, text]) => ({ key, name: text })))
      .onConflictDoUpdate({ target: productTypes.key, set: name });
    await tx
      .insert(components)
      .values(componentList.map(({ key, name: text, partOf }) => ({ key, name: text, partOf: partOf ?? null })))
      .onConflictDoUpdate({ target: components.key, set: { ...name, partOf: sql`excluded.part_of`, batchId: null } });
    await tx
      .insert(componentUses)
      .values(
        componentList.flatMap(({ key, productTypes: types }) =>
          types.map((productType) => ({ component: key, productType })),
        ),
      )
      .onConflictDoNothing();
    await tx
      .insert(symptoms)
      .values(symptomList.map(({ key, name: text }) => ({ key, name: text })))
      .onConflictDoUpdate({ target: symptoms.key, set: name });
    await tx
      .insert(symptomUses)
      .values(
        symptomList.flatMap(({ key, productTypes: types }) =>
          types.map((productType) => ({ symptom: key, productType })),
        ),
      )
      .onConflictDoNothing();
  });
}
