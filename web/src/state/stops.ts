/** The stops of the course, in its order; the first is number 1. */
export const stopNames = [
  "Tanker", "Fill", "Tank", "Pump", "Line", "Sump", "Shear valve", "Meter", "Hose", "Nozzle", "Vapor",
] as const;
