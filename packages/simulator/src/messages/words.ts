import { Messages, type Say } from './catalogue.js';
import { ENGLISH, type MessageKey } from './english.js';
import { GERMAN } from './german.js';

/** All that the elements say, but for the lessons. `MESSAGES.add` takes more languages. */
export const MESSAGES = new Messages<MessageKey>(ENGLISH);
MESSAGES.add('de', GERMAN);

export type Words = Say<MessageKey>;

export const IN_ENGLISH: Words = MESSAGES.in('en');
