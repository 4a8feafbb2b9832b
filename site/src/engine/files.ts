// Where the page's own files come from: beside the page. The single offline file replaces this module by one that holds them.

import { fetched } from './fetched';

/** A bundle of rules as text. */
export const rulesText = async (file: string): Promise<string> =>
  (await fetched(new URL(`generated/rules/${file}`, document.baseURI).href)).text();
