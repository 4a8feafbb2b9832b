// Going through what was found: the statement on one side, what was made of it on the other. On a narrow screen these are two steps.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { live } from 'lit/directives/live.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Desk } from '../../app/desk';
import { HeldAnswer } from '../../engine/held-answer';
import { judge, type Judged } from '../../engine/judge';
import { nameOfPlace, places } from '../../engine/rules';
import { money } from '../../say/show';
import { language, say } from '../../say/wording';
import { dateForField, dateWords } from '../../say/date-words';
import type { JudgedLine } from '../../case/assessment';
import type { SumName, TextPlace, ReadCheck } from '../../case/reading';
import { dateFromTyping } from '../../case/typed-date';
import { amountForField, amountFromTyping } from '../../case/typed-money';
import { oneOf } from '../../parts/field';
import { showRow, stretch, stretches } from '../../parts/stretch';
import {
  accepted,
  answerAsked,
  type Asked,
  changeCharge,
  changeFact,
  type Charge,
  type Fact,
  isOpen,
  likelyThing,
  makeCharge,
  putBack,
  readingsOf,
  readWell,
  type Review,
  stillOpen,
  sureThing,
  withReading,
} from './review';
import { sourcePane, strip } from './source-pane';
import { canReadPictures } from './source/picture-library';

interface Acts {
  change(r: Review): void;
  again(): void;
  done(): void;
}

/** What is looked at: a line of the source, from 1. */
let lookedAt = 0;
/** On a narrow screen: which of the two is in view. */
let step: 'found' | 'source' = 'found';
/** Whether the charges found take the place of those the case has. */
let instead = false;
/** What is being typed into a field, by the field's id. */
const typing = new Map<string, string>();

/** Begins with another statement: nothing looked at, nothing half typed. */
export function beginReview(): void {
  lookedAt = 0;
  step = 'found';
  instead = false;
  typing.clear();
}

/** Shows where something stands in the source. On a narrow screen that is the other step. */
function look(d: Desk, place: TextPlace): void {
  lookedAt = place.line;
  step = 'source';
  d.draw();
  setTimeout(() =>
    document.querySelector('.bring-source [data-looked]')?.scrollIntoView({ block: 'center', inline: 'nearest' }),
  );
}

/** Brings the charge made of a line of the source into view. */
function lookBack(d: Desk, r: Review, key: number): void {
  step = 'found';
  showRow(
    r.source,
    'found',
    r.charges.findIndex((c) => c.key === key),
  );
  d.draw();
  setTimeout(() => document.getElementById(`found-${key}-text`)?.focus());
}

const whereWords = (r: Review, place: TextPlace): string => {
  const page = r.source.lines[place.line - 1]?.page;
  return page !== undefined && r.source.pages.length > 1
    ? say('page.bring.where.page', { page: page + 1 })
    : say(r.source.pages.length ? 'page.bring.where.picture' : 'page.bring.where.line', { line: place.line });
};

const where = (d: Desk, r: Review, place: TextPlace, of: string): TemplateResult =>
  html`<button type="button" class="link found-where" aria-pressed=${lookedAt === place.line ? 'true' : 'false'} @click=${() => look(d, place)}>
    ${whereWords(r, place)}<span class="unseen"> ${of}</span>
  </button>`;

function amountField(
  d: Desk,
  id: string,
  label: string,
  value: string,
  wrong: boolean,
  write: (value: string) => void,
): TemplateResult {
  return html`<input
    id=${id}
    class="charge-amount found-amount"
    type="text"
    inputmode="decimal"
    autocomplete="off"
    aria-label=${label}
    aria-invalid=${wrong ? 'true' : nothing}
    .value=${live(typing.get(id) ?? amountForField(value))}
    @input=${(e: Event) => {
      const typed = (e.target as HTMLInputElement).value;
      typing.set(id, typed);
      write(amountFromTyping(typed) ?? '');
    }}
    @change=${() => {
      typing.delete(id);
      d.draw();
    }}
  />`;
}

/** What the sum is in doubt about, with the picture of it, and the answer "it is right". */
function doubt(r: Review, c: Charge, n: number, acts: Acts): TemplateResult | typeof nothing {
  if (!canReadPictures || c.doubtful.length === 0) return nothing;
  const line = c.amountPlace?.line ?? c.places[0]?.line ?? 0;
  return html`<div class="found-doubt">
    ${strip(r.source, line, c.doubtful, say('page.bring.strip', { n }))}
    ${
      !isOpen(c)
        ? html`<p class="help">${say(c.settled ? 'page.bring.doubt.settled' : c.sumInDoubt ? 'page.bring.doubt.checked' : 'page.bring.doubt.words')}</p>`
        : c.amount === ''
          ? html`<p class="fault">${say('page.bring.doubt.unread')}</p>`
          : html`<p class="fault">${say(!c.credit && readWell(c.doubtful) ? 'page.bring.doubt.off' : 'page.bring.doubt')}
            <button type="button" class="tool" @click=${() => acts.change(changeCharge(r, c.key, { checked: true }))}>
              ${say('page.bring.doubt.right')}<span class="unseen"> ${say('page.bring.nth', { n })}</span>
            </button></p>`
    }
  </div>`;
}

/** What the charge was read as, and how sure that is. */
function readAs(judged: JudgedLine | undefined, c: Charge): string {
  if (!c.read || !judged) return '';
  if (c.read.confidence < likelyThing || !c.read.element) return say('page.bring.readAs.not');
  const what = [judged.elementText, judged.findingText].filter(Boolean).join(': ');
  return say(c.read.confidence < sureThing ? 'page.bring.readAs.perhaps' : 'page.bring.readAs', { what });
}

function note(judged: JudgedLine | undefined, c: Charge): TemplateResult {
  const notes = [
    c.credit && say('page.bring.credit'),
    c.read?.computed && say('page.bring.computed'),
    readAs(judged, c),
  ];
  return html`<span class="found-read">${notes.filter(Boolean).join(' ')}</span>`;
}

function charge(
  d: Desk,
  r: Review,
  c: Charge,
  n: number,
  judged: JudgedLine | undefined,
  wrong: boolean,
  acts: Acts,
): TemplateResult {
  const write = (change: Partial<Charge>): void => acts.change(changeCharge(r, c.key, change));
  const at = c.amountPlace ?? c.places[0];
  return html`<li class="found" data-open=${isOpen(c) ? 'yes' : nothing} data-looked=${c.places.some((p) => p.line === lookedAt) ? 'yes' : nothing}>
    <span class="found-number" aria-hidden="true">${n}</span>
    <span class="grow" data-text=${c.text}
      ><textarea
        id="found-${c.key}-text"
        class="charge-text"
        rows="1"
        aria-label=${say('page.charges.text', { n })}
        .value=${live(c.text)}
        @input=${(e: Event) => write({ text: (e.target as HTMLTextAreaElement).value })}
        @focus=${() => {
          if (lookedAt === (c.places[0]?.line ?? 0)) return;
          lookedAt = c.places[0]?.line ?? 0;
          d.draw();
          document
            .querySelector('.bring-source [data-looked]')
            ?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
        }}
      ></textarea
    ></span>
    <span class="found-sum">
      ${c.credit ? html`<span class="found-sign" aria-hidden="true">&minus;</span>` : nothing}
      ${amountField(d, `found-${c.key}-amount`, say(c.credit ? 'page.bring.credit.amount' : 'page.charges.amount', { n }), c.amount, wrong, (typed) => write({ amount: typed.replace(/^[-\u2212]\s*/, ''), credit: c.credit || /^[-\u2212]/.test(typed), checked: true }))}
    </span>
    <div class="found-more">
      ${wrong ? html`<p class="fault">${say('page.fault.money')}</p>` : nothing}
      ${doubt(r, c, n, acts)}
      <p class="found-tools">
        ${note(judged, c)}
        ${at ? where(d, r, at, say('page.bring.nth', { n })) : nothing}
        ${
          c.credit
            ? html`<button type="button" class="link" @click=${() => write({ credit: false })}>${say('page.bring.isCharge')}<span class="unseen"> ${say('page.bring.nth', { n })}</span></button>`
            : nothing
        }
        <button type="button" class="link" @click=${() => acts.change(putBack(r, c.key))}>${say('page.bring.notCharge')}<span class="unseen"> ${say('page.bring.nth', { n })}</span></button>
      </p>
    </div>
  </li>`;
}

const factName = (f: Fact): string =>
  f.kind === 'place' ? say('page.standing.place') : say(`page.field${f.at.replace(/\/0/g, '').replace(/\//g, '.')}`);

function fact(d: Desk, r: Review, f: Fact, acts: Acts): TemplateResult {
  const id = `fact${f.at.replace(/\//g, '-')}`;
  const name = factName(f);
  const write = (value: string): void =>
    acts.change(changeFact(r, f.at, { value, checked: true, take: f.take || value !== '' }));
  const known = d.valueAt(f.at);
  const differs = known !== undefined && known !== f.value;
  const shown = (value: unknown): string =>
    f.kind === 'money'
      ? money(String(value))
      : f.kind === 'place'
        ? nameOfPlace(String(value))
        : dateForField(String(value));
  return html`<li class="fact-found">
    <label class="fact-take"
      ><input type="checkbox" .checked=${live(f.take)} @change=${(e: Event) => acts.change(changeFact(r, f.at, { take: (e.target as HTMLInputElement).checked }))} /><span
        >${name}</span
      ></label
    >
    ${
      f.kind === 'money'
        ? amountField(d, id, name, f.value, false, write)
        : f.kind === 'place'
          ? html`<select id=${id} class="entry" aria-label=${name} @change=${(e: Event) => write((e.target as HTMLSelectElement).value)}>
            ${places().map((p) => html`<option value=${p.code} .selected=${live(p.code === f.value)}>${p.name}</option>`)}
          </select>`
          : html`<input
            id=${id}
            class="entry"
            type="text"
            autocomplete="off"
            aria-label=${name}
            .value=${live(typing.get(id) ?? dateForField(f.value))}
            @input=${(e: Event) => {
              const typed = (e.target as HTMLInputElement).value;
              typing.set(id, typed);
              write(String(dateFromTyping(typed, dateWords()) ?? ''));
            }}
            @change=${() => {
              typing.delete(id);
              d.draw();
            }}
          />`
    }
    <p class="found-tools">
      ${f.place ? where(d, r, f.place, name) : nothing}
      ${differs ? html`<span class="help">${say('page.bring.differs', { known: shown(known) })}</span>` : nothing}
      ${f.doubtful.length && !f.checked ? html`<span class="fault">${say(!f.value ? 'page.bring.doubt.unread' : readWell(f.doubtful) ? 'page.bring.doubt.off' : 'page.bring.doubt')}</span>` : nothing}
    </p>
    ${f.place && f.doubtful.length ? strip(r.source, f.place.line, f.doubtful, name) : nothing}
  </li>`;
}

const hasFigures = (t: { text: string }): boolean => /\d/.test(t.text);

/** Where the paper's own sums fit more than one way, the person says which; nothing of it is a charge before. */
function readings(d: Desk, r: Review, acts: Acts): TemplateResult | typeof nothing {
  const all = readingsOf(r);
  if (all.length === 0) return nothing;
  const sumsOf = (n: number) =>
    r.reading.uncertainCharges.filter((c) => c.reading === n).map((c) => `${c.text} ${money(c.amount)}`);
  const chosen = r.charges.find((c) => c.choice !== undefined)?.choice;
  return html`<fieldset class="bring-choice">
    <legend>${say('page.bring.choice')}</legend>
    ${oneOf(
      'bring-choice',
      [
        ...all.map((n) => ({ id: String(n), label: sumsOf(n).join(' + ') })),
        { id: 'none', label: say('page.bring.choice.none') },
      ],
      chosen === undefined ? 'none' : String(chosen),
      (id) => acts.change(withReading(r, id === 'none' ? null : Number(id))),
    )}
    <p class="found-tools">${all.map((n) => r.reading.uncertainCharges.filter((c) => c.reading === n).map((c) => where(d, r, c.amountSpan, c.text)))}</p>
  </fieldset>`;
}

/** One sum that may be a charge, with its words and where they stand. */
function question(d: Desk, r: Review, a: Asked, acts: Acts): TemplateResult {
  const { open } = a;
  const sum = money(open.amount.replace(/^-/, ''));
  return html`<li class="asked" data-looked=${open.amountSpan.line === lookedAt ? 'yes' : nothing}>
    <fieldset>
      <legend>${say(open.amount.startsWith('-') ? 'page.bring.asked.credit' : 'page.bring.asked.charge', { sum })}</legend>
      <p class="asked-words">${open.text} ${where(d, r, open.amountSpan, open.text)}</p>
      ${oneOf(
        `asked-${a.key}`,
        [
          { id: 'yes', label: say('page.yes') },
          { id: 'no', label: say('page.no') },
        ],
        a.charged === undefined ? '' : a.charged ? 'yes' : 'no',
        (id) => acts.change(answerAsked(r, a.key, id === 'yes')),
      )}
    </fieldset>
  </li>`;
}

/** Sums that no sum of the paper confirms are asked about one by one; none is a charge before it is said so. */
function questions(d: Desk, r: Review, acts: Acts): TemplateResult | typeof nothing {
  if (r.asked.length === 0) return nothing;
  return html`<div class="bring-asked">
    <p class="help">${say('page.bring.asked')}</p>
    <ul>${repeat(
      r.asked,
      (a) => a.key,
      (a) => question(d, r, a, acts),
    )}</ul>
  </div>`;
}

function tray(d: Desk, r: Review, acts: Acts): TemplateResult | typeof nothing {
  // What is to be chosen between stands above.
  const lines = r.tray.filter((t) => t.text.trim() !== '' && t.code !== 'choice');
  if (lines.length === 0) return nothing;
  const withFigures = lines.filter(hasFigures);
  const [from, to] = stretch(r.source, 'tray', lines.length);
  const name = 'bring-tray';
  const open =
    d.folds.has(name) || r.charges.length === 0 || isUnconfirmed(r) || lines.some((t) => t.doubtful.length > 0);
  return html`<details class="fold bring-tray" ?open=${open} @toggle=${(e: Event) => {
    const now = (e.target as HTMLDetailsElement).open;
    if (now !== d.folds.has(name) && !(now && open)) d.toggleFold(name);
  }}>
    <summary>${say('page.bring.tray')} <span class="fold-count">${say('page.bring.tray.count', { count: lines.length, figures: withFigures.length })}</span></summary>
    <p class="help">${say('page.bring.tray.help')}</p>
    ${stretches(r.source, 'tray', lines.length, () => d.draw())}
    <ul class="tray">
      ${repeat(
        lines.slice(from, to),
        (t) => t.key,
        (t) => html`<li data-looked=${t.line === lookedAt ? 'yes' : nothing}>
          <p class="tray-text">${t.text.trim()}</p>
          ${t.doubtful.length ? html`${strip(r.source, t.line, t.doubtful, t.text.trim())}<p class="fault">${say('page.bring.tray.doubt')}</p>` : nothing}
          <p class="found-tools">
            ${t.reason ? html`<span class="help">${t.reason}</span>` : nothing}
            ${t.line > 0 ? where(d, r, { line: t.line, start: 0, end: 0 }, t.text.trim()) : nothing}
            <button
              type="button"
              class="link"
              @click=${() => {
                const next = makeCharge(r, t.key);
                acts.change(next);
                const made = next.charges.find((c) => c.key === r.nextKey);
                setTimeout(() =>
                  document.getElementById(`found-${r.nextKey}-${made?.amount ? 'text' : 'amount'}`)?.focus(),
                );
              }}
            >
              ${say('page.bring.makeCharge')}<span class="unseen"> ${t.text.trim()}</span>
            </button>
          </p>
        </li>`,
      )}
    </ul>
  </details>`;
}

/** Findings about figures that are listed. */
const mostSaid = 12;

const sameSum = (a: string | undefined, b: string | null | undefined): boolean => a !== undefined && a === b;

/** Findings of the audit about figures. What else it finds is for later, beside the charges. */
const aboutFigures = new Set([
  'sum-wrong',
  'refund-wrong',
  'balance-wrong',
  'deposit-left-out',
  'charged-twice',
  'product-wrong',
  'tax-wrong',
]);

/** The sum of the paper that a finding is about. */
const sumOf: Record<string, SumName | undefined> = {
  'sum-wrong': 'statedTotal',
  'refund-wrong': 'statedRefund',
  'balance-wrong': 'statedBalanceDue',
  'deposit-left-out': 'deposit',
};

/** The paper's own arithmetic as it was read; it no longer holds once a sum was changed. What the audit says too is left to it. */
function checksOf(r: Review, said: Set<string>): ReadCheck[] {
  const also: Record<string, string> = { extension: 'product-wrong', tax: 'tax-wrong' };
  return isAsRead(r)
    ? r.reading.arithmeticErrors.filter((c) => c.code === 'subtotal' || (c.code in also && !said.has(also[c.code]!)))
    : [];
}

/** No total, refund or balance of the paper comes out with the charges found, though it states one or holds sums that may be charges. */
const isUnconfirmed = (r: Review): boolean =>
  !r.reading.arithmeticConfirmed.some((c) => c.code !== 'extension' && c.code !== 'subtotal') &&
  (r.reading.arithmeticErrors.some((c) => ofAccount.has(c.code)) ||
    r.reading.uncertainCharges.length > 0 ||
    r.tray.some((t) => perhapsCharged.has(t.code)));
const ofAccount = new Set(['sum', 'refund', 'balance']);
const perhapsCharged = new Set(['number-without-sign', 'sum-without-words', 'sum-unexplained', 'in-passing']);

const isAsRead = (r: Review): boolean =>
  r.charges.length === r.reading.lines.length && r.charges.every((c) => c.amount === c.read?.amount.replace(/^-/, ''));

/** Which of the paper's sums come out, and what would explain those that do not, each with the line it stands in. */
function arithmetic(d: Desk, r: Review): TemplateResult[] {
  if (!isAsRead(r)) return [];
  const at = (line: number): TextPlace => ({ line, start: 0, end: 0 });
  const closed = r.reading.arithmeticConfirmed.filter((c) => c.code !== 'sum' && c.code !== 'extension');
  const slips = r.reading.arithmeticErrors.filter((c) => c.explanation);
  return [
    ...slips.map((c) => html`<p class="bring-check">${c.explanation} ${where(d, r, at(c.line), c.explanation!)}</p>`),
    ...closed.map((c) => html`<p class="help">${c.text} ${where(d, r, at(c.line), c.text)}</p>`),
  ];
}

/** Whether the figures add up, as the engine sees the statement now. */
function sums(d: Desk, r: Review, judged: Judged): TemplateResult {
  const claimed = judged.result?.totals.claimed;
  const stated = r.facts.find((f) => f.at === '/statement/statedTotal')?.value;
  // What it should come to is known when it is said what is charged.
  const undecided = r.asked.some((a) => a.charged === undefined);
  const audit = (judged.result?.audit ?? []).filter((a) => aboutFigures.has(a.code) && !(undecided && a.code in sumOf));
  const checks = checksOf(r, new Set(audit.map((a) => a.code)));
  const said = [
    ...audit.map((a) => ({ text: a.text, place: sumOf[a.code] && r.reading.spans[sumOf[a.code]!] })),
    ...checks.map((c) => ({ text: c.text, place: { line: c.line, start: 0, end: 0 } })),
  ];
  return html`<div class="bring-sums" role="status">
    <p>
      <strong>${say(r.charges.length === 1 ? 'page.bring.count.one' : 'page.bring.count', { count: r.charges.length, sum: money(claimed ?? '0.00') })}</strong>
      ${sameSum(claimed, stated) && !r.charges.some(isOpen) ? say('page.bring.agrees') : nothing}
    </p>
    ${said.slice(0, mostSaid).map(({ text, place }) => html`<p class="bring-check">${text} ${place ? where(d, r, place, text) : nothing}</p>`)}
    ${said.length > mostSaid ? html`<p class="bring-check">${say('page.sums.leftOutMore', { count: said.length - mostSaid })}</p>` : nothing}
    ${isAsRead(r) && isUnconfirmed(r) ? html`<p class="bring-check">${say('page.bring.unconfirmed')}</p>` : nothing}
    ${arithmetic(d, r)}
  </div>`;
}

const nothingJudged: Judged = { result: null, faults: [] };
const review = new HeldAnswer<Judged>();

export function reviewing(d: Desk, r: Review, acts: Acts): TemplateResult {
  const has = d.case.lines.length > 0;
  // Whether the figures come out hangs on no law, and that of a place the paper names is not here yet.
  const { jurisdiction } = d.case;
  const own = { ...accepted({ ...d.case, lines: [], language: language() } as typeof d.case, r, true), jurisdiction };
  const { engine } = d;
  const judged =
    (engine &&
      review.get(
        [JSON.stringify(own), d.today],
        () => judge(engine, own, d.today),
        () => d.draw(),
      )) ||
    nothingJudged;
  const byId = new Map(judged.result?.lines.map((l) => [l.id, l]));
  const wrong = new Set(judged.faults.map((f) => f.at));
  const open = stillOpen(r);
  const left = r.source.pagesLeft;
  const take = (): void => {
    d.put(accepted(d.case, r, has && instead));
    const count = r.charges.length;
    acts.done();
    d.tell(say(count === 1 ? 'page.bring.taken.one' : 'page.bring.taken', { count }), true);
    void d.settle();
  };
  const [from, to] = stretch(r.source, 'found', r.charges.length);
  return html`<div class="bring-review" data-step=${step}>
    <div class="bring-steps">
      ${oneOf(
        'bring-step',
        [
          { id: 'found', label: say('page.bring.step.found') },
          { id: 'source', label: say('page.bring.step.source') },
        ],
        step,
        (id) => {
          step = id as typeof step;
          d.draw();
        },
      )}
    </div>
    <div class="bring-source">
      <h3>${r.source.name || say('page.bring.pastedText')}</h3>
      ${r.source.cut ? html`<p class="fault">${say('page.bring.cut')}</p>` : nothing}
      ${left ? html`<p class="fault">${say('page.bring.pagesLeft', { read: left.read, of: left.of })}</p>` : nothing}
      ${sourcePane(r, lookedAt, (key) => lookBack(d, r, key))}
    </div>
    <div class="bring-found">
      <h3>${say('page.bring.found')}</h3>
      ${sums(d, r, judged)}
      ${questions(d, r, acts)}
      ${
        r.charges.length
          ? html`${stretches(r.source, 'found', r.charges.length, () => d.draw())}
      <ol class="found-list" start=${from + 1}>
        ${repeat(
          r.charges.slice(from, to),
          (c) => c.key,
          (c, i) =>
            charge(d, r, c, from + i + 1, byId.get(String(from + i + 1)), wrong.has(`/lines/${from + i}/amount`), acts),
        )}
      </ol>`
          : html`<p class="empty">${say('page.bring.noCharges')}</p>`
      }
      ${readings(d, r, acts)}
      ${
        r.facts.length
          ? html`<h3>${say('page.bring.facts')}</h3><ul class="facts-found">${repeat(
              r.facts,
              (f) => f.at,
              (f) => fact(d, r, f, acts),
            )}</ul>`
          : nothing
      }
      ${tray(d, r, acts)}
    </div>
    <div class="bring-end">
      ${
        has
          ? html`<fieldset class="bring-instead"><legend class="unseen">${say('page.bring.instead.label')}</legend>${oneOf(
              'bring-instead',
              [
                { id: 'after', label: say('page.bring.instead.after', { count: d.case.lines.length }) },
                { id: 'instead', label: say('page.bring.instead.instead') },
              ],
              instead ? 'instead' : 'after',
              (id) => {
                instead = id === 'instead';
                d.draw();
              },
            )}</fieldset>`
          : nothing
      }
      ${open ? html`<p class="fault" role="status">${say(open === 1 ? 'page.bring.open.one' : 'page.bring.open', { count: open })}</p>` : nothing}
      <p class="bring-tools">
        <button type="button" class="tool tool-main" ?disabled=${r.charges.length + r.facts.filter((f) => f.take).length === 0} @click=${take}>
          ${say(r.charges.length === 1 ? 'page.bring.take.one' : 'page.bring.take', { count: r.charges.length })}
        </button>
        <button type="button" class="tool" @click=${acts.again}>${say('page.bring.again')}</button>
      </p>
    </div>
  </div>`;
}
