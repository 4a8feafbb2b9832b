// When the statement comes: what was seen before stands beside what is charged, and becomes its proof where a person says that it is about
// the same thing.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import type { JudgedLine } from '../../case/assessment';
import type { CaseFile, Line } from '../../case/case';
import type { WalkItem } from '../../case/walk';
import { walkOf } from '../../case/walk-edits';
import { candidates, clearMatch, linkedTo, shownBy, withMatch, withoutMatch } from '../../case/walk-proof';
import { longDay } from '../../say/show';
import { say } from '../../say/wording';
import { photosOf, thingName } from './names';
import './walk.css';

export { wordsThere } from './words';

function shownWords(d: Desk, t: WalkItem): string[] {
  const day = longDay(t.remedied ?? t.inspected ?? walkOf(d.case).date ?? d.today);
  return shownBy(d.case, t).map((s) => say(`page.walk.seen.${s}`, { thing: thingName(d, t), day }));
}

/** The photos of a thing go along with the charge that is about it, or no longer do. */
function bindPhotos(d: Desk, pairs: [thing: string, line: string][]): void {
  const lineOf = new Map(pairs);
  const touches = d.sheet.exhibits.some((x) => x.thing && lineOf.has(x.thing));
  if (!touches) return;
  d.sheet.exhibits = d.sheet.exhibits.map((x) =>
    x.thing && lineOf.has(x.thing) ? { ...x, line: lineOf.get(x.thing)! } : x,
  );
  d.exhibitsChanged();
}

/** Photos of the state at the end are among the records: letters then name them among what is enclosed. */
const withPhotos = (d: Desk, c: CaseFile, things: string[]): CaseFile =>
  c.records?.['photosAtMoveOut'] === undefined && d.sheet.exhibits.some((x) => x.thing && things.includes(x.thing))
    ? { ...c, records: { ...c.records, photosAtMoveOut: true } }
    : c;

function use(d: Desk, pairs: [thing: string, line: string][]): void {
  const next = pairs.reduce((c, [thing, line]) => withMatch(c, line, thing), d.case);
  d.put(
    withPhotos(
      d,
      next,
      pairs.map(([thing]) => thing),
    ),
  );
  bindPhotos(d, pairs);
}

function drop(d: Desk, t: WalkItem): void {
  d.put(withoutMatch(d.case, t.id));
  bindPhotos(d, [[t.id, '']]);
}

function proof(d: Desk, t: WalkItem, index: number, line: Line): TemplateResult {
  const linked = t.line === line.id;
  const photos = photosOf(d, t).length;
  const of = html`<span class="unseen"> ${say('page.walk.seen.use.of', { thing: thingName(d, t), n: index + 1 })}</span>`;
  return html`<li data-shown=${shownBy(d.case, t)[0] ?? nothing}>
    ${shownWords(d, t).map((s) => html`<p>${s}</p>`)}
    ${photos ? html`<p class="help">${say('page.walk.seen.photos', { count: photos })}</p>` : nothing}
    ${
      linked
        ? html`<p class="help">${d.side === 'landlord' ? nothing : say('page.walk.seen.used')} <button type="button" class="link" @click=${() => drop(d, t)}>${say('page.walk.seen.drop')}${of}</button></p>`
        : html`<button type="button" class="tool" @click=${() => use(d, [[t.id, line.id]])}>${say('page.walk.seen.use')}${of}</button>`
    }
  </li>`;
}

/** What was seen of the thing a charge is about. */
export function seen(d: Desk, line: Line, index: number, judged: JudgedLine | undefined): TemplateResult {
  const linked = linkedTo(d.case, line);
  const things = linked.length ? linked : candidates(d.case, line, judged).filter((t) => !t.line);
  return html`<div class="row-seen">
    <h3>${say('page.walk.seen.title')}</h3>
    ${things.length ? html`<ul>${things.map((t) => proof(d, t, index, line))}</ul>` : html`<p class="empty">${say('page.walk.seen.none')}</p>`}
  </div>`;
}

/** All charges of which it is clear what they are about, taken with one press. */
export function seenBar(d: Desk): TemplateResult | typeof nothing {
  const judged = new Map(d.result?.lines.map((l) => [l.id, l]));
  const taken = new Set<string>();
  const pairs = d.case.lines.flatMap((line): [string, string][] => {
    if (linkedTo(d.case, line).length) return [];
    const t = clearMatch(d.case, line, judged.get(line.id));
    if (!t || taken.has(t.id)) return [];
    taken.add(t.id);
    return [[t.id, line.id]];
  });
  if (pairs.length === 0) return nothing;
  return html`<p class="seen-bar">
    ${pairs.length === 1 ? say('page.walk.seen.bar.one') : say('page.walk.seen.bar', { count: pairs.length })}
    <button type="button" class="tool" @click=${() => use(d, pairs)}>${say('page.walk.seen.bar.use')}</button>
  </p>`;
}
