/** What a report of the station can have; see GET /api/report/sections. */
export interface Section {
  id: string;
  name: string;
  has_content: boolean;
  why_not: string | null;
}
export interface TitleCell {
  name: string;
  label: string;
  when_empty: string;
  /** What stands in it where nothing is typed. */
  text: string;
}
export interface Choices {
  sections: Section[];
  cells: TitleCell[];
  pdf: { available: boolean; hint: string | null };
}

export type Paper = "letter" | "a4";
export interface Wanted {
  /** Empty: all that have something to tell. */
  sections: string[];
  cells: Record<string, string>;
  units: string;
  paper: Paper;
}
