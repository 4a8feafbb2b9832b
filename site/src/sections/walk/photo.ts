// A photo of a thing: from the phone's camera, or chosen.

import { html, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import type { WalkItem } from '../../case/walk';
import { attach } from '../evidence/evidence';
import { thingName } from './names';

async function keep(d: Desk, thing: WalkItem, files: File[]): Promise<void> {
  await attach(d, files, { thing: thing.id, shows: 'move-out', note: thingName(d, thing) });
}

/** `of` is asked once there is a photo: only then is a thing written down that was not looked at yet. */
export const photograph = (d: Desk, label: unknown, of: () => WalkItem): TemplateResult =>
  html`<label class="tool file-tool walk-photo">${label}<input
      type="file"
      multiple
      accept="image/*"
      @change=${(e: Event) => {
        const box = e.target as HTMLInputElement;
        const files = [...(box.files ?? [])];
        if (files.length) void keep(d, of(), files).then(() => (box.value = ''));
      }}
  /></label>`;
