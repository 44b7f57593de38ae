import { normalised } from "@/lib/domain/normalised";
import { checkOf, type FilingCase, type FilingCheck, type Look, onPapers, onUnit } from "./filing-case";

/** With fewer units of a model on the register, the way its serials are written is not known. Own choice. */
const enoughUnits = 10;

/**
 * Serial missing, misread, or on another model. Source: missing or invalid serial is on a published maker's list of
 * 1996; a serial registered to another model, a public trade forum.
 */
export function serialChecked({ given: { record }, serials }: FilingCase): FilingCheck {
  const { serial, model } = record.unit;
  if (serial === undefined || serial.trim() === "")
    return checkOf("serial", onUnit, [{ wrong: "Read the serial from the rating plate and enter it." }]);
  const plate: Look = record.attachments.some(({ subject }) => subject === "plate")
    ? { fine: `Photo of the rating plate: hold ${model}, ${serial} against it.` }
    : { open: "Photograph the rating plate: nothing else proves that model and serial were read right." };
  const others = [written(serial, serials.shapes), elsewhere(serial, serials.alsoOn)];
  const place = others.every(({ wrong }) => wrong === undefined) ? onPapers : onUnit;
  return checkOf("serial", place, [plate, ...others]);
}

/** Letters as A, digits as 9; everything else falls away. */
export function serialShape(serial: string): string {
  return normalised(serial).replace(/\p{L}/gu, "A").replace(/\p{N}/gu, "9");
}

function written(serial: string, shapes: FilingCase["serials"]["shapes"]): Look {
  const units = shapes.reduce((sum, each) => sum + each.units, 0);
  if (units < enoughUnits)
    return {
      open: `Only ${units} units of this model are on the register, so how its serials are written is not known.`,
    };
  const ours = shapes.find(({ shape }) => shape === serialShape(serial));
  if (ours !== undefined && ours.units > 1) return { fine: `Written as ${ours.units} others of this model are.` };
  const [usual] = [...shapes].sort((a, b) => b.units - a.units);
  return {
    wrong: `Serials of this model are written ${usual?.shape ?? "otherwise"} (A a letter, 9 a digit); ${serial} is not. Read the plate again.`,
  };
}

function elsewhere(serial: string, alsoOn: readonly string[]): Look {
  if (alsoOn.length === 0) return {};
  return { wrong: `${serial} also stands on ${alsoOn.join(", ")}: read model and serial from the plate again.` };
}
