// The cases that lie open, as a table for a clinic's afternoon: what is next, and how much is in question.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { live } from 'lit/directives/live.js';
import { repeat } from 'lit/directives/repeat.js';
import { keepFile } from '../../app/case-files';
import type { Desk, Sheet } from '../../app/desk';
import { isUnsaved } from '../../app/sheet';
import { nameOfPlace } from '../../engine/rules';
import { money, shortDay } from '../../say/show';
import { cents } from '../../case/cents';
import { say } from '../../say/wording';
import { replyDays } from '../../case/letter-numbers';
import { isAhead } from '../../case/next-step';
import { addDays } from '../../say/near';
import { stepsOfSheet } from '../outlook/steps';
import './roster.css';

type Column = 'name' | 'place' | 'next' | 'claimed' | 'fair' | 'due';
const columns: Column[] = ['name', 'place', 'next', 'claimed', 'fair', 'due'];

/** What a case waits for next, and whose it is: a right of one's own, an answer, a call, a day that was missed, or one that is to come. */
interface Next {
  day: string;
  label: string;
  whose: 'own' | 'lapsed' | 'answer' | 'contact' | 'missed' | 'theirs';
}

interface Row {
  sheet: Sheet;
  index: number;
  name: string;
  place: string;
  next: Next | undefined;
  claimed: string;
  fair: string;
  due: string;
}

let by: Column = 'next';
let backwards = false;
/** What is looked for in the list, and whether only what falls in the next seven days is shown. */
let wanted = '';
let weekOnly = false;

export const nameOf = (s: Sheet): string =>
  s.history.now.title || s.client.name || s.file || say('page.roster.unnamed');

/** What is lost first comes first: an own day or a lapsed right, then what was promised, then what the other side owes. */
const weight: Record<Next['whose'], number> = { lapsed: 0, own: 1, answer: 2, contact: 2, missed: 3, theirs: 4 };

function nextOf(d: Desk, sheet: Sheet): Next | undefined {
  const r = sheet.result;
  if (!r) return undefined;
  const steps = stepsOfSheet(d, sheet);
  const found = steps.flatMap((s): Next[] => {
    if (s.kind === 'lapsed') return [{ day: s.date.last?.latest ?? '', label: s.date.label, whose: 'lapsed' }];
    if (s.kind === 'own-day' && s.sure)
      return [{ day: s.date.last?.earliest ?? '', label: s.date.label, whose: 'own' }];
    if (s.kind === 'answer')
      return [{ day: addDays(s.written, replyDays), label: say('page.roster.answer'), whose: 'answer' }];
    if (s.kind === 'missed') return [{ day: s.date.last?.latest ?? '', label: s.date.label, whose: 'missed' }];
    return [];
  });
  if (sheet.client.next) found.push({ day: sheet.client.next, label: say('page.roster.contact'), whose: 'contact' });
  const theirs = r.dates.find((x) => x.state === 'open' && isAhead(x, d.today));
  if (theirs) found.push({ day: theirs.last!.earliest!, label: theirs.label, whose: 'theirs' });
  return found.sort((a, b) => weight[a.whose] - weight[b.whose] || a.day.localeCompare(b.day))[0];
}

function rowOf(d: Desk, sheet: Sheet, index: number): Row {
  const r = sheet.result;
  const due = r?.totals.shortfall;
  return {
    sheet,
    index,
    name: nameOf(sheet),
    place: nameOfPlace(sheet.history.now.jurisdiction),
    next: nextOf(d, sheet),
    claimed: r?.totals.claimed ?? '',
    fair: r?.totals.fair.likely ?? '',
    due: due?.likely ?? '',
  };
}

/** Cases without a day come last, whichever way the list is turned. */
const urgency = (r: Row): string => (r.next ? `${weight[r.next.whose]}${r.next.day}` : backwards ? '' : '9');

const order: Record<Column, (a: Row, b: Row) => number> = {
  name: (a, b) => a.name.localeCompare(b.name),
  place: (a, b) => a.place.localeCompare(b.place),
  next: (a, b) => urgency(a).localeCompare(urgency(b)),
  claimed: (a, b) => cents(b.claimed) - cents(a.claimed),
  fair: (a, b) => cents(b.fair) - cents(a.fair),
  due: (a, b) => cents(b.due) - cents(a.due),
};

function rowsOf(d: Desk): Row[] {
  const words = wanted.trim().toLowerCase();
  const week = addDays(d.today, 7);
  const rows = d.sheets
    .map((s, i) => rowOf(d, s, i))
    .filter((r) => !words || `${r.name} ${r.place}`.toLowerCase().includes(words))
    .filter((r) => !weekOnly || (r.next !== undefined && r.next.day <= week))
    .sort(order[by]);
  return backwards ? rows.reverse() : rows;
}

/** Sums of all cases without a name, for a report on the work done. */
async function keepTotals(d: Desk): Promise<void> {
  const { csv } = await import('../../out/csv');
  await d.settled();
  const rows = d.sheets.flatMap((s) => {
    const t = s.result?.totals;
    if (!t) return [];
    return [
      [
        nameOfPlace(s.history.now.jurisdiction),
        t.claimed,
        t.fair.low,
        t.fair.high,
        t.shortfall?.low ?? '',
        t.shortfall?.high ?? '',
        s.client.outcome ? say('page.yes') : '',
      ],
    ];
  });
  const head = ['place', 'claimed', 'fairLow', 'fairHigh', 'dueLow', 'dueHigh', 'hasOutcome'].map((c) =>
    say(`page.roster.${c}`),
  );
  keepFile('totals.csv', csv(head, rows), 'text/csv;charset=utf-8');
}

/** The days of every case in one calendar. */
async function keepDays(d: Desk): Promise<void> {
  const { calendarOf } = await import('../../out/calendar');
  await d.settled();
  const cases = d.sheets.flatMap((s) => (s.result ? [{ result: s.result, title: nameOf(s) }] : []));
  keepFile('cases.ics', calendarOf(cases), 'text/calendar;charset=utf-8');
}

async function keepCsv(d: Desk): Promise<void> {
  const { csv } = await import('../../out/csv');
  await d.settled();
  const rows = rowsOf(d).map((r) => [
    r.name,
    r.place,
    r.next?.day ?? '',
    r.next?.label ?? '',
    r.claimed,
    r.fair,
    r.due,
  ]);
  const head = ['name', 'place', 'next', 'nextWhat', 'claimed', 'fair', 'due'].map((c) => say(`page.roster.${c}`));
  keepFile('cases.csv', csv(head, rows), 'text/csv;charset=utf-8');
}

/** Closing asks where work would be lost with it. */
function closeFront(d: Desk): void {
  if (!isUnsaved(d.sheet) || window.confirm(say('page.roster.close.sure', { name: nameOf(d.sheet) }))) d.close();
}

function heading(d: Desk, c: Column): TemplateResult {
  const sorted = c !== by ? 'none' : backwards ? 'descending' : 'ascending';
  const sort = () => {
    backwards = c === by && !backwards;
    by = c;
    d.draw();
  };
  return html`<th scope="col" aria-sort=${sorted} data-column=${c}>
    <button type="button" class="roster-sort" @click=${sort}>${say(`page.roster.${c}`)}</button>
  </th>`;
}

function row(d: Desk, r: Row): TemplateResult {
  const unsaved = isUnsaved(r.sheet);
  return html`<tr aria-current=${r.index === d.front ? 'true' : nothing}>
    <th scope="row">
      <button type="button" class="link" @click=${() => d.bringToFront(r.index)}>${r.name}</button>
      ${unsaved ? html`<span class="roster-unsaved">${say('page.roster.unsaved')}</span>` : nothing}
    </th>
    <td>${r.place}</td>
    <td>${r.next ? html`${r.next.day ? shortDay(r.next.day) : ''} <span class="roster-what">${r.next.label} (${say(`page.roster.whose.${r.next.whose}`)})</span>` : say('page.roster.noDay')}</td>
    <td class="figure">${money(r.claimed)}</td>
    <td class="figure">${money(r.fair)}</td>
    <td class="figure">${money(r.due)}</td>
  </tr>`;
}

export function roster(d: Desk): TemplateResult | typeof nothing {
  if (d.sheets.length < 2) return nothing;
  const away = d.folds.has('roster-away');
  const head = html`<h2 id="roster-title">${say('page.roster.title', { count: d.sheets.length })}</h2>
    <button type="button" class="link" aria-expanded=${away ? 'false' : 'true'} aria-controls="roster-list" @click=${() => d.toggleFold('roster-away')}>
      ${say(away ? 'page.roster.show' : 'page.roster.hide')}
    </button>`;
  // Other people's cases are not for the eyes of the one who sits beside: away means out of the page, not only out of sight.
  if (away) return html`<section class="roster" aria-labelledby="roster-title" id="roster-list">${head}</section>`;
  return html`<section class="roster" aria-labelledby="roster-title" id="roster-list">
    ${head}
    <p class="roster-find">
      <label for="roster-find">${say('page.roster.find')}</label>
      <input
        id="roster-find"
        class="entry"
        type="search"
        .value=${live(wanted)}
        @input=${(e: Event) => {
          wanted = (e.target as HTMLInputElement).value;
          d.draw();
        }}
      />
      <label class="check"
        ><input
          type="checkbox"
          .checked=${live(weekOnly)}
          @change=${() => {
            weekOnly = !weekOnly;
            d.draw();
          }}
        /><span>${say('page.roster.week')}</span></label
      >
    </p>
    <div class="roster-scroll" role="group" aria-labelledby="roster-title" tabindex="0">
      <table>
        <thead>
          <tr>
            ${columns.map((c) => heading(d, c))}
          </tr>
        </thead>
        <tbody>
          ${repeat(
            rowsOf(d),
            (r) => r.sheet.key,
            (r) => row(d, r),
          )}
        </tbody>
      </table>
    </div>
    <p class="roster-tools">
      <button type="button" class="tool" @click=${() => void keepCsv(d)}>${say('page.roster.csv')}</button>
      <button type="button" class="tool" @click=${() => void keepDays(d)}>${say('page.roster.days')}</button>
      <button type="button" class="tool" @click=${() => void keepTotals(d)}>${say('page.roster.totals')}</button>
      <button type="button" class="tool" @click=${() => d.printOnly('roster')}>${say('page.roster.print')}</button>
      <button type="button" class="tool" @click=${() => d.newSheet()}>${say('page.roster.another')}</button>
      <button type="button" class="tool" @click=${() => closeFront(d)}>${say('page.roster.close', { name: nameOf(d.sheet) })}</button>
    </p>
  </section>`;
}
