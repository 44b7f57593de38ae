/** Kinds of appliance. `other_equipment` takes whatever is not a household appliance, such as engines in an open register. */
export const productTypes = {
  front_load_washer: "Front-load washer",
  top_load_washer: "Top-load washer",
  electric_dryer: "Electric dryer",
  gas_dryer: "Gas dryer",
  dishwasher: "Dishwasher",
  refrigerator: "Refrigerator",
  range_oven: "Range or oven",
  other_equipment: "Other equipment",
} as const;

export type ProductType = keyof typeof productTypes;
export const productTypeKeys = Object.keys(productTypes) as readonly ProductType[]; // Object.keys loses the key type
