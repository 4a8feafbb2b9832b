// The right to an inspection before moving out: when it may be held and must be asked for, the request, and what came of it.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { live } from 'lit/directives/live.js';
import type { Desk } from '../../app/desk';
import { leftOn } from '../../case/next-step';
import { notFine } from '../../case/walk-answers';
import { inspectionDays, type InspectionDays } from '../../case/walk-days';
import { walkOf, withThingById, withWalk } from '../../case/walk-edits';
import { lawOf, type Rule } from '../../engine/rules';
import { field, oneOf, triValue, triWord } from '../../parts/field';
import { sourceList } from '../../parts/sources';
import { fullDay } from '../../say/show';
import { say } from '../../say/wording';
import { saveDays } from './hand-out';
import { askedJudged, endTaken } from './judged';
import { faultName, thingName } from './names';

/** Chooses a kind of letter and goes to it. */
export function writeLetter(d: Desk, kind: string): void {
  d.editLetter({ ...d.sheet.letter, kind });
  const go = (tries: number): void => {
    const title = document.getElementById('letter');
    if (title) {
      title.scrollIntoView();
      title.focus();
    } else if (tries > 0) setTimeout(() => go(tries - 1), 100);
  };
  go(50);
}

function windowWords({ from, to }: InspectionDays, leaves: string | undefined): string {
  if (from && to) return say('page.walk.inspection.window', { from: fullDay(from), to: fullDay(to) });
  if (from && leaves && leaves > from)
    return say('page.walk.inspection.untilLeaving', { from: fullDay(from), to: fullDay(leaves) });
  if (from) return say('page.walk.inspection.from', { from: fullDay(from) });
  return to ? say('page.walk.inspection.to', { to: fullDay(to) }) : '';
}

type Remark = Rule & { right?: boolean };

/** What the law of the place says of an inspection before the end, in a sentence; not all of it gives a right. */
function remarksOf(d: Desk): { remarks: Remark[]; cites(r: Rule): string[] } {
  const law = lawOf(d.case.jurisdiction);
  const remarks = ((law?.['inspection'] ?? []) as Remark[]).filter((r) => !r.to);
  return { remarks, cites: (r) => (r.source ?? []).flatMap((id) => law?.sources[id]?.cite ?? []) };
}

function right(d: Desk): TemplateResult {
  const a = askedJudged(d);
  if (!d.case.jurisdiction) return html`<p>${say('page.walk.inspection.noPlace')}</p>`;
  if (!a) return html`<p class="empty">${say('page.sums.loading')}</p>`;
  const days = inspectionDays(a, d.today, leftOn(d.case));
  const { remarks, cites } = remarksOf(d);
  const isRight = days.rules.length > 0 || remarks.some((r) => r.right);
  const window = windowWords(days, leftOn(d.case));
  return html`${remarks.map((r) => html`<p>${r.text} ${r.whenText ? say('page.days.condition', { condition: r.whenText }) : ''}</p>`)}
    ${isRight ? nothing : html`<p>${say(remarks.length ? 'page.walk.inspection.noRight' : 'page.walk.inspection.noLaw')}</p>`}
    ${days.rules.length && !leftOn(d.case) ? html`<p>${say('page.walk.inspection.noDay')}</p>` : nothing}
    ${days.askBy ? html`<p class="walk-day" data-loud=${days.askBy >= d.today ? 'yes' : nothing}>${say(days.askBy >= d.today ? 'page.walk.inspection.ask' : 'page.walk.inspection.asked', { day: fullDay(days.askBy) })}</p>` : nothing}
    ${window ? html`<p class="walk-day">${window}</p>` : nothing}
    ${window && endTaken(d.case) ? html`<p class="help">${say('page.walk.inspection.sameDay')}</p>` : nothing}
    ${
      isRight
        ? html`<details class="fold">
            <summary>${say('page.walk.inspection.how')}</summary>
            <ul class="plain-list">
              ${remarks.map((r) => html`<li>${r.text} ${sourceList(cites(r))}</li>`)}
              ${days.rules.map((r) => html`<li>${r.rule} ${r.condition ? say('page.days.condition', { condition: r.condition }) : ''}${r.caveat ? html` <span class="check">${say('page.check')} ${r.caveat}</span>` : nothing} ${sourceList((r.sourceIds ?? []).map((id) => a.sources[id] ?? id))}</li>`)}
            </ul>
          </details>`
        : nothing
    }`;
}

function yesNo(name: string, words: string, value: unknown, set: (v: boolean | undefined) => void): TemplateResult {
  const options = [
    { id: 'yes', label: say('page.yes') },
    { id: 'no', label: say('page.no') },
    { id: '', label: say('page.notKnown') },
  ];
  return html`<fieldset class="field"><legend>${say(words)}</legend>${oneOf(name, options, triWord(value), (id) => set(triValue(id)))}</fieldset>`;
}

/** Ticks what stands on the landlord's list; the rest is then known not to be on it. */
function theirList(d: Desk): TemplateResult | typeof nothing {
  if (walkOf(d.case).inspectionListGiven !== true) return nothing;
  return html`<p>${say('page.walk.inspection.tick')}</p>
    <div class="checks">
      ${notFine(d.case).map(
        (t) =>
          html`<label class="check"><input type="checkbox" .checked=${live(t.onLandlordList === true)} @change=${(e: Event) => d.put(withThingById(d.case, t.id, { onLandlordList: (e.target as HTMLInputElement).checked }))} /><span>${thingName(d, t)}: ${faultName(d, t)}</span></label>`,
      )}
    </div>`;
}

/** A list was given: what is not ticked is not on it. */
function setListGiven(d: Desk, given: boolean | undefined): void {
  const items = walkOf(d.case).items?.map((t) => {
    const { onLandlordList, ...rest } = t;
    return given ? { ...rest, onLandlordList: onLandlordList ?? false } : rest;
  });
  d.put(withWalk(d.case, { inspectionListGiven: given, items }));
}

export function inspection(d: Desk): TemplateResult {
  const landlord = d.side === 'landlord';
  const record = (member: string) => `/records/preMoveOutInspection/${member}`;
  const answer = (member: 'requested' | 'held') =>
    yesNo(`walk-${member}`, `page.walk.inspection.${member}`, d.valueAt(record(member)), (v) =>
      d.set(record(member), v),
    );
  return html`<section class="walk" aria-labelledby="walk-inspection">
    <h2 id="walk-inspection" tabindex="-1">${say(landlord ? 'page.walk.inspection.title.landlord' : 'page.walk.inspection.title')}</h2>
    ${landlord ? nothing : html`<p>${say('page.walk.inspection.says')}</p>`}
    ${right(d)}
    <p class="walk-buttons">
      ${landlord || !leftOn(d.case) ? nothing : html`<button type="button" class="tool tool-main" @click=${() => writeLetter(d, 'inspection-request')}>${say('page.walk.inspection.letter')}</button>`}
      <button type="button" class="tool" ?disabled=${!leftOn(d.case)} @click=${() => void saveDays(d)}>${say('page.walk.inspection.calendar')}</button>
    </p>
    ${
      landlord
        ? nothing
        : html`<div class="fields">
            ${answer('requested')} ${answer('held')}
            ${yesNo('walk-list-given', 'page.walk.inspection.list', walkOf(d.case).inspectionListGiven, (v) => setListGiven(d, v))}
            ${walkOf(d.case).inspectionListGiven ? field(d, { at: '/walkThrough/inspectionListDated', kind: 'date', label: say('page.walk.inspection.listDated') }) : nothing}
          </div>
          ${theirList(d)}`
    }
  </section>`;
}
