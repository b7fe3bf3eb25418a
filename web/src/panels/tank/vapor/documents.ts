/** What the vapor study tells, as the command's JSON has it. */
import type { ErrorAnswer } from "../../../api/types";
import type { Finding } from "../../parts/finding";

type Known = number | null;

export interface Loss {
  where: string;
  by: string;
  mass_per_volume_kg_per_m3: Known;
  mass_per_month_kg: Known;
  status: string;
  here: boolean | null;
  missing: string | null;
}

export interface ProductVapor {
  product: string;
  gasoline: boolean;
  temperature_k: Known;
  true_vapor_pressure_absolute_pa: Known;
  pressure_source: string;
  molar_mass_kg_per_mol: Known;
  throughput_m3_per_month: Known;
  lost_kg_per_month: Known;
  with_stage_one_kg_per_month: Known;
  without_stage_one_kg_per_month: Known;
  losses: Loss[];
}

export interface ProductCare {
  water: { tank: string; product: string; temperature_k: Known; share: Known; words: string }[];
  stock: {
    delivery: string | null;
    compartment: string | null;
    tank: string;
    delivered_m3: Known;
    factor: Known;
    change_m3: Known;
    words: string;
  }[];
  materials: { material: string; with_e85: string; source: string }[];
  tanks: { tank: string; product: string; material: string | null; must_be_shown: boolean; words: string }[];
}

export interface VaporDocument {
  cautions: string[];
  warnings: ErrorAnswer[];
  findings: Finding[];
  result: {
    gasoline_throughput_m3_per_month: Known;
    tier: string | null;
    gasoline_nozzles: number;
    products: ProductVapor[];
    tests: { tank: string; target_gauge_pa: Known; end_gauge_pa: Known; efficiency: Known }[];
    product_care: ProductCare;
  };
}
