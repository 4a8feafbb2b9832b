// The home, the deposit and the statement: the facts that hold for every charge.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Desk } from '../../app/desk';
import { say } from '../../say/wording';
import { fieldsAt, fieldsOfLaw } from '../../parts/fields';
import { faultsAt, field, fieldId, type Field } from '../../parts/field';
import { foldedSection } from '../../parts/fold';
import './tenancy.css';

const home = ['/tenancy/began', '/tenancy/ended', '/tenancy/monthlyRent', '/tenancy/forwardingAddressGiven'];
const came = ['/statement/sent'];
const statement = [
  '/statement/statementReceived',
  '/statement/dated',
  '/statement/received',
  '/statement/deliveryMethod',
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

export function tenancy(d: Desk): TemplateResult | typeof nothing {
  if (d.blank) return nothing;
  return foldedSection(d, 'tenancy', say('page.tenancy.title'), () => body(d));
}

function body(d: Desk): TemplateResult {
  const law = fieldsOfLaw(d);
  return html`<p>${say('page.tenancy.says')}</p>
    <div class="fields">
      ${fieldsAt(d, home).map((f) => field(d, f))}${deposits(d)}${fieldsAt(d, came).map((f) => field(d, f))}
    </div>
    ${depositTools(d)}
    ${fold(d, 'statement', fieldsAt(d, statement))}
    ${fold(d, 'records', fieldsAt(d, records))}
    ${law.length ? fold(d, 'lawAsks', law) : nothing}
    ${fold(d, 'more', fieldsAt(d, more))}`;
}
