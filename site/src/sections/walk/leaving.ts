// The leaving day: what to do and to get in writing; the address notice with its section where the landlord's time starts with it.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { live } from 'lit/directives/live.js';
import type { Desk } from '../../app/desk';
import { saveCase } from '../../app/case-files';
import { leftOn } from '../../case/next-step';
import { walkOf, withLeaving } from '../../case/walk-edits';
import { clocksOf, lawOf, type Rule } from '../../engine/rules';
import { fullDay } from '../../say/show';
import { say } from '../../say/wording';
import { saveReceipt } from './hand-out';
import { writeLetter } from './inspection';

const tasks = ['photos', 'cleaning', 'belongings', 'meters', 'services', 'alarms', 'keys', 'address'] as const;

interface AddressRule {
  text: string;
  cites: string[];
}

/** What the law of the place says of the new address: the tenant's duty to give it, or that a day starts with it. */
function addressRule(d: Desk): AddressRule | undefined {
  const law = lawOf(d.case.jurisdiction);
  if (!law) return undefined;
  const duties = (law['duties'] ?? []) as (Rule & { duty?: string })[];
  const own = duties.find((r) => r.duty === 'give-forwarding-address' && !r.to);
  const named = own ?? ((law['address'] ?? []) as (Rule & { required?: boolean })[]).find((r) => r.required && !r.to);
  const cites = (named?.source ?? []).flatMap((id) => law.sources[id]?.cite ?? []);
  if (named) return { text: named.text, cites };
  return clocksOf(d.case.jurisdiction).includes('forwarding-address-given')
    ? { text: say('page.walk.leaving.address.law'), cites: [] }
    : undefined;
}

function more(d: Desk, task: string): TemplateResult | typeof nothing {
  if (task === 'keys')
    return html`<button type="button" class="tool" @click=${() => void saveReceipt(d)}>${say('page.walk.leaving.receipt')}</button>`;
  if (task !== 'address') return nothing;
  const rule = addressRule(d);
  return html`${rule ? html`<p>${rule.text}</p>${rule.cites.length ? html`<p class="sources">${rule.cites.join('; ')}</p>` : nothing}` : nothing}
    ${leftOn(d.case) ? html`<button type="button" class="tool" @click=${() => writeLetter(d, 'forwarding-address')}>${say('page.walk.leaving.address.letter')}</button>` : nothing}`;
}

export function leaving(d: Desk): TemplateResult | typeof nothing {
  if (d.side === 'landlord') return nothing;
  const done = walkOf(d.case).moveOutTasks ?? [];
  const day = leftOn(d.case);
  return html`<section class="walk" aria-labelledby="walk-leaving">
    <h2 id="walk-leaving" tabindex="-1">${say('page.walk.leaving.title')}</h2>
    <p>${day ? html`<strong>${fullDay(day)}.</strong> ` : nothing}${say('page.walk.leaving.says')}</p>
    <ul class="walk-leaving">
      ${tasks.map(
        (task) => html`<li>
          <label class="check"><input type="checkbox" .checked=${live(done.includes(task))} @change=${(e: Event) => d.put(withLeaving(d.case, task, (e.target as HTMLInputElement).checked))} /><span>${say(`page.walk.leaving.${task}`)}</span></label>
          ${more(d, task)}
        </li>`,
      )}
    </ul>
    <p><button type="button" class="tool" @click=${() => void saveCase(d)}>${say('page.walk.leaving.copy')}</button></p>
  </section>`;
}
