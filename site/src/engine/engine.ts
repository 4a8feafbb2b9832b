// The engine as the page sees it: text in, text out, each answer a promise, so that it may run beside the page and never holds it up.
// It may begin as the judge alone, which is small; reading words and writing letters come with the whole engine when first needed.

import type { Assessment, Fault } from '../case/assessment';
import type { CaseFile } from '../case/case';
import type { Catalogue } from '../case/catalogue';
import type { Letter } from '../case/letter';
import type { Reading } from '../case/reading';
import type { Judge } from '../generated/engine/judge.mjs';
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
  /** Makes the engine whole. Rejects if it cannot be fetched; it may be tried again. */
  complete(): Promise<void>;
  /** Needs the whole engine. */
  letter(subject: CaseFile, today: string, options: LetterOptions): Promise<Letter>;
  /** Reads the text of a statement. `language`: of the sentences in the answer. Needs the whole engine. */
  read(text: string, language: string): Promise<Reading>;
  version: string;
}

/** What may be asked of the engine: a call of its module, or to become whole. */
export type Name = keyof Module | 'complete';
/** One call, wherever the module runs. */
export type Call = (name: Name, ...texts: Text[]) => Promise<string>;

type Called = (...texts: Text[]) => string;

/** Calls a whole engine that runs in this thread. */
export const callHere =
  (module: Module): Call =>
  (name, ...texts) =>
    Promise.resolve(name === 'complete' ? '' : (module[name] as Called)(...texts));

/** Calls the judge in this thread, and the whole engine once it was asked for, which then gets the rules the judge got. */
export function callGrowing(judge: Judge, fetchWhole: () => Promise<Module>): Call {
  let whole: Module | undefined;
  let coming: Promise<void> | undefined;
  const bundles: Text[] = [];
  // Between two bundles the judge may answer.
  const fill = async (module: Module): Promise<void> => {
    for (let bundle = bundles.shift(); bundle !== undefined; bundle = bundles.shift()) {
      module.load(bundle);
      await new Promise((done) => setTimeout(done));
    }
    whole = module;
  };
  const complete = (): Promise<void> =>
    (coming ??= fetchWhole().then(fill, (e: unknown) => {
      coming = undefined;
      throw e;
    }));
  return async (name, ...texts) => {
    if (name === 'complete') return complete().then(() => '');
    if (name === 'load' && !whole) bundles.push(texts[0]!);
    const call = ((whole ?? judge) as Partial<Module>)[name] as Called | undefined;
    if (!call) throw new Error(`${name}: the engine is not whole yet`);
    return call(...texts);
  };
}

export async function wrap(call: Call): Promise<Engine> {
  const utf8 = new TextEncoder();
  const ask = async <T>(name: Name, ...texts: Text[]): Promise<T> => JSON.parse(await call(name, ...texts)) as T;
  return {
    load: async (bundle) => (await ask<{ errors: Fault[] }>('load', bundle)).errors,
    assess: (subject, today) => ask('assess', JSON.stringify(subject), today),
    catalogue: (language) => ask('catalogue', language),
    complete: async () => void (await call('complete')),
    letter: (subject, today, options) => ask('letter', JSON.stringify(subject), today, JSON.stringify(options)),
    read: (text, language) => ask('readStatement', utf8.encode(text), language),
    version: await call('version'),
  };
}
