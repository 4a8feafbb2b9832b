// "Bring in the statement": paste it or hand over a file, wait while it is read on the device, go through what was found, take it over.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import type { Brought } from './door';
import { openAll } from '../../app/case-files';
import { loadReading } from '../../engine/rules';
import { language, learn, say } from '../../say/wording';
import type { Engine } from '../../engine/engine';
import type { Reading } from '../../case/reading';
import en from '../../../../engine/rules/wording/en/page-bring.json';
import './bring-in.css';
import { type Progress, readScan, takeFiles, type Taken } from './intake';
import { type Review, reviewOf } from './review';
import { beginReview, reviewing } from './reviewing';
import { noSums } from './picture-sums';
import type { Settled } from './settle';
import type { OpenPdf } from './source/pdf';
import { textSource, type Source, wholeText } from './source/source';
import { canReadPictures } from './source/picture-library';
import { Locked } from './source/locked';
import { Trouble, type TroubleKind } from './source/trouble';
import { ways } from './ways';
import { locked, scan, which, working } from './waiting';

export type Stage =
  | { at: 'ways' }
  | { at: 'which'; files: File[] }
  | { at: 'working'; name: string; progress: Progress; stop: AbortController }
  | { at: 'locked'; file: File; wrong: boolean }
  | { at: 'scan'; pdf: OpenPdf }
  | { at: 'review'; review: Review };

let stage: Stage = { at: 'ways' };
let trouble: { kind: TroubleKind; name: string } | null = null;
/** What is in the box for pasted text; kept while a person looks elsewhere. */
let pasted = '';

const wordsThere = learn(en, { es: () => import('../../../../engine/rules/wording/es/page-bring.json') });

function go(d: Desk, next: Stage, wrong: typeof trouble = null): void {
  if (stage.at === 'review' && next.at !== 'review') stage.review.source.close();
  if (stage.at === 'scan' && next.at !== 'working') stage.pdf.source.close();
  stage = next;
  trouble = wrong;
  d.draw();
  setTimeout(() => (document.querySelector('[data-first]') as HTMLElement | null)?.focus());
}

let watched: Desk | undefined;

/** Clearing the desk leaves nothing of a statement here. */
function watchClearing(d: Desk): void {
  if (watched === d) return;
  watched = d;
  d.onClear(() => {
    if (stage.at === 'working') stage.stop.abort();
    pasted = '';
    d.bringing = false;
    go(d, { at: 'ways' });
    beginReview();
  });
}

/** Comes in from the page, with or without something in hand. */
export async function begin(d: Desk, what: Brought): Promise<void> {
  watchClearing(d);
  await wordsThere;
  if (what.files?.length) return what.unclear ? go(d, { at: 'which', files: what.files }) : take(d, what.files);
  if (what.text !== undefined) return takeText(d, what.text);
  if (stage.at === 'ways') go(d, stage);
  else d.draw();
}

/** The engine, once it is in, with the rules for reading. */
async function readingEngine(d: Desk): Promise<Engine> {
  // One that could not start is tried again.
  if (d.broken) d.refresh();
  const engine = await new Promise<Engine>((done, fail) => {
    const look = (): void => {
      if (d.engine) done(d.engine);
      else if (d.broken && !d.judging) fail(new Trouble('notLoaded'));
    };
    d.onChange(look);
    look();
  });
  await Promise.all([engine.complete(), loadReading(engine)]);
  return engine;
}

/** Text is taken as it stands; of a picture the paper's own sums settle what was read badly. */
async function readSource(source: Source, read: (text: string) => Promise<Reading>): Promise<Settled> {
  if (!canReadPictures || source.kind !== 'picture')
    return { source, reading: await read(wholeText(source)), sums: noSums };
  return (await import('./settle')).settle(source, read);
}

/** The engine reads what the source says; with nothing found the person is told so and may try another way. */
async function show(d: Desk, came: Source, signal: AbortSignal): Promise<void> {
  const engine = await readingEngine(d);
  if (signal.aborted) return came.close();
  const read = (text: string) => engine.read(text, language());
  const { source, reading, sums } = await readSource(came, read);
  if (signal.aborted) return source.close();
  if (!reading.lines) throw new Trouble('tooLarge');
  const review = reviewOf(source, reading, d.case, sums);
  if (review.charges.length + review.tray.length + review.facts.length === 0) {
    source.close();
    throw new Trouble('nothingFound');
  }
  beginReview();
  go(d, { at: 'review', review });
  void source.drawPages?.(() => d.draw());
}

/** Runs work that takes time: shown while it goes on, stopped when the person says so, its troubles told in words. */
async function run(
  d: Desk,
  name: string,
  work: (says: (p: Progress) => void, signal: AbortSignal) => Promise<void>,
): Promise<void> {
  if (stage.at === 'working') stage.stop.abort();
  const stop = new AbortController();
  const own: Stage = { at: 'working', name, progress: { step: 'opening' }, stop };
  go(d, own);
  const says = (progress: Progress): void => {
    if (stage !== own) return;
    own.progress = progress;
    d.draw();
  };
  try {
    await work(says, stop.signal);
  } catch (e) {
    if (stop.signal.aborted || stage !== own) return;
    go(d, { at: 'ways' }, { kind: e instanceof Trouble ? e.kind : 'notLoaded', name });
  }
}

async function settle(d: Desk, taken: Taken, files: File[], signal: AbortSignal): Promise<void> {
  if (taken.as === 'cases') {
    stage = { at: 'ways' };
    await openAll(d, files);
    leaveBringing(d);
  } else if (taken.as === 'scan') {
    if (canReadPictures) return go(d, { at: 'scan', pdf: taken.pdf });
    taken.pdf.source.close();
    throw new Trouble('noPicturesHere');
  } else {
    const attached = taken.attachments?.[0];
    // A mail that only carries the statement: what it carries is read.
    const engine = await readingEngine(d);
    const bare = attached && (await engine.read(wholeText(taken.source), language())).lines.length === 0;
    if (bare) await take(d, [attached]);
    else await show(d, taken.source, signal);
  }
}

const namesOf = (files: File[]): string => files.map((f) => f.name).join(', ');

export function take(d: Desk, files: File[], password?: string): Promise<void> {
  return run(d, namesOf(files), async (says, signal) => {
    try {
      const taken = await takeFiles(files, password, says, signal);
      await settle(d, taken, files, signal);
    } catch (e) {
      if (!(e instanceof Locked) || signal.aborted) throw e;
      go(d, { at: 'locked', file: files[0]!, wrong: e.wrong });
    }
  });
}

export async function takeText(d: Desk, text: string): Promise<void> {
  pasted = text;
  if (text.trim() === '') return go(d, { at: 'ways' }, { kind: 'empty', name: '' });
  await run(d, '', (_, signal) => show(d, textSource(text), signal));
}

export const takeScan = (d: Desk, pdf: OpenPdf): Promise<void> =>
  run(d, pdf.source.name, async (says, signal) => {
    const source = await readScan(pdf, says, signal);
    await show(d, source, signal);
  });

/** Back to the case. The place of the charges gets the focus. */
function leaveBringing(d: Desk): void {
  d.bringing = false;
  d.draw();
  setTimeout(() => {
    const title = document.getElementById('charges-title');
    title?.setAttribute('tabindex', '-1');
    title?.focus();
  });
}

export function cancel(d: Desk): void {
  if (stage.at === 'working') stage.stop.abort();
  go(d, { at: 'ways' });
}

export function leave(d: Desk): void {
  if (stage.at === 'working') stage.stop.abort();
  go(d, { at: 'ways' });
  leaveBringing(d);
}

function body(d: Desk): TemplateResult {
  switch (stage.at) {
    case 'ways':
      return ways({
        trouble,
        pasted,
        type: (text) => (pasted = text),
        takeText: (text) => void takeText(d, text),
        take: (files) => void take(d, files),
      });
    case 'working':
      return working(stage.name, stage.progress, () => cancel(d));
    case 'which': {
      const { files } = stage;
      const keep = async (): Promise<void> => {
        const { attach } = await import('../evidence/evidence');
        await attach(d, files);
        leave(d);
      };
      return which(
        namesOf(files),
        () => void take(d, files),
        () => void keep(),
      );
    }
    case 'locked': {
      const { file, wrong } = stage;
      return locked(
        file.name,
        wrong,
        (password) => void take(d, [file], password),
        () => cancel(d),
      );
    }
    case 'scan': {
      const { pdf } = stage;
      return scan(
        pdf.source.name,
        pdf.source.pagesLeft?.of ?? pdf.source.pages.length,
        () => void takeScan(d, pdf),
        () => cancel(d),
      );
    }
    case 'review': {
      const now = stage;
      return reviewing(d, now.review, {
        change: (review) => {
          now.review = review;
          d.draw();
        },
        again: () => cancel(d),
        done: () => {
          pasted = '';
          leave(d);
        },
      });
    }
  }
}

export function bringing(d: Desk): TemplateResult | typeof nothing {
  if (!d.bringing) return nothing;
  return html`<section class="bring" aria-labelledby="bring-title" data-stage=${stage.at}>
    <div class="bring-head">
      <h2 id="bring-title" tabindex="-1" ?data-first=${stage.at !== 'ways'}>${say('page.bring.title')}</h2>
      <button type="button" class="link" @click=${() => leave(d)}>${say('page.bring.leave')}</button>
    </div>
    ${body(d)}
  </section>`;
}
