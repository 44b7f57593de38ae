import { componentOf, componentPath } from "@/lib/domain/components";
import { failureModeOf } from "@/lib/domain/failure-modes";
import { symptomOf } from "@/lib/domain/symptoms";
import { entries } from "@/lib/evidence/entries";
import { checkOf, type FilingCase, type FilingCheck, type Look, onJob } from "./filing-case";

/**
 * Complaint, symptom, component, mode and part must tell one story. Source: "part not used in this model" and "missing
 * codes" are on a published maker's list of 1996; that the codes must agree is common practice, no source.
 */
export function codesChecked(filing: FilingCase): FilingCheck {
  return checkOf("codes", onJob, [symptomFits(filing), failureFits(filing), ...partsFit(filing)]);
}

function symptomFits({ given: { record } }: FilingCase): Look {
  const { symptom } = record.job;
  const known = symptom === undefined ? undefined : symptomOf(symptom);
  if (known === undefined) return {};
  if (known.productTypes.includes(record.unit.productType)) return { fine: `${known.name} fits the product.` };
  return { wrong: `${known.name} is no symptom of this kind of product: choose the one the customer described.` };
}

/** A pair that the catalogue of failures does not name may still be right, so it is asked, not refused. */
function failureFits({ given: { record } }: FilingCase): Look {
  const { component, failureMode, symptom } = record.job;
  const { productType } = record.unit;
  const about = entries.filter((entry) => entry.productType === productType && entry.component === component);
  if (component === undefined || failureMode === undefined || about.length === 0) return {};
  const names = `${componentOf(component)?.name ?? component}, ${(failureModeOf(failureMode)?.name ?? failureMode).toLowerCase()}`;
  const same = about.filter(({ failureModes }) => failureModes.includes(failureMode));
  if (same.length === 0)
    return { open: `${names}: the catalogue knows no such failure of it. Check the failure mode.` };
  if (symptom === undefined || same.some(({ symptoms }) => symptoms.includes(symptom)))
    return { fine: `${names}: agrees with the symptom.` };
  return {
    open: `${names} does not usually show as “${symptomOf(symptom)?.name ?? symptom}”: check symptom and cause.`,
  };
}

function partsFit({ given: { record }, claim, parts }: FilingCase): readonly Look[] {
  const fitted = record.partLines.filter(({ role }) => role === "fitted");
  const { component } = record.job;
  if (fitted.length === 0 || component === undefined || !claim.lines.some(({ item }) => item === "parts")) return [];
  const isSame = (other: string | undefined) =>
    other !== undefined && (componentPath(other).includes(component) || componentPath(component).includes(other));
  const components = fitted.map(
    (line) => line.component ?? parts.find(({ partNumber }) => partNumber === line.partNumber)?.component,
  );
  const fits: Look = components.some(isSame)
    ? { fine: "The part is one of the component that failed." }
    : components.every((each) => each !== undefined)
      ? { wrong: "No part that was fitted belongs to the component that is said to have failed." }
      : {
          open: "Whether the part belongs to the failed component is not on file: name the component of the part line.",
        };
  return [fits, ...fitted.map(({ partNumber }) => onModel(partNumber, parts, record.unit.model))];
}

function onModel(partNumber: string, parts: FilingCase["parts"], model: string): Look {
  const times = parts.find((part) => part.partNumber === partNumber)?.timesOnModel ?? 0;
  if (times > 0)
    return { fine: `${partNumber} was fitted on ${model} ${times === 1 ? "once" : `${times} times`} before.` };
  return { open: `${partNumber} was never fitted on ${model} before: look it up in the parts list of the model.` };
}
