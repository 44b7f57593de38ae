import { join } from "node:path";
import { type CsvFile, openCsvFile } from "./csv-file";
import {
  type ContractColumn,
  contractColumns,
  type JobColumn,
  jobColumns,
  type PartLineColumn,
  type PhotoColumn,
  partLineColumns,
  photoColumns,
  type RangeColumn,
  type ReadingColumn,
  rangeColumns,
  readingColumns,
  type UnitColumn,
  unitColumns,
} from "./file-columns";

/** The CSV files of one demo, open for writing. */
export interface DemoFiles {
  readonly units: CsvFile<UnitColumn>;
  readonly contracts: CsvFile<ContractColumn>;
  readonly jobs: CsvFile<JobColumn>;
  readonly partLines: CsvFile<PartLineColumn>;
  readonly readings: CsvFile<ReadingColumn>;
  readonly ranges: CsvFile<RangeColumn>;
  readonly photos: CsvFile<PhotoColumn>;
}

export function openDemoFiles(folder: string): DemoFiles {
  return {
    units: openCsvFile(join(folder, "units.csv"), unitColumns),
    contracts: openCsvFile(join(folder, "contracts.csv"), contractColumns),
    jobs: openCsvFile(join(folder, "jobs.csv"), jobColumns),
    partLines: openCsvFile(join(folder, "part-lines.csv"), partLineColumns),
    readings: openCsvFile(join(folder, "readings.csv"), readingColumns),
    ranges: openCsvFile(join(folder, "ranges.csv"), rangeColumns),
    photos: openCsvFile(join(folder, "photos.csv"), photoColumns),
  };
}

export async function settleDemoFiles(files: DemoFiles): Promise<void> {
  for (const file of Object.values(files) as CsvFile<never>[]) await file.settle(); // settling needs no column type
}

/** Rows written to each file, without headers. */
export async function closeDemoFiles(files: DemoFiles): Promise<Readonly<Record<keyof DemoFiles, number>>> {
  return {
    units: await files.units.close(),
    contracts: await files.contracts.close(),
    jobs: await files.jobs.close(),
    partLines: await files.partLines.close(),
    readings: await files.readings.close(),
    ranges: await files.ranges.close(),
    photos: await files.photos.close(),
  };
}
