import { api, Refused } from "../../api/client";
import { sentence } from "../../draw/words";
import { alive, recordsRead } from "../../state/station";
import { toast } from "../../state/toast";
import type { LedgerBook } from "./documents";
import { rowOf, type Column } from "./rows";

/** Writes it; resolves to why not, or null when it is on the disk. */
export async function enter(column: Column, book: LedgerBook, text: string): Promise<string | null> {
  const row = rowOf(column, book, text);
  if (!row) return "This book is of several tanks; enter their dips with forecourse records add.";
  try {
    await api.enterRecord(row.kind, row.values);
    ++recordsRead.value;
    return null;
  } catch (error) {
    if (error instanceof Refused) return `${sentence(error.message)} ${sentence(error.hint)}`.trim();
    alive.value = false;
    return "The server does not answer; nothing was stored.";
  }
}

/** Takes the last entry out of the store again. */
export async function takeBack() {
  try {
    const { taken } = await api.takeBackRecord();
    ++recordsRead.value;
    toast(`Taken back: ${taken}.`);
  } catch (error) {
    toast(error instanceof Refused ? sentence(error.message) : "The server does not answer; nothing was taken back.");
  }
}
