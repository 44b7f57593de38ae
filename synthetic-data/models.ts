// Invented makers and models. A model number is a root and a suffix (engineering and colour), as on real plates.
import type { ProductType } from "@/lib/domain/product-type";

export type MakerKey = "brackenhall" | "veltrane" | "dunmorrow";

export const makers: Readonly<Record<MakerKey, Maker>> = {
  brackenhall: { name: "Brackenhall", plant: "B", partPrefix: "BH" },
  veltrane: { name: "Veltrane", plant: "V", partPrefix: "VT" },
  dunmorrow: { name: "Dunmorrow & Sons", plant: "D", partPrefix: "DS" },
};

export interface Maker {
  readonly name: string;
  /** First letter of every serial. */
  readonly plant: string;
  readonly partPrefix: string;
}

/** Years are those in which the model enters service; share is among all units on sale at the time. */
export const models: readonly Model[] = [
  {
    key: "BHF20",
    maker: "brackenhall",
    root: "BHF20",
    suffix: "W1",
    productType: "front_load_washer",
    fuel: "electric",
    share: 9,
    from: 2008,
    until: 2018,
    factor: 1.1,
    weaknesses: { tub_bearing: 1.6 },
  },
  {
    key: "BHF27",
    maker: "brackenhall",
    root: "BHF27",
    suffix: "W3",
    productType: "front_load_washer",
    fuel: "electric",
    share: 13,
    from: 2018,
    until: 2027,
    factor: 0.95,
    weaknesses: {},
  },
  {
    key: "VTR9",
    maker: "veltrane",
    root: "VTR9400",
    suffix: "AW",
    productType: "front_load_washer",
    fuel: "electric",
    share: 6,
    from: 2012,
    until: 2027,
    factor: 1.05,
    weaknesses: { door_lock: 1.7 },
  },
  {
    key: "BHT12",
    maker: "brackenhall",
    root: "BHT12",
    suffix: "W0",
    productType: "top_load_washer",
    fuel: "electric",
    share: 6,
    from: 2007,
    until: 2027,
    factor: 0.95,
    weaknesses: {},
  },
  {
    key: "DST50",
    maker: "dunmorrow",
    root: "DST505",
    suffix: "Q2",
    productType: "top_load_washer",
    fuel: "electric",
    share: 8,
    from: 2013,
    until: 2027,
    factor: 1.1,
    weaknesses: { shift_actuator: 1.5 },
  },
  {
    key: "BHD61",
    maker: "brackenhall",
    root: "BHD61E",
    suffix: "W1",
    productType: "electric_dryer",
    fuel: "electric",
    share: 8,
    from: 2009,
    until: 2027,
    factor: 1,
    weaknesses: {},
  },
  {
    key: "DSE33",
    maker: "dunmorrow",
    root: "DSE330",
    suffix: "Q1",
    productType: "electric_dryer",
    fuel: "electric",
    share: 5,
    from: 2011,
    until: 2027,
    factor: 1.05,
    weaknesses: { belt_idler_rollers: 1.4 },
  },
  {
    key: "BHD61G",
    maker: "brackenhall",
    root: "BHD61G",
    suffix: "W1",
    productType: "gas_dryer",
    fuel: "gas",
    share: 4,
    from: 2009,
    until: 2027,
    factor: 1,
    weaknesses: {},
  },
  {
    key: "VTG8",
    maker: "veltrane",
    root: "VTG8100",
    suffix: "AW",
    productType: "gas_dryer",
    fuel: "gas",
    share: 3,
    from: 2012,
    until: 2027,
    factor: 0.95,
    weaknesses: {},
  },
  {
    key: "VTD5",
    maker: "veltrane",
    root: "VTD5200",
    suffix: "SS",
    productType: "dishwasher",
    fuel: "electric",
    share: 10,
    from: 2011,
    until: 2027,
    factor: 0.95,
    weaknesses: {},
  },
  {
    key: "DSW14",
    maker: "dunmorrow",
    root: "DSW145",
    suffix: "K4",
    productType: "dishwasher",
    fuel: "electric",
    share: 5,
    from: 2008,
    until: 2021,
    factor: 1.15,
    weaknesses: { circulation_pump: 1.5 },
  },
  {
    key: "BHW40",
    maker: "brackenhall",
    root: "BHW40",
    suffix: "S2",
    productType: "dishwasher",
    fuel: "electric",
    share: 5,
    from: 2017,
    until: 2027,
    factor: 1,
    weaknesses: {},
  },
  {
    key: "VTK25",
    maker: "veltrane",
    root: "VTK2500",
    suffix: "SS",
    productType: "refrigerator",
    fuel: "electric",
    share: 13,
    from: 2013,
    until: 2027,
    factor: 1,
    weaknesses: {},
  },
  {
    key: "DSR18",
    maker: "dunmorrow",
    root: "DSR180",
    suffix: "K1",
    productType: "refrigerator",
    fuel: "electric",
    share: 7,
    from: 2006,
    until: 2027,
    factor: 0.85,
    weaknesses: {},
  },
  {
    key: "BHR26",
    maker: "brackenhall",
    root: "BHR26",
    suffix: "S0",
    productType: "refrigerator",
    fuel: "electric",
    share: 6,
    from: 2015,
    until: 2027,
    factor: 1.15,
    weaknesses: { ice_maker_or_water_valve: 1.5 },
  },
  {
    key: "DSO30",
    maker: "dunmorrow",
    root: "DSO300",
    suffix: "K2",
    productType: "range_oven",
    fuel: "electric",
    share: 6,
    from: 2008,
    until: 2027,
    factor: 1,
    weaknesses: {},
  },
  {
    key: "VTO7",
    maker: "veltrane",
    root: "VTO7700",
    suffix: "SS",
    productType: "range_oven",
    fuel: "electric",
    share: 3,
    from: 2014,
    until: 2027,
    factor: 1.1,
    weaknesses: {},
  },
  {
    key: "BHO30",
    maker: "brackenhall",
    root: "BHO30G",
    suffix: "S1",
    productType: "range_oven",
    fuel: "gas",
    share: 5,
    from: 2010,
    until: 2027,
    factor: 1,
    weaknesses: {},
  },
];

export interface Model {
  /** Root without engineering digits: the demo's own name for it. */
  readonly key: string;
  readonly maker: MakerKey;
  readonly root: string;
  readonly suffix: string;
  readonly productType: Exclude<ProductType, "other_equipment">;
  readonly fuel: "electric" | "gas";
  readonly share: number;
  /** First year, and the first year no more. */
  readonly from: number;
  readonly until: number;
  /** Multiplies every component's hazard. */
  readonly factor: number;
  /** Multiplies one component's hazard on top, in every unit of the model. */
  readonly weaknesses: Readonly<Partial<Record<string, number>>>;
}

/** As on the plate. */
export function modelNumber(model: Model): string {
  return `${model.root}-${model.suffix}`;
}

export function modelOf(key: string): Model {
  const model = models.find((candidate) => candidate.key === key);
  if (model === undefined) throw new RangeError(`key: no such model: ${key}`);
  return model;
}
