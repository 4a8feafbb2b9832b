// Judging what lies on the desk: the case in front at each change, the others behind it, and the letter that fits. Only the answer to the
// last question is shown; rules that are not here yet are fetched once, and all is judged anew when they have come.

import type { CaseFile } from '../case/case';
import { type Letter } from '../case/letter';
import type { Engine } from '../engine/engine';
import { judge, leavesToWords } from '../engine/judge';
import {
  canRead,
  canWrite,
  currencyOf,
  loadLanguage,
  loadLetters,
  loadPlace,
  fetchReading,
  fetchRules,
  loadReading,
  loadShared,
  registryOf,
} from '../engine/rules';
import { useCurrency } from '../say/show';
import { type Language, language, say, speak } from '../say/wording';
import type { Desk } from './desk';

export class Judging {
  /** True while the answer about the case in front is on its way. */
  busy = false;
  /** Counts the judgements asked for: only the answer to the last is shown. */
  private tickets = 0;
  /** What is on its way, so that it is fetched once. */
  private coming = new Set<unknown>();
  /** What could not be fetched; the next change tries again. */
  private failed = new Set<unknown>();
  private awaiting: (() => void)[] = [];
  private open: (() => Promise<Engine>) | undefined;
  /** True while the engine starts. One that could not is tried again at the next change. */
  private opening = false;

  constructor(private desk: Desk) {
    desk.onChange(() => this.awaiting.splice(0).forEach((done) => done()));
  }

  /** True while the result shown is not yet the last: its answer, or what reads its words, is on its way. */
  get unsettled(): boolean {
    return this.busy || this.opening || (this.coming.has(loadReading) && this.readsWords(this.desk.case));
  }

  /** Draws the case in front as it is now, and again when it has been judged anew. */
  refresh(): void {
    const { desk } = this;
    const { sheet, engine } = desk;
    const ticket = ++this.tickets;
    this.failed.clear();
    useCurrency(currencyOf(desk.case.jurisdiction));
    if (!engine) {
      if (desk.broken) void this.restart();
      return desk.draw();
    }
    this.busy = true;
    this.bringReading(desk.case);
    void judge(engine, this.asked(), desk.today)
      .then((judged) => ticket === this.tickets && Object.assign(sheet, judged))
      .catch((e: unknown) => this.lose(engine, e))
      .then(() => {
        if (ticket !== this.tickets) return;
        this.busy = false;
        desk.draw();
      });
    desk.draw();
  }

  /** Resolves when the result is that of the case as it is now, judged with all it needs: before anything is taken along. */
  async settled(): Promise<void> {
    while (this.busy || this.coming.size > 0) await new Promise<void>((done) => this.awaiting.push(done));
  }

  /** The case in front as the engine is asked about it: in the page's language, with what somebody looks at. */
  private asked(): CaseFile {
    const ways = [...this.desk.folds].some((name) => name.startsWith('ways:'));
    return { ...this.desk.case, language: language(), ...(ways && { showMethods: true }) };
  }

  /** Brings in what the engine lacks, then judges all cases anew: until then they were judged by what they name. */
  private async bring(what: typeof loadReading): Promise<void> {
    const { desk, coming, failed } = this;
    const { engine } = desk;
    if (!engine || coming.has(what) || failed.has(what)) return;
    coming.add(what);
    try {
      await what(engine);
      await this.allAnew();
    } catch (e) {
      failed.add(what);
      // Gone from where the page came from: a newer build lies there.
      const gone = e instanceof Error && /: 404$/.test(e.message);
      desk.warn(say(gone ? 'page.notice.newerBuild' : 'page.notice.partNotLoaded'));
    } finally {
      coming.delete(what);
      desk.draw();
    }
  }

  private bringReading(subject: CaseFile): void {
    if (this.readsWords(subject) && !canRead()) void this.bring(loadReading);
  }

  private readsWords = (subject: CaseFile): boolean => leavesToWords(subject) || subject.walkThrough !== undefined;

  private async allAnew(): Promise<void> {
    this.desk.sheets.forEach((s) => (s.settled = false));
    this.refresh();
    await this.settleOthers();
  }

  /** Starts the engine, and fetches what reads words behind it: the first charge needs it. */
  async start(open: () => Promise<Engine>): Promise<void> {
    this.open = open;
    await this.restart();
    if (this.desk.engine) await this.bring(loadReading);
    // What the first answers do without comes behind them; who needs it before waits for it.
    await this.settled();
    await this.desk.engine?.complete().catch(() => undefined);
  }

  /** An engine that broke off is not asked again: the next change starts another. */
  private lose(engine: Engine, e: unknown): void {
    if (this.desk.engine === engine) this.desk.engine = null;
    this.desk.breakDown(e);
  }

  private async restart(): Promise<void> {
    const { desk, open } = this;
    if (!open || this.opening) return;
    this.opening = true;
    try {
      fetchRules(desk.case.jurisdiction);
      const engine = await open();
      // The line is free now, and the engine busy: the first charge needs what reads its words.
      fetchReading();
      await loadShared(engine);
      if (desk.case.jurisdiction) await loadPlace(engine, desk.case.jurisdiction);
      if (language() !== 'en') await loadLanguage(engine, language(), desk.case.jurisdiction);
      await this.list(engine);
      desk.engine = engine;
      desk.broken = '';
    } catch (e) {
      desk.breakDown(e);
    }
    this.opening = false;
    if (!desk.engine) return desk.draw();
    this.refresh();
    await this.settleOthers();
  }

  /** Lists anew what a person can choose from: after a change of language or place. */
  private async list(engine: Engine): Promise<void> {
    const { desk } = this;
    desk.catalogue = { ...(await engine.catalogue(language())), ...registryOf(desk.case.jurisdiction) };
  }

  async useLanguage(wanted: Language): Promise<void> {
    const { desk } = this;
    // A message was said in the other language.
    desk.notice = null;
    await speak(wanted);
    if (desk.engine) {
      await loadLanguage(desk.engine, wanted, desk.case.jurisdiction);
      await this.list(desk.engine);
    }
    await this.allAnew();
  }

  /** Judges the cases behind the one in front, each with its own law. */
  async settleOthers(): Promise<void> {
    const { desk } = this;
    const { engine } = desk;
    if (!engine) return;
    for (const sheet of desk.sheets) {
      if (sheet === desk.sheet || sheet.settled) continue;
      const subject = sheet.history.now;
      if (subject.jurisdiction) await loadPlace(engine, subject.jurisdiction).catch(() => undefined);
      this.bringReading(subject);
      const judged = await judge(engine, { ...subject, language: language() }, desk.today);
      if (sheet.history.now === subject) Object.assign(sheet, judged, { settled: true });
    }
    desk.draw();
  }

  /** The letter that fits the case in front, or null where there is none, or while what writes it is on its way. */
  letter(): Letter | null {
    const { desk } = this;
    const { engine, sheet, today } = desk;
    if (!engine) return null;
    if (!canWrite()) {
      // What reads the words comes first: the line is one.
      if (!this.coming.has(loadReading)) void this.bring(loadLetters);
      return null;
    }
    // A value that cannot be read holds the letter up: the last one stays until it can.
    if (sheet.faults.length > 0) return sheet.draft.last?.paragraphs ? sheet.draft.last : null;
    const { kind, off, on } = sheet.letter;
    const options = { ...(kind ? { kind } : {}), language: language(), off, on, names: desk.names };
    // A new result means new facts or rules; the result itself is made anew with each of them.
    const basis = [sheet.result, today, JSON.stringify(options)];
    const draft = sheet.draft.get(
      basis,
      () => engine.letter(desk.case, today, options),
      () => desk.draw(),
    );
    return draft?.paragraphs ? draft : null;
  }

  /** The letter of the case as it is now, however much is still on its way; null where a value cannot be read. */
  async settledLetter(): Promise<Letter | null> {
    // Asks for what writes letters, if that is not here yet; then for the letter of the settled result.
    this.letter();
    await this.settled();
    this.letter();
    await this.desk.sheet.draft.coming;
    return this.desk.sheet.faults.length > 0 ? null : this.letter();
  }

  /** Makes sure the law the case in front names is loaded, then judges. */
  async settle(): Promise<void> {
    const { desk } = this;
    const { sheet, engine } = desk;
    const code = desk.case.jurisdiction;
    // A new case is judged once its law is there: without it, what only that law knows would be called unknown for a moment.
    if (sheet.result || !engine || !code) this.refresh();
    else desk.draw();
    if (!engine) return;
    try {
      if (code) await loadPlace(engine, code);
      // Another case may have come to the front meanwhile; this one is then judged with the others behind.
      if (desk.sheet !== sheet) return;
      await this.list(engine);
      if (desk.sheet !== sheet) return;
      sheet.settled = true;
    } catch {
      desk.tell(say('page.notice.lawNotLoaded'));
    }
    this.refresh();
  }
}
