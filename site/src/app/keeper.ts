// Keeps the desk on this device while the person wants it, and brings it back at the next visit.

import type { Desk, Sheet } from './desk';
import { forget, keep, kept } from './keep';
import { say } from '../say/wording';

const mark = (sheets: Sheet[], front: number): unknown[] => [
  front,
  ...sheets.flatMap((s) => [s.history.now, s.exhibits, s.letter]),
];

export class Keeper {
  private written: unknown[] = [];
  private waiting = 0;

  constructor(private desk: Desk) {
    desk.onChange(() => this.later());
  }

  /** Brings back what was kept. Nothing kept: nothing happens. */
  async restore(): Promise<void> {
    const found = await kept();
    if (!found?.sheets.length) return;
    this.desk.keeping = true;
    this.desk.restore(found.sheets, found.front);
  }

  async toggle(): Promise<void> {
    this.desk.keeping = !this.desk.keeping;
    if (this.desk.keeping) await this.write();
    else await this.stop();
    this.desk.tell(say(this.desk.keeping ? 'page.notice.keeping' : 'page.notice.notKeeping'));
  }

  /** Ends the keeping and takes what was kept out of the browser. */
  async stop(): Promise<void> {
    this.desk.keeping = false;
    this.written = [];
    clearTimeout(this.waiting);
    await forget();
  }

  private later(): void {
    if (!this.desk.keeping) return;
    clearTimeout(this.waiting);
    this.waiting = window.setTimeout(() => void this.write(), 300);
  }

  private async write(): Promise<void> {
    const { sheets, front } = this.desk;
    const now = mark(sheets, front);
    if (now.length === this.written.length && now.every((x, i) => x === this.written[i])) return;
    const all = sheets.map((s) => ({ file: s.file, subject: s.history.now, exhibits: s.exhibits, letter: s.letter }));
    if (await keep({ wearline: 1, front, sheets: all })) this.written = now;
    else {
      this.desk.keeping = false;
      this.desk.tell(say('page.notice.cannotKeep'));
    }
  }
}
