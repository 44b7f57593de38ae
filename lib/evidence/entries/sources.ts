// Where the entries' values come from. Makers' papers are named by their kind, without the brand.

export const sources = {
  MS1: "Maker technical sheet, front-load washer (commercial household-size), test pages: drain pump about 106 ohm; motor about 6.45 ohm per pair; water NTC table 0-95 C.",
  MS2: "Maker job aid, front-load washer: inlet coils 750-850 ohm; pressure-switch contacts 0 ohm; warns corrosion on connectors passes for control failure.",
  MS3: "Maker job aid, top-load washer: valve coils 700-900 ohm; NTC table 10-55 C.",
  MS4: "Maker technical sheets, top-load washers (two): level and drain-pump test order; false long-drain from the level sensor.",
  MS5: "Maker service manual, top-load washer: motor about 16 ohm; valve coils to match diagram.",
  MS6: "Repair-centre guide, front-load not draining: 120 V AC pump 10-20 ohm, 24 V DC pump 1.5-4 ohm per winding; hose no more than 4 in into standpipe; 24-96 in, best under 66 in.",
  MS7: "Maker component table, electric dryer: cut-off, limit, outlet thermostat points and tolerances.",
  MS8: "Maker technical sheets, dryers (three): heat-circuit order; exhaust temperature bands; thermistor open/short codes.",
  MS9: "Maker technical sheet, dryer: limit 225+/-7 / 215+/-10 F, cycling 153+/-5 / 138+/-5 F, bias heater 2,400+/-240 ohm.",
  MS10: "Maker service manual, gas dryer burner sequence.",
  MS11: "Maker installation sheets, dryer back pressure: 0.75 in w.c. (two household), 0.3 in w.c. (commercial).",
  MS12: "Maker job aid, dishwasher: motor coils 7.5-8.5 ohm; dispenser 65-75 ohm.",
  MS13: "Maker service manual, dishwasher: heater 11 ohm, limit 0.3, flow switch 0.4, NTC about 55k at 72 F, current 11 A vs 1.5-2 A.",
  MS14: "Maker service manual, dishwasher: drain pump about 25 ohm; NTC 11.6k at 75 F, 2.7k at 140 F.",
  MS15: "Maker technical guide, dishwasher: pump 0.8 A; heater 18 ohm wet / 28.8 dry; dispenser 32 ohm.",
  MS16: "Maker service manual, dishwasher: 20-100 psi; names poor connections the most common misdiagnosed control failure.",
  MS17: "Maker service manuals, refrigerators (three): PTC 3-10 or 3-12 ohm; overload under 1 ohm; ground test; capacitor discharge.",
  MS18: "Maker service manuals, refrigerators (two): two NTC families in one cabinet, tolerance 5 percent, 3-minute soak; defrost fuse under 0.1 ohm.",
  MS19: "Maker service manual, refrigerator: defrost heater 20-23 ohm, 550-600 W; thermostat tested at 15 F or below.",
  MS20: "Maker service manual, refrigerator: fan 12 V (over 11 V); NTC 6.495k at 0 C.",
  MS21: "Maker technical sheet, refrigerator: no-load temperatures and pressures with tolerances; capacitors discharged through 10 kohm.",
  MS22: "Maker service manuals, gas ranges (two): igniter 3.2-3.6 A, under 2.9 A condemns it; valve 1-5 ohm.",
  MS23: "Maker range data: RTD 1,000+/-4 ohm at 32 F, 1,091+/-5.3 at 75 F.",
  MS24: "Maker range manual: door-lock motor about 2.6 kohm +/-10 percent.",
  MS25: "Maker installation sheets, washers (five): standpipe 30/33/39 in minimum, 72/96 in maximum; carry-away 10-17 gal/min; water 10 or 20 to 120 psi; 4.5 in hose insertion.",
  HB1: "Older public appliance-repair articles: split-phase washer motor about 4 ohm; control magnet 100-180 ohm.",
  HB2: "Public trade guides: gas-dryer coil about 1,300 ohm; flame-sensor cold/hot behaviour.",
  TERMS:
    "Exclusions in published maker warranties (installation, house wiring, misuse, commercial use, air-gap cleaning, acts of God).",
  LAW608: "US 40 CFR part 82 subpart F (EPA section 608).",
  DERIVED: "R = V^2 / P from the rating plate; 10 percent band is common practice.",
  CP: "common practice, no source",
  MEM: "from memory, verify against the model sheet",
} as const;

export type SourceKey = keyof typeof sources;
