// The desk: the cases that lie open, the one in front, and what the engine says about it. Sections draw it and call its actions.

import type { Assessment, Fault } from '../case/assessment';
import { type CaseFile, type Side, emptyCase, freshLineId, isBlank, type Line } from '../case/case';
import { type Catalogue, nothingToChoose } from '../case/catalogue';
import type { Exhibit } from '../case/exhibit';
import * as history from '../case/history';
import { type Letter, type LetterEdits, noEdits } from '../case/letter';
import type { Asked } from '../case/questions';
import { valueAt, withoutAt, withValueAt } from '../case/pointer';
import type { Engine } from '../engine/engine';
import { HeldAnswer } from '../engine/held-answer';
import { judge, leavesToWords } from '../engine/judge';
import type { Kept } from './keep';
import {
  canRead,
  canWrite,
  currencyOf,
  loadLanguage,
  loadLetters,
  loadPlace,
  loadReading,
  loadShared,
  registryOf,
} from '../engine/rules';
import { localToday, useCurrency } from '../say/show';
import { type Language, language, say, speak } from '../say/wording';

export interface Sheet {
  key: number;
  /** Name of the file it came from or was saved as. */
  file: string;
  history: history.History;
  /** The case as last saved, to know whether there are unsaved changes. */
  saved: CaseFile;
  result: Assessment | null;
  faults: Fault[];
  /** True once it was judged with the law of its place. */
  settled: boolean;
  exhibits: Exhibit[];
  /** What the person did with the letters: kind chosen, own words, paragraphs switched. */
  letter: LetterEdits;
  draft: HeldAnswer<Letter>;
  /** The open questions as they were shown last. */
  asked: Asked[];
}

export interface Notice {
  text: string;
  undo: boolean;
}

type Listener = () => void;

export class Desk {
  sheets: Sheet[] = [];
  front = 0;
  engine: Engine | null = null;
  /** Why the engine could not start, or empty. */
  broken = '';
  catalogue: Catalogue = nothingToChoose;
  today = localToday();
  /** What lies open beneath the charges: "facts:3", "steps:3", by the id of the charge. */
  open = new Set<string>();
  /** Folds that are open, by name. */
  folds = new Set<string>();
  /** What is being typed into a field, exactly as typed, by JSON Pointer. */
  typing = new Map<string, string>();
  notice: Notice | null = null;
  /** True while the cases are kept in this browser. */
  keeping = false;
  /** True while a statement is being brought in, in place of the case. */
  bringing = false;
  private listeners: Listener[] = [];
  private nextKey = 1;
  /** Counts the judgements asked for: only the answer to the last is shown. */
  private tickets = 0;
  /** True while the answer to the last is on its way. */
  judging = false;
  private awaitingDraw: (() => void)[] = [];

  constructor() {
    this.sheets.push(this.fresh(emptyCase(), ''));
  }

  get sheet(): Sheet {
    return this.sheets[this.front]!;
  }
  get case(): CaseFile {
    return this.sheet.history.now;
  }
  get result(): Assessment | null {
    return this.sheet.result;
  }
  get side(): Side {
    return this.case.side ?? 'tenant';
  }
  get blank(): boolean {
    return isBlank(this.case);
  }
  /** True if a case would be lost with the page. */
  get unsaved(): boolean {
    return this.sheets.some((s) => s.history.now !== s.saved && !isBlank(s.history.now));
  }

  onChange(listener: Listener): void {
    this.listeners.push(listener);
  }
  /** Draws the case in front as it is now, and again when it has been judged anew. */
  refresh(): void {
    const { sheet, engine } = this;
    const ticket = ++this.tickets;
    this.failed.clear();
    useCurrency(currencyOf(this.case.jurisdiction));
    if (!engine) return this.draw();
    this.judging = true;
    this.bringReading(this.case);
    judge(engine, this.asked(), this.today)
      .then((judged) => ticket === this.tickets && Object.assign(sheet, judged))
      .catch((e: unknown) => this.breakDown(e))
      .then(() => {
        if (ticket !== this.tickets) return;
        this.judging = false;
        this.draw();
      });
    this.draw();
  }
  draw(): void {
    this.listeners.forEach((l) => l());
    this.awaitingDraw.splice(0).forEach((done) => done());
  }
  /** Resolves when the result is that of the case as it is now, judged with all it needs: before anything is taken along. */
  async settled(): Promise<void> {
    while (this.judging || this.coming.size > 0) await new Promise<void>((done) => this.awaitingDraw.push(done));
  }
  /** The case in front as the engine is asked about it: in the page's language, with what somebody looks at. */
  private asked(): CaseFile {
    const ways = [...this.folds].some((name) => name.startsWith('ways:'));
    return { ...this.case, language: language(), ...(ways && { showMethods: true }) };
  }
  private breakDown(e: unknown): void {
    this.broken = e instanceof Error ? e.message : String(e);
  }

  /** What is on its way, so that it is fetched once. */
  private coming = new Set<unknown>();
  /** What could not be fetched; the next change tries again. */
  private failed = new Set<unknown>();

  /** Brings in what the engine lacks, then judges all cases anew: until then they were judged by what they name. */
  private async bring(what: typeof loadReading): Promise<void> {
    const { engine, coming, failed } = this;
    if (!engine || coming.has(what) || failed.has(what)) return;
    coming.add(what);
    try {
      await what(engine);
      this.sheets.forEach((s) => (s.settled = false));
      this.refresh();
      await this.settleOthers();
    } catch {
      failed.add(what);
      this.tell(say('page.notice.partNotLoaded'));
    } finally {
      coming.delete(what);
      this.draw();
    }
  }
  private bringReading(subject: CaseFile): void {
    if (leavesToWords(subject) && !canRead()) void this.bring(loadReading);
  }

  // Starting

  async start(open: () => Promise<Engine>): Promise<void> {
    try {
      const engine = await open();
      await loadShared(engine);
      if (this.case.jurisdiction) await loadPlace(engine, this.case.jurisdiction);
      if (language() !== 'en') await loadLanguage(engine, language(), this.case.jurisdiction);
      await this.list(engine);
      this.engine = engine;
    } catch (e) {
      this.breakDown(e);
    }
    this.refresh();
    await this.settleOthers();
  }

  /** Lists anew what a person can choose from: after a change of language or place. */
  private async list(engine: Engine): Promise<void> {
    this.catalogue = { ...(await engine.catalogue(language())), ...registryOf(this.case.jurisdiction) };
  }

  async useLanguage(wanted: Language): Promise<void> {
    // A message was said in the other language.
    this.notice = null;
    await speak(wanted);
    if (this.engine) {
      await loadLanguage(this.engine, wanted, this.case.jurisdiction);
      await this.list(this.engine);
    }
    this.sheets.forEach((s) => (s.settled = false));
    this.refresh();
    await this.settleOthers();
  }

  /** Judges the cases behind the one in front, each with its own law. */
  async settleOthers(): Promise<void> {
    const engine = this.engine;
    if (!engine) return;
    for (const sheet of this.sheets) {
      if (sheet === this.sheet || sheet.settled) continue;
      const subject = sheet.history.now;
      if (subject.jurisdiction) await loadPlace(engine, subject.jurisdiction).catch(() => undefined);
      this.bringReading(subject);
      const judged = await judge(engine, { ...subject, language: language() }, this.today);
      if (sheet.history.now === subject) Object.assign(sheet, judged, { settled: true });
    }
    this.draw();
  }

  /** The letter that fits the case in front, or null where there is none, or while what writes it is on its way. */
  letter(): Letter | null {
    const { engine, sheet, today } = this;
    if (!engine || sheet.faults.length > 0) return null;
    if (!canWrite()) {
      void this.bring(loadLetters);
      return null;
    }
    const { kind, off, on } = sheet.letter;
    const options = { ...(kind ? { kind } : {}), language: language(), off, on };
    // A new result means new facts or rules; the result itself is made anew with each of them.
    const basis = [sheet.result, today, JSON.stringify(options)];
    const draft = sheet.draft.get(
      basis,
      () => engine.letter(this.case, today, options),
      () => this.draw(),
    );
    return draft?.paragraphs ? draft : null;
  }

  /** The letter of the case as it is now, however much is still on its way. */
  async settledLetter(): Promise<Letter | null> {
    // Asks for what writes letters, if that is not here yet; then for the letter of the settled result.
    this.letter();
    await this.settled();
    this.letter();
    await this.sheet.draft.coming;
    return this.letter();
  }

  editLetter(edits: LetterEdits): void {
    this.sheet.letter = edits;
    this.draw();
  }

  /** Makes sure the law the case in front names is loaded, then judges. */
  async settle(): Promise<void> {
    const { sheet, engine } = this;
    const code = this.case.jurisdiction;
    // A new case is judged once its law is there: without it, what only that law knows would be called unknown for a moment.
    if (sheet.result || !engine || !code) this.refresh();
    else this.draw();
    if (!engine) return;
    try {
      if (code) await loadPlace(engine, code);
      // Another case may have come to the front meanwhile; this one is then judged with the others behind.
      if (this.sheet !== sheet) return;
      await this.list(engine);
      if (this.sheet !== sheet) return;
      sheet.settled = true;
    } catch {
      this.tell(say('page.notice.lawNotLoaded'));
    }
    this.refresh();
  }

  // Editing the case in front

  valueAt(pointer: string): unknown {
    return valueAt(this.case, pointer);
  }

  /** Writes a value (undefined takes it out). Typing on in one field counts as one change. */
  set(pointer: string, value: unknown, coalesce = false): void {
    if (valueAt(this.case, pointer) === value) return this.draw();
    this.put(withValueAt(this.case, pointer, value), coalesce ? pointer : '');
    if (pointer === '/jurisdiction') void this.settle();
  }

  put(next: CaseFile, touched = ''): void {
    this.sheet.history = history.change(this.sheet.history, next, touched);
    this.refresh();
  }

  setEvent(what: string, on: string | undefined): void {
    const events = this.case.events ?? [];
    const at = events.findIndex((e) => e.what === what);
    if (on === undefined) {
      if (at >= 0) this.put(withoutAt(this.case, `/events/${at}`), `event:${what}`);
    } else this.put(withValueAt(this.case, `/events/${at < 0 ? events.length : at}`, { what, on }), `event:${what}`);
  }
  eventOn(what: string): string | undefined {
    return this.case.events?.find((e) => e.what === what)?.on;
  }

  addLine(line: Partial<Line> = {}): string {
    const id = freshLineId(this.case.lines);
    this.put({ ...this.case, lines: [...this.case.lines, { ...line, id }] });
    return id;
  }

  removeLine(index: number): void {
    const line = this.case.lines[index];
    if (!line) return;
    this.put(withoutAt(this.case, `/lines/${index}`));
    this.tell(say('page.notice.removed', { what: line.text || say('page.charges.untitled') }), true);
  }

  duplicateLine(index: number): void {
    const line = this.case.lines[index];
    if (!line) return;
    const copy = { ...line, id: freshLineId(this.case.lines) };
    this.put({
      ...this.case,
      lines: [...this.case.lines.slice(0, index + 1), copy, ...this.case.lines.slice(index + 1)],
    });
    this.tell(say('page.notice.copied', { what: line.text || say('page.charges.untitled') }), true);
  }

  moveLine(index: number, by: -1 | 1): void {
    const to = index + by;
    const lines = [...this.case.lines];
    const [line] = lines.splice(index, 1);
    if (!line || to < 0 || to > lines.length) return;
    lines.splice(to, 0, line);
    this.put({ ...this.case, lines });
    this.tell(say('page.notice.moved', { what: line.text || say('page.charges.untitled'), place: to + 1 }));
  }

  undo(): void {
    this.sheet.history = history.undo(this.sheet.history);
    this.typing.clear();
    this.notice = { text: say('page.notice.undone'), undo: false };
    void this.settle();
  }
  redo(): void {
    this.sheet.history = history.redo(this.sheet.history);
    this.typing.clear();
    this.notice = { text: say('page.notice.redone'), undo: false };
    void this.settle();
  }
  get canUndo(): boolean {
    return this.sheet.history.past.length > 0;
  }
  get canRedo(): boolean {
    return this.sheet.history.future.length > 0;
  }

  // Sheets

  private fresh(subject: CaseFile, file: string): Sheet {
    return {
      key: this.nextKey++,
      file,
      history: history.begin(subject),
      saved: subject,
      result: null,
      faults: [],
      settled: false,
      exhibits: [],
      letter: noEdits,
      draft: new HeldAnswer(),
      asked: [],
    };
  }

  /** Lays a case in front: in place of a blank one, else beside the others. */
  lay(subject: CaseFile, file: string): void {
    const sheet = this.fresh(subject, file);
    if (this.blank) this.sheets[this.front] = sheet;
    else this.front = this.sheets.push(sheet) - 1;
    this.open.clear();
    this.typing.clear();
    void this.settle();
  }

  /** A blank case, in front of the others. */
  newSheet(): void {
    this.bringToFront(this.sheets.push(this.fresh(emptyCase(), '')) - 1);
  }

  /** Lays out what was kept on this device. */
  restore(sheets: Kept['sheets'], front: number): void {
    this.sheets = sheets.map((s) => ({
      ...this.fresh(s.subject, s.file),
      exhibits: s.exhibits,
      letter: s.letter ?? noEdits,
    }));
    this.bringToFront(Math.min(front, this.sheets.length - 1));
    void this.settleOthers();
  }

  exhibitsChanged(): void {
    this.draw();
  }

  bringToFront(index: number): void {
    this.front = index;
    this.open.clear();
    this.typing.clear();
    void this.settle();
  }

  /** Takes the case in front off the desk. */
  close(): void {
    this.sheets.splice(this.front, 1);
    if (this.sheets.length === 0) this.sheets.push(this.fresh(emptyCase(), ''));
    this.bringToFront(Math.min(this.front, this.sheets.length - 1));
  }

  clearAll(): void {
    this.sheets = [this.fresh(emptyCase(), '')];
    this.bringToFront(0);
  }

  markSaved(file: string): void {
    this.sheet.file = file;
    this.sheet.saved = this.case;
    this.draw();
  }

  // Showing

  tell(text: string, canUndo = false): void {
    this.notice = { text, undo: canUndo };
    this.draw();
  }
  /** Prints one section alone. */
  printOnly(section: string): void {
    document.body.dataset['print'] = section;
    window.addEventListener('afterprint', () => delete document.body.dataset['print'], { once: true });
    window.print();
  }
  hush(): void {
    this.notice = null;
    this.draw();
  }
  toggle(name: string): void {
    if (!this.open.delete(name)) this.open.add(name);
    this.draw();
  }
  toggleFold(name: string): void {
    if (!this.folds.delete(name)) this.folds.add(name);
    this.draw();
  }
  /** Opens or shuts the other ways of counting worth for one charge; they are reckoned while one is open. */
  lookAtWays(name: string): void {
    if (!this.folds.delete(name)) this.folds.add(name);
    this.refresh();
  }
}
