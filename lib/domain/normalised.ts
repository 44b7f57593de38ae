/**
 * Maker, model or serial number as it is compared: compatible forms joined (NFKC), upper case, letters and digits only.
 * "fw-5500 a2" and "FW5500A2" are one model; nothing that looks alike (O and 0) is joined, since both occur in serials.
 */
export function normalised(text: string): string {
  if (!/[^A-Z\d]/.test(text)) return text;
  if (!/[^ -~]/.test(text)) return text.toUpperCase().replace(/[^A-Z\d]+/g, ""); // ASCII has no compatible forms
  return text
    .normalize("NFKC")
    .toUpperCase()
    .replace(/[^\p{L}\p{N}]/gu, "");
}
