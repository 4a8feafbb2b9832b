// The engine as the page sees it: text in, text out. The WebAssembly module is fetched once and kept.

import type { Engine as Module } from '../generated/engine/wearline.mjs';
import type { Assessment, Fault } from '../case/assessment';
import type { CaseFile } from '../case/case';
import type { Catalogue } from '../case/catalogue';
import type { Letter } from '../case/letter';
import type { Reading } from '../case/reading';

export interface LetterOptions {
  kind?: string;
  language?: string;
  /** Ids of optional paragraphs to leave out, and to take in. */
  off?: string[];
  on?: string[];
}

/** The engine with parsed answers. `today` is YYYY-MM-DD everywhere. */
export interface Engine {
  load(bundle: string): Fault[];
  assess(subject: CaseFile, today: string): Assessment;
  assessText(text: string, today: string): Assessment;
  catalogue(language: string): Omit<Catalogue, 'facts' | 'events' | 'papers'>;
  letter(subject: CaseFile, today: string, options: LetterOptions): Letter;
  /** Reads the text of a statement. `language`: of the sentences in the answer. */
  read(text: string, language: string): Reading;
  version: string;
}

export function wrap(module: Module): Engine {
  const utf8 = new TextEncoder();
  return {
    load: (bundle) => (JSON.parse(module.load(bundle)) as { errors: Fault[] }).errors,
    assess: (subject, today) => JSON.parse(module.assess(JSON.stringify(subject), today)) as Assessment,
    assessText: (text, today) => JSON.parse(module.assess(utf8.encode(text), today)) as Assessment,
    catalogue: (language) => JSON.parse(module.catalogue(language)) as Catalogue,
    letter: (subject, today, options) =>
      JSON.parse(module.letter(JSON.stringify(subject), today, JSON.stringify(options))) as Letter,
    read: (text, language) => JSON.parse(module.readStatement(utf8.encode(text), language)) as Reading,
    version: module.version(),
  };
}
