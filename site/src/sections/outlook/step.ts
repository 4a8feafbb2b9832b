// The next step: one sentence, what hangs on it, and one thing to press or to fill in.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import type { LegalDate } from '../../case/assessment';
import type { NextStep } from '../../case/next-step';
import { affectsDeadline } from '../../case/next-step';
import { isZero, longDay, nearDay, shortMoney } from '../../say/show';
import { addDays, nearness } from '../../say/near';
import { spanInWords } from '../../say/date-words';
import { say } from '../../say/wording';
import { field } from '../../parts/field';
import { answerName, fieldOfQuestion } from '../../parts/fields';
import { clockField, goToFact } from '../standing/standing';
import { hasLetter } from '../letter/has-letter';
import { replyDays } from '../../case/letter-numbers';
import { openCharge, shortQuestion } from '../charges/open-charge';
import { spanWords } from './money';
import { goOn } from './steps';

interface Words {
  act: string;
  why: string;
  /** What is pressed or filled in. */
  do: TemplateResult | typeof nothing;
  losesRightIfMissed?: boolean;
}

const landlord = (d: Desk): boolean => d.side === 'landlord';
const sideKey = (d: Desk): string => (landlord(d) ? 'landlord' : 'tenant');

const lastDay = (d: Desk, x: LegalDate): string =>
  x.last?.earliest && x.last.earliest === x.last.latest
    ? nearDay(d.today, x.last.earliest)
    : x.last
      ? spanInWords(x.last, longDay)
      : '';

const toLetter = (d: Desk, main = true): TemplateResult | typeof nothing =>
  hasLetter(d)
    ? html`<a class=${main ? 'tool tool-main' : 'next-link'} href="#letter">${say(`page.next.getLetter.${sideKey(d)}`)}</a>`
    : nothing;
const toDays = (): TemplateResult => html`<a class="next-link" href="#days">${say('page.next.seeDay')}</a>`;

function ownDay(d: Desk, date: LegalDate, sure: boolean): Words {
  const near = nearness(d.today, date);
  const day = lastDay(d, date);
  return {
    act: say('page.next.byDay', { what: date.label, day }) + (near ? ` ${near}` : ''),
    why: [sure || !date.condition ? '' : say('page.days.condition', { condition: date.condition }), date.ifMissed]
      .filter(Boolean)
      .join(' '),
    do: html`${toLetter(d)} ${toDays()}`,
    losesRightIfMissed: true,
  };
}

function missed(d: Desk, s: NextStep & { kind: 'missed' }): Words {
  const r = d.result!.remedies;
  const lost = s.forfeiture === 'yes' && r && !isZero(r.amountDueIfForfeited.high);
  const act = landlord(d)
    ? say('page.next.late', { what: s.date.label })
    : lost
      ? say('page.next.askAll', { sum: spanWords(r.amountDueIfForfeited) })
      : say('page.next.theyMissed');
  const why = landlord(d)
    ? `${s.date.stateText} ${say('page.next.late.advice')}`
    : `${s.forfeiture === 'no' ? '' : say(`page.next.forfeits.${s.forfeiture}`)} ${s.date.label}: ${s.date.stateText}`.trim();
  return { act, why, do: html`${toLetter(d)} ${toDays()}`, losesRightIfMissed: landlord(d) };
}

/** The buttons under a field: on to the next step, or not known. Both are always there, so that none goes under the finger. */
const onward = (d: Desk, s: NextStep, isAnswered: () => boolean): TemplateResult =>
  html`<p class="next-onward">
    <button type="button" class="tool" @click=${() => goOn(d, isAnswered() ? undefined : s)}>${say('page.next.on')}</button>
    <button type="button" class="link" @click=${() => goOn(d, s)}>${say('page.next.notKnown')}</button>
    ${toLetter(d, false)}
  </p>`;

/** The facts stand just above, each field once: the way there is one press. */
function basic(d: Desk, s: NextStep & { kind: 'basic' }): Words {
  return {
    act: say(`page.next.basic.${s.what}.${sideKey(d)}`),
    why: say(`page.next.basic.${s.what}.why`),
    do: html`<button type="button" class="tool tool-main" @click=${() => goToFact(d, s.what)}>${say('page.standing.fillIn')}</button>
      <button type="button" class="link" @click=${() => goOn(d, s)}>${say('page.next.notKnown')}</button>
      ${toLetter(d, false)}`,
  };
}

function clock(d: Desk, s: NextStep & { kind: 'clock' }): Words {
  const f = clockField(d, s.at);
  const isAnswered = () => d.valueAt(s.at) !== undefined;
  return {
    act: f?.label ?? '',
    why: say('page.next.turnsDay'),
    do: html`<div class="next-answer">${f ? field(d, { ...f, key: 'next', held: { entered: () => goOn(d) } }) : nothing}${onward(d, s, isAnswered)}</div>`,
  };
}

function question(d: Desk, s: NextStep & { kind: 'question' }): Words {
  const q = s.question;
  const answer = fieldOfQuestion(d, q);
  const why = affectsDeadline(q)
    ? say('page.next.turnsDay')
    : isZero(q.effect)
      ? ''
      : say('page.next.moves', { sum: shortMoney(q.effect) });
  const isAnswered = () =>
    answer !== undefined && (answer.event ? d.eventOn(answer.event) : d.valueAt(answer.at)) !== undefined;
  const index = /^\/lines\/(\d+)/.exec(q.asks)?.[1];
  return {
    act: index === undefined ? q.text : `${say('page.charges.nth', { n: Number(index) + 1 })}: ${shortQuestion(d, q)}`,
    why,
    do: html`<div class="next-answer">
      ${
        answer
          ? field(d, { ...answer, key: 'next', label: answerName(d, q), held: { entered: () => goOn(d) } })
          : index === undefined
            ? nothing
            : html`<button type="button" class="tool" @click=${() => openCharge(d, Number(index))}>${say('page.unknowns.open', { n: Number(index) + 1 })}</button>`
      }
      ${onward(d, s, isAnswered)}
    </div>`,
  };
}

function wordsOf(d: Desk, s: NextStep): Words {
  switch (s.kind) {
    case 'lapsed':
      return {
        act: say('page.next.lapsed'),
        why: `${s.date.label}: ${s.date.stateText} ${s.date.ifMissed}`,
        do: html`${toDays()} ${toLetter(d, false)}`,
        losesRightIfMissed: true,
      };
    case 'own-day':
      return ownDay(d, s.date, s.sure);
    case 'missed':
      return missed(d, s);
    case 'basic':
      return basic(d, s);
    case 'clock':
      return clock(d, s);
    case 'question':
      return question(d, s);
    case 'wait':
      return {
        act: say('page.next.wait', { day: lastDay(d, s.date) }),
        why: say('page.next.wait.why', { what: s.date.label }),
        do: toDays(),
      };
    case 'answer':
      return {
        act: say('page.next.answerBy', { day: nearDay(d.today, addDays(s.written, replyDays)) }),
        why: say('page.next.answerBy.why', { day: longDay(s.written) }),
        do: toDays(),
      };
    case 'living-there':
      return {
        act: say(`page.next.livingThere.${sideKey(d)}`, { day: longDay(s.leaves) }),
        why: say(`page.next.livingThere.${sideKey(d)}.why`),
        do: html`${toLetter(d)} ${toDays()}`,
      };
    case 'letter':
      return {
        act: say(`page.next.letter.${sideKey(d)}`),
        why: say(`page.next.letter.${sideKey(d)}.why`),
        do: toLetter(d),
      };
    case 'done':
      return { act: say('page.next.done'), why: say('page.next.done.why'), do: nothing };
  }
}

/** The step in one sentence. */
export const actOf = (d: Desk, s: NextStep): string => wordsOf(d, s).act;

/** A second day in one line, where one of them is not enough. */
const alsoLine = (d: Desk, s: NextStep & { date: LegalDate }): TemplateResult =>
  html`<p class="next-also">
    ${s.kind === 'missed' ? say('page.next.also.missed') : say('page.next.also')}
    <a href="#days">${s.kind === 'missed' ? s.date.label : say('page.next.byDay', { what: s.date.label, day: lastDay(d, s.date) })}</a>
    ${s.kind === 'missed' ? nothing : nearness(d.today, s.date)}
  </p>`;

export function step(d: Desk, s: NextStep, also: (NextStep & { date: LegalDate }) | undefined): TemplateResult {
  const w = wordsOf(d, s);
  return html`<div class="next" data-kind=${s.kind} data-loud=${w.losesRightIfMissed ? 'yes' : nothing}>
    <p class="next-eyebrow">${say(s.kind === 'done' || s.kind === 'wait' || s.kind === 'answer' ? 'page.next.now' : 'page.next.title')}</p>
    <p class="next-act" id="next-title" tabindex="-1">${w.act}</p>
    ${w.why ? html`<p class="next-why">${w.why}</p>` : nothing}
    <div class="next-do">${w.do}</div>
    ${also ? alsoLine(d, also) : nothing}
  </div>`;
}
