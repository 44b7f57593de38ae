/** Days of the register that a paper can show, as the form names them. */
export const registerDays = [
  { field: "soldOn", column: "sold_on", label: "Bought", hint: "As the receipt says." },
  { field: "deliveredOn", column: "delivered_on", label: "Delivered", hint: undefined },
  { field: "installedOn", column: "installed_on", label: "Installed", hint: undefined },
  {
    field: "occupiedOn",
    column: "occupied_on",
    label: "Closing or first occupancy",
    hint: "Where it came with a new home.",
  },
  { field: "registeredOn", column: "registered_on", label: "Registered with the maker", hint: undefined },
  { field: "shippedOn", column: "shipped_on", label: "Shipped to the distributor", hint: "Where there is no receipt." },
] as const;
