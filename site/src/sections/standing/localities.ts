// The cities and counties with rules of their own in the place of the case.

import type { Desk } from '../../app/desk';
import type { Locality } from '../../case/catalogue';
import { askedBy } from '../../engine/rules';

export const localitiesOf = (d: Desk): Locality[] =>
  d.catalogue.localities
    .filter((x) => x.jurisdiction === d.case.jurisdiction)
    .sort((a, b) => a.name.localeCompare(b.name));

/** What can be entered as the city or county: those, and the towns the law itself names. */
export const townsOf = (d: Desk): string[] => [
  ...new Set([...localitiesOf(d).map((x) => x.value), ...(askedBy(d.case.jurisdiction)?.towns ?? [])]),
];
