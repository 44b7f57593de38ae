import type { DayNumber } from "@/lib/calendar/day-number";
import { company } from "./company";
import { dayText } from "./day-text";
import type { Cells, UnitColumn } from "./file-columns";
import { makers, modelNumber } from "./models";
import type { RegisterUnit } from "./register-unit";

/** The unit as one row of units.csv. */
export function unitRow(unit: RegisterUnit): Cells<UnitColumn> {
  const { known, model } = unit;
  return {
    maker: makers[model.maker].name,
    model: modelNumber(model),
    product_type: model.productType,
    serial: unit.serial,
    made: known.madeOn === undefined ? "" : dayText(known.madeOn).slice(0, known.madeMonthOnly ? 7 : 10),
    shipped_on: cell(known.shippedOn),
    sold_on: cell(known.soldOn),
    delivered_on: cell(known.deliveredOn),
    installed_on: cell(known.installedOn),
    occupied_on: cell(known.occupiedOn),
    registered_on: cell(known.registeredOn),
    retired_on: cell(unit.retiredOn),
    recorded_from: cell(unit.recordedFrom),
    use: unit.use,
    territory: company.territory,
    owner_number: unit.ownerNumber,
  };
}

function cell(on: DayNumber | undefined): string {
  return on === undefined ? "" : dayText(on);
}
