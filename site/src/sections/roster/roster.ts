// The cases that lie open, as a table for a clinic's afternoon: what is next, and how much is in question.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { repeat } from 'lit/directives/repeat.js';
import { keepFile } from '../../app/case-files';
import type { Desk, Sheet } from '../../app/desk';
import { isUnsaved } from '../../app/sheet';
import { nameOfPlace } from '../../engine/rules';
import { cents, money, shortDay } from '../../say/show';
import { say } from '../../say/wording';
import type { LegalDate } from '../../case/assessment';
import './roster.css';

type Column = 'name' | 'place' | 'next' | 'claimed' | 'fair' | 'due';
const columns: Column[] = ['name', 'place', 'next', 'claimed', 'fair', 'due'];

interface Row {
  sheet: Sheet;
  index: number;
  name: string;
  place: string;
  next: LegalDate | undefined;
  claimed: string;
  fair: string;
  due: string;
}

let by: Column = 'next';
let backwards = false;

export const nameOf = (s: Sheet): string => s.history.now.title || s.file || say('page.roster.unnamed');

function rowOf(d: Desk, sheet: Sheet, index: number): Row {
  const r = sheet.result;
  const open = (r?.dates ?? []).filter((x) => x.state === 'open' && x.last?.earliest && x.last.earliest >= d.today);
  open.sort((a, b) => a.last!.earliest!.localeCompare(b.last!.earliest!));
  return {
    sheet,
    index,
    name: nameOf(sheet),
    place: nameOfPlace(sheet.history.now.jurisdiction),
    next: open[0],
    claimed: r?.totals.claimed ?? '',
    fair: r?.totals.fair.likely ?? '',
    due: r?.totals.shortfall?.likely ?? '',
  };
}

const order: Record<Column, (a: Row, b: Row) => number> = {
  name: (a, b) => a.name.localeCompare(b.name),
  place: (a, b) => a.place.localeCompare(b.place),
  // Cases without a day ahead come last.
  next: (a, b) => (a.next?.last?.earliest ?? '9').localeCompare(b.next?.last?.earliest ?? '9'),
  claimed: (a, b) => cents(b.claimed) - cents(a.claimed),
  fair: (a, b) => cents(b.fair) - cents(a.fair),
  due: (a, b) => cents(b.due) - cents(a.due),
};

function rowsOf(d: Desk): Row[] {
  const rows = d.sheets.map((s, i) => rowOf(d, s, i)).sort(order[by]);
  return backwards ? rows.reverse() : rows;
}

async function keepCsv(d: Desk): Promise<void> {
  const { csv } = await import('../../out/csv');
  await d.settled();
  const rows = rowsOf(d).map((r) => [
    r.name,
    r.place,
    r.next?.last?.earliest ?? '',
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
    <td>${r.next ? html`${shortDay(r.next.last!.earliest!)} <span class="roster-what">${r.next.label}</span>` : say('page.roster.noDay')}</td>
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
      <button type="button" class="tool" @click=${() => d.printOnly('roster')}>${say('page.roster.print')}</button>
      <button type="button" class="tool" @click=${() => d.newSheet()}>${say('page.roster.another')}</button>
      <button type="button" class="tool" @click=${() => closeFront(d)}>${say('page.roster.close', { name: nameOf(d.sheet) })}</button>
    </p>
  </section>`;
}
