// The days that count in law: what had to happen by when, whether it did, and how the day was counted.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { pictures } from '../../app/pictures';
import { fullDay, longDay } from '../../say/show';
import { nearness } from '../../say/near';
import { eachOnce, isAhead } from '../../case/next-step';
import { fieldAt, fieldOfEvent, fieldOfFact } from '../../parts/fields';
import { field } from '../../parts/field';
import { say } from '../../say/wording';
import type { LegalDate } from '../../case/assessment';
import { spanInWords } from '../../say/date-words';
import { stateMark } from '../../parts/mark';
import { sources } from '../../parts/sources';
import './days.css';

/** A duty that costs the tenant a right and is not done: shown first and losesRightIfMissed. */
const isLoud = (date: LegalDate): boolean =>
  date.losesRightIfMissed && (date.state === 'open' || date.state === 'missed');

function when(date: LegalDate): TemplateResult | typeof nothing {
  if (date.notBefore && date.first) {
    const first =
      date.first.earliest === date.first.latest ? fullDay(date.first.earliest!) : spanInWords(date.first, longDay);
    return html`<p class="day-last">${say('page.days.notBefore', { day: first })}</p>`;
  }
  if (!date.last || (date.last.earliest === null && date.last.latest === null)) return nothing;
  const words =
    date.last.earliest === date.last.latest ? fullDay(date.last.earliest!) : spanInWords(date.last, longDay);
  return html`<p class="day-last">${words}</p>`;
}

function how(d: Desk, date: LegalDate, saysIfMissed: boolean): TemplateResult {
  return html`<details class="how">
    <summary>${say('page.days.how')}<span class="unseen"> ${date.label}</span></summary>
    <p>${date.rule}</p>
    ${date.text ? html`<p>${date.text}</p>` : nothing}
    ${date.condition ? html`<p>${say('page.days.condition', { condition: date.condition })}</p>` : nothing}
    ${!saysIfMissed && date.ifMissed ? html`<p>${say('page.days.ifMissed')} ${date.ifMissed}</p>` : nothing}
    ${date.caveat ? html`<p class="check">${say('page.check')} ${date.caveat}</p>` : nothing} ${sources(d, date)}
  </details>`;
}

function day(d: Desk, date: LegalDate, before: LegalDate | undefined): TemplateResult {
  const near = nearness(d.today, date);
  // Two duties with one consequence say it once.
  const saysIfMissed = (date.state === 'missed' || isLoud(date)) && date.ifMissed !== before?.ifMissed;
  return html`<li class="day" data-state=${date.state} data-loud=${isLoud(date) ? 'yes' : nothing}>
    ${stateMark(date.state)}
    <div>
      <p class="day-name"><strong>${date.label}</strong> <span class="day-who">${say(`page.days.who.${date.who}`)}</span></p>
      ${when(date)}
      <p class="day-state"><strong>${date.stateText}</strong>${near ? html` <span class="day-near">${near}</span>` : nothing}</p>
      ${saysIfMissed && date.ifMissed ? html`<p class="day-if">${date.ifMissed}</p>` : nothing} ${how(d, date, saysIfMissed)}
    </div>
  </li>`;
}

const list = (d: Desk, dates: LegalDate[]): TemplateResult | typeof nothing =>
  dates.length
    ? html`<ul class="days-list">
        ${dates.map((x, i) => day(d, x, dates[i - 1]))}
      </ul>`
    : nothing;

const fold = (name: string, count: number, body: () => unknown): TemplateResult | typeof nothing =>
  count
    ? html`<details class="fold">
        <summary>${say(`page.days.${name}`, { count })}</summary>
        ${body()}
      </details>`
    : nothing;

interface Groups {
  yours: LegalDate[];
  missed: LegalDate[];
  next: LegalDate[];
  unknown: LegalDate[];
  met: LegalDate[];
  idle: LegalDate[];
}

/** A day before which nothing may be done counts while it lies ahead; afterwards it is over. */
const isOver = (x: LegalDate, today: string): boolean => x.notBefore && ((x.first ?? x.last)?.earliest ?? '') <= today;

/** One's own, what the other side missed, what comes next; then what a fact is missing for, what was done, what is not needed. */
export function groupsOf(d: Desk): Groups {
  const groups: Groups = { yours: [], missed: [], next: [], unknown: [], met: [], idle: [] };
  const own = d.side === 'landlord' ? 'landlord' : 'tenant';
  for (const x of eachOnce(d.result?.dates ?? [])) {
    if (x.state === 'not-needed' || (x.state !== 'met' && isOver(x, d.today))) groups.idle.push(x);
    else if (x.state === 'met') groups.met.push(x);
    else if (x.who === own && (x.state !== 'undetermined' || (x.losesRightIfMissed && isAhead(x, d.today))))
      groups.yours.push(x);
    else if (x.state === 'undetermined') groups.unknown.push(x);
    else if (x.state === 'missed') groups.missed.push(x);
    else groups.next.push(x);
  }
  groups.yours.sort((a, b) => Number(isLoud(b)) - Number(isLoud(a)));
  return groups;
}

/** How many days are one's own to keep or were missed by the other side. */
export const dayCount = (d: Desk): number => {
  const g = groupsOf(d);
  return g.yours.length + g.missed.length;
};

/** The fact a day waits for first: the law's name of it, or its place in the case. */
const factOf = (x: LegalDate): string => x.dependsOnIds?.[0] ?? x.dependsOn?.[0] ?? '';

/** The days that hang on one missing fact, under the field for it. */
function byFact(d: Desk, dates: LegalDate[]): TemplateResult {
  const facts = [...new Set(dates.map(factOf))].filter(Boolean);
  return html`${facts.map((id) => {
    const these = dates.filter((x) => factOf(x) === id);
    const f = fieldOfFact(d, id) ?? fieldOfEvent(d, id) ?? fieldAt(d, these[0]!.dependsOn[0]!);
    return html`<div class="days-fact">
      ${f ? field(d, { ...f, key: 'days', help: undefined }) : nothing}
      <p class="days-decides">${say('page.days.decides', { count: these.length })}</p>
      ${list(d, these)}
    </div>`;
  })}
  ${list(
    d,
    dates.filter((x) => !factOf(x)),
  )}`;
}

const group = (d: Desk, name: string, dates: LegalDate[]): TemplateResult | typeof nothing =>
  dates.length ? html`<h3>${say(`page.days.group.${name}`)}</h3>${list(d, dates)}` : nothing;

/** One's own first, then what was missed, then what comes; the rest can wait in folds. */
export function days(d: Desk): TemplateResult | typeof nothing {
  if (d.blank) return nothing;
  const all = d.result?.dates ?? [];
  const g = groupsOf(d);
  const other = d.side === 'landlord' ? 'theirsTenant' : 'theirs';
  return html`<section class="days" aria-labelledby="days">
    <h2 id="days" tabindex="-1">${say('page.days.title')}</h2>
    ${
      all.length === 0
        ? html`<p class="empty">${say(d.case.jurisdiction ? 'page.days.none' : 'page.days.noPlace')}</p>`
        : html`${group(d, 'yours', g.yours)} ${group(d, other, g.missed)} ${group(d, 'next', g.next)}
        ${g.yours.length + g.missed.length + g.next.length === 0 ? html`<p class="empty">${say('page.days.noneOpen')}</p>` : nothing}
        ${fold('unknown', g.unknown.length, () => byFact(d, g.unknown))} ${fold('met', g.met.length, () => list(d, g.met))}
        ${fold('idle', g.idle.length, () => list(d, g.idle))} ${fold('inOrder', all.length, () => pictures.get(d)?.timeline(d) ?? nothing)}`
    }
  </section>`;
}
