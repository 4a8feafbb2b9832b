// The foot of the page: privacy, what this is, which engine.

import { html, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { say } from '../../app/wording';
import './footer.css';

export const footer = (d: Desk): TemplateResult => html`<footer class="footer">
  <p>${say('page.footer.private')}</p>
  <p>${say('page.footer.informs')}</p>
  <p>${say('page.footer.version', { version: d.engine?.version ?? '' })}</p>
</footer>`;
