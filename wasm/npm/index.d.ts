/**
 * A case, as text, as its UTF-8 bytes or parsed: schema/case.schema.json in this package, or schema/case-1.schema.json of version 1. It is
 * answered in its own version.
 */
export type Case = string | Uint8Array | { wearline: 1 | 2; lines: object[]; [member: string]: unknown };

/** The version of the format of what has no case in it, or a case that does not say its own: 1 if absent. */
export interface InFormat {
  format?: 1 | 2;
}

/** What is wrong with an input: a code, the place as a JSON Pointer into it, and a plain sentence. */
export interface Fault {
  code: string;
  at: string;
  text: string;
  near: string | null;
}

/** An answer of the engine. `errors` is empty where the input was read; nothing else is promised where it is not. */
export interface Answer {
  errors: Fault[];
  [member: string]: unknown;
}

export interface Wearline {
  /** Of the engine, "0.1.0". */
  readonly version: string;
  /** Places with a law file, ISO 3166-2: "US-WA", "CA-BC". */
  readonly jurisdictions: string[];
  /** Judges a case as of a day, YYYY-MM-DD; this machine's date if absent. */
  assess(subject: Case, options?: InFormat & { today?: string }): Promise<Answer>;
  /** Writes a letter of a kind in a language ("en", "es"); the kind that fits the case if absent. */
  letter(
    subject: Case,
    options?: InFormat & { today?: string; kind?: string; language?: string; off?: string[]; on?: string[]; names?: Record<string, string> }
  ): Promise<Answer>;
  /** Reads the text or CSV of a statement; `language` is that of the sentences in the answer. */
  read(statement: string | Uint8Array, options?: InFormat & { language?: string }): Promise<Answer>;
  /** What there is to choose from: things, findings, conditions, places. */
  catalogue(language?: string, options?: InFormat): Promise<Record<string, unknown>>;
}

/**
 * An engine that holds what every case needs; a place's law is taken from the package when a case of that place comes. Rejects where a
 * file of the package cannot be fetched. Faults of an input are no rejection: they stand under `errors`.
 */
export function open(): Promise<Wearline>;
