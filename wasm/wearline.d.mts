// The whole engine as the page sees it: it judges, reads words and writes letters.

import type { EngineOptions, Judge, Text } from './judge.mjs';

export type { EngineOptions, Text };

export interface Engine extends Judge {
  /** A letter as structured paragraphs; `options`: {"kind","language"}. */
  letter(caseJson: Text, today: string, options: string): string;
  /**
   * What a statement that came as text says: charges, sums, days, lines not read (engine/src/output/reading.h). `language` is that of
   * the sentences in the answer.
   */
  readStatement(text: Text, language: string): string;
}

/** A fresh engine without rules. */
export default function createEngine(options?: EngineOptions): Promise<Engine>;
