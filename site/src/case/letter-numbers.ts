// Numbers of letters that the page needs too; their source stands beside them in the rules.

import { replyDays as given } from '../../../engine/rules/letters.json';

/** Days a letter gives for its answer. */
export const replyDays: number = given.count;
