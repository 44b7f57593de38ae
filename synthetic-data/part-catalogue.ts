import { componentOf, components } from "@/lib/domain/components";
import { componentProfiles } from "./component-profiles";
import { type CsvFile, openCsvFile } from "./csv-file";
import { dayText, numberOfDay } from "./day-text";
import { money } from "./job-row";
import { type MakerKey, makers } from "./models";
import { partCentsOf, partNumberOf, revisedOn, smallPartOf, sundryPartOf } from "./part-lines";

export const partColumns = [
  "part_number",
  "description",
  "component",
  "maker",
  "cost",
  "replaces",
  "effective_on",
] as const;
export type PartColumn = (typeof partColumns)[number];

/** The price list of every part that a repair can use: first numbers, and from the revision on those that replace them. */
export async function writePartCatalogue(path: string): Promise<number> {
  const file: CsvFile<PartColumn> = openCsvFile(path, partColumns);
  for (const maker of Object.keys(makers) as MakerKey[]) {
    // the keys of a record of makers
    const name = makers[maker].name;
    for (const { key } of components.filter((component) => component.key in componentProfiles)) {
      const description = componentOf(key)?.name ?? key;
      const first = partNumberOf(maker, key, revisedOn - 1);
      const listed = { description, component: key, maker: name };
      const cost = (on: number) => money(partCentsOf(maker, key, on));
      const begin = numberOfDay("2021-01-01");
      file.write({ ...listed, part_number: first, cost: cost(begin), effective_on: dayText(begin) });
      const second = partNumberOf(maker, key, revisedOn);
      for (const on of [revisedOn, numberOfDay("2026-01-01")])
        file.write({ ...listed, part_number: second, cost: cost(on), replaces: first, effective_on: dayText(on) });
    }
    for (const part of [smallPartOf(maker), sundryPartOf(maker)])
      file.write({
        part_number: part.part_number,
        description: part.description,
        maker: name,
        cost: part.unit_cost,
        effective_on: "2021-01-01",
      });
  }
  return await file.close();
}
