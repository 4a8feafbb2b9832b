// Finding the thing a charge is about: a text box over the catalogue, grouped by where in the home it is (WAI-ARIA combobox with a list).

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { live } from 'lit/directives/live.js';
import type { Desk } from '../app/desk';
import { say } from '../say/wording';
import { elementOf, type Hit, search } from '../case/catalogue';

interface Open {
  id: string;
  /** What was typed; null while the list is open and nothing was typed yet. */
  query: string | null;
  active: number;
}

let open: Open | null = null;

const close = (d: Desk): void => {
  open = null;
  d.draw();
};

const labelOf = (h: Hit): string => (h.finding ? `${h.element.label}: ${h.finding.label}` : h.element.label);

/** `choose` gets the element's id and, where the words named one, the finding's; two empty texts take the choice back. */
export function thingPicker(
  d: Desk,
  id: string,
  chosen: string,
  labelledBy: string,
  describedBy: string,
  choose: (element: string, finding: string) => void,
): TemplateResult {
  const here = open?.id === id ? open : null;
  const hits = here ? search(d.catalogue, here.query ?? '') : [];
  // Groups in the order of their best hit.
  const groups = [...new Set(hits.map((h) => h.element.group))].map((id) => ({
    id,
    label: d.catalogue.groups.find((g) => g.id === id)?.label ?? id,
    hits: hits.filter((h) => h.element.group === id),
  }));
  const ordered = groups.flatMap((g) => g.hits);
  const pick = (h: Hit) => {
    open = null;
    choose(h.element.id, h.finding?.id ?? '');
  };
  const show = (query: string | null, active = 0) => {
    open = { id, query, active };
    d.draw();
  };
  const keys = (e: KeyboardEvent) => {
    if (e.key === 'ArrowDown' || e.key === 'ArrowUp') {
      e.preventDefault();
      if (!here) return show(null);
      const step = e.key === 'ArrowDown' ? 1 : -1;
      here.active = (here.active + step + ordered.length) % Math.max(1, ordered.length);
      d.draw();
      document.getElementById(`${id}-o${here.active}`)?.scrollIntoView({ block: 'nearest' });
    } else if (e.key === 'Enter' && here) {
      e.preventDefault();
      const hit = ordered[here.active];
      if (hit) pick(hit);
    } else if (e.key === 'Escape' && here) {
      e.preventDefault();
      close(d);
    }
  };
  let n = -1;
  return html`<span class="picker">
    <input
      id=${id}
      class="entry"
      type="text"
      role="combobox"
      autocomplete="off"
      spellcheck="false"
      aria-expanded=${here ? 'true' : 'false'}
      aria-controls="${id}-list"
      aria-autocomplete="list"
      aria-labelledby=${labelledBy}
      aria-describedby=${describedBy || nothing}
      aria-activedescendant=${here && ordered.length ? `${id}-o${here.active}` : nothing}
      .value=${live(here?.query ?? elementOf(d.catalogue, chosen)?.label ?? chosen)}
      @input=${(e: Event) => show((e.target as HTMLInputElement).value)}
      @focus=${(e: Event) => (e.target as HTMLInputElement).select()}
      @click=${() => here ?? show(null)}
      @keydown=${keys}
      @blur=${() => {
        if (!here) return;
        if (here.query?.trim() === '' && chosen) choose('', '');
        close(d);
      }}
    />
    <div id="${id}-list" class="picker-list" role="listbox" aria-label=${say('page.thing.list')} ?hidden=${!here}>
      ${groups.map(
        (g) => html`<div role="group" aria-labelledby="${id}-g-${g.id}">
          <div class="picker-group" id="${id}-g-${g.id}" role="presentation">${g.label}</div>
          ${g.hits.map((h) => {
            n += 1;
            const mine = n;
            return html`<div
              id="${id}-o${mine}"
              role="option"
              class="picker-option"
              aria-selected=${here?.active === mine ? 'true' : 'false'}
              @pointerdown=${(e: Event) => {
                e.preventDefault();
                pick(h);
              }}
            >
              <span>${labelOf(h)}</span>
              <span class="picker-covers">${h.finding ? h.finding.description : h.element.covers}</span>
            </div>`;
          })}
        </div>`,
      )}
      ${here && ordered.length === 0 ? html`<p class="picker-none" role="presentation">${say('page.thing.none')}</p>` : nothing}
    </div>
  </span>`;
}
