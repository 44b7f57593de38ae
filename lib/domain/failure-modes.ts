// How a component failed, as the technician found it. Keys are stable: intake files and evidence entries refer to them.
// The list is common practice, no source.

export const failureModes: readonly FailureMode[] = [
  { key: "winding_open", name: "Winding open" },
  { key: "winding_shorted", name: "Winding shorted" },
  { key: "winding_unequal", name: "Windings unequal" },
  { key: "grounded", name: "Shorted to ground" },
  { key: "coil_open", name: "Coil open" },
  { key: "element_open", name: "Element open" },
  { key: "open", name: "Open" },
  { key: "contact_open", name: "Contact does not close" },
  { key: "contact_welded", name: "Contact does not open" },
  { key: "out_of_band", name: "Opens or closes at the wrong temperature" },
  { key: "out_of_curve", name: "Out of its curve" },
  { key: "weak", name: "Draws too little current" },
  { key: "low_capacitance", name: "Capacitance low" },
  { key: "brushes_worn", name: "Brushes worn" },
  { key: "impeller_seized", name: "Impeller seized" },
  { key: "impeller_loose", name: "Impeller loose" },
  { key: "impeller_cracked", name: "Impeller cracked or worn" },
  { key: "seized", name: "Seized" },
  { key: "stuck", name: "Stuck" },
  { key: "jammed", name: "Jammed" },
  { key: "slips", name: "Slips" },
  { key: "worn", name: "Worn" },
  { key: "broken", name: "Broken" },
  { key: "torn", name: "Torn or perished" },
  { key: "leaking", name: "Leaking" },
  { key: "blocked", name: "Blocked" },
  { key: "installed_wrong", name: "Badly installed" },
  { key: "no_output", name: "No output" },
  { key: "no_signal", name: "No signal or a wrong one" },
  { key: "no_start", name: "Does not start with good start gear" },
  { key: "does_not_run", name: "Does not run" },
  { key: "does_not_open", name: "Does not open" },
  { key: "no_harvest", name: "Does not make or release ice" },
  { key: "no_spark", name: "No spark or constant spark" },
  { key: "restriction", name: "Restricted" },
  { key: "harness_open", name: "Wire or connector open" },
  { key: "replaced", name: "Replaced, mode not recorded" },
];

export interface FailureMode {
  readonly key: string;
  readonly name: string;
}

const byKey: ReadonlyMap<string, FailureMode> = new Map(failureModes.map((mode) => [mode.key, mode]));

/** The failure mode of that key, or undefined where the catalogue has none. */
export function failureModeOf(key: string): FailureMode | undefined {
  return byKey.get(key);
}
