// The sentences of the walk-through, fetched with it.

import en from '../../../../engine/rules/wording/en/page-walk.json';
import { learn } from '../../say/wording';

export const wordsThere = learn(en, { es: () => import('../../../../engine/rules/wording/es/page-walk.json') });
