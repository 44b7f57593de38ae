import { day } from "@/lib/calendar/day";
import type { IntakeSetting } from "@/lib/intake/intake-setting";

/** A small catalogue, so that a test shows which words it relies on. */
export const setting: IntakeSetting = {
  catalogue: {
    productTypes: new Set(["front_load_washer", "dishwasher"]),
    components: new Set(["drain_pump", "door_lock"]),
    symptoms: new Set(["will_not_drain"]),
    failureModes: new Set(["winding_open"]),
    checks: new Map([
      ["pump_winding", { modes: ["ohm"], findings: [] }],
      ["drain_hose", { modes: ["observation"], findings: ["clear", "kinked"] }],
    ]),
  },
  currency: "USD",
  today: day("2025-06-30"),
};
