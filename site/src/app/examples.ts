// The example cases that come with the page: their titles now, each case only when it is opened.

import index from 'virtual:examples';
import type { Desk } from './desk';
import { openText } from './case-files';
import { nameOfPlace } from '../engine/rules';
import { canSay, say } from '../say/wording';

export interface Example {
  slug: string;
  title: string;
  says: string;
}

/** What an example is called in the page's language. */
const titleOf = (slug: string, title: string): string => {
  const key = `page.opening.example.title.${slug}`;
  return canSay(key) ? say(key) : title;
};

/** The examples in order, each with its title and a line on what it shows. */
export const examples = (): Example[] =>
  index.list.map(({ slug, title, charges, place }) => ({
    slug,
    title: titleOf(slug, title),
    says: say(charges ? 'page.opening.example' : 'page.opening.example.walk', {
      charges,
      place: nameOfPlace(place) || place,
    }),
  }));

export async function openExample(d: Desk, e: Example): Promise<void> {
  const text = await index.open[e.slug]!();
  openText(d, text.default, `${e.slug}.json`);
  d.tell(say('page.notice.example', { title: e.title }));
}
