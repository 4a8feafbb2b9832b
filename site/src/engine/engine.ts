// The engine as the page sees it: text in, text out, each answer a promise, so that it may run beside the page and never holds it up.

import type { Assessment, Fault } from '../case/assessment';
import type { CaseFile } from '../case/case';
import type { Catalogue } from '../case/catalogue';
import type { Letter } from '../case/letter';
import type { Reading } from '../case/reading';
import type { Engine as Module, Text } from '../generated/engine/wearline.mjs';

export interface LetterOptions {
  kind?: string;
  language?: string;
  /** Ids of optional paragraphs to leave out, and to take in. */
  off?: string[];
  on?: string[];
  /** What fills the open places, by their ids. */
  names?: Record<string, string>;
}

/** The engine with parsed answers. `today` is YYYY-MM-DD everywhere. */
export interface Engine {
  load(bundle: string): Promise<Fault[]>;
  assess(subject: CaseFile, today: string): Promise<Assessment>;
  catalogue(language: string): Promise<Omit<Catalogue, 'facts' | 'events' | 'papers'>>;
  /** Needs the sentences of letters. */
  letter(subject: CaseFile, today: string, options: LetterOptions): Promise<Letter>;
  /** Reads the text of a statement. `language`: of the sentences in the answer. Needs the words for reading. */
  read(text: string, language: string): Promise<Reading>;
  /** Brings the rest of the engine, where its code comes in two parts: letters and statements need it. */
  complete(): Promise<void>;
  version: string;
}

/** What may be asked of the engine: a call of its module, or that all of it be there. */
export type Name = keyof Module | 'complete';
/** One call, wherever the module runs. */
export type Call = (name: Name, ...given: (Text | number)[]) => Promise<string>;

type Called = (...given: (Text | number)[]) => string;

/** The version of the format that the page speaks. */
const format = 2;

/** Calls an engine that runs in this thread and is whole. */
export const callHere =
  (module: Module): Call =>
  (name, ...given) =>
    Promise.resolve(name === 'complete' ? '' : (module[name] as Called)(...given));

export async function wrap(call: Call): Promise<Engine> {
  const utf8 = new TextEncoder();
  const ask = async <T>(name: Name, ...given: (Text | number)[]): Promise<T> =>
    JSON.parse(await call(name, ...given)) as T;
  return {
    load: async (bundle) => (await ask<{ errors: Fault[] }>('load', bundle)).errors,
    assess: (subject, today) => ask('assess', JSON.stringify(subject), today, format),
    catalogue: (language) => ask('catalogue', language, format),
    letter: (subject, today, options) => ask('letter', JSON.stringify(subject), today, JSON.stringify(options), format),
    read: (text, language) => ask('readStatement', utf8.encode(text), language, format),
    complete: async () => void (await call('complete')),
    version: await call('version'),
  };
}
