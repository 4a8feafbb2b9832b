// Text of the rules that stands there in every language.

import { language } from './wording';

export interface Spoken {
  en: string;
  es: string;
}
/** The text in the page's language. */
export const spoken = (text: Spoken): string => text[language()];
