import { Refused } from "../../api/client";

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

export type Format = "html" | "paper" | "pdf";
export type Paper = "letter" | "a4";
export interface Wanted {
  /** Empty: all that have something to tell. */
  sections: string[];
  cells: Record<string, string>;
  units: string;
  paper: Paper;
}

/** Why a document was not made. */
async function refusal(response: Response): Promise<Refused> {
  const text = await response.text();
  let body: Record<string, unknown> = {};
  try {
    body = JSON.parse(text) as Record<string, unknown>;
  } catch {
    body = { error: text || response.statusText };
  }
  return new Refused(response.status, String(body["error"] ?? response.statusText), String(body["hint"] ?? ""), body);
}

export async function fetchChoices(signal?: AbortSignal): Promise<Choices> {
  const response = await fetch("/api/report/sections", { cache: "no-store", ...(signal ? { signal } : {}) });
  if (!response.ok) throw await refusal(response);
  return (await response.json()) as Choices;
}

export async function fetchReport(wanted: Wanted, format: Format, signal?: AbortSignal): Promise<Blob> {
  const response = await fetch("/api/report", {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    cache: "no-store",
    body: JSON.stringify({ ...wanted, format }),
    ...(signal ? { signal } : {}),
  });
  if (!response.ok) throw await refusal(response);
  return response.blob();
}
