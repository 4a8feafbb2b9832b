// The engine as the page sees it. Every answer is JSON text; an input that cannot be read gives {"wearline",...,"errors":[...]}.

/**
 * A version of the format: a case is answered in that of its file; where there is no case, or it does not say, in this one, in 1 if it is
 * absent. Their shapes are in engine/rules/schema.
 */
export type Format = 1 | 2;

export interface Engine {
  /** Adds rules: one object of paths under engine/rules to documents. The answer's `errors` is empty if all went well. */
  load(bundle: Text): string;
  /**
   * The assessment of a case, seen from `today`, YYYY-MM-DD. Until the rules of the recogniser are loaded a line with a text and no
   * element is judged as one whose thing is unknown.
   */
  assess(caseJson: Text, today: string, format?: Format): string;
  /** What a person can choose from: elements, findings, causes, places. */
  catalogue(language: string, format?: Format): string;
  /** A letter as structured paragraphs; `options`: {"kind","language"}. */
  letter(caseJson: Text, today: string, options: string, format?: Format): string;
  /** What a statement that came as text says: charges, sums, days, lines not read. `language` is that of the sentences in the answer. */
  readStatement(text: Text, language: string, format?: Format): string;
  version(): string;
}

/**
 * Text, or its bytes in UTF-8. Give text that a person pasted as bytes (TextEncoder): half a surrogate pair in a string would
 * come out wrong, in bytes it becomes U+FFFD.
 */
export type Text = string | Uint8Array;

export interface EngineOptions {
  /** The module's bytes, where it must not be fetched (single file, tests). */
  wasmBinary?: ArrayBuffer | Uint8Array;
  /** Makes the instance in a way of the caller's own: gives it to `receive`, and returns an empty object. */
  instantiateWasm?(imports: WebAssembly.Imports, receive: (instance: WebAssembly.Instance, module: WebAssembly.Module) => void): object;
  /** The address of a file of the module; by default beside its .mjs. */
  locateFile?(name: string, folder: string): string;
}

/** A fresh engine without rules. */
export default function createEngine(options?: EngineOptions): Promise<Engine>;
