// A section of the page that is folded until wanted: one line, its heading inside.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../app/desk';

/** `beside` stands behind the heading, such as "4 of 7 answered". The body is drawn only while it is open. */
export function foldedSection(d: Desk, name: string, title: string, body: () => unknown, beside = ''): TemplateResult {
  const isOpen = d.folds.has(name);
  return html`<section class="folded ${name}" aria-labelledby="${name}-title">
    <details
      ?open=${isOpen}
      @toggle=${(e: Event) => {
        if ((e.target as HTMLDetailsElement).open !== d.folds.has(name)) d.toggleFold(name);
      }}
    >
      <summary><h2 id="${name}-title">${title}</h2>${beside ? html` <span class="fold-count">${beside}</span>` : nothing}</summary>
      ${isOpen ? body() : nothing}
    </details>
  </section>`;
}
