/** A setting is missing or wrong; the message is one line that names it and says what to do. Commands print the line alone. */
export class SettingsError extends Error {
  override readonly name = "SettingsError";
}
