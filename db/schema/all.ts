/** Every family in one object, because drizzle types a connection by it. Other code imports the family it means. */
export * from "./catalogue";
export * from "./claim-life";
export * from "./claims";
export * from "./counts";
export * from "./coverage";
export * from "./drafts";
export * from "./hand";
export * from "./intake";
export * from "./jobs";
export * from "./money";
export * from "./parts";
export * from "./programs";
export * from "./register";
export * from "./removed-attachments";
export * from "./sheets";
export * from "./shop";
