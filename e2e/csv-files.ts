export interface SentFile {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

/** A CSV file as a browser sends it. Cells hold no comma, quote or line break. */
export function csvFile(name: string, rows: readonly Readonly<Record<string, string>>[]): SentFile {
  const columns = Object.keys(rows[0] ?? {});
  const lines = [columns.join(","), ...rows.map((row) => columns.map((column) => row[column] ?? "").join(","))];
  return { name, mimeType: "text/csv", buffer: Buffer.from(`${lines.join("\r\n")}\r\n`) };
}

const washer = { maker: "Brackenhall", model: "BHF27-W3", product_type: "front_load_washer" };

export function unitRow(serial: string) {
  return { ...washer, serial, sold_on: "2025-03-02", installed_on: "2025-03-09", use: "household" };
}

export function jobRow(jobNumber: string, serial: string, more: Readonly<Record<string, string>> = {}) {
  return {
    job_number: jobNumber,
    status: "closed",
    ...washer,
    serial,
    requested_on: "2026-04-13",
    completed_on: "2026-04-15",
    complaint: "Will not drain",
    symptom: "will_not_drain",
    component: "drain_pump",
    failure_mode: "winding_open",
    cause: "component",
    ...more,
  };
}

export function partLineRow(jobNumber: string, quantity: string) {
  return {
    job_number: jobNumber,
    line: "9",
    part_number: "BH-077",
    component: "drain_pump",
    quantity,
    unit_cost: "41.50",
  };
}
