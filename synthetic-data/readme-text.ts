import type { Truth } from "./truth";

/** README.md that lies beside the files. */
export function readmeText({ seed, size, until, recordsFrom, heldRows, counts }: Truth): string {
  return `# Demo company

Everything in this folder is invented: company, makers, models, people, units, jobs. It was drawn by chance from stated
rates (seed ${seed}, size ${size}), with records from ${recordsFrom} to ${until}, in the form that Ohmsworth reads.

| file | rows | one row is |
|---|---|---|
| shop.json | | the company itself |
| units.csv | ${counts.units} | a unit in service, the denominators |
| contracts.csv | ${counts.contracts} | a service contract on a unit, by its paper |
| jobs.csv | ${counts.jobs} | a job; only status closed counts |
| part-lines.csv | ${counts.partLines} | a part on a job's invoice |
| readings.csv | ${counts.readings} | a reading or finding of a job |
| ranges.csv | ${counts.ranges} | an expected range on a model's sheet |
| policies.json | | each maker's terms by date of sale |
| photos.csv, photos/ | ${counts.photos} | a drawn picture, standing for a photo |
| truth.json | | what the files were drawn from |

Load them in the order of the table. ${heldRows.length} rows are wrong on purpose and must be held; truth.json names each
(the header is row 1). Other dirt (missing days, serials and suffixes, voids, estimates, duplicates, callbacks opened as
new jobs) must be taken in; truth.json lists the rows of jobs.csv by kind under acceptedDirt.

## How truth.json reads

- **lives**: each component of each model lives in spells. A spell starts at age 0 with the unit or the replacement and its
  cumulative hazard is (age / scaleDays)^shape. Ages count from the best day that the register has: installed, delivered,
  sold, made plus the company's grace.
- **plantedDefects**: multiply that hazard for units made in the weeks from fromWeek to toWeek (production week is in the
  serial: letter, two digits of the year, two of the week).
- **addedTroubles**: extra events in the units of a model: (age / scaleDays)^shape of them by an age in each unit concerned, from
  startsOn; they renew nothing. **decoy** is a cell in which nothing is wrong, whose units only grow old.
- **season**: a refrigerator's age runs faster in summer: a day counts 1 + swing × cos(2π (day − peak) / year) days.
- **calls**: constant rates of calls that are no failure, higher in the first 90 days.
- **observableShare**: of the closed failures, the share whose row still has its right serial, its component and its cause.
- **closedWithin**: chance that a job is closed so many days after it was reported; later ones are not in the files yet.
- **ourShareOfRepairs**: all repairs of a unit in the register reach the company; a unit whose owner left or scrapped it has
  retired_on, drawn apart from its failures, so that exposure ends with our knowledge.
- **fixedJobs**: ten washers that will not drain, told in full, plus their causes; they are not drawn from the lives.
- **chanceOnly**: the cell that looks worst although nothing was planted in it.
- **leaks**: covered failures billed to the customer, and how many were filed under the maker; claims are made later.

Repairs of a unit before ${recordsFrom} (or its recorded_from) happened but are not told, as in any company's records.
`;
}
