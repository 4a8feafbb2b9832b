// The desk: the cases that lie open, the one in front, and what the engine says about it. Sections draw it and call its actions.

import type { Assessment, Fault } from '../case/assessment';
import type { Client } from '../case/client';
import type { Heap } from '../case/outcome';
import { type CaseFile, type Side, emptyCase, isBlank, type Line } from '../case/case';
import { type Catalogue, nothingToChoose } from '../case/catalogue';
import { asCredit, withCopy, withEvent, withEventHow, withLine, withMoved, withoutLine } from '../case/edits';
import * as history from '../case/history';
import type { Letter, LetterEdits } from '../case/letter';
import { valueAt, withValueAt } from '../case/pointer';
import type { Engine } from '../engine/engine';
import { localToday } from '../say/show';
import { type Language, say } from '../say/wording';
import { Judging } from './judging';
import { freshLineIdOf, isBlankSheet, isUnsaved, type Sheet, sheetOf, touch, workOf } from './sheet';

export type { Sheet };

/** Something a person can do about a message. */
export interface Act {
  /** Key of its words. */
  says: string;
  act(): void;
}

export interface Notice {
  text: string;
  acts: Act[];
  /** It is about work that could be lost: it stays until somebody closes it. */
  stays?: boolean;
}

type Listener = () => void;

export class Desk {
  sheets: Sheet[] = [sheetOf({ subject: emptyCase() })];
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
  /** The heap of charges that is shown alone, or empty. */
  filter: Heap | '' = '';
  notice: Notice | null = null;
  /** True while the cases are kept in this browser. */
  keeping = false;
  /** True while a statement is being brought in, in place of the case. */
  bringing = false;
  private listeners: Listener[] = [];
  private clearers: Listener[] = [];
  private judgement = new Judging(this);

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
  /** What cannot be read, without what is still being typed: nobody is corrected in the middle of a word. */
  get shownFaults(): Fault[] {
    const typed = [...this.typing.keys()];
    return this.sheet.faults.filter((f) => !typed.some((at) => f.at === at || f.at.startsWith(`${at}/`)));
  }
  get blank(): boolean {
    return isBlank(this.case);
  }
  /** True if work would be lost with the page. */
  get unsaved(): boolean {
    return this.sheets.some(isUnsaved);
  }

  onChange(listener: Listener): void {
    this.listeners.push(listener);
  }
  draw(): void {
    this.listeners.forEach((l) => l());
  }
  /** A page may lie open past midnight: from then on every day is counted from the new one. */
  newDay(today = localToday()): void {
    if (today === this.today) return;
    this.today = today;
    this.sheets.forEach((s) => (s.settled = false));
    this.refresh();
    void this.settleOthers();
  }
  breakDown(e: unknown): void {
    this.broken = e instanceof Error ? e.message : String(e);
  }

  // What the engine says

  get judging(): boolean {
    return this.judgement.unsettled;
  }
  refresh(): void {
    this.judgement.refresh();
  }
  settle(): Promise<void> {
    return this.judgement.settle();
  }
  settled(): Promise<void> {
    return this.judgement.settled();
  }
  settleOthers(): Promise<void> {
    return this.judgement.settleOthers();
  }
  start(open: () => Promise<Engine>): Promise<void> {
    return this.judgement.start(open);
  }
  useLanguage(wanted: Language): Promise<void> {
    return this.judgement.useLanguage(wanted);
  }
  letter(): Letter | null {
    return this.judgement.letter();
  }
  settledLetter(): Promise<Letter | null> {
    return this.judgement.settledLetter();
  }

  /** What fills the open places of letters. It lasts as long as the page is open, and is written nowhere. */
  names: Record<string, string> = {};
  nameBlank(id: string, value: string): void {
    this.names = { ...this.names, [id]: value.trim() };
    this.draw();
  }

  // Editing the case in front

  editLetter(edits: LetterEdits): void {
    this.sheet.letter = edits;
    this.touch();
    this.draw();
  }
  editClient(client: Client): void {
    this.sheet.client = client;
    this.touch();
    this.draw();
  }
  exhibitsChanged(): void {
    this.touch();
    this.draw();
  }
  private touch(): void {
    touch(this.sheet);
  }

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
    if (next === this.case) return this.draw();
    this.sheet.history = history.change(this.sheet.history, next, touched);
    this.touch();
    this.refresh();
  }

  setEvent(what: string, on: string | undefined): void {
    this.put(withEvent(this.case, what, on), `event:${what}`);
  }
  eventOn(what: string): string | undefined {
    return this.case.events?.find((e) => e.kind === what)?.date;
  }
  setEventHow(what: string, how: string | undefined): void {
    this.put(withEventHow(this.case, what, how), `event:${what}:how`);
  }
  eventHow(what: string): string | undefined {
    return this.case.events?.find((e) => e.kind === what)?.deliveryMethod;
  }

  /** An id that no charge of the case in front has or had. */
  freshLineId(): string {
    return freshLineIdOf(this.sheet);
  }

  addLine(line: Partial<Line> = {}): string {
    const id = this.freshLineId();
    this.put(withLine(this.case, { ...line, id }));
    return id;
  }

  removeLine(index: number): void {
    const line = this.case.lines[index];
    if (!line) return;
    this.put(withoutLine(this.case, index));
    this.tell(say('page.notice.removed', { what: line.text || say('page.charges.untitled') }), true);
  }

  duplicateLine(index: number): void {
    const line = this.case.lines[index];
    if (!line) return;
    this.put(withCopy(this.case, index, this.freshLineId()));
    this.tell(say('page.notice.copied', { what: line.text || say('page.charges.untitled') }), true);
  }

  moveLine(index: number, by: -1 | 1): void {
    const line = this.case.lines[index];
    const next = withMoved(this.case, index, by);
    if (!line || next === this.case) return;
    this.put(next);
    this.tell(say('page.notice.moved', { what: line.text || say('page.charges.untitled'), place: index + by + 1 }));
  }

  /** A sum typed with a minus sign becomes a credit: it lowers the charges. */
  makeCredit(index: number): void {
    this.typing.delete(`/lines/${index}/amount`);
    this.put(asCredit(this.case, index));
    this.tell(say('page.notice.credit', { n: index + 1 }), true);
  }

  undo(): void {
    this.goThrough(history.undo(this.sheet.history), 'page.notice.undone');
  }
  redo(): void {
    this.goThrough(history.redo(this.sheet.history), 'page.notice.redone');
  }
  private goThrough(next: history.History, says: string): void {
    this.sheet.history = next;
    this.touch();
    this.typing.clear();
    this.notice = { text: say(says), acts: [] };
    void this.settle();
  }
  get canUndo(): boolean {
    return this.sheet.history.past.length > 0;
  }
  get canRedo(): boolean {
    return this.sheet.history.future.length > 0;
  }

  // Sheets

  /** Lays a case in front: in place of a blank one, else beside the others. */
  lay(sheet: Sheet): void {
    if (isBlankSheet(this.sheet)) this.sheets[this.front] = sheet;
    else this.front = this.sheets.push(sheet) - 1;
    this.bringToFront(this.front);
  }

  /** Lays several cases beside those that lie here, the last in front: drawn and judged once, not once for each. */
  layAll(sheets: Sheet[]): void {
    if (sheets.length === 0) return;
    const here = this.sheets.filter((s) => !isBlankSheet(s));
    this.layOut([...here, ...sheets], here.length + sheets.length - 1);
  }

  /** A blank case, in front of the others. */
  newSheet(): void {
    this.bringToFront(this.sheets.push(sheetOf({ subject: { ...emptyCase(), side: this.side } })) - 1);
  }

  /** Lays out other sheets in place of those that lie here; the one in front stays there if it is among them. */
  layOut(sheets: Sheet[], front: number): void {
    this.sheets = sheets.length ? sheets : [sheetOf({ subject: emptyCase() })];
    this.bringToFront(Math.max(0, Math.min(Math.trunc(front) || 0, this.sheets.length - 1)));
    void this.settleOthers();
  }

  /** Goes on with other sheets, the one in front staying there if it can: what lies open or is being typed stays as it is. */
  adopt(sheets: Sheet[], front: Sheet): void {
    this.sheets = sheets.length ? sheets : [sheetOf({ subject: emptyCase() })];
    const at = this.sheets.indexOf(front);
    if (at < 0) return this.layOut(this.sheets, this.front);
    this.front = at;
    void this.settle().then(() => this.settleOthers());
  }

  bringToFront(index: number): void {
    this.front = index;
    this.open.clear();
    this.typing.clear();
    this.filter = '';
    void this.settle();
  }

  /** Takes the case in front off the desk; it can be put back. */
  close(): void {
    const [closed] = this.sheets.splice(this.front, 1);
    const at = this.front;
    if (this.sheets.length === 0) this.sheets.push(sheetOf({ subject: emptyCase() }));
    this.bringToFront(Math.min(at, this.sheets.length - 1));
    if (!closed || isBlankSheet(closed)) return;
    const back = (): void => {
      if (this.sheets.length === 1 && isBlankSheet(this.sheet)) this.sheets = [];
      this.sheets.splice(at, 0, closed);
      this.notice = null;
      this.bringToFront(Math.min(at, this.sheets.length - 1));
    };
    this.tell(say('page.notice.closed'), [{ says: 'page.notice.putBack', act: back }]);
  }

  /** What else holds something of a case is emptied with the desk. */
  onClear(clearer: Listener): void {
    this.clearers.push(clearer);
  }

  /** Takes everything off the desk; nothing of it can be brought back. */
  clearAll(): void {
    this.sheets = [sheetOf({ subject: emptyCase() })];
    this.notice = null;
    this.folds.clear();
    this.clearers.forEach((clear) => clear());
    this.bringToFront(0);
  }

  /** The file a sheet was saved as holds all of its work. */
  markSaved(sheet: Sheet, file: string): void {
    sheet.file = file;
    sheet.saved = workOf(sheet);
    this.draw();
  }

  // Showing

  /** Says something. `acts`: what can be done about it; true: the last change can be taken back. */
  tell(text: string, acts: Act[] | boolean = []): void {
    const undo = { says: 'page.tool.undo', act: () => this.undo() };
    this.notice = { text, acts: acts === true ? [undo] : acts || [] };
    this.draw();
  }
  /** Says something about work that could be lost. */
  warn(text: string, acts: Act[] = []): void {
    this.notice = { text, acts, stays: true };
    this.draw();
  }
  hush(): void {
    this.notice = null;
    this.draw();
  }
  toggle(name: string): void {
    if (!this.open.delete(name)) this.open.add(name);
    this.draw();
  }
  /** Shows one heap of the charges alone; an empty name shows all. */
  showOnly(heap: Heap | ''): void {
    this.filter = heap;
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
  /** Prints one section alone. */
  printOnly(section: string): void {
    document.body.dataset['print'] = section;
    window.addEventListener('afterprint', () => delete document.body.dataset['print'], { once: true });
    window.print();
  }
}
