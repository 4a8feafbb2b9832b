// The home, the deposit and the statement: the facts that hold for every charge.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Desk } from '../../app/desk';
import { askedBy } from '../../engine/rules';
import { money } from '../../say/show';
import { say } from '../../say/wording';
import { fieldsAt, fieldsOfLaw } from '../../parts/fields';
import { inWords } from '../../say/date-words';
import { faultsAt, field, fieldId, type Field, triValue, triWord, yesNoField } from '../../parts/field';
import './tenancy.css';

const home = ['/tenancy/began', '/tenancy/ended', '/tenancy/monthlyRent', '/tenancy/forwardingAddressGiven'];
const came = ['/statement/sent'];
const statement = [
  '/statement/came',
  '/statement/dated',
  '/statement/received',
  '/statement/how',
  '/statement/refundSent',
  '/statement/statedTotal',
  '/statement/statedRefund',
  '/statement/statedBalanceDue',
];
const more = [
  '/title',
  '/tenancy/kind',
  '/tenancy/rentPaidThrough',
  '/tenancy/occupants',
  '/tenancy/ownerOccupied',
  '/tenancy/landlordUnits',
  '/tenancy/buildingUnits',
];
const records = [
  '/records/moveInChecklist/made',
  '/records/moveInChecklist/signedByBoth',
  '/records/moveInChecklist/tenantHasCopy',
  '/records/photosAtMoveIn',
  '/records/photosAtMoveOut',
  '/records/moveOutChecklist/made',
  '/records/preMoveOutInspection/offered',
  '/records/preMoveOutInspection/requested',
  '/records/preMoveOutInspection/held',
];
/** Papers asked about where no law pack names its own. */
const usualPapers = ['itemised', 'reasons', 'receipts', 'photos'];

const known = (d: Desk, f: Field): boolean => (f.event ? d.eventOn(f.event) !== undefined : d.valueAt(f.at) != null);

/** A fold whose heading says how many of its facts are known. */
function fold(
  d: Desk,
  name: string,
  fields: Field[],
  body: TemplateResult = html`${repeat(fields, fieldId, (f) => field(d, f))}`,
  count = fields.filter((f) => known(d, f)).length,
): TemplateResult {
  const wrong = fields.some((f) => faultsAt(d, f).length > 0);
  return html`<details class="fold" ?open=${d.folds.has(name) || wrong} @toggle=${(e: Event) => {
    const isOpen = (e.target as HTMLDetailsElement).open;
    if (isOpen !== d.folds.has(name)) d.toggleFold(name);
  }}>
    <summary>${say(`page.tenancy.${name}`)}${count ? html` <span class="fold-count">${say('page.tenancy.known', { count })}</span>` : nothing}</summary>
    <div class="fields">${body}</div>
  </details>`;
}

function deposits(d: Desk): TemplateResult {
  const held = d.case.deposits ?? [];
  const shown = Math.max(1, held.length);
  return html`${Array.from({ length: shown }, (_, i) => {
    const at = (m: string) => `/deposits/${i}/${m}`;
    // The first deposit's sum is asked for at the top of the page.
    const asked = [...(i > 0 ? [at('amount')] : []), at('paid'), ...(shown > 1 ? [at('kind')] : [])];
    return fieldsAt(d, asked).map((f) => field(d, f));
  })}
`;
}

/** More than one deposit may have been paid; the law of some places treats them apart. */
function depositTools(d: Desk): TemplateResult | typeof nothing {
  const held = d.case.deposits ?? [];
  return held.length
    ? html`<p class="tenancy-deposits">
          <button type="button" class="link" @click=${() => d.set(`/deposits/${held.length}`, { kind: 'pet' })}>${say('page.tenancy.anotherDeposit')}</button>
          ${
            held.length > 1
              ? html`<button type="button" class="link" @click=${() => d.put({ ...d.case, deposits: held.slice(0, -1) })}>${say('page.tenancy.oneDepositLess')}</button>`
              : nothing
          }
        </p>`
    : nothing;
}

/** Which papers came with the statement: came, did not come, or not known, kept in the two lists of the case. */
function papers(d: Desk): TemplateResult {
  const needed = askedBy(d.case.jurisdiction)?.papers;
  const listed = d.catalogue.papers.filter((p) => (needed?.size ? needed.has(p.id) : usualPapers.includes(p.id)));
  const { enclosed = [], missing = [] } = d.case.statement ?? {};
  const state = (id: string) => (enclosed.includes(id) ? true : missing.includes(id) ? false : null);
  const choose = (id: string, came: boolean | undefined) => {
    const rest = { enclosed: enclosed.filter((p) => p !== id), missing: missing.filter((p) => p !== id) };
    if (came !== undefined) rest[came ? 'enclosed' : 'missing'].push(id);
    const { enclosed: _e, missing: _m, ...others } = d.case.statement ?? {};
    const lists = Object.fromEntries(Object.entries(rest).filter(([, l]) => l.length));
    d.put({ ...d.case, statement: { ...others, ...lists } });
  };
  return html`${listed.map((p) => yesNoField(`paper-${p.id}`, p.label, state(p.id), (v) => choose(p.id, triValue(triWord(v)))))}`;
}

/** The facts in one line, once they are known, so that the fold can stay shut. */
function inShort(d: Desk): string {
  const t = d.case.tenancy ?? {};
  const s = d.case.statement ?? {};
  const part = (key: string, value: string) => (value ? say(`page.tenancy.short.${key}`, { value }) : '');
  return [
    part('left', inWords(t['possessionReturned'] ?? t['ended'])),
    part('deposit', money(d.result?.totals.deposit ?? d.case.deposits?.[0]?.amount)),
    part('sent', inWords(s['sent'])),
  ]
    .filter(Boolean)
    .join(' ');
}

export function tenancy(d: Desk): TemplateResult {
  const law = fieldsOfLaw(d);
  const paperCount = (d.case.statement?.enclosed?.length ?? 0) + (d.case.statement?.missing?.length ?? 0);
  return html`<section class="tenancy" aria-labelledby="tenancy-title">
    <h2 id="tenancy-title">${say('page.tenancy.title')}</h2>
    <p class="tenancy-short">${inShort(d) || say('page.tenancy.says')}</p>
    <div class="fields">
      ${fieldsAt(d, home).map((f) => field(d, f))}${deposits(d)}${fieldsAt(d, came).map((f) => field(d, f))}
    </div>
    ${depositTools(d)}
    ${fold(d, 'statement', fieldsAt(d, statement))}
    ${fold(d, 'enclosed', [], papers(d), paperCount)}
    ${fold(d, 'records', fieldsAt(d, records))}
    ${law.length ? fold(d, 'lawAsks', law) : nothing}
    ${fold(d, 'more', fieldsAt(d, more))}
  </section>`;
}
