// Who is looking, and which law applies.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { live } from 'lit/directives/live.js';
import type { Desk } from '../../app/desk';
import { askedBy, places } from '../../engine/rules';
import { say } from '../../say/wording';
import type { Side } from '../../case/case';
import { fieldsAt } from '../../parts/fields';
import { field, oneOf } from '../../parts/field';
import './standing.css';

const sides: Side[] = ['tenant', 'adviser', 'landlord'];

export function standing(d: Desk): TemplateResult {
  const towns = askedBy(d.case.jurisdiction)?.towns ?? [];
  const options = (country: string) =>
    places()
      .filter((p) => p.code.startsWith(country))
      .map((p) => html`<option value=${p.code} .selected=${live(p.code === d.case.jurisdiction)}>${p.name}</option>`);
  return html`<section class="standing" aria-label=${say('page.standing.label')}>
    <fieldset class="field standing-side">
      <legend>${say('page.standing.who')}</legend>
      ${oneOf(
        'side',
        sides.map((id) => ({ id, label: say(`page.side.${id}`) })),
        d.side,
        (id) => d.set('/side', id),
      )}
    </fieldset>
    <div class="field standing-place">
      <label for="place">${say('page.standing.place')}</label>
      <select id="place" class="entry" @change=${(e: Event) => d.set('/jurisdiction', (e.target as HTMLSelectElement).value || undefined)}>
        <option value="" .selected=${live(!d.case.jurisdiction)}>${say('page.standing.noPlace')}</option>
        <optgroup label=${say('page.standing.us')}>${options('US-')}</optgroup>
        <optgroup label=${say('page.standing.ca')}>${options('CA-')}</optgroup>
      </select>
    </div>
    ${
      towns.length || d.case.locality
        ? field(d, { at: '/locality', kind: 'text', label: say('page.standing.town'), suggest: towns })
        : nothing
    }
    ${fieldsAt(d, ['/tenancy/possessionReturned', '/deposits/0/amount', '/statement/refundPaid']).map((f) => field(d, f))}
  </section>`;
}
