// The cities and counties with rules of their own in the place of the case.

import type { Desk } from '../../app/desk';
import type { Locality } from '../../case/catalogue';
import { askedBy } from '../../engine/rules';
import { say } from '../../say/wording';

export const localitiesOf = (d: Desk): Locality[] =>
  d.catalogue.localities
    .filter((x) => x.jurisdiction === d.case.jurisdiction)
    .sort((a, b) => a.name.localeCompare(b.name));

/** What can be entered as the city or county: those, and the towns the law itself names. */
export const townsOf = (d: Desk): string[] => [
  ...new Set([...localitiesOf(d).map((x) => x.value), ...(askedBy(d.case.jurisdiction)?.towns ?? [])]),
];

/** How a person tells that the home is inside the city or county that was entered; before one is, why it is asked. */
export function townHelp(d: Desk): string {
  const entered = d.case.locality ?? '';
  if (!entered) return localitiesOf(d).length ? say('page.standing.town.help') : '';
  const chosen = localitiesOf(d).find((x) => x.value === entered);
  // A name of the list may still be on its way.
  const listed = townsOf(d).some((t) => t.toLowerCase().startsWith(entered.toLowerCase()));
  return chosen?.inside ?? (listed ? '' : say('page.standing.town.other'));
}
