import { Notice } from "@/app/_ui/notice";
import { type Column, Table } from "@/app/_ui/table";
import type { SheetModel, SheetRange } from "@/db/queries/sheet-ranges";
import { instantOnClock } from "@/lib/calendar/instant";
import { formatRange } from "@/lib/format/format-reading";
import { checkOfStep, type Sheet, sheetKey } from "@/lib/sheets/sheet";
import { LiftForm } from "./lift-form";
import { RangeForm } from "./range-form";

interface Props {
  readonly sheet: Sheet;
  readonly models: readonly SheetModel[];
  readonly ranges: readonly SheetRange[];
  readonly timeZone: string;
}

/** What is expected on each model, each range with its source and mark, and a form to set one. */
export function RangesSection({ sheet, models, ranges, timeZone }: Props) {
  const measured = sheet.steps.flatMap((step) => {
    const check = checkOfStep(step);
    return check?.unit === undefined ? [] : [{ value: check.key, name: check.name, unit: check.unit }];
  });
  const names = new Map(measured.map(({ value, name }) => [value, name]));
  const columns: readonly Column<SheetRange>[] = [
    {
      key: "model",
      head: "Model and check",
      cell: ({ model, check, condition }) =>
        `${model}: ${names.get(check) ?? check}${condition === "" ? "" : `, ${condition}`}`,
    },
    { key: "range", head: "Expected", cell: (range) => <span className="figures nowrap">{formatRange(range)}</span> },
    { key: "source", head: "Source and mark", cell: ({ source, mark }) => `${source} (${mark})` },
    {
      key: "set",
      head: "Set by",
      cell: (range) =>
        range.set === undefined || range.rangeId === undefined ? (
          range.isReplaced ? (
            "a file; the one set here goes before it"
          ) : (
            "a file"
          )
        ) : (
          <>
            {range.set.by}, {instantOnClock(range.set.at, timeZone)}: {range.set.reason}{" "}
            <LiftForm rangeId={range.rangeId} path={`/shop/sheets/${sheetKey(sheet)}`} name={range.model} />
          </>
        ),
    },
  ];
  return (
    <section className="stack" id="ranges">
      <h2>Expected ranges by model</h2>
      {measured.length === 0 ? (
        <p>Nothing on this sheet is measured.</p>
      ) : (
        <>
          {ranges.length === 0 ? (
            <p>
              No model has a range of its own for these checks; the sheet falls back on general ones, as marked above.
            </p>
          ) : (
            <Table
              caption="Ranges on file, those set here and those of files"
              captionHidden
              columns={columns}
              rows={ranges}
              rowKey={({ model, check, condition, rangeId }) => `${model} ${check} ${condition} ${rangeId ?? "file"}`}
            />
          )}
          {models.length === 0 ? (
            <Notice status="note" title="No model of this kind is on file">
              <p>Load units or jobs first; ranges belong to models.</p>
            </Notice>
          ) : (
            <RangeForm path={`/shop/sheets/${sheetKey(sheet)}`} models={models} checks={measured} />
          )}
        </>
      )}
    </section>
  );
}
