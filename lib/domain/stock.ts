// Parts that the company keeps: how a piece comes and goes, how badly it is needed, where an order stands.

/** What changed a stock. `count` sets it right to what was counted; `move` goes between shelf and truck. */
export const movementKinds = ["receipt", "use", "count", "return", "scrap", "move", "reserve", "release"] as const;
export type MovementKind = (typeof movementKinds)[number];

/** How badly a job needs the part. Own choice of three words; the risk that goes with each is only where a form begins. */
export const criticalities = ["vital", "usual", "can wait"] as const;
export type Criticality = (typeof criticalities)[number];

export const orderStates = ["draft", "ordered", "received", "cancelled"] as const;
export type OrderState = (typeof orderStates)[number];
