// Made by tools/fresh.sh from the program's own units; not to be changed here.

/** How SI values are shown: value = (SI - zero) / size. */
export const shownUnits = {
  flow: {
    us: { unit: "gpm", size: 6.30901964e-05, zero: 0 },
    si: { unit: "L/min", size: 1.6666666666666667e-05, zero: 0 },
  },
  leak: {
    us: { unit: "gph", size: 1.0515032733333334e-06, zero: 0 },
    si: { unit: "L/h", size: 2.7777777777777776e-07, zero: 0 },
  },
  pressure: {
    us: { unit: "psi", size: 6894.757293168361, zero: 0 },
    si: { unit: "kPa", size: 1000, zero: 0 },
  },
  "vapor pressure": {
    us: { unit: "inH2O", size: 249.08890999999997, zero: 0 },
    si: { unit: "Pa", size: 1, zero: 0 },
  },
  "vapor leak": {
    us: { unit: "ft³/h", size: 7.86579072e-06, zero: 0 },
    si: { unit: "L/h", size: 2.7777777777777776e-07, zero: 0 },
  },
  length: {
    us: { unit: "ft", size: 0.3048, zero: 0 },
    si: { unit: "m", size: 1, zero: 0 },
  },
  bore: {
    us: { unit: "in", size: 0.0254, zero: 0 },
    si: { unit: "mm", size: 0.001, zero: 0 },
  },
  velocity: {
    us: { unit: "ft/s", size: 0.3048, zero: 0 },
    si: { unit: "m/s", size: 1, zero: 0 },
  },
  volume: {
    us: { unit: "gal", size: 0.003785411784, zero: 0 },
    si: { unit: "L", size: 0.001, zero: 0 },
  },
  temperature: {
    us: { unit: "°F", size: 0.5555555555555556, zero: 255.3722222222222 },
    si: { unit: "°C", size: 1, zero: 273.15 },
  },
  "temperature difference": {
    us: { unit: "°F", size: 0.5555555555555556, zero: 0 },
    si: { unit: "°C", size: 1, zero: 0 },
  },
  "per degree": {
    us: { unit: "psi/°F", size: 12410.563127703048, zero: 0 },
    si: { unit: "kPa/°C", size: 1000, zero: 0 },
  },
  caught: {
    us: { unit: "mL", size: 1e-06, zero: 0 },
    si: { unit: "mL", size: 1e-06, zero: 0 },
  },
  draw: {
    us: { unit: "in³", size: 1.6387064e-05, zero: 0 },
    si: { unit: "mL", size: 1e-06, zero: 0 },
  },
  force: {
    us: { unit: "lbf", size: 4.4482216152605, zero: 0 },
    si: { unit: "N", size: 1, zero: 0 },
  },
  heat: {
    us: { unit: "kW", size: 1000, zero: 0 },
    si: { unit: "kW", size: 1000, zero: 0 },
  },
  "heat flux": {
    us: { unit: "kW/m²", size: 1000, zero: 0 },
    si: { unit: "kW/m²", size: 1000, zero: 0 },
  },
  "square loss": {
    us: { unit: "psi/gpm²", size: 1732188791836.6958, zero: 0 },
    si: { unit: "kPa·min²/L²", size: 3600000000000, zero: 0 },
  },
} as const;

/** Units that a flow may be typed in, and the size of one [m3/s]. */
export const flowUnits: Record<string, number> = {
  "gpm": 6.30901964e-05,
  "gal/min": 6.30901964e-05,
  "gph": 1.0515032733333334e-06,
  "gal/h": 1.0515032733333334e-06,
  "L/min": 1.6666666666666667e-05,
  "L/h": 2.7777777777777776e-07,
  "L/s": 0.001,
  "m3/h": 0.0002777777777777778,
  "m3/s": 1,
};
