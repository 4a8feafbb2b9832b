// The foot of the page: privacy, what this is, which engine.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { say } from '../../say/wording';
import './footer.css';

/** The single file holds the notices itself, packed; they are unpacked when somebody looks. */
async function unpack(event: Event): Promise<void> {
  const into = (event.target as HTMLElement).querySelector('pre');
  const held = document.getElementById('notices')?.textContent;
  if (!into || into.textContent || !held) return;
  const bytes = Uint8Array.from(atob(held), (c) => c.charCodeAt(0));
  const text = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
  into.textContent = await new Response(text).text();
}

const notices = (): TemplateResult =>
  __ONE_FILE__
    ? html`<details class="footer__notices" @toggle=${unpack}>
        <summary>${say('page.footer.notices')}</summary>
        <pre></pre>
      </details>`
    : html`<p><a href="./notices.txt">${say('page.footer.notices')}</a></p>`;

export const footer = (d: Desk): TemplateResult => html`<footer class="footer">
  <p>${say('page.footer.private')}</p>
  <p>${say('page.footer.informs')}</p>
  ${__ONE_FILE__ ? nothing : html`<p><a href="./wearline.html" download>${say('page.footer.oneFile')}</a> ${say('page.footer.oneFile.says')}</p>`}
  ${notices()}
  ${d.engine ? html`<p>${say('page.footer.version', { version: d.engine.version })}</p>` : nothing}
</footer>`;
