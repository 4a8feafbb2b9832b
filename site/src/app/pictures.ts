// The pictures come after the first result, with their library.

import { later } from './later';

export const pictures = later(() => import('../pictures/index'));
