// Keeps the desk on this device while the person wants it, and brings it back at the next visit. Several windows may keep the same cases:
// each writes only over what it has seen, and what another wrote is taken in first.

import * as history from '../case/history';
import { merge } from '../case/merge';
import { say } from '../say/wording';
import type { Desk } from './desk';
import { forget, keep, kept, type Kept, type KeptSheet, type Written } from './keep';
import { freshId, isBlankSheet, isUnsaved, type Sheet, sheetOf, workOf } from './sheet';

type Message = 'here?' | 'here' | 'written' | 'stopped' | 'cleared';

const mark = (sheets: Sheet[], front: number): unknown[] => [
  front,
  ...sheets.flatMap((s) => [s.id, s.history.now, s.exhibits, s.letter, s.client, s.file, isUnsaved(s)]),
];
const sameMark = (a: unknown[], b: unknown[]): boolean => a.length === b.length && a.every((x, i) => x === b[i]);

function sheetOfKept(k: KeptSheet, id = k.id): Sheet {
  const sheet = sheetOf(k, k.file, id || undefined, k.changed || undefined);
  if (k.version && id === k.id) sheet.version = k.version;
  if (k.unsaved) sheet.saved = null;
  return sheet;
}

/** The sheet with what another window made of it; the change can be taken back like any other. */
function renewed(s: Sheet, k: KeptSheet): Sheet {
  s.history = history.change(s.history, k.subject);
  Object.assign(s, {
    exhibits: k.exhibits,
    letter: k.letter,
    client: k.client,
    file: k.file,
    changed: k.changed,
    version: k.version,
    settled: false,
  });
  s.saved = k.unsaved ? null : workOf(s);
  return s;
}

export class Keeper {
  private written: unknown[] = [];
  /** The version of each case, by its id, as the store has it. */
  private agreed = new Map<string, string>();
  private revision = 0;
  private waiting = 0;
  /** One writing after the other. */
  private line: Promise<void> = Promise.resolve();
  private windows: BroadcastChannel | undefined;

  constructor(private desk: Desk) {
    desk.onChange(() => this.later());
    // Where windows cannot talk to each other, each still sees what another wrote before it writes itself.
    if (typeof BroadcastChannel === 'undefined') return;
    this.windows = new BroadcastChannel('wearline');
    this.windows.addEventListener('message', (e: MessageEvent<Message>) => this.hear(e.data));
  }

  /** True while something is not written yet that is to be kept. */
  get behind(): boolean {
    const { desk } = this;
    return desk.keeping && !sameMark(mark(this.worth(), desk.front), this.written);
  }

  /** Brings back what was kept; what of it cannot be read is left out, and that is said. Never fails. */
  async restore(): Promise<void> {
    const { desk } = this;
    const found = await kept();
    if (found === 'nothing') return;
    if (found === 'unknown') return desk.warn(say('page.notice.keptUnknown'));
    desk.keeping = true;
    const { sheets, front, revision } = found.kept;
    this.revision = revision;
    this.agree(found.kept);
    if (sheets.length > 0)
      desk.layOut(
        sheets.map((s) => sheetOfKept(s)),
        front,
      );
    if (found.damaged > 0) desk.warn(say('page.notice.keptDamaged', { count: found.damaged }));
    this.written = found.damaged > 0 ? [] : mark(this.worth(), desk.front);
    this.send('here?');
  }

  async toggle(): Promise<void> {
    const { desk } = this;
    if (desk.keeping) {
      await this.stop();
      this.send('stopped');
      return desk.tell(say('page.notice.notKeeping'));
    }
    // What was said of the last try is no answer to this one.
    desk.hush();
    const found = await kept();
    if (found === 'unknown') return desk.warn(say('page.notice.keptUnknown'));
    desk.keeping = true;
    this.revision = 0;
    // Another window may keep cases already: they come in, none is written over.
    if (found !== 'nothing') this.takeIn(found.kept);
    await this.flush();
    // Where keeping failed that has been said.
    if (desk.keeping) desk.tell(say('page.notice.keeping'));
  }

  /** Takes everything off the desk and out of the browser, in every window that keeps the same cases. */
  async clear(): Promise<void> {
    await this.stop();
    this.send('cleared');
    this.desk.clearAll();
  }

  /** Ends the keeping and takes what was kept out of the browser. */
  private async stop(): Promise<void> {
    this.letGo();
    await this.line;
    await forget();
  }

  private letGo(): void {
    this.desk.keeping = false;
    this.written = [];
    this.agreed.clear();
    this.revision = 0;
    clearTimeout(this.waiting);
  }

  /** Writes at once what is not written yet. */
  flush(): Promise<void> {
    clearTimeout(this.waiting);
    return (this.line = this.line.then(() => this.write()));
  }

  private later(): void {
    if (!this.behind) return;
    clearTimeout(this.waiting);
    this.waiting = window.setTimeout(() => void this.flush(), 300);
  }

  private send(message: Message): void {
    this.windows?.postMessage(message);
  }

  private hear(message: Message): void {
    const { desk } = this;
    if (!desk.keeping) return;
    switch (message) {
      case 'here?':
        return this.send('here');
      case 'here':
        return desk.tell(say('page.notice.twoWindows'));
      case 'written':
        this.line = this.line.then(() => this.catchUp());
        return;
      case 'stopped':
        this.letGo();
        return desk.warn(say('page.notice.stoppedElsewhere'));
      case 'cleared':
        this.letGo();
        desk.clearAll();
        return desk.warn(say('page.notice.clearedElsewhere'));
    }
  }

  /** The sheets that hold anything. */
  private worth(): Sheet[] {
    return this.desk.sheets.filter((s) => !isBlankSheet(s));
  }

  private agree({ sheets }: { sheets: readonly { id: string; version: string }[] }): void {
    this.agreed = new Map(sheets.map((s) => [s.id, s.version]));
  }

  /** Takes in what another window wrote. */
  private async catchUp(): Promise<void> {
    const found = await kept();
    if (!this.desk.keeping) return;
    if (found === 'nothing' || found === 'unknown') {
      this.letGo();
      return this.desk.warn(say('page.notice.stoppedElsewhere'));
    }
    if (found.kept.revision !== this.revision) this.takeIn(found.kept);
  }

  private takeIn(theirs: Kept): void {
    const { desk } = this;
    const taken = merge(this.agreed, this.worth(), theirs.sheets);
    const front = desk.sheet;
    const sheets = taken.map((t) => {
      if (t.take === 'mine') return t.mine;
      if (t.take === 'apart') return sheetOfKept(t.theirs, freshId());
      return t.mine ? renewed(t.mine, t.theirs) : sheetOfKept(t.theirs);
    });
    if (isBlankSheet(front)) sheets.push(front);
    this.revision = theirs.revision;
    this.agree(theirs);
    desk.adopt(sheets, front);
    const ahead =
      taken.length !== theirs.sheets.length ||
      taken.some((t) => t.take === 'apart' || (t.take === 'mine' && this.agreed.get(t.mine.id) !== t.mine.version));
    this.written = ahead ? [] : mark(this.worth(), desk.front);
    if (taken.some((t) => t.take === 'apart')) desk.warn(say('page.notice.bothKept'));
  }

  private all(): Kept {
    const { sheet } = this.desk;
    const sheets = this.worth();
    return {
      wearline: 2,
      revision: this.revision + 1,
      front: Math.max(0, sheets.indexOf(sheet)),
      sheets: sheets.map((s) => ({
        id: s.id,
        changed: s.changed,
        version: s.version,
        file: s.file,
        ...workOf(s),
        unsaved: isUnsaved(s),
      })),
    };
  }

  private async write(): Promise<void> {
    for (let tries = 0; tries < 5 && this.behind; tries++) {
      const now = mark(this.worth(), this.desk.front);
      const all = this.all();
      const how = await keep(all, this.revision);
      if (!this.desk.keeping) return;
      if (how === 'kept') {
        this.done(all, now);
      } else if (how === 'other') await this.catchUp();
      else return this.fail(how, all, now);
    }
  }

  private done(all: Kept, now: unknown[]): void {
    this.revision = all.revision;
    this.agree(all);
    this.written = now;
    this.send('written');
  }

  /** No room: the words are kept without photos and papers, if there is room for those; that is said, and so is it if there is none. */
  private async fail(how: Written, all: Kept, now: unknown[]): Promise<void> {
    const bare = { ...all, sheets: all.sheets.map((s) => ({ ...s, exhibits: [], unsaved: true })) };
    if (how === 'full' && all.sheets.some((s) => s.exhibits.length) && (await keep(bare, this.revision)) === 'kept') {
      this.done(bare, now);
      return this.desk.warn(say('page.notice.keptWithoutPhotos'));
    }
    this.letGo();
    this.desk.warn(say(how === 'full' ? 'page.notice.noRoom' : 'page.notice.cannotKeep'));
  }
}
